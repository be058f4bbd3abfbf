/**
 * Which ring of the table goes into a cap or a hatch, and its groove. Choice of the thickest ring that has room, as it forgives a printed
 * groove most: common practice, no source. Lengths m.
 */
import type { Printer } from './printerOf.ts'
import { type Ring, standardRings } from './ringSizes.ts'
import { type Gland, type GlandState, glandState, grooveFor } from './sealGland.ts'

export interface RingPlace {
  kind: 'face' | 'plug'
  /** face: the ring with its groove and walls lies between these diameters. plug: the bore is `outer`, `inner` what the plug's core needs; m */
  inner: number
  outer: number
  /** on either side of a face groove, and of the plug's core, m */
  wall: number
  /** growth of the ring's volume at its worst */
  swell: number
  printer: Pick<Printer, 'kind'>
  /** only this ring is asked after */
  ring?: Ring
}

export interface SeatedRing {
  ring: Ring
  gland: Gland
  state: GlandState
}

/** Why no ring goes: the field, what it would have to be at least or at most, and what it is; m or 1. */
export interface NoRing {
  field: 'inner' | 'outer' | 'ring'
  value: number
  limit: number
}

/** stretch a ring round a plug may have, 1: handbooks of seal makers, from memory */
const stretches = { low: 0.005, aim: 0.02, high: 0.05 }

/** doubts of a printed groove either way, m: common practice, no source */
export const grooveDoubts = (printer: Pick<Printer, 'kind'>) =>
  printer.kind === 'resin'
    ? { depthDoubt: 0.05e-3, widthDoubt: 0.05e-3, seatDoubt: 0.05e-3 }
    : { depthDoubt: 0.1e-3, widthDoubt: 0.15e-3, seatDoubt: 0.15e-3 }

interface Tried extends SeatedRing {
  /** how far from what one would wish, less is better */
  badness: number
  /** room short, m; negative where it fits */
  short: number
}

function onFace(ring: Ring, place: RingPlace): Tried {
  const groove = grooveFor('face', ring.section, place.swell)
  const seat = ring.inside + 2 * ring.section
  const inside = seat - 2 * groove.width
  const short = Math.max(seat + 2 * place.wall - place.outer, place.inner - (inside - 2 * place.wall))
  const middle = (place.inner + place.outer) / 2
  return {
    ...seated(ring, { kind: 'face', seat, ...groove, ...grooveDoubts(place.printer) }, place.swell),
    badness: Math.abs((seat + inside) / 2 - middle),
    short,
  }
}

function onPlug(ring: Ring, place: RingPlace): Tried {
  const groove = grooveFor('plug', ring.section, place.swell)
  const seat = place.outer - 2 * groove.depth
  const stretch = (seat - ring.inside) / ring.inside
  const off = Math.max(stretches.low - stretch, stretch - stretches.high)
  const core = place.inner + 2 * place.wall - seat
  return {
    ...seated(ring, { kind: 'plug', seat, ...groove, ...grooveDoubts(place.printer) }, place.swell),
    badness: Math.abs(stretch - stretches.aim) * ring.inside,
    short: Math.max(off * ring.inside, core),
  }
}

const seated = (ring: Ring, gland: Gland, swell: number): SeatedRing => ({
  ring,
  gland,
  state: glandState(ring, gland, swell),
})

/** The ring for a place: the thickest that has room, nearest to the middle of it; or why there is none. */
export function chooseRing(place: RingPlace): SeatedRing | NoRing {
  if (!(place.outer > place.inner && place.outer > 0))
    return { field: 'outer', value: place.outer, limit: place.inner }
  const rings = place.ring ? [place.ring] : standardRings
  const tried = rings.flatMap((ring) => {
    // a plug's groove must be less than the bore at all
    if (place.kind === 'plug' && place.outer < 4 * ring.section) return []
    return [place.kind === 'face' ? onFace(ring, place) : onPlug(ring, place)]
  })
  const fit = tried.filter((t) => t.short <= 1e-6)
  if (fit.length > 0) {
    // a plug's section no more than a sixth of its bore
    const most = place.kind === 'plug' && !place.ring ? place.outer / 6 : Number.POSITIVE_INFINITY
    const some = fit.filter((t) => t.ring.section <= most)
    const pool = some.length > 0 ? some : fit
    const thickest = Math.max(...pool.map((t) => t.ring.section))
    const { ring, gland, state } = pool
      .filter((t) => t.ring.section > thickest - 1e-6)
      .reduce((a, b) => (b.badness < a.badness ? b : a))
    return { ring, gland, state }
  }
  const nearest = tried.reduce<Tried | undefined>((a, b) => (a && a.short <= b.short ? a : b), undefined)
  if (place.ring && nearest)
    return {
      field: 'ring',
      value: place.ring.inside,
      limit: place.kind === 'plug' ? nearest.gland.seat : place.outer - 2 * (place.wall + place.ring.section),
    }
  return { field: 'outer', value: place.outer, limit: place.outer + (nearest?.short ?? place.outer) }
}

export const isNoRing = (got: SeatedRing | NoRing): got is NoRing => 'field' in got
