/** Engines and impeller, thrust and drag brought together for one draw of a craft's doubts: from idle, then from rest. */
import { cubicAt, linspace, pchip } from '../../base/numerics/interpolate.ts'
import { speedAtFroude } from '../../trades/drag/run.ts'
import { addEffects, addPairs, type DrawnCraft } from './drawnCraft.ts'
import { idleOf, mostOf } from './propulsionModel.ts'
import { rotationCount, speedCount, straight } from './surfaces.ts'

/** What is asked of each draw. */
export interface Answers {
  /** engine rotation tied up, rev/s; NaN when the engines cannot turn the impeller */
  rotation: number
  /** N, tied up; nought when they cannot */
  pull: number
  /** m/s, where it settles from rest; the end of the speeds looked at when it would run past them */
  topSpeed: number
  /** least thrust over drag on the hump */
  hump: number
  /** s from rest to planing speed; Infinity when it never gets there */
  planing: number
  /** engine rotation at the speed where the pitch is judged, rev/s */
  judged: number
}

export const answerNames = ['rotation', 'pull', 'topSpeed', 'hump', 'planing', 'judged'] as const
export type AnswerName = (typeof answerNames)[number]

/** Places of the solved craft that draws are looked at, m/s. */
export interface Places {
  /** where the pitch is judged */
  judgedAt: number
  /** ends of the hump, where the drag model calls it that */
  hump: readonly [number, number]
}

/** One draw's own sums, kept between draws so that nothing is allocated. */
export interface Bench {
  torque: Float64Array
  thrust: Float64Array
  hull: Float64Array
  engines: Float64Array[]
  factor: Float64Array
  stretch: Float64Array
}

export const benchOf = (d: DrawnCraft): Bench => ({
  torque: new Float64Array(d.torque.length),
  thrust: new Float64Array(d.thrust.length),
  hull: new Float64Array(d.hull.length),
  engines: d.engines.map((e) => new Float64Array(e.length)),
  factor: new Float64Array(d.engines.length),
  stretch: new Float64Array(d.engines.length),
})

/** Cubic through the four nodes round place `t` (in nodes) of a row that begins at `from`. */
function inRow(y: Float64Array, from: number, t: number): number {
  const i = Math.min(rotationCount - 3, Math.max(1, Math.floor(t)))
  const x = t - i
  const at = from + i
  const a = y[at - 1]!
  const b = y[at]!
  const c = y[at + 1]!
  const e = y[at + 2]!
  return (
    (-a * x * (x - 1) * (x - 2)) / 6 +
    (b * (x + 1) * (x - 1) * (x - 2)) / 2 -
    (c * (x + 1) * x * (x - 2)) / 2 +
    (e * (x + 1) * x * (x - 1)) / 6
  )
}

