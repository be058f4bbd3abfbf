/** Places where water can get in: how high they stand above the water in each state the craft may be in. */

import type { Attitude } from '../../hull/afloat/settle.ts'
import type { Vec3 } from '../../physics/solid/mesh.ts'
import { heightAbove, makeFrame } from '../../physics/solid/waterFrame.ts'

export type OpeningKind = 'hatch' | 'air intake' | 'exhaust outlet' | 'tank vent' | 'cable' | 'shaft seal'

export interface Opening {
  name: string
  kind: OpeningKind
  /** lowest point where water gets in, m */
  at: Vec3
  /** m², of the gap water can pass, 0 when sealed */
  area: number
  /** craft path of where it stands in the file */
  path?: string
  /** its place across and along is not in the file, only its height */
  placeAssumed?: boolean
}

/** Height of a point above the water, m, negative when under. */
export function heightOver(attitude: Attitude, at: Vec3): number {
  return heightAbove(makeFrame(attitude.trim, attitude.heel), attitude.h, ...at)
}

export interface OpeningRow {
  opening: Opening
  /** m above water in each named state, same order as the states given */
  heights: number[]
}

/** The openings table: one row an opening, one column a state. */
export function openingsTable(
  openings: readonly Opening[],
  states: readonly { name: string; attitude: Attitude }[],
): OpeningRow[] {
  return openings.map((opening) => ({
    opening,
    heights: states.map((s) => heightOver(s.attitude, opening.at)),
  }))
}
