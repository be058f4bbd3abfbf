/**
 * Whether rubber fills the lines that layers leave, and what runs past where it does not. Rubber fills a wave of amplitude Δ and length λ
 * under π E* Δ / λ (K. L. Johnson, Contact Mechanics, 1985, wavy surfaces, from memory); pressure of a ring or lip on its seat by Hertz's
 * line contact (the same book); what runs past by plane slits between plates, an order of magnitude. Depth of the lines: common practice, no
 * source. SI.
 */
import type { Printer } from './printerOf.ts'
import { closingLoad, ringModulus } from './sealGland.ts'

/** rubber keeps its volume: ν = 0.5 */
const planeStrain = (modulus: number) => modulus / 0.75

/** Peak to valley of the lines on a printed wall, m: a quarter of a layer of filament, a tenth of one of resin. */
export const lineDepth = ({ kind, layer }: Pick<Printer, 'kind' | 'layer'>): number =>
  (kind === 'resin' ? 0.1 : 0.25) * layer

/** Pressure under which rubber fills lines of a depth (peak to valley) and spacing, Pa. */
export const fillingPressure = (depth: number, spacing: number, modulus = ringModulus): number =>
  (Math.PI * planeStrain(modulus) * (depth / 2)) / spacing

/** Line contact: half width (m) and highest pressure (Pa) under a load (N/m) of a round of radius `radius` (m). */
export function lineContact(
  load: number,
  radius: number,
  modulus = ringModulus,
): { half: number; pressure: number } {
  const half = Math.sqrt((4 * load * radius) / (Math.PI * planeStrain(modulus)))
  return { half, pressure: half > 0 ? (2 * load) / (Math.PI * half) : 0 }
}

export interface LinesAcross {
  /** Pa: of the ring on its seat, and what the lines would take to be filled */
  pressure: number
  needed: number
  /** part of the lines' depth that stays open */
  open: number
  /** m³/s at the given pressure */
  leak: number
}

/**
 * What runs past a ring with layer lines across its seat: diameter and section m, squeeze 1, over-pressure Pa, viscosity Pa s. Nought where the
 * rubber fills the lines.
 */
export function leakAcross(
  ring: { diameter: number; section: number; squeeze: number },
  printer: Pick<Printer, 'kind' | 'layer'>,
  over: number,
  viscosity: number,
): LinesAcross {
  const depth = lineDepth(printer)
  const { half, pressure } = lineContact(closingLoad(ring.section, ring.squeeze), ring.section / 2)
  const needed = fillingPressure(depth, printer.layer)
  const open = Math.max(0, 1 - pressure / needed)
  const lines = (Math.PI * ring.diameter) / printer.layer
  const gap = open * depth
  const leak =
    half > 0
      ? (lines * over * (printer.layer / 2) * gap ** 3) / (12 * viscosity * 2 * half)
      : Number.POSITIVE_INFINITY
  return { pressure, needed, open, leak }
}

export interface Lip {
  /** thickness and free length of the lip, how far it is bent, radius of its edge; m */
  thickness: number
  length: number
  bent: number
  edge: number
  modulus: number
}

/** A lip that is bent by its seat: load N/m of its length and pressure at its edge, Pa. RangeError where it is bent past a third of its length. */
export function lipPress({ thickness, length, bent, edge, modulus }: Lip): {
  load: number
  pressure: number
} {
  if (!(bent > 0 && bent <= length / 3))
    throw new RangeError(`bent: ${bent} m is outside 0 to ${length / 3} m`)
  if (!(thickness > 0 && thickness < length))
    throw new RangeError(`thickness: ${thickness} m is outside 0 to ${length} m`)
  const load = (modulus * thickness ** 3 * bent) / (4 * length ** 3)
  return { load, pressure: lineContact(load, edge, modulus).pressure }
}
