/** One box after the stinger: transmission loss over frequency, cold theory at the hot sound speed. */

import { exhaustGas } from './backPressure.ts'
import type { FourPole } from './fourPole.ts'
import { branch, chain, closedStub, transmissionLoss, tube } from './fourPole.ts'
import { firstCrossMode, hotResistivity, straightThroughLoss } from './packing.ts'

export interface MufflerBox {
  /** m, inside */
  length: number
  /** m², inside cross-section */
  area: number
  /** m, tubes in and out, and how far each stands into the box */
  inletBore: number
  outletBore: number
  inletReach: number
  outletReach: number
  /** m, 0 for an empty box */
  packing: number
  /** Pa·s/m², cold */
  resistivity: number
}

/** RangeError names the first measure that cannot be built. */
export function checkBox(box: MufflerBox): void {
  for (const key of ['length', 'area', 'inletBore', 'outletBore'] as const)
    if (!(box[key] > 0)) throw new RangeError(`muffler ${key} is ${box[key]}: it must be above 0`)
  if (box.inletReach < 0 || box.outletReach < 0 || box.inletReach + box.outletReach >= box.length)
    throw new RangeError(
      `muffler tubes reach ${box.inletReach} and ${box.outletReach} m into a box ${box.length} m long`,
    )
  for (const key of ['inletBore', 'outletBore'] as const)
    if ((Math.PI / 4) * box[key] ** 2 >= box.area)
      throw new RangeError(`muffler ${key} ${box[key]} m is as wide as the box`)
}

export function boxVolume(box: MufflerBox): number {
  return box.length * box.area
}

/** Four-pole of the empty box: reaching tubes leave closed annular stubs at its ends. */
export function boxFourPole(box: MufflerBox, f: number, c: number): FourPole {
  const k = (2 * Math.PI * f) / c
  const parts: FourPole[] = []
  const stub = (reach: number, bore: number) => {
    if (reach > 0) parts.push(branch(closedStub(reach, box.area - (Math.PI / 4) * bore ** 2, k, c)))
  }
  stub(box.inletReach, box.inletBore)
  parts.push(tube(box.length - box.inletReach - box.outletReach, box.area, k, c))
  stub(box.outletReach, box.outletBore)
  return chain(parts)
}

export interface LossCurve {
  frequency: Float64Array
  /** dB */
  loss: Float64Array
  /** Hz: above it the plane-wave answer does not hold */
  planeTo: number
}

/**
 * Transmission loss of the box at each frequency (Hz), gas of sound speed c and density ρ. With packing the
 * straight-through attenuation is added at half its computed value, the usual caution.
 */
export function boxLoss(
  box: MufflerBox,
  frequency: ArrayLike<number>,
  c: number,
  density: number,
): LossCurve {
  checkBox(box)
  const S1 = (Math.PI / 4) * box.inletBore ** 2
  const S2 = (Math.PI / 4) * box.outletBore ** 2
  const diameter = Math.sqrt((4 * box.area) / Math.PI)
  const out: LossCurve = {
    frequency: Float64Array.from(frequency),
    loss: new Float64Array(frequency.length),
    planeTo: firstCrossMode(diameter, c),
  }
  for (let i = 0; i < frequency.length; i++) {
    const f = frequency[i]!
    let loss = transmissionLoss(boxFourPole(box, f, c), S1, S2, c)
    if (box.packing > 0) {
      const core = Math.max(box.inletBore, diameter - 2 * box.packing)
      // hot gas is harder to blow through; its temperature follows from its sound speed
      const resistivity = hotResistivity(
        box.resistivity,
        (c * c) / (exhaustGas.gamma * exhaustGas.gasConstant),
      )
      const s = { bore: core, outer: diameter, resistivity, density, c }
      loss += 0.5 * box.length * straightThroughLoss(s, f)
    }
    out.loss[i] = loss
  }
  return out
}
