/**
 * Where a rider may be: the craft settled with the rider at each place of a grid over the deck.
 * Limits of heel and trim are this project's choice; 10° is also the heel allowed to a swamped boat by 33 CFR 183.235.
 */

import { type FloatingLoad, floaterOf, reloaded } from '../../hull/afloat/load.ts'
import { type Attitude, settle } from '../../hull/afloat/settle.ts'
import { deckHeight, type Hull } from '../../hull/lines/hullBody.ts'
import { solidProperties } from '../../physics/solid/integrals.ts'
import type { Vec3 } from '../../physics/solid/mesh.ts'
import { heightAbove } from '../../physics/solid/waterFrame.ts'
import type { Opening } from './openingHeights.ts'

export interface EnvelopeInput {
  hull: Hull
  /** the craft without the rider */
  craft: FloatingLoad
  /** kg */
  rider: number
  /** m, where the rider's weight acts above the deck: 0 for one who balances on his feet */
  riderHeight: number
  openings?: readonly Opening[]
  /** m between places; 0.05 when left out */
  grid?: number
  /** rad; 10° and 6° when left out */
  heelLimit?: number
  trimLimit?: number
  /** m, least height of any opening that is not a shaft seal; 0 when left out */
  reserve?: number
}

export interface Envelope {
  /** places along and across, m */
  x: Float64Array
  y: Float64Array
  /** row by row along x (index i·y.length + j); NaN off the deck or where it goes over */
  heel: Float64Array
  trim: Float64Array
  /** lowest opening and lowest deck edge above water, m */
  opening: Float64Array
  freeboard: Float64Array
  /** 1 where the rider may be, 0 where not, 2 off the deck */
  inside: Uint8Array
  /** share of the deck's places that are inside, 0 to 1 */
  share: number
}

/** The map; cancel returns true to stop, progress gets 0 to 1. */
export function riderEnvelope(
  input: EnvelopeInput,
  progress?: (part: number) => void,
  cancelled?: () => boolean,
): Envelope {
  const { hull, craft, rider } = input
  const grid = input.grid ?? 0.05
  const nx = Math.floor(hull.length / grid)
  const half = Math.floor(hull.beam / 2 / grid)
  const x = Float64Array.from({ length: nx }, (_, i) => grid * (i + 0.5))
  const y = Float64Array.from({ length: 2 * half + 1 }, (_, j) => grid * (j - half))
  const made = emptyEnvelope(x, y)
  const base = floaterOf(craft)
  const ny = y.length
  const symmetric = alikeBothSides(input)
  let aft: Attitude | undefined
  for (let i = 0; i < nx; i++) {
    if (cancelled?.()) break
    let along: Attitude | undefined = aft
    let first: Attitude | undefined
    // from the centreline outwards, each place starting from its neighbour
    let gone = false
    for (let j = half; j < ny; j++) {
      const got = placeAt(input, base, rider, x[i]!, y[j]!, along, gone)
      // once over, farther out is over too
      gone ||= got?.over ?? false
      store(made, i * ny + j, got, input, false)
      if (symmetric) store(made, i * ny + (2 * half - j), got, input, j !== half)
      if (got === undefined) continue
      along = got.over ? along : got.attitude
      first ??= got.over ? undefined : got.attitude
    }
    along = first
    gone = first === undefined
    for (let j = half - 1; j >= 0 && !symmetric; j--) {
      const got = placeAt(input, base, rider, x[i]!, y[j]!, along, gone)
      gone ||= got?.over ?? false
      store(made, i * ny + j, got, input, false)
      if (got !== undefined && !got.over) along = got.attitude
    }
    aft = first ?? aft
    progress?.((i + 1) / nx)
  }
  let deck = 0
  let inside = 0
  for (const v of made.inside) {
    if (v !== 2) deck++
    if (v === 1) inside++
  }
  made.share = deck === 0 ? 0 : inside / deck
  return made
}

