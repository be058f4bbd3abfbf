/** What every jet finding is made from. */
import { inMetres, inRpm } from '../../../base/answers/amounts.ts'
import type { MeasureNext } from '../../../base/answers/finding.ts'
import type { Amount } from '../../../base/answers/sentence.ts'
import { type Craft, fieldAt } from '../../../craft/index.ts'
import type { JetPoint, JetSpec } from '../jetTypes.ts'

/** Where the balance found the impeller running; rev/s and m/s. */
export interface JetSituation {
  /** impeller rotation tied up, and fastest the engines can turn it */
  tiedUp: number
  most: number
  /** engine turns per impeller turn, so that texts can speak of engine rotation */
  ratio: number
  /** rotation and speed at the top; absent when there is none */
  top?: { rotation: number; V: number }
}

export interface View {
  craft: Craft
  spec: JetSpec
  at: JetSituation
  tied: JetPoint
  top?: JetPoint
}

export const src = {
  strip: 'Strip model with lattice turning and cascade losses (Weinig 1935; Lieblein 1959; Denton 1993)',
  inducers: 'NASA SP-8052, Liquid Rocket Engine Turbopump Inducers (1971)',
  dip: 'Dip of a surface over a sink: Lubin and Springer 1967; Smoglie and Reimann 1986 (from memory)',
  hi: 'ANSI/HI 9.8, Rotodynamic Pumps for Pump Intake Design',
  kirschmer: 'O. Kirschmer (1926), losses of trash racks',
  practice: 'common practice, no source',
}

/** rotation as the builder sees it, at the engine */
export const atEngine = (view: View, n: number): Amount => inRpm(n * view.at.ratio)

/** head, J/kg, as metres of water */
export const headSays = (gH: number): Amount => inMetres(gH / 9.80665, 0.1)

export function measure(path: string, spec: { source: string }): { measureNext?: MeasureNext } {
  const how = spec.source === 'guess' || spec.source === 'assumed' ? fieldAt(path)?.measure : undefined
  return how ? { measureNext: { ...how, path } } : {}
}
