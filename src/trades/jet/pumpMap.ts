/**
 * The pump in dimensionless form: gH/(nD)² and T/(ρn²D⁵) over Q/(nD³), sampled once by the strip model.
 * Rough blades follow the affinity laws exactly; where skin friction still depends on the Reynolds number, the
 * map is sampled at three rotations and read between them in ln n.
 */
import { type Cubic, cubicAt, intervalOf, linearAt, pchip } from '../../base/numerics/interpolate.ts'
import { pumpSetting } from './jet.ts'
import type { JetPoint, JetSpec } from './jetTypes.ts'
import {
  advanceHigh,
  advanceLow,
  headBeyond,
  operate,
  operateWet,
  type PumpCurve,
  torqueBeyond,
  type WetPoint,
} from './operate.ts'
import { type PumpSetting, pumpAt } from './pump.ts'

/** Head and torque at one reference rotation. */
interface Layer {
  logN: number
  head: Cubic
  torque: Cubic
}

export interface PumpMap {
  /** annulus before the rotor, m² */
  annulus: number
  diameter: number
  layers: readonly Layer[]
  /** Q/(nD³) of the samples */
  flow: Float64Array
  diffusion: Float64Array
  /** share of span past a stall limit, 1 more when the tip is */
  stalled: Float64Array
  /** 1 where the hub would flow backwards */
  deepStall: Float64Array
}

/** samples in flow per screw advance: close where pumps run, wide at the ends */
const samples: readonly number[] = (() => {
  const out: number[] = []
  for (let j = advanceLow; j < 0.299; j += 0.03) out.push(j)
  for (let k = 0; k <= 32; k++) out.push(0.3 + k * 0.025)
  out.push(1.15, 1.2, advanceHigh)
  return out
})()

/** tip speed the single layer is sampled at, m/s */
const referenceTipSpeed = 38
/** where the layers lie when friction depends on rotation, as factors on the reference rotation */
const slowest = 0.2
const fastest = 1.6

function layerAt(set: PumpSetting, n: number, sink?: PumpMap): Layer {
  const { rotor, areaIn } = set.blades
  const D = rotor.tipDiameter
  const count = samples.length
  const flow = new Float64Array(count)
  const head = new Float64Array(count)
  const torque = new Float64Array(count)
  for (let i = 0; i < count; i++) {
    const Q = samples[i]! * n * rotor.pitchTrailing * areaIn
    const p = pumpAt(set, n, Q)
    flow[i] = Q / (n * D ** 3)
    head[i] = p.head / (n * D) ** 2
    torque[i] = (flow[i]! * p.work) / (n * D) ** 2 / (2 * Math.PI)
    if (sink) {
      sink.flow[i] = flow[i]!
      sink.diffusion[i] = p.diffusion
      sink.stalled[i] = p.stalledShare + (p.tipStalled ? 1 : 0)
      sink.deepStall[i] = p.converged ? 0 : 1
    }
  }
  return { logN: Math.log(n), head: pchip(flow, head), torque: pchip(flow, torque) }
}

/** samples of a layer beside another: every third, where what friction adds is followed well enough, and the last */
const everyThird = samples.map((_, i) => i).filter((i) => i % 3 === 0 || i === samples.length - 1)

/** A layer at another rotation: what it has more than `middle` is friction alone, even in flow, and sampled at every third place. */
function layerBeside(set: PumpSetting, n: number, middle: Layer): Layer {
  const { rotor, areaIn } = set.blades
  const D = rotor.tipDiameter
  const flow = middle.head.x
  const more = everyThird.map((i) => {
    const p = pumpAt(set, n, samples[i]! * n * rotor.pitchTrailing * areaIn)
    return {
      head: p.head / (n * D) ** 2 - middle.head.y[i]!,
      torque: (flow[i]! * p.work) / (n * D) ** 2 / (2 * Math.PI) - middle.torque.y[i]!,
    }
  })
  const at = everyThird.map((i) => flow[i]!)
  const moved = (of: 'head' | 'torque') => {
    const by = pchip(
      at,
      more.map((m) => m[of]),
    )
    return pchip(
      flow,
      middle[of].y.map((y, i) => y + cubicAt(by, flow[i]!)),
    )
  }
  return { logN: Math.log(n), head: moved('head'), torque: moved('torque') }
}

