/**
 * Where engines and impeller agree: roots of drive(n) - load(n) = 0 at one boat speed.
 * A root is stable when the drive falls below the load above it. A tuned two-stroke has several; from
 * idle the shaft settles at the first stable one, and as the boat gathers way it follows that root
 * until it vanishes, then climbs to the next.
 */
import { minimumIn } from '../../base/numerics/minimum.ts'
import { brent } from '../../base/numerics/roots.ts'
import type { Root } from './balanceTypes.ts'

/** surplus torque at the impeller, N·m, at impeller rotation n, rev/s */
export type Surplus = (n: number) => number

export interface Found extends Root {
  /** the refinement closed; a jump of the load (choking) leaves a residual and is said */
  sharp: boolean
}

/** even nodes of the first scan; the bends of the curves come on top */
const nodes = 48
/** narrowest cell, of the range looked at: two roots this far apart are found for certain, closer ones as a rule */
const finest = 1 / 4096
/** how much more the surplus may bend inside a cell than its neighbours show */
const caution = 3

interface Cell {
  low: number
  high: number
  sLow: number
  sHigh: number
  /** half its second derivative, as far as seen */
  bend: number
}

/**
 * Every equilibrium between `idle` and `most` (rev/s), lowest first; `reachable` as seen from idle. A cell of the scan is left
 * alone only where the bend of the surplus is too small to bring it to zero (or, over a change of sign, to turn it
 * round) inside; else it is halved. `breaks` are rotations where drive or load have a corner.
 */
export function allRoots(
  surplus: Surplus,
  load: (n: number) => number,
  idle: number,
  most: number,
  breaks: readonly number[] = [],
): Found[] {
  const at = Array.from({ length: nodes + 1 }, (_, i) => idle + ((most - idle) * i) / nodes)
  at.push(...breaks.filter((n) => n > idle && n < most))
  at.sort((a, b) => a - b)
  const s = at.map(surplus)
  const bends = at.map((n, i) => {
    const before = at[i - 1]
    const after = at[i + 1]
    if (before === undefined || after === undefined || before === n || after === n) return 0
    return Math.abs(
      ((s[i + 1]! - s[i]!) / (after - n) - (s[i]! - s[i - 1]!) / (n - before)) / (after - before),
    )
  })
  const pairs: [number, number][] = []
  for (let i = 0; i + 1 < at.length; i++) {
    if (at[i] === at[i + 1]) continue
    // the cells beside it see a bend that this one hides
    const bend = Math.max(bends[i - 1] ?? 0, bends[i]!, bends[i + 1]!, bends[i + 2] ?? 0)
    const cell = { low: at[i]!, high: at[i + 1]!, sLow: s[i]!, sHigh: s[i + 1]!, bend }
    bracket(surplus, cell, finest * (most - idle), pairs)
  }
  const roots = pairs.map(([low, high]) => refine(surplus, load, low, high, surplus(low) > 0))
  // from idle with the throttle opened the shaft climbs to the first stable root, if it can climb at all
  const first = s[0]! > 0 ? roots.findIndex((r) => r.stable) : -1
  if (first >= 0) roots[first]!.reachable = true
  return roots
}

/** Adds to `out` every pair of ends in the cell that holds one root; halves it as long as it may hold more. */
function bracket(surplus: Surplus, cell: Cell, least: number, out: [number, number][]): void {
  const { low, high, sLow, sHigh, bend } = cell
  const h = high - low
  const crosses = sLow > 0 !== sHigh > 0
  const reach = caution * bend * h * h
  // |s - chord| <= bend h²/4; the slope differs from the chord's by bend h at most
  const settled = crosses
    ? Math.abs(sHigh - sLow) > reach
    : Math.min(Math.abs(sLow), Math.abs(sHigh)) > reach / 4
  if (settled || h <= least) {
    if (crosses) out.push([low, high])
    else if (!settled) out.push(...touching(surplus, cell))
    return
  }
  const middle = (low + high) / 2
  const s = surplus(middle)
  const seen = (2 * Math.abs(sLow - 2 * s + sHigh)) / (h * h)
  const finer = Math.max(seen, bend / 4)
  bracket(surplus, { low, high: middle, sLow, sHigh: s, bend: finer }, least, out)
  bracket(surplus, { low: middle, high, sLow: s, sHigh, bend: finer }, least, out)
}

/** Two brackets where the surplus dips through zero inside a cell whose ends have one sign; none where it does not. */
function touching(surplus: Surplus, { low, high, sLow }: Cell): [number, number][] {
  const sign = Math.sign(sLow)
  const dip = minimumIn((n) => sign * surplus(n), low, high, {
    tolerance: 1e-3 * (high - low),
    maxIterations: 20,
  })
  return sign * surplus(dip.value) < 0
    ? [
        [low, dip.value],
        [dip.value, high],
      ]
    : []
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
  const least = finest * (most - idle)
  /** the root met first in a stride, if any */
  const met = (from: number, sFrom: number, to: number, sTo: number, bend: number) => {
    const found: [number, number][] = []
    const cell = up
      ? { low: from, high: to, sLow: sFrom, sHigh: sTo, bend }
      : { low: to, high: from, sLow: sTo, sHigh: sFrom, bend }
    bracket(surplus, cell, least, found)
    const first = up ? found[0] : found[found.length - 1]
    if (!first) return undefined
    const [low, high] = first
    const root = brent(surplus, low, high, { tolerance: 1e-9 * high })
    return {
      rotation: root.value,
      sharp: root.residual <= 1e-3 * Math.max(Math.abs(sFrom), Math.abs(sTo)) + 1e-9,
    }
  }
  let z = a
  let sz = sa
  let bend = 0
  for (let i = 0; i < 160; i++) {
    const b = Math.min(Math.max(a * step, idle), most)
    const sb = surplus(b)
    const seen = z === a || a === b ? 0 : Math.abs(((sb - sa) / (b - a) - (sa - sz) / (a - z)) / (b - z))
    const bent = Math.max(seen, bend)
    // the stride before is judged now that the bend on its far side is seen too
    const behind = z === a ? undefined : met(z, sz, a, sa, bent)
    if (behind) return behind
    const last = b === most || b === idle
    const here = sa * sb <= 0 || last ? met(a, sa, b, sb, bent) : undefined
    if (here) return here
    if (last) return { rotation: b === most ? most : Number.NaN, sharp: false }
    z = a
    sz = sa
    a = b
    sa = sb
    bend = seen
    // grow the stride to a ceiling about as fine as the scan
    step = up ? Math.min(step ** 1.8, 1.03) : Math.max(step ** 1.8, 1 / 1.03)
  }
  return { rotation: Number.NaN, sharp: false }
}
