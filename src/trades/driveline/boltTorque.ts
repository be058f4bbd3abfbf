/**
 * From the torque on a key to the pull in a bolt and back. VDI 2230 part 1 (2015): T = F (0.159 P + 0.578 d2 μG + DKm μK / 2) and the
 * pull at which torsion and tension together reach the yield point; the nut factor K of T = K F d: J. E. Shigley, Mechanical
 * Engineering Design, ch. 8. Friction of dry zinc or stainless threads 0.12 to 0.22 and what a hand pulls: common practice, no source.
 */
import type { Range } from '../../base/answers/solved.ts'
import { type Bolt, type BoltClass, pitchDiameter, stressArea, stressDiameter } from './metricBolts.ts'

/** Friction in the thread and under the head, as bolts come. */
export const boltFriction: Range = { value: 0.16, low: 0.12, high: 0.22 }

/** N on the end of a key: with care by hand, and when nobody knows how. */
export const handPull = {
  'by hand': { value: 60, low: 30, high: 110 },
  unknown: { value: 50, low: 15, high: 120 },
} as const satisfies Readonly<Record<string, Range>>

/** Mean diameter of the ring that rubs under a head, m. */
export const rubbing = (b: Bolt): number => (b.head + b.hole) / 2

/** Torque (N·m) a newton of pull asks for, m; friction in thread and under the head apart. */
export function torquePerPull(b: Bolt, thread: number, head: number, rubs = rubbing(b)): number {
  return 0.159 * b.pitch + 0.578 * pitchDiameter(b) * thread + 0.5 * rubs * head
}

/** Nut factor K of T = K F d. */
export const nutFactor = (b: Bolt, friction: number): number => torquePerPull(b, friction, friction) / b.d

/** Pull, N, that a torque (N·m) leaves in a bolt at one friction. */
export const preloadOf = (b: Bolt, torque: number, friction: number): number =>
  torque / torquePerPull(b, friction, friction)

/** Pull at which a part `share` of the yield stress is reached with the torsion of tightening, N. */
export function mostPreload(b: Bolt, c: BoltClass, friction: number, share = 0.9): number {
  const d0 = stressDiameter(b)
  const d2 = pitchDiameter(b)
  const twist = 1.5 * (d2 / d0) * (b.pitch / (Math.PI * d2) + 1.155 * friction)
  return (share * c.yields * stressArea(b)) / Math.sqrt(1 + 3 * twist ** 2)
}

/** Torque that uses a part `share` of the yield stress where threads are as slippery as they come, N·m: beyond it a bolt may stretch for good. */
export const mostTorque = (b: Bolt, c: BoltClass, share = 0.9): number =>
  mostPreload(b, c, boltFriction.low, share) * torquePerPull(b, boltFriction.low, boltFriction.low)

/** Torque to write on the drawing, N·m: three quarters of the proof load at the middle friction, and none stretched where it is less. */
export function usualTorque(b: Bolt, c: BoltClass): number {
  const pull = 0.75 * c.proof * stressArea(b)
  return Math.min(pull * torquePerPull(b, boltFriction.value, boltFriction.value), mostTorque(b, c))
}

/** Torque, N·m, of a pull on the end of this bolt's key. */
export const byHand = (b: Bolt, pull: number): number => pull * b.key
