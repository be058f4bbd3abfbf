/**
 * Pump maps of one blade over every pitch: sampled by the strip model at pitches a fifth apart and read between them. At equal flow
 * per screw advance the dimensionless head and torque are smooth in the logarithm of the pitch, so the cubic through four
 * neighbours gives a map to two thousandths (pumpFan.test.ts) at the price of none.
 */
import { pchip } from '../../base/numerics/interpolate.ts'
import type { JetSpec } from './jetTypes.ts'
import { buildPumpMap, type PumpMap, pumpMapNear } from './pumpMap.ts'

/** ln of the step from one sampled pitch to the next */
const stride = 0.2

/** The spec with its pitch at the leading edge, m; a blade that steepens keeps its growth. */
export function withLeadingPitch(spec: JetSpec, pitch: number): JetSpec {
  const growth = spec.rotor.pitchTrailing / spec.rotor.pitchLeading
  return { ...spec, rotor: { ...spec.rotor, pitchLeading: pitch, pitchTrailing: pitch * growth } }
}

/** Maps of the blade of one spec at any pitch; what is sampled does not depend on the spec's own pitch. */
export class PumpFan {
  private readonly spec: JetSpec
  private readonly near: PumpFan | undefined
  private readonly nodes = new Map<number, PumpMap>()
  private readonly between = new Map<number, PumpMap>()

  /** With `near`, maps are made from those of a fan that differs from this one by draws of its doubts. */
  constructor(spec: JetSpec, near?: PumpFan) {
    this.spec = spec
    this.near = near
  }

  private node(k: number): PumpMap {
    let map = this.nodes.get(k)
    if (!map) {
      const spec = withLeadingPitch(this.spec, this.spec.rotor.tipDiameter * Math.exp(k * stride))
      map = this.near ? pumpMapNear(spec, this.near.node(k)) : buildPumpMap(spec)
      this.nodes.set(k, map)
    }
    return map
  }

  /** The pitches that are sampled between two, m, lowest first. */
  sampled(low: number, high: number): number[] {
    const D = this.spec.rotor.tipDiameter
    const first = Math.ceil(Math.log(low / D) / stride - 1e-9)
    const last = Math.floor(Math.log(high / D) / stride + 1e-9)
    return Array.from({ length: Math.max(0, last - first + 1) }, (_, i) => D * Math.exp((first + i) * stride))
  }

  /** Map at a leading-edge pitch, m, above zero. */
  at(pitch: number): PumpMap {
    const x = Math.log(pitch / this.spec.rotor.tipDiameter) / stride
    const near = Math.round(x)
    if (Math.abs(x - near) < 1e-6) return this.node(near)
    // hundredths of a thousandth: far finer than anybody prints
    const key = Math.round(x * 1e5)
    const known = this.between.get(key)
    if (known) return known
    const k = Math.floor(x)
    const made = blend(
      [this.node(k - 1), this.node(k), this.node(k + 1), this.node(k + 2)],
      lagrange(x - k),
      Math.exp((x - k) * stride),
    )
    // neighbouring nozzles ask for the same pitch one after the other; older ones are quickly made again
    if (this.between.size >= 12) this.between.delete(this.between.keys().next().value!)
    this.between.set(key, made)
    return made
  }
}

/** weights of the cubic through values at -1, 0, 1 and 2 */
function lagrange(t: number): readonly [number, number, number, number] {
  return [
    (-t * (t - 1) * (t - 2)) / 6,
    ((t + 1) * (t - 1) * (t - 2)) / 2,
    (-(t + 1) * t * (t - 2)) / 2,
    ((t + 1) * t * (t - 1)) / 6,
  ]
}

/** `steeper` is the pitch over that of the second map. */
function blend(maps: readonly PumpMap[], w: readonly number[], steeper: number): PumpMap {
  const [, base, above] = maps as [PumpMap, PumpMap, PumpMap, PumpMap]
  const mixed = (pick: (map: PumpMap) => ArrayLike<number>) =>
    Float64Array.from(pick(base), (_, i) => maps.reduce((sum, map, k) => sum + w[k]! * pick(map)[i]!, 0))
  // flow per screw advance is the same at every pitch, so the flow itself goes with the pitch
  const flow = base.flow.map((q) => q * steeper)
  // what counts shares of the span in steps is read from the nearer sample
  const nearer = w[2]! > w[1]! ? above : base
  const layers = base.layers.map((layer, k) => ({
    logN: layer.logN,
    head: pchip(
      flow,
      mixed((map) => (map.layers[k] ?? map.layers[0]!).head.y),
    ),
    torque: pchip(
      flow,
      mixed((map) => (map.layers[k] ?? map.layers[0]!).torque.y),
    ),
  }))
  return {
    annulus: base.annulus,
    diameter: base.diameter,
    layers,
    flow,
    diffusion: mixed((map) => map.diffusion),
    stalled: nearer.stalled,
    deepStall: nearer.deepStall,
  }
}
