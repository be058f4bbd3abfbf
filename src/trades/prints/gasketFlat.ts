/**
 * A flat gasket under a lid: how hard it presses back and how far apart its screws may stand. A long strip bonded by friction: A. N. Gent and
 * P. B. Lindley, The compression of bonded rubber blocks (1959), E_c = 4/3 E (1 + k S²), from memory; k of 70 degrees 0.55 to 0.93 of 40.
 * The lid between two screws: a beam held at its ends under an even load. SI.
 */

/** Young's modulus (Pa) and the k of Gent and Lindley by hardness, degrees Shore A: their table, from memory. */
const hardnesses: readonly (readonly [shore: number, modulus: number, k: number])[] = [
  [30, 0.92e6, 0.93],
  [40, 1.5e6, 0.85],
  [50, 2.2e6, 0.73],
  [60, 4.45e6, 0.57],
  [70, 7.35e6, 0.53],
]

/** Modulus and k between the rows of the table; RangeError outside 30 to 70. */
function rubberOf(shore: number): { modulus: number; k: number } {
  if (!(shore >= 30 && shore <= 70)) throw new RangeError(`shore: ${shore} is outside 30 to 70`)
  const at = Math.min(3, Math.floor((shore - 30) / 10))
  const [a, b] = [hardnesses[at]!, hardnesses[at + 1]!]
  const t = (shore - a[0]) / 10
  return { modulus: a[1] + t * (b[1] - a[1]), k: a[2] + t * (b[2] - a[2]) }
}

export interface FlatGasket {
  /** of the strip, m */
  width: number
  thickness: number
  shore: number
  /** part of its thickness taken, 0 to 0.5 */
  squeeze: number
}

/** Pressure of a flat strip of gasket (Pa) and its load along its length (N/m). */
export function gasketPress({ width, thickness, shore, squeeze }: FlatGasket): {
  pressure: number
  load: number
} {
  if (!(squeeze >= 0 && squeeze <= 0.5)) throw new RangeError(`squeeze: ${squeeze} is outside 0 to 0.5`)
  if (!(thickness > 0 && width >= thickness))
    throw new RangeError(`width: ${width} m is outside ${thickness} m, its thickness, and more`)
  const { modulus, k } = rubberOf(shore)
  const shape = width / (2 * thickness)
  const pressure = (4 / 3) * modulus * (1 + k * shape ** 2) * squeeze
  return { pressure, load: pressure * width }
}

/** Screws so far apart that a lid of stiffness EI (N m²) bows no more than `bow` (m) under a load along its edge (N/m); m. */
export function screwSpacing(stiffness: number, load: number, bow: number): number {
  if (!(stiffness > 0 && load > 0 && bow > 0))
    throw new RangeError('stiffness, load and bow: each must be above 0')
  return ((384 * stiffness * bow) / load) ** 0.25
}
