/** What each part of the chain bears over what is asked of it: bolted joints at four moments of their life, hubs and shafts. */

import type { Range } from '../../base/answers/solved.ts'
import { percentile } from '../../base/numerics/effects.ts'
import { boltFriction, byHand, handPull, mostPreload, preloadOf } from './boltTorque.ts'
import type { Between, Hold, Joint, Turning } from './driveLinks.ts'
import { seatOf } from './driveLinks.ts'
import { doubtsAt, drawCount, drawOf, within } from './drivePeaks.ts'
import {
  clampTorque,
  crossPin,
  flangeTorque,
  keyFor,
  keyStress,
  setScrewTorque,
  splinePressure,
} from './frictionGrip.ts'
import { pullLeft, type Springs, type Stack, type Stage, springsOf, stages } from './jointRelax.ts'
import { stressArea } from './metricBolts.ts'
import { leftWarm } from './partMaterials.ts'
import { shaftAllows, shockStress } from './shaftStress.ts'
import { insertHolds, nutThreadArea, stripsAt } from './threadStrip.ts'

/** friction of faces, and doubts of what plastics stand; ends by common practice, no source */
const friction = {
  metal: { value: 0.15, low: 0.1, high: 0.2 },
  plastic: { value: 0.2, low: 0.12, high: 0.28 },
} as const
const embeds = {
  metal: { value: 8e-6, low: 5e-6, high: 11e-6 },
  plastic: { value: 30e-6, low: 15e-6, high: 50e-6 },
} as const
const strength = { value: 1, low: 0.7, high: 1.3 } as const

export interface Lasting {
  /** pull in one bolt, N, and what all hold over the peaks, at each stage */
  pull: Readonly<Record<Stage, Range>>
  margin: Readonly<Record<Stage, Range>>
  /** the margin after a day, draw by draw */
  drawn: Float64Array
}

/** Middle and ends (nineteen in twenty) of some draws. */
export function rangeOfDraws(drawn: Float64Array): Range {
  const sorted = Float64Array.from(drawn).sort()
  return { value: percentile(sorted, 0.5), low: percentile(sorted, 0.025), high: percentile(sorted, 0.975) }
}

export function stackOf(j: Joint): Stack {
  const { area, across } = seatOf(j)
  return {
    bolt: j.bolt,
    thickness: j.thickness.value,
    soft: Math.min(j.soft.value, j.thickness.value),
    washer: across,
    area,
    data: j.data,
    sleeves: j.sleeves,
    discSprings: j.washers === 'disc springs',
  }
}

/** Pull at which the thread of one bolt strips, N; u draws the strength. */
export function stripPull(j: Joint, u = 0.5): number {
  const { bolt } = j
  const share = j.data.plastic ? within(strength, u) : 1
  switch (j.into) {
    case 'nut':
      // a nut of the bolt's class breaks the bolt first
      return 1.1 * j.strength.breaks * stressArea(bolt)
    case 'metal':
      return stripsAt(bolt, j.engaged, 140e6)
    case 'insert':
      return share * insertHolds(1.4 * bolt.d, j.engaged, j.data.plastic ? j.data.shear : 140e6)
    case 'plastic':
      return share * nutThreadArea(bolt, j.engaged) * j.data.shear
  }
}

/** Pull of one bolt as it was tightened, N: three draws. */
function firstPull(j: Joint, u1: number, u2: number, u3: number): number {
  const rubs = within(boltFriction, u1)
  const torque = j.torque ? within(j.torque, u2) : byHand(j.bolt, within(handPull[j.tight], u2))
  return Math.min(preloadOf(j.bolt, torque, rubs), mostPreload(j.bolt, j.strength, rubs, 1), stripPull(j, u3))
}

/** Torque that pins carry in the softer half, N·m; half of them bear. */
const pinsHold = (j: Joint, warm: number): number =>
  0.5 *
  j.pins *
  j.pin *
  Math.min(j.soft.value || j.thickness.value, 2 * j.pin) *
  j.data.flank *
  warm *
  j.radius.value

