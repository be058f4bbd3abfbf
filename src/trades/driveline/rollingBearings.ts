/**
 * Life of rolling bearings. ISO 281: L10 = (C/P)³ million turns, P = X Fr + Y Fa for single-row deep-groove balls by Fa/C0; load ratings of the
 * 6000 and 6200 series and of angular-contact bearings of their sizes as usual catalogues have them, from memory.
 */

export interface Bearing {
  name: string
  /** dynamic and static load ratings, N */
  dynamic: number
  static: number
}

/** kN */
const rows: Readonly<Record<string, readonly [number, number]>> = {
  '6000': [4.75, 1.96],
  '6001': [5.4, 2.36],
  '6002': [5.85, 2.85],
  '6003': [6.37, 3.25],
  '6004': [9.95, 5],
  '6200': [5.4, 2.36],
  '6201': [7.28, 3.1],
  '6202': [8.06, 3.75],
  '6203': [9.95, 4.75],
  '6204': [13.5, 6.55],
}

export const bearingNames = Object.keys(rows)

/** A bearing by its number; RangeError for one that is not in the table. */
export function bearingOf(name: string): Bearing {
  const row = rows[name]
  if (!row) throw new RangeError(`bearing: "${name}" is not one of ${bearingNames.join(', ')}`)
  return { name, dynamic: 1e3 * row[0], static: 1e3 * row[1] }
}

/** The light bearing that a shaft of this diameter (m) goes through. */
export const bearingFor = (diameter: number): Bearing => {
  const mm = 1e3 * diameter
  return bearingOf(
    mm <= 10.5 ? '6000' : mm <= 12.5 ? '6001' : mm <= 15.5 ? '6002' : mm <= 17.5 ? '6003' : '6004',
  )
}

/** e and Y of deep-groove bearings by Fa/C0 */
const factors: readonly (readonly [ratio: number, e: number, y: number])[] = [
  [0.014, 0.19, 2.3],
  [0.028, 0.22, 1.99],
  [0.056, 0.26, 1.71],
  [0.084, 0.28, 1.55],
  [0.11, 0.3, 1.45],
  [0.17, 0.34, 1.31],
  [0.28, 0.38, 1.15],
  [0.42, 0.42, 1.04],
  [0.56, 0.44, 1],
]

/** Load that wears a deep-groove bearing as radial and axial ones do together, N. */
export function equivalentLoad(radial: number, axial: number, staticRating: number): number {
  if (axial <= 0) return radial
  const at = axial / staticRating
  const i = factors.findIndex(([r]) => r >= at)
  const [high, low] = i < 0 ? [factors.at(-1)!, factors.at(-1)!] : [factors[i]!, factors[Math.max(0, i - 1)]!]
  const part = high[0] === low[0] ? 0 : (at - low[0]) / (high[0] - low[0])
  const e = low[1] + part * (high[1] - low[1])
  const y = low[2] + part * (high[2] - low[2])
  if (axial <= e * radial) return radial
  return Math.max(radial, 0.56 * radial + y * axial)
}

/** The same for an angular-contact bearing of 40°: X 0.35, Y 0.57 beyond e 1.14. */
export const angularLoad = (radial: number, axial: number): number =>
  axial <= 1.14 * radial ? radial : 0.35 * radial + 0.57 * axial

/** Hours that nine in ten reach, s at `rotation` rev/s under a load N. */
export const bearingLife = (dynamic: number, load: number, rotation: number): number =>
  (1e6 / rotation) * (dynamic / load) ** 3

/** Dynamic rating wanted for a life (s) at a rotation (rev/s) under a load, N. */
export const ratingFor = (load: number, life: number, rotation: number): number =>
  load * ((life * rotation) / 1e6) ** (1 / 3)
