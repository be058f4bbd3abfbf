/** The Float page's answer in one sentence, from the live state alone or, when it is there, from the whole report. */
import type { Finding } from '../../base/answers/finding.ts'
import { weightSum } from '../../hull/aboard/masses.ts'
import { riderCentre } from '../../hull/aboard/riderBody.ts'
import { aboardOf, type FloatInput } from './input.ts'
import type { LiveState } from './live.ts'
import type { LoadCase } from './loadCase.ts'

export interface FloatSays {
  says: string
  range?: string
  confidence: string
}

/** GM with the rider held stiff, m, from the GM with the weight on the deck: the same weight, higher up by so much of the whole. */
export function stiffGm(input: FloatInput, gmFeet: number): number {
  const c = riderCentre(input.rider.stance, input.rider.stature)
  if (!c.balances) return gmFeet
  const all = weightSum(aboardOf(input)).mass + input.rider.mass
  return gmFeet - (input.rider.mass * c.height) / all
}

const cm = (x: number) => `${(100 * x).toFixed(Math.abs(x) < 0.1 ? 1 : 0)} cm`

interface Sitting {
  stays: boolean
  trim: number
  heel: number
  draftAft: number
  freeboard: number
  gmRigid: number
  gmFeet: number
}

const ofLive = (input: FloatInput, s: LiveState): Sitting => ({
  stays: s.stays,
  trim: s.attitude.trim,
  heel: s.attitude.heel,
  draftAft: s.draftAft,
  freeboard: s.freeboard,
  gmRigid: stiffGm(input, s.gm),
  gmFeet: s.gm,
})

const ofCase = (c: LoadCase): Sitting => ({
  stays: !c.over && !c.sinks,
  trim: c.attitude.trim,
  heel: c.attitude.heel,
  draftAft: c.draftAft,
  freeboard: c.freeboard,
  gmRigid: c.gmRigid,
  gmFeet: c.gmFeet,
})

/** Sentence, range and how sure. Without a report the range is left out; it follows. */
export function floatSays(
  input: FloatInput,
  live: LiveState | undefined,
  report: { ridden: LoadCase; findings: readonly Finding[] } | undefined,
  weightsAssumed: boolean,
): FloatSays {
  const total = weightSum(aboardOf(input))
  const all = total.mass + input.rider.mass
  const most = input.water * input.hull.volume
  const confidence = weightsAssumed
    ? 'The file lists no weights: a usual mass for its size stands in.'
    : `List and tanks add up to ${total.mass.toFixed(0)} kg ± ${total.give.toFixed(1)} kg without the rider; home lists are often 5 to 10 % light.`
  if (all >= most)
    return {
      says: `It sinks: ${all.toFixed(0)} kg all told is ${(all - most).toFixed(0)} kg more than the whole hull can displace.`,
      confidence,
    }
  const s = report ? ofCase(report.ridden) : live && ofLive(input, live)
  if (!s) return { says: 'The rider’s place is off the deck, so how it sits is not known.', confidence }
  if (!s.stays)
    return {
      says: `With its rider ${input.rider.stance} there it does not stay: it rolls over or stands on end.`,
      confidence,
    }
  const draft = report?.findings.find((f) => f.id === 'float.draft')
  const range =
    draft?.low !== undefined && draft.high !== undefined
      ? `${(100 * draft.low).toFixed(0)} to ${(100 * draft.high).toFixed(0)} cm deep`
      : ''
  return {
    says: `With its rider ${input.rider.stance} it floats ${trimWords(s.trim)}${heelWords(s.heel)}, ${cm(s.draftAft)} deep at the stern, the deck edge ${s.freeboard < 0 ? `${cm(-s.freeboard)} under` : `${cm(s.freeboard)} above`} water, and ${standWords(s)}.`,
    ...(range ? { range } : {}),
    confidence,
  }
}

function trimWords(trim: number): string {
  const d = (trim * 180) / Math.PI
  return Math.abs(d) < 0.15 ? 'level' : `${Math.abs(d).toFixed(1)}° bow ${d > 0 ? 'up' : 'down'}`
}

function heelWords(heel: number): string {
  const d = (heel * 180) / Math.PI
  return Math.abs(d) < 0.3 ? '' : ` and ${Math.abs(d).toFixed(1)}° over to ${d > 0 ? 'port' : 'starboard'}`
}

function standWords(s: Sitting): string {
  // a rider held stiff who would tip it over nose or tail has no GM: no number is no "stands by itself"
  if (!(s.gmFeet >= 0)) return 'falls over at rest whatever the rider does'
  if (!(s.gmRigid >= 0)) return 'has to be balanced like a bicycle'
  return s.gmRigid < 0.05 ? 'barely stands by itself' : 'stands by itself'
}
