/**
 * Where engines and impeller agree: roots of drive(n) - load(n) = 0 at one boat speed.
 * A root is stable when the drive falls below the load above it. A tuned two-stroke has several; from
 * idle the shaft settles at the first stable one, and as the boat gathers way it follows that root
 * until it vanishes, then climbs to the next.
 */
import { brent } from '../../base/numerics/roots.ts'
import type { Root } from './balanceTypes.ts'

/** surplus torque at the impeller, N·m, at impeller rotation n, rev/s */
export type Surplus = (n: number) => number

export interface Found extends Root {
  /** the refinement closed; a jump of the load (choking) leaves a residual and is said */
  sharp: boolean
}

const steps = 60

/** Every equilibrium between `idle` and `most` (rev/s), lowest first; `reachable` as seen from idle. */
export function allRoots(surplus: Surplus, load: (n: number) => number, idle: number, most: number): Found[] {
  const roots: Found[] = []
  let n0 = idle
  let s0 = surplus(idle)
  for (let i = 1; i <= steps; i++) {
    const n1 = idle + ((most - idle) * i) / steps
    const s1 = surplus(n1)
    if (s0 * s1 < 0 || (s1 === 0 && s0 !== 0)) roots.push(refine(surplus, load, n0, n1, s0 > 0))
    n0 = n1
    s0 = s1
  }
  // from idle with the throttle opened the shaft climbs to the first stable root, if it can climb at all
  const first = surplus(idle) > 0 ? roots.findIndex((r) => r.stable) : -1
  if (first >= 0) roots[first]!.reachable = true
  return roots
}

function refine(
  surplus: Surplus,
  load: (n: number) => number,
  low: number,
  high: number,
  stable: boolean,
): Found {
  const root = brent(surplus, low, high, { tolerance: 1e-9 * high })
  const torque = load(root.value)
  return {
    rotation: root.value,
    torque,
    stable,
    reachable: false,
    sharp: root.residual <= 1e-4 * Math.max(torque, 0.1),
  }
}

/**
 * The rotation the shaft moves to from `from` at this speed, rev/s, or NaN when the drive cannot turn
 * the load above `idle`. Walks in the direction of the surplus, then closes in.
 */
export function settle(
  surplus: Surplus,
  from: number,
  idle: number,
  most: number,
): { rotation: number; sharp: boolean } {
  let a = Math.min(Math.max(from, idle), most)
  let sa = surplus(a)
  if (sa === 0) return { rotation: a, sharp: true }
  const up = sa > 0
  // small first step: with the way changing little the root has moved little
  let step = up ? 1.004 : 1 / 1.004
  for (let i = 0; i < 160; i++) {
    const b = Math.min(Math.max(a * step, idle), most)
    const sb = surplus(b)
    if (sa * sb <= 0) {
      const low = Math.min(a, b)
      const high = Math.max(a, b)
      const root = brent(surplus, low, high, { tolerance: 1e-9 * high })
      return {
        rotation: root.value,
        sharp: root.residual <= 1e-3 * Math.max(Math.abs(sa), Math.abs(sb)) + 1e-9,
      }
    }
    if (b === most || b === idle) return { rotation: b === most ? most : Number.NaN, sharp: false }
    a = b
    sa = sb
    // grow the stride to a ceiling about as fine as the 60-point scan
    step = up ? Math.min(step ** 1.8, 1.03) : Math.max(step ** 1.8, 1 / 1.03)
  }
  return { rotation: Number.NaN, sharp: false }
}
