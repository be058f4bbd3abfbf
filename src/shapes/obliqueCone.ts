/**
 * Oblique cones and pipes with round parallel ends, one beside the other's axis: elements join the points of equal azimuth, their true
 * lengths by Pythagoras; handbooks of sheet-metal pattern drafting, triangulation. Equal radii need no case of their own.
 */
import { inMm } from '../base/answers/amounts.ts'
import { say } from '../base/answers/sentence.ts'
import { type Development, developed, type Sheeting } from './development.ts'
import { extremes, mustLie, ShapeFault } from './shapeFault.ts'
import { type Ruling, unrolled } from './unroll.ts'

/** Base round z at z = 0, top round (offset, 0, height); mean radii, m. */
export interface ObliqueCone {
  baseRadius: number
  topRadius: number
  height: number
  offset: number
}

const steps = 360
const finer = 4

/** ShapeFault naming baseRadius, topRadius, height or offset. */
export function checkOblique(c: ObliqueCone): void {
  mustLie('baseRadius', c.baseRadius, extremes.least, extremes.most)
  mustLie('topRadius', c.topRadius, 0, extremes.most)
  mustLie('height', c.height, extremes.least, extremes.most)
  mustLie('offset', c.offset, -extremes.most, extremes.most)
  // beside its base by more than its radius and flat: the elements would lie in the base's plane
  const lean = Math.abs(c.offset) / c.height
  if (lean > 20)
    throw new ShapeFault(
      'offset',
      c.offset,
      20 * c.height,
      say`An offset of ${inMm(c.offset)} over a height of ${inMm(c.height)} lies almost flat.`,
      say`Bring the offset below ${inMm(20 * c.height)} or raise the height.`,
    )
}

/** True length of the element at azimuth ψ (rad) from the side toward which the top is offset, m. */
export function elementLength({ baseRadius, topRadius, height, offset }: ObliqueCone, psi: number): number {
  const d = baseRadius - topRadius
  return Math.hypot(offset - d * Math.cos(psi), d * Math.sin(psi), height)
}

/** Pattern of an oblique cone or pipe, its seam along the shortest element. Errors as checkOblique and developed. */
export function developOblique(c: ObliqueCone, sheeting: Sheeting): Development {
  checkOblique(c)
  const shortest = elementLength(c, 0) <= elementLength(c, Math.PI) ? 0 : Math.PI
  const rulings = Array.from({ length: steps * finer + 1 }, (_, i): Ruling => {
    const psi = shortest + (2 * Math.PI * i) / (steps * finer)
    const [x, y] = [Math.cos(psi), Math.sin(psi)]
    return [
      [c.baseRadius * x, c.baseRadius * y, 0],
      [c.offset + c.topRadius * x, c.topRadius * y, c.height],
    ]
  })
  return developed(
    unrolled(rulings, true, (i) => i % finer === 0),
    sheeting,
    [
      say`shortest ${inMm(elementLength(c, shortest), 0.1)}, longest ${inMm(elementLength(c, Math.PI - shortest), 0.1)}`,
    ],
  )
}