/** Samples the pump of `spec`. Good for every rotation and boat speed, and for any change of system or water pressure. */
export function buildPumpMap(spec: JetSpec): PumpMap {
  const set = pumpSetting(spec)
  const D = spec.rotor.tipDiameter
  const n = referenceTipSpeed / (Math.PI * D)
  const count = samples.length
  const layers: Layer[] = []
  const map: PumpMap = {
    annulus: set.blades.areaIn,
    diameter: D,
    layers,
    flow: new Float64Array(count),
    diffusion: new Float64Array(count),
    stalled: new Float64Array(count),
    deepStall: new Float64Array(count),
  }
  // does friction still care for the Reynolds number?
  const probe = 0.65 * spec.rotor.pitchTrailing * set.blades.areaIn
  const slow = pumpAt(set, n * slowest, probe * n * slowest).head / (n * slowest) ** 2
  const fast = pumpAt(set, n, probe * n).head / n ** 2
  if (Math.abs(slow / fast - 1) > 1e-3) {
    const middle = layerAt(set, n * Math.sqrt(slowest * fastest), map)
    layers.push(layerBeside(set, n * slowest, middle))
    layers.push(middle)
    layers.push(layerBeside(set, n * fastest, middle))
  } else layers.push(layerAt(set, n, map))
  return map
}

/**
 * The map of a pump that differs little from the one `base` was sampled for (draws of its doubts, say), at a sixth of the
 * cost: the middle layer at every second flow, what lies between and the other layers moved along with it. Flags of stall
 * stay those of `base`. How true it is: docs/ranges.md, from bench/coverage.ts.
 */
export function pumpMapNear(spec: JetSpec, base: PumpMap): PumpMap {
  const set = pumpSetting(spec)
  const D = spec.rotor.tipDiameter
  const middle = base.layers[base.layers.length >> 1]!
  const n = Math.exp(middle.logN)
  const count = samples.length
  const flow = new Float64Array(count)
  // what the new pump has more than the base at the same flow per screw advance
  const more = { head: new Float64Array(count), torque: new Float64Array(count) }
  const at = (i: number) => {
    const p = pumpAt(set, n, samples[i]! * n * spec.rotor.pitchTrailing * set.blades.areaIn)
    more.head[i] = p.head / (n * D) ** 2 - middle.head.y[i]!
    more.torque[i] = (flow[i]! * p.work) / (n * D) ** 2 / (2 * Math.PI) - middle.torque.y[i]!
  }
  for (let i = 0; i < count; i++) {
    flow[i] = (samples[i]! * spec.rotor.pitchTrailing * set.blades.areaIn) / D ** 3
    if (i % 2 === 0 || i === count - 1) at(i)
  }
  for (let i = 1; i < count - 1; i += 2) {
    const t = (samples[i]! - samples[i - 1]!) / (samples[i + 1]! - samples[i - 1]!)
    for (const m of [more.head, more.torque]) m[i] = m[i - 1]! + t * (m[i + 1]! - m[i - 1]!)
  }
  const moved = (c: Cubic, by: Float64Array) =>
    pchip(
      flow,
      c.y.map((y, i) => y + by[i]!),
    )
  return {
    ...base,
    annulus: set.blades.areaIn,
    diameter: D,
    flow,
    layers: base.layers.map((l) => ({
      logN: l.logN,
      head: moved(l.head, more.head),
      torque: moved(l.torque, more.torque),
    })),
  }
}