/** Solves draw `u` (NaN for a doubt left at its value). */
export function solveDrawn(d: DrawnCraft, places: Places, u: ArrayLike<number>, b = benchOf(d)): Answers {
  const { grid, model, doubts, scales } = d
  addEffects(b.torque, d.torque, d.onTorque, u)
  addEffects(b.thrust, d.thrust, d.onThrust, u)
  addPairs(b.torque, b.thrust, d.pairs, u)
  addEffects(b.hull, d.hull, d.onHull, u)
  d.engines.forEach((still, e) => {
    addEffects(b.engines[e]!, still, d.onEngine[e]!, u)
  })
  for (let i = 0; i < b.torque.length; i++) {
    b.torque[i] = straight(b.torque[i]!, scales.torque)
    b.thrust[i] = straight(b.thrust[i]!, scales.thrust)
  }
  const drawn = (index: number, fallback: number) => {
    const part = index < 0 ? Number.NaN : u[index]!
    if (Number.isNaN(part)) return fallback
    const { low, high } = doubts[index]!
    return low + part * (high - low)
  }
  b.factor.fill(1)
  b.stretch.fill(1)
  for (const f of d.factors) {
    const part = u[f.index]!
    if (Number.isNaN(part)) continue
    const by = f.low + part * (f.high - f.low)
    if (f.on !== 'rotation') b.factor[f.engine]! *= f.on === 'torque' ? by : 1 / by
    if (f.on !== 'torque') b.stretch[f.engine]! *= by
  }
  const shaft = model.units[0]!.shaft
  const ratio = drawn(d.ratio, shaft.ratio)
  const efficiency = drawn(d.efficiency, shaft.efficiency)
  const share = drawn(d.drag, model.dragShare)
  const nodes = grid.engine.length - 1
  const perEngine = nodes / grid.engine[nodes]!
  const low = grid.rotations[0]!
  const perNode = (rotationCount - 1) / (grid.rotations[rotationCount - 1]! - low)

  /** torque at the impeller of engines `first` to `end`, at impeller rotation n */
  const drive = (first: number, end: number, n: number) => {
    let torque = 0
    for (let e = first; e < end; e++) {
      const t = Math.min(nodes, (n * ratio * perEngine) / b.stretch[e]!)
      const i = Math.min(nodes - 1, Math.floor(t))
      const y = b.engines[e]!
      torque += b.factor[e]! * (y[i]! + (t - i) * (y[i + 1]! - y[i]!))
    }
    return torque * ratio * (torque >= 0 ? efficiency : 1 / efficiency)
  }
  const load = (row: number, n: number) => inRow(b.torque, row, (n - low) * perNode) * n * n

  const lead = new Float64Array(speedCount)
  const thrust = new Float64Array(speedCount)
  let first = 0
  for (const [k, unit] of model.units.entries()) {
    const end = first + unit.shaft.engines.length
    const idle = idleOf(unit)
    const most = mostOf(unit)
    const alive = unit.shaft.engines.some((e) => e.running)
    let n = idle
    for (let i = 0; i < speedCount; i++) {
      const row = i * rotationCount
      const begin = first
      n = alive
        ? settled((r) => drive(begin, end, r) - load(row, r), Number.isNaN(n) ? idle : n, idle, most)
        : Number.NaN
      if (k === 0) lead[i] = n * ratio
      if (!Number.isNaN(n)) thrust[i]! += inRow(b.thrust, row, (n - low) * perNode) * n * n
    }
    first = end
  }
  for (let i = 0; i < speedCount; i++) b.hull[i] = share * straight(b.hull[i]!, scales.drag)
  const push = pchip(grid.speeds, thrust)
  const hold = pchip(grid.speeds, b.hull.subarray(0, speedCount))
  const spare = (v: number) => cubicAt(push, v) - cubicAt(hold, v)
  let hump = Number.POSITIVE_INFINITY
  for (const v of linspace(places.hump[0], places.hump[1], 16))
    hump = Math.min(hump, cubicAt(push, v) / cubicAt(hold, v))
  return {
    rotation: lead[0]!,
    pull: thrust[0]!,
    topSpeed: settlesAt(spare, grid.speeds[speedCount - 1]!),
    hump,
    planing: timeTo(speedAtFroude(model.drag, 2.4), b.hull[speedCount]!, spare),
    judged: cubicAt(
      pchip(
        grid.speeds,
        lead.map((n) => (Number.isNaN(n) ? 0 : n)),
      ),
      places.judgedAt,
    ),
  }
}

/** Where the shaft goes from `from`: along the surplus to its next root, rev/s; NaN when that is down past idle. */
function settled(surplus: (n: number) => number, from: number, idle: number, most: number): number {
  let a = from
  let sa = surplus(a)
  if (sa === 0) return a
  const up = sa > 0
  let step = 1.006
  for (let i = 0; i < 160; i++) {
    const c = Math.min(Math.max(up ? a * step : a / step, idle), most)
    const sc = surplus(c)
    if (sa * sc <= 0) {
      // Illinois false position between a and c
      let [x0, f0, x1, f1] = [a, sa, c, sc]
      for (let k = 0; k < 20 && f1 !== f0; k++) {
        const x = (x0 * f1 - x1 * f0) / (f1 - f0)
        const f = surplus(x)
        if (Math.abs(x - x1) < 2e-6 * x) return x
        if (f * f1 < 0) {
          x0 = x1
          f0 = f1
        } else f0 /= 2
        x1 = x
        f1 = f
      }
      return x1
    }
    if (c === most) return most
    if (c === idle) return Number.NaN
    a = c
    sa = sc
    step = Math.min(step ** 1.8, 1.03)
  }
  return Number.NaN
}

/** First speed from rest where nothing is left, m/s; `end` when something is left all the way. */
function settlesAt(spare: (v: number) => number, end: number): number {
  const steps = 60
  if (!(spare(0) > 0)) return 0
  for (let i = 1; i <= steps; i++) {
    let high = (end * i) / steps
    if (spare(high) > 0) continue
    let low = (end * (i - 1)) / steps
    for (let k = 0; k < 20; k++) {
      const middle = 0.5 * (low + high)
      if (spare(middle) > 0) low = middle
      else high = middle
    }
    return 0.5 * (low + high)
  }
  return end
}

/** s from rest to speed `goal`: mass over spare thrust, summed over speed; Infinity where thrust runs out before. */
function timeTo(goal: number, mass: number, spare: (v: number) => number): number {
  const steps = 40
  let time = 0
  for (let i = 0; i < steps; i++) {
    const left = spare((goal * (i + 0.5)) / steps)
    if (!(left > 0)) return Number.POSITIVE_INFINITY
    time += goal / steps / left
  }
  // added mass: 8 % slow, 2 % planing; the run itself changes over between them
  return 1.05 * mass * time
}
