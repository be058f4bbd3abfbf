/** Engines on rubber: how they shake, and how far the crankshaft's end moves off its line at full torque and under its own weight. */

import { rangeOf } from '../../base/answers/rangeOf.ts'
import type { Range } from '../../base/answers/solved.ts'
import type { DriveChain } from './driveLinks.ts'
import type { DrivePeaks } from './drivePeaks.ts'
import { mountStiffness, ownFrequency, passes } from './rubberMounts.ts'

export interface MountInputs {
  number: number
  across: Range
  height: Range
  hardness: Range
  loaded: 'pressed' | 'sheared'
  mass: Range
  track: Range
  under: 'each engine' | 'one frame'
}

export interface Mounted {
  inputs: MountInputs
  /** Hz straight up and down */
  own: Range
  /** part of the shaking that passes at idle, and the firing frequency there, Hz */
  atIdle: Range
  idle: number
  /** the same at the state the chain was judged at */
  running: Range
  /** m that the crank's end moves off its line */
  off: Range
}

const shaken = 1.35
const damping = 0.08
/** m: from the plane of the mounts up to the crank */
const crankHeight = 0.06

export function mountedOf(m: MountInputs, chain: DriveChain, peaks: DrivePeaks): Mounted {
  const first = chain.engines[0]
  const fires = first?.cylinders ?? 1
  const idle = (first?.idle ?? 0) * fires
  const runs = peaks.state.rotation * fires
  const doubts = [m.across, m.height, m.hardness, m.mass, m.track]
  const stiff = ([across, height, shore]: readonly number[]): number => {
    const one = mountStiffness({ across: across!, height: height!, shore: Math.min(80, shore!) })
    return m.number * one[m.loaded]
  }
  const own = (v: readonly number[]) => ownFrequency(shaken * stiff(v), v[3]!)
  const at = (hertz: number) => rangeOf((v) => passes(hertz / own(v), damping), doubts)
  const torque = peaks.mean.at(-1)! / chain.engines.length
  const off = rangeOf((v) => {
    const k = stiff(v)
    // a couple on mounts half a track to each side, and the weight that lets the rubber settle
    const roll = torque / (k * (v[4]! / 2) ** 2)
    return roll * crankHeight + (0.15 * 9.81 * v[3]!) / k
  }, doubts)
  return { inputs: m, own: rangeOf(own, doubts), atIdle: at(idle), idle, running: at(runs), off }
}
