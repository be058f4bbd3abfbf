/** What the findings of an exhaust are worked out from, and the words they share. */
import { inCm } from '../../base/answers/amounts.ts'
import type { Finding, Standing } from '../../base/answers/finding.ts'
import { type Sentence, say } from '../../base/answers/sentence.ts'
import type { ExhaustInputs } from './exhaustFromCraft.ts'

/** How the engine runs at its power peak, by simulation. SI. */
export interface ExhaustRun {
  /** kg/s through one pipe, and air alone into one cylinder */
  massFlow: number
  airFlow: number
  /** K at the exhaust thermometer */
  exhaustT: number
  /** Pa over the air, behind the pipe */
  behind: number
  /** rev/s */
  rotation: number
  /** W of this engine, all its cylinders, and how many engines the craft has */
  power: number
  engines: number
  /** kg/s out of one outlet over one turn, evenly spaced; empty when not known */
  outFlow: readonly number[]
}

export interface ExhaustView {
  inputs: ExhaustInputs
  /** absent when nothing was simulated */
  run?: ExhaustRun
  /** lowest lip of the outlet over still water, m, and how that stands, as the craft floats; `path` of where it stands in the file */
  outlet?: { height: number; standing: Standing; path: string }
}

/** "4 cm over" or "4 cm under": where something stands against still water */
export const overWater = (height: number): Sentence =>
  height < 0 ? say`${inCm(-height)} under` : say`${inCm(height)} over`

export const worse = (...s: Standing[]): Standing =>
  s.includes('stop') ? 'stop' : s.includes('watch') ? 'watch' : 'good'

/** K in the muffler box: gas loses about an eighth of its heat over the air on the way there; common practice, no source. */
export function boxTemperature(exhaustT: number, airT: number): number {
  return airT + 0.87 * (exhaustT - airT)
}

export function finding(v: ExhaustView, id: string, f: Omit<Finding, 'id' | 'question'>): Finding {
  return { id: `breath.${v.inputs.at}.${id}`, question: 'breath', twin: `exhaust.${id}`, ...f }
}
