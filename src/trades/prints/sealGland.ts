/**
 * A ring in its groove: squeeze, fill and stretch with all tolerances, and the force that closes it. Gland formulas and depths: handbooks of
 * seal makers, depths and widths of face grooves compared with a printed table, the rest from memory. A stretched ring thins as its volume
 * stays. Force: P. B. Lindley, Compression moduli for blocks of soft elastic material bonded to rigid end plates / sealing rings (1967), as
 * quoted in handbooks, from memory. Lengths m, moduli Pa.
 */
import type { Range } from '../../base/answers/solved.ts'
import { type Ring, ringSections } from './ringSizes.ts'

/** `face`: pressed between two flat faces; `plug`: round a plug in a bore; `bore`: in a groove of the bore, round a rod. */
export type GlandKind = 'face' | 'plug' | 'bore'

export interface Gland {
  kind: GlandKind
  /** diameter the ring lies on: face, the groove's outside; plug, the groove's floor; bore, the rod; m */
  seat: number
  /** room for the section, and along the other way; m */
  depth: number
  width: number
  /** either way, m */
  seatDoubt: number
  depthDoubt: number
  widthDoubt: number
}

export interface GlandState {
  squeeze: Range
  /** part of the groove that is rubber, swollen at its high end */
  fill: Range
  /** of the ring's inside; negative where it is crowded together */
  stretch: Range
}

type Band = readonly [low: number, high: number]
interface Row {
  face: Band
  faceWidth: Band
  radial: Band
  radialWidth: Band
}
const thou = 0.0254e-3
const band = (a: number, b: number): Band => [a * thou, b * thou]
/** by the sections of the standard */
const rows: readonly Row[] = [
  { face: band(50, 57), faceWidth: band(94, 104), radial: band(50, 55), radialWidth: band(93, 98) },
  { face: band(74, 81), faceWidth: band(138, 146), radial: band(80, 86), radialWidth: band(140, 145) },
  { face: band(101, 108), faceWidth: band(188, 198), radial: band(110, 116), radialWidth: band(187, 192) },
  { face: band(152, 163), faceWidth: band(281, 290), radial: band(170, 176), radialWidth: band(281, 286) },
  { face: band(201, 213), faceWidth: band(375, 387), radial: band(225, 235), radialWidth: band(375, 380) },
]

/**
 * Depth and width a groove should have for a section, m, the middle of the handbook's band; between its sections by proportion.
 */
export function grooveFor(kind: GlandKind, section: number): { depth: number; width: number } {
  const at = ringSections.reduce(
    (best, s, i) => (Math.abs(s - section) < Math.abs(ringSections[best]! - section) ? i : best),
    0,
  )
  const row = rows[at]!
  const scale = section / ringSections[at]!
  const middle = ([a, b]: Band) => (scale * (a + b)) / 2
  const depth = middle(kind === 'face' ? row.face : row.radial)
  const width = middle(kind === 'face' ? row.faceWidth : row.radialWidth)
  return { depth, width }
}

/** Section of a ring stretched onto a seat, m: its volume stays. */
export const thinned = (ring: Pick<Ring, 'inside' | 'section'>, seat: number): number =>
  ring.section * Math.sqrt((ring.inside + ring.section) / (seat + ring.section))

/** Inside diameter that a ring has in its gland, m. */
function insideIn(gland: Gland, section: number, seat: number): number {
  return gland.kind === 'plug' || gland.kind === 'bore' ? seat : seat - 2 * section
}

/**
 * Squeeze, fill and stretch, nominal and at the worst of all tolerances; `swell` (of volume) counts at the high end of the fill. A face ring
 * backed by the outside of its groove is crowded or loose by the same rule. RangeError for a groove that is none.
 */
export function glandState(ring: Ring, gland: Gland, swell = 0): GlandState {
  for (const name of ['seat', 'depth', 'width'] as const)
    if (!(gland[name] > gland[`${name}Doubt`]))
      throw new RangeError(`${name}: ${gland[name]} m is outside what its doubt leaves`)
  const at = (inside: number, section: number, seat: number, depth: number, width: number, grown: number) => {
    const on = insideIn(gland, section, seat)
    const stretch = (on - inside) / inside
    // a ring crowded together keeps its section: it only bends
    const thin = stretch > 0 ? thinned({ inside, section }, on) : section
    return {
      stretch,
      squeeze: (thin - depth) / thin,
      fill: ((Math.PI / 4) * thin ** 2 * (1 + grown)) / (width * depth),
    }
  }
  const { seat, depth, width, seatDoubt, depthDoubt, widthDoubt } = gland
  const { inside, section, insideTolerance: ti, sectionTolerance: ts } = ring
  const nominal = at(inside, section, seat, depth, width, 0)
  const loose = at(inside - ti, section - ts, seat + seatDoubt, depth + depthDoubt, width + widthDoubt, 0)
  const tight = at(inside + ti, section + ts, seat - seatDoubt, depth - depthDoubt, width - widthDoubt, swell)
  return {
    squeeze: { value: nominal.squeeze, low: loose.squeeze, high: tight.squeeze },
    fill: { value: nominal.fill, low: loose.fill, high: tight.fill },
    stretch: {
      value: nominal.stretch,
      low: at(inside + ti, section, seat - seatDoubt, depth, width, 0).stretch,
      high: at(inside - ti, section, seat + seatDoubt, depth, width, 0).stretch,
    },
  }
}

/** Young's modulus of rubber of 70 degrees Shore A, Pa */
export const ringModulus = 5.5e6

/** Force that closes a ring, N a metre of its length: section m, squeeze 0 to 0.5, modulus Pa. */
export function closingLoad(section: number, squeeze: number, modulus = ringModulus): number {
  if (!(squeeze >= 0 && squeeze <= 0.5)) throw new RangeError(`squeeze: ${squeeze} is outside 0 to 0.5`)
  return section * modulus * (1.25 * squeeze ** 1.5 + 50 * squeeze ** 6)
}
