/** The shapes that a search for a pipe speaks of. SI; rpm in rev/min. */
import type { Pipe } from './proportions.ts'

/** One full-throttle curve of the whole engine (all cylinders) with one pipe on it. */
export interface PipeCurve {
  /** rev/min, rising; only speeds that settled */
  rpm: number[]
  /** N·m at the crankshaft */
  torque: number[]
  /** K, where an exhaust thermometer would sit; the hottest of the speeds looked at */
  exhaustT: number
  /** Pa over the air, mean behind the pipe; the highest of the speeds looked at */
  gauge: number
  /** Pa over the air in the belly, estimated: behind the pipe and the steady drop of the stinger; the highest */
  inside: number
  /** speeds that were asked for and did not settle */
  unsettled: number
  /** m, length of the cells it was worked out with */
  dx: number
}

/** One pipe and what it does on this craft. */
export interface PipeAnswer {
  /** 'now', 'handbook' or 'found' */
  name: 'now' | 'handbook' | 'found'
  /** from the flange to the end of the stinger; the duct in the cylinder comes before it */
  pipe: Pipe
  curve: PipeCurve
  /** mean thrust over the speeds of the craft that count, N; NaN without a jet to load the engine */
  thrust: number
  /** thrust tied up, N, and the engine speed there, rev/min */
  pull: number
  pullAt: number
  /** rev/min of most power, and that power, W */
  peakAt: number
  power: number
  /** what the search maximises: 1 is the present pipe's thrust */
  score: number
  /** 'coarse' cells to explore, 'fine' ones to decide */
  cells: 'coarse' | 'fine'
}

/** What one small change does, from finite differences on the pipe found. */
export interface NextChange {
  /** such as 'header 10 mm longer' */
  says: string
  /** craft path of what is changed, where the file has one */
  path?: string
  /** SI: m or rad */
  step: number
  /** change of the speed of most power, rev/min, and of the torque peak, N·m */
  peakAt: number
  torque: number
  /** change of mean thrust, N */
  thrust: number
}

/** Room for the pipe. `given` is false where the craft file sets no limit and the search took its own. */
export interface Room {
  /** m, piston face to the end of the stinger */
  length: number
  /** m, widest inside diameter */
  diameter: number
  /** rad, that the pipe has to turn through in all */
  bend: number
  given: boolean
}

/** How far a stinger bore may be trusted to be kind to the piston. */
export type Risk = 'good' | 'watch' | 'stop'

export interface StingerRow {
  /** m */
  bore: number
  length: number
  /** thrust tied up and mean thrust over the speeds that count, N */
  pull: number
  thrust: number
  pullAt: number
  /** most torque, N·m */
  torque: number
  /** K */
  exhaustT: number
  /** Pa over the air behind the pipe, and in the belly */
  gauge: number
  inside: number
  risk: Risk
  because: string
  cells: 'coarse' | 'fine'
}
