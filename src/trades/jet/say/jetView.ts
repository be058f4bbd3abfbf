/** What every jet finding is made from, and how its numbers are written. */
import type { MeasureNext } from '../../../base/answers/finding.ts'
import { formatQuantity } from '../../../base/units/format.ts'
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

export const percent = (x: number) => `${Math.round(100 * x)} %`
export const newton = (x: number) => `${Math.round(x)} N`
export const length = (x: number, unit: 'mm' | 'cm' | 'm' | 'µm') => formatQuantity(x, 'length', unit, 2)

/** rotation as the builder sees it, at the engine */
export const rpm = (view: View, n: number) => `${Math.round((n * view.at.ratio * 60) / 10) * 10} rpm`

export function measure(path: string, spec: { source: string }): { measureNext?: MeasureNext } {
  const how = spec.source === 'guess' || spec.source === 'assumed' ? fieldAt(path)?.measure : undefined
  return how ? { measureNext: { ...how, path } } : {}
}
