/** How the engines run while the bay warms: handed in by the whole, as plain numbers. SI. */

/** What one engine does in one state of the craft. */
export interface EngineRun {
  /** W at its crank; nought when it is off */
  power: number
  /** by simulation, where there was one; W, all cylinders */
  heat?: { cylinder: number; case: number; pipe: number; box: number }
  /** kg/s, by simulation */
  air?: number
  fuel?: number
  /** K at the exhaust thermometer, by simulation */
  exhaustT?: number
}

/** One state of the craft. */
export interface RunState {
  name: 'tied up' | 'at top speed' | 'at full power'
  /** m/s */
  speed: number
  /** rev/s of the engines */
  rotation: number
  /** one for each engine of the file */
  engines: readonly EngineRun[]
  /** m³/s through one jet; absent where the balance was not solved */
  flow?: number
}

export interface BayRun {
  /** the hottest first is not known: all of them are worked out */
  states: readonly RunState[]
}
