/**
 * O-rings by dash size. AS568 (and ISO 3601-1, which has the same inch sizes): sections and their tolerances; inside diameters by the steps the
 * standard climbs in, which give its table to a thousandth of an inch. Sections and sizes 150 to 171 compared with printed lists, the rest
 * from memory. Tolerance of the inside: ISO 3601-1 class B, ±(0.009 d^0.95 + 0.11) mm, from memory. Lengths m.
 */
import { say } from '../../base/answers/sentence.ts'
import { lengthOf, Misfit } from './misfit.ts'

export interface Ring {
  /** "AS568-214"; "25 × 3.5" for one of no table */
  name: string
  /** inside diameter and section, m, each with its tolerance either way */
  inside: number
  section: number
  insideTolerance: number
  sectionTolerance: number
}

const inch = 0.0254

/** first and last dash number, section in thousandths, inside of the first in inches, step to the next */
type Run = readonly [first: number, last: number, section: number, inside: number, step: number]

const runs: readonly Run[] = [
  [6, 10, 70, 0.1138, 1 / 32],
  [11, 28, 70, 0.3013, 1 / 16],
  [29, 41, 70, 1.489, 1 / 8],
  [42, 50, 70, 3.239, 1 / 4],
  [102, 108, 103, 0.0492, 1 / 32],
  [109, 134, 103, 0.2993, 1 / 16],
  [135, 150, 103, 1.9248, 1 / 16],
  [151, 178, 103, 2.987, 1 / 4],
  [201, 222, 139, 0.1713, 1 / 16],
  [223, 258, 139, 1.609, 1 / 8],
  [259, 274, 139, 6.234, 1 / 4],
  [309, 324, 210, 0.4123, 1 / 16],
  [325, 361, 210, 1.475, 1 / 8],
  [362, 377, 210, 6.225, 1 / 4],
  [425, 437, 275, 4.475, 1 / 8],
  [438, 445, 275, 6.225, 1 / 4],
]

/** of the section, thousandths of an inch */
const sectionTolerances: Readonly<Record<number, number>> = { 70: 3, 103: 3, 139: 4, 210: 5, 275: 6 }

/** Sections of the standard, m, thinnest first. */
export const ringSections: readonly number[] = Object.keys(sectionTolerances).map(
  (t) => (Number(t) * inch) / 1000,
)

/** Tolerance of an inside diameter either way, m: class B. */
export const insideTolerance = (inside: number): number => 1e-3 * (0.009 * (1e3 * inside) ** 0.95 + 0.11)

/** Every ring of the table. */
export const standardRings: readonly Ring[] = runs.flatMap(([first, last, section, start, step]) =>
  Array.from({ length: last - first + 1 }, (_, i) => {
    const inside = (inch * Math.round(1000 * (start + i * step))) / 1000
    return {
      name: `AS568-${String(first + i).padStart(3, '0')}`,
      inside,
      section: (inch * section) / 1000,
      insideTolerance: insideTolerance(inside),
      sectionTolerance: (inch * sectionTolerances[section]!) / 1000,
    }
  }),
)

const byName = new Map(standardRings.map((r) => [r.name, r]))

/** A ring by its dash size: "214", "-214", "AS568-214"; RangeError for one that is not in the table. */
export function ringOf(size: string): Ring {
  const digits = /^(?:AS\s?568)?[\s-]*(\d{1,3})$/i.exec(size.trim())?.[1]
  const ring = digits && byName.get(`AS568-${digits.padStart(3, '0')}`)
  if (!ring)
    throw new RangeError(
      `size: "${size}" is not one of the rings in the table, ${runs.map(([a, b]) => `${a} to ${b}`).join(', ')}`,
    )
  return ring
}

/** A ring of any size, m: inside 1 to 1000 mm, section 0.5 to 20 mm and less than the inside; RangeError else. */
export function freeRing(inside: number, section: number): Ring {
  if (!(inside >= 1e-3 && inside <= 1))
    throw new Misfit('inside', lengthOf(inside), say`${lengthOf(1e-3)} to ${lengthOf(1)}`)
  if (!(section >= 0.5e-3 && section <= Math.min(20e-3, inside)))
    throw new Misfit(
      'section',
      lengthOf(section),
      say`${lengthOf(0.5e-3)} to ${lengthOf(Math.min(20e-3, inside))}`,
    )
  // ISO 3601-1: about three per cent of a thin section, two of a thick one
  const near = ringSections.findIndex((s) => section <= s * 1.05)
  const tolerances = [0.08e-3, 0.09e-3, 0.1e-3, 0.13e-3, 0.15e-3]
  return {
    name: `${Math.round(inside * 1e5) / 100} × ${Math.round(section * 1e5) / 100}`,
    inside,
    section,
    insideTolerance: insideTolerance(inside),
    sectionTolerance: tolerances[near < 0 ? 4 : near]!,
  }
}