/** Weights of the three layers at rotation n: parabola in ln n; friction bends too gently to need more. */
function layerWeights(layers: readonly Layer[], n: number): readonly [number, number, number] {
  const [a, b] = layers as [Layer, Layer]
  const t = Math.min(1.5, Math.max(-2, (Math.log(n) - b.logN) / (b.logN - a.logN)))
  return [0.5 * t * (t - 1), 1 - t * t, 0.5 * t * (t + 1)]
}

/** Three cubics on the same knots, weighed and read at `at`; held at the ends. Allocates nothing: it is read millions of times. */
function blendAt(
  [a, b, c]: readonly [Cubic, Cubic, Cubic],
  [wa, wb, wc]: readonly [number, number, number],
  at: number,
): number {
  const { x } = a
  const last = x.length - 1
  const end = at <= x[0]! ? 0 : at >= x[last]! ? last : -1
  if (end >= 0) return wa * a.y[end]! + wb * b.y[end]! + wc * c.y[end]!
  const i = intervalOf(x, at)
  const h = x[i + 1]! - x[i]!
  const t = (at - x[i]!) / h
  const u = 1 - t
  const p = u * u * (1 + 2 * t)
  const q = t * t * (3 - 2 * t)
  const r = h * t * u * u
  const s = h * t * t * u
  return (
    wa * (p * a.y[i]! + q * a.y[i + 1]! + r * a.slope[i]! - s * a.slope[i + 1]!) +
    wb * (p * b.y[i]! + q * b.y[i + 1]! + r * b.slope[i]! - s * b.slope[i + 1]!) +
    wc * (p * c.y[i]! + q * c.y[i + 1]! + r * c.slope[i]! - s * c.slope[i + 1]!)
  )
}

/** Dimensionless head or torque over dimensionless flow at one rotation. */
function atRotation(map: PumpMap, n: number): Record<'head' | 'torque', (q: number) => number> {
  const { layers } = map
  const [a, b, c] = layers
  if (!b || !c) return { head: (q) => cubicAt(a!.head, q), torque: (q) => cubicAt(a!.torque, q) }
  const weights = layerWeights(layers, n)
  const heads = [a!.head, b.head, c.head] as const
  const torques = [a!.torque, b.torque, c.torque] as const
  return { head: (q) => blendAt(heads, weights, q), torque: (q) => blendAt(torques, weights, q) }
}

function curveOf(map: PumpMap, density: number, n: number): PumpCurve {
  const { head, torque } = atRotation(map, n)
  const D = map.diameter
  const perFlow = 1 / (n * D ** 3)
  const highest = map.flow[map.flow.length - 1]!
  const headScale = (n * D) ** 2
  const torqueScale = density * n * n * D ** 5
  return {
    annulus: map.annulus,
    head: (Q) => {
      const q = Q * perFlow
      const value = headScale * head(q)
      return q > highest ? headBeyond(value, q / highest) : value
    },
    torque: (Q) => {
      const q = Q * perFlow
      const value = torqueScale * torque(q)
      return q > highest ? torqueBeyond(value, q / highest) : value
    },
    diffusion: (Q) => linearAt(map.flow, map.diffusion, Q * perFlow),
    stalled: (Q) => linearAt(map.flow, map.stalled, Q * perFlow) > 0.4,
    deepStall: (Q) => linearAt(map.flow, map.deepStall, Q * perFlow) > 0.5,
  }
}

/** Operating point from the map; same contract as `solveJet`, without the loss breakdown. */
export function jetPoint(map: PumpMap, spec: JetSpec, n: number, V: number): JetPoint {
  return operate(spec, curveOf(map, spec.water.density, n), n, V)
}

/** The same without vapour, and how near to it: what the point would be in water that cannot boil. */
export function wetPoint(map: PumpMap, spec: JetSpec, n: number, V: number): WetPoint {
  return operateWet(spec, curveOf(map, spec.water.density, n), n, V)
}
