/** What an invented clip is made of, before it is made into sound. */

/** Control points a second in a script. */
export const CONTROL_RATE = 200

/** What one engine is made to do; arrays at CONTROL_RATE. */
export interface EngineScript {
  /** rev/min; 0 = not running */
  rpm: Float64Array
  /** 0 idle … 1 pulling */
  load: Float64Array
  /** all but one in `every` firings weaker by this part, 0 … 1 */
  alternate: Float64Array
  /** 2 = four-stroking, 3 = six-stroking, 4 = eight-stroking */
  every: number
  /** chance that a firing misses, 0 … 1 */
  misfire: Float64Array
  /** firing angle from the shaft's zero, parts of a turn (a locked pair differs in this only) */
  phase: number
  /** loudness against the first engine, amplitude */
  gain: number
}

export type TrueEventKind = 'start' | 'stop' | 'flare' | 'bog' | 'misfire' | 'cut-out'

export interface TrueEvent {
  kind: TrueEventKind
  /** s */
  time: number
  /** index of the engine */
  engine: number
}

/** One invented clip before it is made into sound. */
export interface Script {
  kind: ScriptKind
  duration: number
  engines: EngineScript[]
  events: TrueEvent[]
}

export const singleKinds = ['steady', 'ramp', 'blips', 'fourstroke', 'bogcut'] as const
export const separableKinds = ['apart', 'cross', 'near', 'onedies', 'slip'] as const
export const twinKinds = ['locked', 'octave'] as const
/** only among the hard clips: one saw-like engine, and two that rev independently */
export const sawKinds = ['saw', 'saws'] as const
export type ScriptKind =
  | (typeof singleKinds)[number]
  | (typeof separableKinds)[number]
  | (typeof twinKinds)[number]
  | (typeof sawKinds)[number]
  | 'quiet'
