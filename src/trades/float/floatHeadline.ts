/** How it sits, in one sentence: the page's answer, a finding like any other, from a settled load or from the live state of a drag. */
import type { Because, Finding, Standing } from '../../base/answers/finding.ts'
import { type Sentence, say } from '../../base/answers/sentence.ts'
import { type WeightSum, weightSum } from '../../hull/aboard/masses.ts'
import { riderCentre } from '../../hull/aboard/riderBody.ts'
import type { FloatAnswer } from './floatAnswer.ts'
import type { FloatLimits } from './floatLimits.ts'
import { cm, heelSays, kg, naval, overWater, own, trimSays } from './floatSay.ts'
import { aboardOf, type FloatInput } from './input.ts'
import type { LiveState } from './live.ts'
import { draftFinding, edgeStanding, gmStanding } from './sitFindings.ts'

/** How it lies with its rider, from whatever settled it. */
interface Sitting {
  stays: boolean
  trim: number
  heel: number
  draftAft: number
  freeboard: number
  /** GM, m: the rider stiff, and balancing */
  gmRigid: number
  gmFeet: number
}

/** GM with the rider held stiff, m, from the GM with the weight on the deck: the same weight, higher up by so much of the whole. */
export function stiffGm(input: FloatInput, gmFeet: number): number {
  const c = riderCentre(input.rider.stance, input.rider.stature)
  if (!c.balances) return gmFeet
  const all = weightSum(aboardOf(input)).mass + input.rider.mass
  return gmFeet - (input.rider.mass * c.height) / all
}

/** The headline of a solved craft. */
export function floatHeadline(
  input: FloatInput,
  a: FloatAnswer,
  weightsAssumed: boolean,
  limits: FloatLimits,
): Finding {
  const c = a.ridden
  if (c.sinks) return sinking(input, a.weights, weightsAssumed)
  const sits: Sitting = {
    stays: !c.over,
    trim: c.attitude.trim,
    heel: c.attitude.heel,
    draftAft: c.draftAft,
    freeboard: c.freeboard,
    gmRigid: c.gmRigid,
    gmFeet: c.gmFeet,
  }
  const { value, low, high } = draftFinding(input, a, weightsAssumed, limits)
  const range = {
    ...(value === undefined ? {} : { value }),
    ...(low === undefined ? {} : { low }),
    ...(high === undefined ? {} : { high }),
    unit: 'm',
  }
  const standing = sits.stays ? worse(edgeStanding(sits.freeboard, limits), gmStanding(a, limits)) : 'stop'
  return headline(
    input,
    says(input, sits, limits),
    standing,
    a.weights,
    weightsAssumed,
    sits.stays ? range : {},
  )
}

/** The same while the rider is dragged, before the loads are settled; its range follows. */
export function liveHeadline(
  input: FloatInput,
  live: LiveState | undefined,
  weightsAssumed: boolean,
  limits: FloatLimits,
): Finding {
  const total = weightSum(aboardOf(input))
  if (total.mass + input.rider.mass >= input.water * input.hull.volume)
    return sinking(input, total, weightsAssumed)
  if (!live)
    return headline(
      input,
      'The rider’s place is off the deck, so how it sits is not known.',
      'unknown',
      total,
      weightsAssumed,
    )
  const sits: Sitting = {
    stays: live.stays,
    trim: live.attitude.trim,
    heel: live.attitude.heel,
    draftAft: live.draftAft,
    freeboard: live.freeboard,
    gmRigid: stiffGm(input, live.gm),
    gmFeet: live.gm,
  }
  const standing = sits.stays ? edgeStanding(sits.freeboard, limits) : 'stop'
  return headline(input, says(input, sits, limits), standing, total, weightsAssumed)
}

const worse = (a: Standing, b: Standing): Standing =>
  (['stop', 'watch', 'unknown', 'good'] as const).find((s) => s === a || s === b)!

function says(input: FloatInput, s: Sitting, limits: FloatLimits): Sentence {
  const { stance } = input.rider
  if (!s.stays) return `With its rider ${stance} there it does not stay: it rolls over or stands on end.`
  const heel = heelSays(s.heel)
  const lies = say`With its rider ${stance} it floats ${trimSays(s.trim)}${heel === undefined ? '' : say` and ${heel}`}, ${cm(s.draftAft)} deep at the stern`
  // a deck edge under water is the answer, whatever the GM says
  if (s.freeboard < limits.awash.value)
    return say`${lies}, the deck edge ${overWater(s.freeboard)}: water comes over it at rest, before any wave.`
  const low: Sentence = s.freeboard < limits.freeboard.value ? 'only ' : ''
  return say`${lies}, the deck edge ${low}${overWater(s.freeboard)}, and ${standWords(s, limits)}.`
}

function standWords(s: Sitting, limits: FloatLimits): string {
  // a rider held stiff who would tip it over nose or tail has no GM: no number is no "stands by itself"
  if (!(s.gmFeet >= limits.feetGm.value)) return 'falls over at rest whatever the rider does'
  if (!(s.gmRigid >= 0)) return 'has to be balanced like a bicycle'
  return s.gmRigid < limits.stiffGm.value ? 'barely stands by itself' : 'stands by itself'
}

function sinking(input: FloatInput, total: WeightSum, weightsAssumed: boolean): Finding {
  const all = total.mass + input.rider.mass
  const most = input.water * input.hull.volume
  return headline(
    input,
    say`It sinks: ${kg(all)} all told is ${kg(all - most)} more than the whole hull can displace.`,
    'stop',
    total,
    weightsAssumed,
  )
}

/** How sure: what the weight rests on. */
function surely(total: WeightSum, weightsAssumed: boolean): Because {
  return weightsAssumed
    ? { says: 'the file lists no weights: a usual mass for its size stands in', link: 'weights' }
    : {
        says: say`list and tanks add up to ${kg(total.mass)} give or take ${kg(total.give)} without the rider; home lists are often 5 to 10 % light`,
        link: 'weights',
      }
}

function headline(
  input: FloatInput,
  says: Sentence,
  standing: Standing,
  total: WeightSum,
  weightsAssumed: boolean,
  range: Pick<Finding, 'value' | 'low' | 'high' | 'unit'> = {},
): Finding {
  return {
    id: 'float.headline',
    question: 'float',
    says,
    ...range,
    standing,
    because: [surely(total, weightsAssumed), { says: `hull taken from ${input.hull.from}`, link: 'hull' }],
    sources: [own, naval],
  }
}
