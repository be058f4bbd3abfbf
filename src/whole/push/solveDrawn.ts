/** Engines and impeller, thrust and drag brought together for one draw of a craft's doubts: from idle, then from rest. */
import { type Cubic, cubicAt, linspace, slopesInto } from '../../base/numerics/interpolate.ts'
import { bisect } from '../../base/numerics/roots.ts'
import { speedAtFroude } from '../../trades/drag/run.ts'
import { addEffects, addPairs, type DrawnCraft, doubtPlaces } from './drawnCraft.ts'
import { addLoad } from './drawnLoad.ts'
import { idleOf, mostOf } from './propulsionModel.ts'
import {
  fineCount,
  fineDrag,
  inRow,
  jetParts,
  rotationCount,
  speedCount,
  spreadOver,
  straight,
} from './surfaces.ts'
import { leftBy } from './vapourTable.ts'

/** What is asked of each draw. */
export interface Answers {
  /** engine rotation tied up, rev/s; NaN when the engines cannot turn the impeller */
  rotation: number
  /** N, tied up; nought when they cannot */
  pull: number
  /** N·m at the first impeller, tied up */
  torque: number
  /** m/s, where it settles from rest; the end of the speeds looked at when it would run past them */
  topSpeed: number
  /** least thrust over drag on the hump */
  hump: number
  /** s from rest to planing speed; Infinity when it never gets there */
  planing: number
  /** engine rotation at the speed where the pitch is judged, rev/s */
  judged: number
}

export const answerNames = ['rotation', 'pull', 'torque', 'topSpeed', 'hump', 'planing', 'judged'] as const
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
  /** effects on the jet at every second speed, and the jet with them at all of them */
  sums: Float64Array
  jet: Float64Array
  hull: Float64Array
  engines: Float64Array[]
  factor: Float64Array
  stretch: Float64Array
  /** engine rotation, thrust and drag over speed */
  lead: Cubic
  push: Cubic
  hold: Cubic
}

const over = (x: Float64Array): Cubic => ({
  x,
  y: new Float64Array(x.length),
  slope: new Float64Array(x.length),
})

export const benchOf = (d: DrawnCraft): Bench => ({
  sums: new Float64Array(jetParts * doubtPlaces),
  jet: new Float64Array(d.jet.length),
  hull: new Float64Array(d.hull.length),
  lead: over(d.grid.speeds),
  push: over(d.grid.speeds),
  hold: over(d.grid.fine),
  engines: d.engines.map((e) => new Float64Array(e.length)),
  factor: new Float64Array(d.engines.length),
  stretch: new Float64Array(d.engines.length),
})

/** What is given over what is taken, less one; an impeller that ram turns takes nothing, and its engines have any amount to spare. */
const overLoad = (drive: number, load: number): number =>
  load > 1e-6 ? drive / load - 1 : drive > load ? 1e6 : -1e6