/** Hull, weights and liquids alike on both sides: one side is solved, the other mirrored. */
export function alikeBothSides({ hull, craft }: EnvelopeInput): boolean {
  return (
    (craft.liquids ?? []).every((l) => Math.abs(solidProperties(l.mesh).centroid[1]) < 1e-9) &&
    Math.abs(craft.centre[1]) < 1e-9 &&
    Math.abs(solidProperties(hull.mesh).centroid[1]) < 1e-9 * hull.beam
  )
}

export interface Place {
  attitude: Attitude
  over: boolean
  opening: number
  /** the same with the openings on the other side, for the mirrored place */
  openingMirrored: number
  freeboard: number
}

export function placeAt(
  input: EnvelopeInput,
  base: ReturnType<typeof floaterOf>,
  rider: number,
  x: number,
  y: number,
  start: Attitude | undefined,
  gone = false,
): Place | undefined {
  const z = deckHeight(input.hull.mesh, x, y)
  if (z === undefined) return undefined
  if (gone)
    return { attitude: { h: 0, trim: 0, heel: 0 }, over: true, opening: 0, openingMirrored: 0, freeboard: 0 }
  const at: Vec3 = [x, y, z + input.riderHeight]
  const mass = input.craft.mass + rider
  const c = input.craft.centre
  const centre: Vec3 = [0, 1, 2].map((k) => (input.craft.mass * c[k]! + rider * at[k]!) / mass) as [
    number,
    number,
    number,
  ]
  const f = reloaded(base, mass, centre)
  const giveUp = 1.6 * (input.heelLimit ?? Math.PI / 18)
  const rest = settle(f, start, { tolerance: 1e-6, giveUp, compass: false })
  const over = !rest.converged || Math.abs(rest.value.heel) > giveUp
  const frame = rest.state.frame
  let opening = Infinity
  let openingMirrored = Infinity
  let freeboard = Infinity
  for (const o of input.openings ?? []) {
    if (o.kind === 'shaft seal') continue
    opening = Math.min(opening, heightAbove(frame, rest.value.h, ...o.at))
    openingMirrored = Math.min(openingMirrored, heightAbove(frame, rest.value.h, o.at[0], -o.at[1], o.at[2]))
  }
  for (const [ex, ey, ez] of input.hull.edge)
    freeboard = Math.min(
      freeboard,
      heightAbove(frame, rest.value.h, ex, ey, ez),
      heightAbove(frame, rest.value.h, ex, -ey, ez),
    )
  return { attitude: rest.value, over, opening, openingMirrored, freeboard }
}

function emptyEnvelope(x: Float64Array, y: Float64Array): Envelope {
  const n = x.length * y.length
  const nan = () => new Float64Array(n).fill(Number.NaN)
  return {
    x,
    y,
    heel: nan(),
    trim: nan(),
    opening: nan(),
    freeboard: nan(),
    inside: new Uint8Array(n).fill(2),
    share: 0,
  }
}

function store(
  e: Envelope,
  k: number,
  got: Place | undefined,
  input: EnvelopeInput,
  mirrored: boolean,
): void {
  if (got === undefined) return
  e.inside[k] = 0
  if (got.over) return
  const opening = mirrored ? got.openingMirrored : got.opening
  e.heel[k] = mirrored ? -got.attitude.heel : got.attitude.heel
  e.trim[k] = got.attitude.trim
  e.opening[k] = opening
  e.freeboard[k] = got.freeboard
  e.inside[k] = isInside(got, opening, input) ? 1 : 0
}

/** Within the limits of heel and trim, with every opening as high as asked. */
export function isInside({ attitude, over }: Place, opening: number, input: EnvelopeInput): boolean {
  return (
    !over &&
    Math.abs(attitude.heel) <= (input.heelLimit ?? Math.PI / 18) &&
    Math.abs(attitude.trim) <= (input.trimLimit ?? Math.PI / 30) &&
    opening >= (input.reserve ?? 0)
  )
}
