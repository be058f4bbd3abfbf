/** Everything the Float page shows that takes longer than a frame, as plain data that goes through a worker's door. */
import type { Finding } from '../../base/answers/finding.ts'
import type { Craft } from '../../craft/schema/craftSchema.ts'
import type { Attitude } from '../../hull/afloat/settle.ts'
import { solidProperties } from '../../physics/solid/integrals.ts'
import { solveTrade } from '../trade.ts'
import { type Envelope, riderEnvelope } from './envelope.ts'
import type { FloatAnswer } from './floatAnswer.ts'
import { floatFromCraft } from './floatFromCraft.ts'
import { floatLimits } from './floatLimits.ts'
import { floatTrade } from './floatTrade.ts'
import { rightingOf } from './heeled.ts'
import type { RightingCurve } from './righting.ts'
import { roomInput } from './room.ts'
import { wholeLift } from './swamped.ts'

/** Foam needed, without the solver's own state. */
export type FoamAdvice = Omit<FloatAnswer['need'], 'rest'> & { attitude: Attitude }

export interface FloatReport extends Omit<FloatAnswer, 'need' | 'swampedBodies'> {
  need: FoamAdvice
  /** kg the swamped craft can lift all told, and kg the whole hull could displace */
  swampedLift: number
  wholeLift: number
  righting: { rider: RightingCurve; stiff: RightingCurve; nobody: RightingCurve }
  room: Envelope
  /** the page's answer, and what stands under it */
  headline: Finding
  findings: Finding[]
}

/** Called off by the asker. */
export class FloatCalledOff extends Error {
  override name = 'FloatCalledOff'
}

/** Works the whole page out. NotKnown or RangeError where the craft gives no hull; FloatCalledOff when `cancelled` says so between two steps. */
export function floatReport(
  craft: Craft,
  progress: (part: number, says: string) => void = () => {},
  cancelled: () => boolean = () => false,
): FloatReport {
  const step = (part: number, says: string) => {
    if (cancelled()) throw new FloatCalledOff()
    progress(part, says)
  }
  step(0, 'Drawing the hull')
  const { input } = floatFromCraft(craft)
  step(0.05, 'Settling eight loads, intact and swamped')
  const solved = solveTrade(floatTrade, craft, undefined)
  const { need, swampedBodies, ...answer } = solved.answer
  step(0.55, 'Heeling it right round')
  // a shaft seal is under water anyway and says nothing about flooding
  const dry = { ...input, openings: input.openings.filter((o) => o.kind !== 'shaft seal') }
  const righting = {
    rider: rightingOf(dry, 'rider'),
    stiff: rightingOf(dry, 'stiff rider'),
    nobody: rightingOf(dry, 'nobody'),
  }
  step(0.65, 'Where the rider may be')
  const limits = {
    heelLimit: floatLimits.roomHeel.value,
    trimLimit: floatLimits.roomTrim.value,
    reserve: floatLimits.roomOpening.value,
  }
  const room = riderEnvelope(
    roomInput(input, limits),
    (part) => progress(0.65 + 0.2 * part, 'Where the rider may be'),
    cancelled,
  )
  step(0.95, 'Putting it in words')
  const headline = floatTrade.headline!(solved, floatLimits)
  const findings = floatTrade.judge(solved, floatLimits)
  const { rest, ...foam } = need
  progress(1, 'Done')
  return {
    ...answer,
    need: { ...foam, attitude: rest.value },
    swampedLift: wholeLift(swampedBodies, input.water),
    wholeLift: input.water * solidProperties(input.hull.mesh).volume,
    righting,
    room,
    headline,
    findings,
  }
}
