/**
 * The pump in dimensionless form: gH/(nD)² and T/(ρn²D⁵) over Q/(nD³), sampled once by the strip model.
 * Rough blades follow the affinity laws exactly; where skin friction still depends on the Reynolds number, the
 * map is sampled at three rotations and read between them in ln n.
 */
import { type Cubic, cubicAt, linearAt, pchip } from '../../base/numerics/interpolate.ts'
import { pumpSetting } from './jet.ts'
import type { JetPoint, JetSpec } from './jetTypes.ts'
import { advanceHigh, advanceLow, headBeyond, operate, type PumpCurve, torqueBeyond } from './operate.ts'
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
    layers.push(layerAt(set, n * slowest))
    layers.push(layerAt(set, n * Math.sqrt(slowest * fastest), map))
    layers.push(layerAt(set, n * fastest))
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

/** Head and torque curves at one rotation; all layers share their knots, so a blend of cubics is a cubic. */
function atRotation(map: PumpMap, n: number): { head: Cubic; torque: Cubic } {
  const { layers } = map
  if (layers.length === 1) return layers[0]!
  // parabola in ln n through the three layers; friction bends too gently to need more
  const [a, b, c] = layers as [Layer, Layer, Layer]
  const t = Math.min(1.5, Math.max(-2, (Math.log(n) - b.logN) / (b.logN - a.logN)))
  const wa = 0.5 * t * (t - 1)
  const wb = 1 - t * t
  const wc = 0.5 * t * (t + 1)
  const blend = (which: 'head' | 'torque'): Cubic => {
    const [ca, cb, cc] = [a[which], b[which], c[which]]
    const count = ca.x.length
    const y = new Float64Array(count)
    const slope = new Float64Array(count)
    for (let i = 0; i < count; i++) {
      y[i] = wa * ca.y[i]! + wb * cb.y[i]! + wc * cc.y[i]!
      slope[i] = wa * ca.slope[i]! + wb * cb.slope[i]! + wc * cc.slope[i]!
    }
    return { x: ca.x, y, slope }
  }
  return { head: blend('head'), torque: blend('torque') }
}

function curveOf(map: PumpMap, density: number, n: number): PumpCurve {
  const { head, torque } = atRotation(map, n)
  const D = map.diameter
  const perFlow = 1 / (n * D ** 3)
  const highest = head.x[head.x.length - 1]!
  const headScale = (n * D) ** 2
  const torqueScale = density * n * n * D ** 5
  return {
    annulus: map.annulus,
    head: (Q) => {
      const q = Q * perFlow
      const value = headScale * cubicAt(head, q)
      return q > highest ? headBeyond(value, q / highest) : value
    },
    torque: (Q) => {
      const q = Q * perFlow
      const value = torqueScale * cubicAt(torque, q)
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