/** Everything about a joint against the peaks (N·m by draw) it has to carry; `part` names its own doubts. */
export function jointLasts(j: Joint, peak: Float64Array, part: number): Lasting {
  const at = doubtsAt(part)
  const stack = stackOf(j)
  const springs: Springs = springsOf(stack)
  const soft = springs.soft > 0
  const pulls = stages.map(() => new Float64Array(drawCount))
  const margins = stages.map(() => new Float64Array(drawCount))
  for (let i = 0; i < drawCount; i++) {
    const u = drawOf(i)
    const draw = {
      embeds: within(soft ? embeds.plastic : embeds.metal, u[at + 3]!),
      creep: within(j.data.creep, u[at + 4]!),
      stands: within(strength, u[at + 5]!),
      warm: within(j.warm, u[at + 6]!),
    }
    const first = firstPull(j, u[at]!, u[at + 1]!, u[at + 5]!)
    const rubs = within(soft ? friction.plastic : friction.metal, u[at + 2]!)
    const radius = within(j.radius, u[at + 7]!)
    stages.forEach((stage, k) => {
      const pull = pullLeft(stack, springs, first, stage, draw)
      const pins = pinsHold(j, stage === 'tightened' ? 1 : leftWarm(j.data, draw.warm))
      pulls[k]![i] = pull
      margins[k]![i] = Math.max(flangeTorque(rubs, 1, j.number * pull, radius), pins) / peak[i]!
    })
  }
  const byStage = (of: readonly Float64Array[]) =>
    Object.fromEntries(stages.map((s, k) => [s, rangeOfDraws(of[k]!)])) as Record<Stage, Range>
  return { pull: byStage(pulls), margin: byStage(margins), drawn: margins[2]! }
}

/** Torque a hub holds on its shaft, N·m; `u` its eight doubts. */
function holdTorque(h: Hold, u: Float64Array, at: number): number {
  const d = within(h.diameter, u[at]!)
  const length = within(h.length, u[at + 1]!)
  const warm = leftWarm(h.data, within(h.warm, u[at + 2]!))
  const flank = h.data.flank * warm * within(strength, u[at + 3]!)
  const pull = () => {
    const torque = h.torque
      ? within(h.torque, u[at + 4]!)
      : byHand(h.bolt, within(handPull['by hand'], u[at + 4]!))
    return h.number * preloadOf(h.bolt, torque, within(boltFriction, u[at + 5]!))
  }
  const rubs = within(friction.metal, u[at + 6]!)
  switch (h.by) {
    case 'key': {
      const one = keyStress(1, d, length, keyFor(d))
      return Math.min(flank / one.flank, 100e6 / one.shear)
    }
    case 'spline': {
      const teeth = Math.max(6, Math.round((Math.PI * d) / 5e-3))
      return flank / splinePressure(1, teeth, 1.25e-3, length, 0.92 * d)
    }
    case 'clamp':
      return clampTorque(rubs, pull() * (h.data.plastic ? warm : 1), d).lines
    case 'set screw':
      return setScrewTorque(pull(), d)
    case 'pin': {
      const one = crossPin(1, h.bolt.d, d, 0.4 * d)
      return h.number * Math.min(200e6 / one.shear, flank / one.flank)
    }
    case 'thread':
    case 'welded':
      // as much as the shaft's own end, four fifths as thick, takes before it yields
      return (within(strength, u[at + 3]!) * 120e6 * Math.PI * (0.8 * d) ** 3) / 16
  }
}

/** Margin of a hub, draw by draw. */
export function holdMargins(h: Hold, peak: Float64Array, part: number): Float64Array {
  const at = doubtsAt(part)
  return peak.map((t, i) => holdTorque(h, drawOf(i), at) / t)
}

/** What a shaft lets bend and shear over what twist and bending together ask, draw by draw; `hangs` kg at its end. */
export function shaftMargins(
  s: Turning,
  peak: Float64Array,
  hangs: Range,
  flexible: boolean,
  part: number,
): Float64Array {
  const at = doubtsAt(part)
  return peak.map((torque, i) => {
    const u = drawOf(i)
    const d = within(s.diameter, u[at]!)
    const bore = Math.min(s.bore.value, 0.95 * d)
    // twice the weight that hangs at the end, for unbalance; and what a stiff coupling a fifth of a millimetre off bends
    const weight = 2 * 9.81 * within(hangs, u[at + 1]!) * within(s.overhang, u[at + 2]!)
    const off = flexible ? 0 : 5e-5 + 4e-4 * u[at + 3]!
    const stiff = (s.metal.modulus * Math.PI * (d ** 4 - bore ** 4)) / 64
    const bend = (3 * stiff * off) / s.length.value ** 2
    const stress = shockStress({ torque, moment: weight + bend, torqueFactor: 1, momentFactor: 1.5 }, d, bore)
    return (within(strength, u[at + 4]!) * shaftAllows(s.metal, s.keyed)) / stress
  })
}

export type Carries = Exclude<Between, { kind: 'belt' }>
