/** The answer to "How will it go?": one sentence, as a finding like any other. */
import { inNewtons, inPercent, inRpm, inScaleKg, inSpeed, ranged } from '../../base/answers/amounts.ts'
import type { Because, Finding, Standing } from '../../base/answers/finding.ts'
import { type Sentence, say } from '../../base/answers/sentence.ts'
import type { Craft } from '../../craft/index.ts'
import type { Balance } from './balanceTypes.ts'
import { cannotTurn } from './oneDeadFindings.ts'
import { doubtOf } from './pushAnswer.ts'
import { measureNextFor } from './pushFindings.ts'

/** How it goes, and where the doubt comes from. */
export function pushHeadline(craft: Craft, b: Balance): Finding {
  const next = measureNextFor(b.drivers)
  const known = Number.isFinite(b.topSpeed.value)
  return {
    id: 'push.headline',
    question: 'push',
    says: going(craft, b),
    ...(known ? { value: b.topSpeed.value, unit: 'm/s' } : {}),
    ...(known && Number.isFinite(b.topSpeed.low) ? { low: b.topSpeed.low, high: b.topSpeed.high } : {}),
    standing: standingOf(b),
    because: doubts(craft, b),
    ...(next ? { measureNext: next } : {}),
    sources: ['Torque balance of engine and impeller, thrust against drag at every speed'],
  }
}

function standingOf(b: Balance): Standing {
  if (!Number.isFinite(b.tiedUp.rotation)) return 'stop'
  if (!b.top) return 'unknown'
  return b.run.stuck ? 'watch' : 'good'
}

/** what `limitedBy` says of a craft without a top speed because its jet cannot move it */
const immobile: readonly Balance['limitedBy']['code'][] = ['air', 'cavitation', 'impeller']

function going(craft: Craft, b: Balance): Sentence {
  if (!Number.isFinite(b.tiedUp.rotation)) return `It will not go: ${cannotTurn(craft)}.`
  const scale = inScaleKg(b.pull.value)
  const pull = say`pull ${ranged(inNewtons, b.pull)}, ${scale} on a luggage scale, tied up at ${inRpm(b.tiedUpRotation.value)}`
  // no top speed has two opposite reasons: more thrust than the hull model covers, or none to speak of
  if (!b.top && immobile.includes(b.limitedBy.code)) return say`It will hardly move. ${b.limitedBy.says}`
  if (!b.top) return say`It should ${pull}; its top speed lies beyond what the model covers.`
  const speed = ranged(inSpeed, b.topSpeed)
  return b.run.stuck
    ? say`It should ${pull}, but stay at ${speed}, below the hump.`
    : say`It should reach ${speed} and ${pull}.`
}

function doubts(craft: Craft, b: Balance): Because[] {
  const { share, names } = doubtOf(craft, b)
  return names.length === 0
    ? []
    : [
        {
          says: say`${inPercent(share)} of the doubt comes from ${names.join(' and ')}`,
          link: 'engines',
        },
      ]
}
