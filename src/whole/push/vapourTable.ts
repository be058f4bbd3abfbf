/**
 * What vapour takes from a jet, over how near it is to boiling: shares of the wetted torque and flow that are left at each boat speed
 * over the onset number K_a/K_3 of the wetted point. At one speed these hardly depend on anything else (cavitation.ts, choke.ts: the
 * suction pressure over that asked for decides), and the corner where the pump chokes lies at one onset number. So doubts move the
 * wetted jet and its onset, both smooth, and the corner stays sharp.
 */
import type { JetSpec } from '../../trades/jet/jetTypes.ts'
import { jetPoint, type PumpMap, wetPoint } from '../../trades/jet/pumpMap.ts'
import type { CraftModel } from './propulsionModel.ts'
import { type Grid, rotationCount, speedCount } from './surfaces.ts'

/** K_a/K_3 from which vapour takes something */
const begins = Math.log(1.3)
/** how far below the knee, in ln, the choked part is known */
const depth = 2.2
const above = 7
const below = 10
/** falls of the flow past the knee that are worked out: the doubt's bounds and its middle */
const falls = [0, 0.5, 1] as const

/** Shares left at one boat speed. */
interface Sweep {
  /** ln K_a/K_3 of the wetted point where the pump chokes */
  knee: number
  /** torque then flow, from the knee up to where vapour begins */
  above: Float64Array
  /** torque then flow, from the knee down, fall by fall */
  below: readonly Float64Array[]
}

export interface VapourTable {
  /** one for each speed of the grid */
  rows: readonly Sweep[]
  /** thrust of the same flow drawn from still water over the thrust tied up, place by place */
  gross: Float64Array
}

/** Shares left of torque and flow. */
export interface Left {
  torque: number
  flow: number
}

/** Sweeps the breakdown number at a few speeds, each at the rotation `at` gives (rev/s of the impeller). */
export function vapourTable(
  model: CraftModel,
  grid: Grid,
  at: (V: number) => number,
): VapourTable | undefined {
  const { map, spec } = model.units[0]!
  const swept = [0, 6, 12].flatMap((i) => {
    const V = grid.speeds[i]!
    const sweep = sweepAt(map, spec, at(V), V)
    return sweep ? [{ i, sweep }] : []
  })
  if (swept.length === 0) return undefined
  const rows = Array.from({ length: speedCount }, (_, i) => {
    const next = swept.findIndex((s) => s.i >= i)
    const high = swept[next < 0 ? swept.length - 1 : next]!
    const low = swept[next < 0 ? swept.length - 1 : Math.max(0, next - 1)]!
    return low === high ? low.sweep : between(low.sweep, high.sweep, (i - low.i) / (high.i - low.i))
  })
  const gross = new Float64Array(speedCount * rotationCount)
  grid.speeds.forEach((V, i) => {
    grid.rotations.forEach((n, k) => {
      const tied = wetPoint(map, spec, n, 0).F
      gross[i * rotationCount + k] = tied > 0 ? wetPoint(map, spec, n, V).gross / tied : 1
    })
  })
  return { rows, gross }
}

function between(a: Sweep, b: Sweep, part: number): Sweep {
  const mix = (p: Float64Array, q: Float64Array) => p.map((y, i) => y + part * (q[i]! - y))
  return {
    knee: a.knee + part * (b.knee - a.knee),
    above: mix(a.above, b.above),
    below: a.below.map((y, i) => mix(y, b.below[i]!)),
  }
}

/** One speed; undefined where ram alone runs the pump, or vapour never chokes it. */
function sweepAt(map: PumpMap, spec: JetSpec, n: number, V: number): Sweep | undefined {
  const wet = wetPoint(map, spec, n, V)
  if (!Number.isFinite(wet.onset) || !(wet.onset > 0) || !(wet.T > 0) || !(wet.Q > 0)) return undefined
  const Kbd = (breakdown: number) => jetPoint(map, { ...spec, vapour: { breakdown } }, n, V).Kbd
  const none = Kbd(0)
  const each = Kbd(1) - none
  const now = Kbd(spec.vapour?.breakdown ?? 2.5)
  /** the point as it is when ln K_a/K_3 of the wetted one is `x` */
  const atOnset = (x: number, chokeFall: number) => {
    const breakdown = ((now * wet.onset) / Math.exp(x) - none) / each
    return jetPoint(map, { ...spec, vapour: { breakdown, chokeFall } }, n, V)
  }
  const choked = (x: number) => {
    const { state } = atOnset(x, 0.5)
    return state === 'choked' || state === 'no flow'
  }
  let low = Math.log(0.15)
  let high = begins
  if (!choked(low) || choked(high)) return undefined
  for (let i = 0; i < 13; i++) {
    const middle = 0.5 * (low + high)
    if (choked(middle)) low = middle
    else high = middle
  }
  const knee = high
  const shares = (count: number, x: (part: number) => number, fall: number) => {
    const out = new Float64Array(2 * count)
    for (let i = 0; i < count; i++) {
      const { T, Q } = atOnset(x(i / (count - 1)), fall)
      out[i] = T / wet.T
      out[count + i] = Q / wet.Q
    }
    return out
  }
  return {
    knee,
    above: shares(above, (part) => knee + part * (begins - knee), 0.5),
    below: falls.map((fall) => shares(below, (part) => low - part * depth, fall)),
  }
}

const read = (y: Float64Array, from: number, count: number, part: number): number => {
  const t = Math.min(1, part) * (count - 1)
  const i = Math.min(count - 2, Math.floor(t))
  return y[from + i]! + (t - i) * (y[from + i + 1]! - y[from + i]!)
}

/**
 * Shares left at grid speed `row` where the wetted point has `onset` (ln K_a/K_3), for a fall of the choked flow from 0 to 1;
 * put into `out`.
 */
export function leftBy(table: VapourTable, row: number, onset: number, fall: number, out: Left): void {
  if (onset >= begins) {
    out.torque = out.flow = 1
    return
  }
  const { knee, above: upper, below: lower } = table.rows[row]!
  if (onset >= knee) {
    const part = (onset - knee) / (begins - knee)
    out.torque = read(upper, 0, above, part)
    out.flow = read(upper, above, above, part)
    return
  }
  const part = (knee - onset) / depth
  // parabola through the three falls
  const a = 2 * (fall - 0.5) * (fall - 1)
  const b = -4 * fall * (fall - 1)
  const c = 2 * fall * (fall - 0.5)
  const [p, q, r] = lower as [Float64Array, Float64Array, Float64Array]
  const mixed = (from: number) =>
    a * read(p, from, below, part) + b * read(q, from, below, part) + c * read(r, from, below, part)
  out.torque = mixed(0)
  out.flow = mixed(below)
}
