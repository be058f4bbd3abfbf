/**
 * Which ring of the table goes into a cap or a hatch, and its groove. Choice of the thickest ring that has room, as it forgives a printed
 * groove most: common practice, no source. Lengths m.
 */
import type { Printer } from './printerOf.ts'
import { type Ring, standardRings } from './ringSizes.ts'
import { closingLoad, type Gland, type GlandState, glandState, grooveFor } from './sealGland.ts'

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
  /** force that can be had to close it, N: a thinner ring is taken where a thick one wants more; none where it always goes */
  force?: number
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

/** how much larger or smaller than the ring a face groove's outside may be, 1: common practice, no source */
const pulled = { low: -0.02, high: 0.01 }

/** doubts of a printed groove either way, m: common practice, no source */
const grooveDoubts = (printer: Pick<Printer, 'kind'>) =>
  printer.kind === 'resin'
    ? { depthDoubt: 0.05e-3, widthDoubt: 0.05e-3, seatDoubt: 0.05e-3 }
    : { depthDoubt: 0.1e-3, widthDoubt: 0.15e-3, seatDoubt: 0.15e-3 }

/** part of a groove that a swollen ring may take at its worst, as grooves are drawn */
const fullest = 0.92

/** The groove to draw for a ring: the handbook's, wider where a ring that has swollen would fill it; doubts of the printer with it. */
export function drawnGroove(
  kind: 'face' | 'plug',
  ring: Ring,
  swell: number,
  printer: Pick<Printer, 'kind'>,
) {
  const doubts = grooveDoubts(printer)
  const { depth, width } = grooveFor(kind, ring.section)
  const rubber = (Math.PI / 4) * (ring.section + ring.sectionTolerance) ** 2 * (1 + swell)
  const wanted = rubber / (fullest * (depth - doubts.depthDoubt)) + doubts.widthDoubt
  return { depth, width: Math.max(width, wanted), ...doubts }
}

interface Tried extends SeatedRing {
  /** how far from what one would wish, less is better */
  badness: number
  /** room short, m; negative where it fits */
  short: number
}

function onFace(ring: Ring, place: RingPlace): Tried {
  const groove = drawnGroove('face', ring, place.swell, place.printer)
  const own = ring.inside + 2 * ring.section
  const least = place.inner + 2 * place.wall + 2 * groove.width
  const most = place.outer - 2 * place.wall
  // the groove may be a little larger or smaller than the ring lies free
  const seat = Math.max(Math.min(own, most), Math.min(least, most))
  const off = seat / own - 1
  const asked = Math.max(off - pulled.high, pulled.low - off) * own
  return {
    ...seated(ring, { kind: 'face', seat, ...groove }, place.swell),
    badness: Math.abs(off),
    short: Math.max(least - most, asked),
  }
}

function onPlug(ring: Ring, place: RingPlace): Tried {
  const groove = drawnGroove('plug', ring, place.swell, place.printer)
  const seat = place.outer - 2 * groove.depth
  const stretch = (seat - ring.inside) / ring.inside
  const off = Math.max(stretches.low - stretch, stretch - stretches.high)
  const core = place.inner + 2 * place.wall - seat
  return {
    ...seated(ring, { kind: 'plug', seat, ...groove }, place.swell),
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
    const light = pool.filter((t) => closingForce(t) <= (place.force ?? Number.POSITIVE_INFINITY))
    const sections = (light.length > 0 ? light : pool).map((t) => t.ring.section)
    const section = light.length > 0 ? Math.max(...sections) : Math.min(...sections)
    const { ring, gland, state } = (light.length > 0 ? light : pool)
      .filter((t) => Math.abs(t.ring.section - section) < 1e-6)
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

/** Force to close a ring between faces, N: along its middle, at its nominal squeeze. */
export function closingForce({ ring, gland, state }: SeatedRing): number {
  if (gland.kind !== 'face') return 0
  const squeeze = Math.min(0.5, Math.max(0, state.squeeze.value))
  return closingLoad(ring.section, squeeze) * Math.PI * (gland.seat - ring.section)
}

export const isNoRing = (got: SeatedRing | NoRing): got is NoRing => 'field' in got
