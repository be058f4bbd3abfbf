/** The climb onto the plane: where drag is worst before planing, and the thrust it takes. Derived; margin of a quarter is common practice. */
import { minimumIn } from '../../base/numerics/minimum.ts'
import { type DragModel, type DragOptions, type DragPoint, dragAt } from './drag.ts'

export interface HumpPoint {
  /** m/s, speed of most drag between Fv 1 and 2.4 */
  speed: number
  point: DragPoint
  /** N, that drag with a quarter in hand */
  thrustToPlane: number
}

/** Worst drag between Fv 1 and 2.4 with the rider in the best place, or where the options put the rider. */
export function humpOf(m: DragModel, options: DragOptions = {}): HumpPoint {
  const perFv = Math.sqrt(9.80665 * Math.cbrt(m.rest.value.volume))
  const count = 15
  let worst = 0
  let at = 1
  for (let i = 0; i < count; i++) {
    const Fv = 1 + (1.4 * i) / (count - 1)
    const { drag } = dragAt(m, Fv * perFv, options)
    if (drag > worst) {
      worst = drag
      at = Fv
    }
  }
  const low = Math.max(1, at - 0.1)
  const high = Math.min(2.4, at + 0.1)
  const peak = minimumIn((Fv) => -dragAt(m, Fv * perFv, options).drag, low, high, { tolerance: 1e-3 })
  const speed = peak.value * perFv
  const point = dragAt(m, speed, options)
  return { speed, point, thrustToPlane: 1.25 * point.drag }
}