/** Solves draw `u` (NaN for a doubt left at its value); with `sumsOnly` rotation, pull and top speed alone, the rest NaN. */
export function solveDrawn(
  d: DrawnCraft,
  places: Places,
  u: ArrayLike<number>,
  b = benchOf(d),
  sumsOnly = false,
): Answers {
  const { grid, model, doubts, scales } = d
  b.sums.fill(0)
  addEffects(b.sums, d.onJet, u)
  addPairs(b.sums, d.pairs, u)
  spreadOver(d.jet, b.sums, b.jet)
  const plane = speedCount * rotationCount
  for (let i = 0; i < plane; i++) b.jet[i] = straight(b.jet[i]!, scales.torque)
  for (let i = plane; i < 2 * plane; i++) b.jet[i] = straight(b.jet[i]!, scales.thrust)
  b.hull.set(d.hull)
  addEffects(b.hull, d.onHull, u)
  if (d.load) addLoad(b.hull, d.load, u)
  d.engines.forEach((still, e) => {
    b.engines[e]!.set(still)
    addEffects(b.engines[e]!, d.onEngine[e]!, u)
  })
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
  const share = model.dragShare * drawn(d.drag, 1)
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
  const fall = drawn(d.chokeFall, d.chokeFall < 0 ? 0.5 : doubts[d.chokeFall]!.value)
  const left = { torque: 1, flow: 1 }
  const vapour = d.vapour
  /** sets `left` to what vapour leaves at grid speed i and impeller rotation n */
  const boil = (i: number, n: number) => {
    if (!vapour) return
    const onset = inRow(b.jet, 2 * plane + i * rotationCount, (n - low) * perNode)
    leftBy(vapour, i, onset, fall, left)
  }
  const load = (i: number, n: number) => {
    boil(i, n)
    return left.torque * inRow(b.jet, i * rotationCount, (n - low) * perNode) * n * n
  }
  const thrustOf = (i: number, n: number) => {
    const t = (n - low) * perNode
    const wet = inRow(b.jet, plane + i * rotationCount, t)
    boil(i, n)
    if (!vapour || left.flow === 1) return wet * n * n
    const gross = inRow(b.jet, plane, t) * inRow(vapour.gross, i * rotationCount, t)
    return (left.flow * wet - left.flow * (1 - left.flow) * gross) * n * n
  }

  const lead = b.lead.y
  const thrust = b.push.y.fill(0)
  let torque = Number.NaN
  let first = 0
  for (const [k, unit] of model.units.entries()) {
    const end = first + unit.shaft.engines.length
    const idle = idleOf(unit)
    const most = mostOf(unit)
    const alive = unit.shaft.engines.some((e) => e.running)
    let n = idle
    for (let i = 0; i < speedCount; i++) {
      const begin = first
      n = alive
        ? settled((r) => overLoad(drive(begin, end, r), load(i, r)), Number.isNaN(n) ? idle : n, idle, most)
        : Number.NaN
      if (k === 0) lead[i] = n * ratio
      if (k === 0 && i === 0 && !Number.isNaN(n)) torque = load(0, n)
      if (!Number.isNaN(n)) thrust[i]! += model.thrustShare * thrustOf(i, n)
    }
    first = end
  }
  const { push, hold } = b
  fineDrag(b.hull, d.detail, scales.drag, hold.y)
  for (let j = 0; j < fineCount; j++) hold.y[j] = share * hold.y[j]!
  slopesInto(push)
  slopesInto(hold)
  const spare = (v: number) => cubicAt(push, v) - cubicAt(hold, v)
  const sums = {
    rotation: lead[0]!,
    pull: thrust[0]!,
    torque,
    topSpeed: settlesAt(spare, grid.fine),
  }
  if (sumsOnly) return { ...sums, hump: Number.NaN, planing: Number.NaN, judged: Number.NaN }
  let hump = Number.POSITIVE_INFINITY
  for (const v of linspace(places.hump[0], places.hump[1], 16))
    hump = Math.min(hump, cubicAt(push, v) / cubicAt(hold, v))
  for (let i = 0; i < speedCount; i++) if (Number.isNaN(lead[i]!)) lead[i] = 0
  slopesInto(b.lead)
  return {
    ...sums,
    hump,
    planing: timeTo(speedAtFroude(model.drag, 2.4), b.hull[speedCount]!, spare),
    judged: cubicAt(b.lead, places.judgedAt),
  }
}

/**
 * Where the shaft goes from `from`: along the surplus to its next root, rev/s; NaN when that is down past idle. `over` is what the
 * engines give over what the impeller takes, less one: nearly a straight line in the rotation, and where it is large the next
 * root is far.
 */
function settled(over: (n: number) => number, from: number, idle: number, most: number): number {
  let a = from
  let sa = over(a)
  if (sa === 0) return a
  const up = sa > 0
  let stride = 0.006
  for (let i = 0; i < 160; i++) {
    const step = 1 + Math.min(stride, 0.03 + 0.1 * Math.max(0, Math.min(1, sa - 0.2)))
    const c = Math.min(Math.max(up ? a * step : a / step, idle), most)
    const sc = over(c)
    if (sa * sc <= 0) {
      // Illinois false position between a and c
      let [x0, f0, x1, f1] = [a, sa, c, sc]
      for (let k = 0; k < 20 && f1 !== f0; k++) {
        const x = (x0 * f1 - x1 * f0) / (f1 - f0)
        const f = over(x)
        if (Math.abs(x - x1) < 1e-5 * x) return x
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
    stride *= 1.8
  }
  return Number.NaN
}

/** First speed from rest where nothing is left, m/s; the end of `speeds` when something is left all the way. */
function settlesAt(spare: (v: number) => number, speeds: Float64Array): number {
  const end = speeds[speeds.length - 1]!
  if (!(spare(0) > 0)) return 0
  for (let i = 1; i < speeds.length; i++) {
    if (spare(speeds[i]!) > 0) continue
    const found = bisect(spare, speeds[i - 1]!, speeds[i]!, { tolerance: 1e-5 * end })
    return found.converged ? found.value : speeds[i]!
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
