/** Everything the drive line has to say, and its headline. */
import { inCount, inPercent, inRpm, inTimes, ranged } from '../../base/answers/amounts.ts'
import type { Finding } from '../../base/answers/finding.ts'
import { type Sentence, say } from '../../base/answers/sentence.ts'
import type { DriveAnswer, DriveInputs, Part } from './driveAnswer.ts'
import type { DriveLimits } from './driveLimits.ts'
import { boltsOf, peaksOf, src, times } from './driveSay.ts'
import { jointFindings } from './jointFindings.ts'
import { opensFirst } from './opensFirst.ts'
import { lineFindings } from './shaftLineFindings.ts'

const question = 'strength' as const

/** Without a chain in the file: what to give for a first answer; without torque: that it is wanting. */
function lacking({ chain }: DriveInputs): Finding {
  const common = { question, standing: 'unknown' as const, sources: ['The craft file'] }
  if (chain)
    return {
      ...common,
      id: 'driveline.no-torque',
      says: 'Whether shaft and joints hold is not known: an engine has no torque curve yet.',
      because: [{ says: 'an engine without a curve', link: 'engines' }],
    }
  return {
    ...common,
    id: 'driveline.none',
    says: say`Whether shaft and joints hold is not known: the file names no shaft. ${inCount(6)} values of each coupling give a first answer: size, number and circle of its bolts, what it is made of, how tight they are, and what locks them.`,
    because: [{ says: 'no chain in the file: engine, coupling, shaft, impeller', link: 'shaft' }],
    measureNext: {
      what: 'write down size, number and circle of each coupling’s bolts, its material, how tight they are and what locks them',
      with: 'caliper',
      minutes: 10,
      path: 'shaft',
    },
  }
}

export function driveFindings(
  inputs: DriveInputs,
  answer: DriveAnswer | undefined,
  limits: DriveLimits,
): Finding[] {
  if (!answer) return [lacking(inputs)]
  return [
    ...jointFindings(answer.parts, limits),
    ...lineFindings(inputs, answer, limits),
    ...opensOf(inputs, answer),
  ]
}

/** Which part goes first, and how it would sound. */
function opensOf({ chain, setting }: DriveInputs, answer: DriveAnswer): Finding[] {
  if (!chain || !setting) return []
  const lead = opensFirst(chain, answer, setting)[0]
  if (!lead) return []
  const alone = lead.drives
  const heard: Sentence =
    lead.where === 'towards the jet'
      ? say`${lead.free.length > 1 ? 'all engines race' : 'the engine races'} towards ${inRpm(lead.races)} and the pull is gone`
      : alone
        ? say`what is in front of it races towards ${inRpm(lead.races)}, while the rest drives the jet alone at ${ranged(inRpm, alone)}`
        : say`what is in front of it races towards ${inRpm(lead.races)}, while the rest drives the jet alone`
  return [
    {
      id: 'driveline.opens',
      question,
      says: say`If a link lets go, it is most likely ${lead.name}, first in ${inPercent(lead.share)} of the draws; one would then hear that ${heard}.`,
      value: lead.share,
      unit: '1',
      standing: 'good',
      because: [{ says: 'the link that goes first', link: lead.path }],
      sources: [src.chain],
    },
  ]
}

/** The chain in one sentence: its weakest part decides. */
export function driveHeadline(
  inputs: DriveInputs,
  answer: DriveAnswer | undefined,
  limits: DriveLimits,
): Finding {
  const id = 'driveline.headline'
  const weakest = answer?.parts[0]
  if (!weakest) return { ...lacking(inputs), id }
  const says = headlineOf(weakest, limits)
  return {
    id,
    question,
    says,
    value: weakest.margin.value,
    low: weakest.margin.low,
    high: weakest.margin.high,
    unit: '1',
    standing: standingOf(weakest, limits),
    because: [{ says: say`it carries ${peaksOf(weakest)}`, link: weakest.of.path }],
    sources: [src.vdi, src.chain],
  }
}

function standingOf(p: Part, limits: DriveLimits): Finding['standing'] {
  if (p.lasts && p.lasts.margin.minutes.high < limits.slips.value) return 'stop'
  return p.margin.value < (p.lasts ? limits.keeps : limits.holds).value ? 'watch' : 'good'
}

function headlineOf(p: Part, limits: DriveLimits): Sentence {
  const name = p.of.kind === 'coupling' ? `${p.of.name}, ${boltsOf(p.of)},` : p.of.name
  const later = p.lasts ? say`; after a season ${inTimes(p.lasts.margin.season.value)} times` : ''
  const day = p.lasts ? ' after a day of running' : ''
  const margin = times(p.margin)
  if (p.margin.value < limits.holds.value && !p.lasts)
    return say`Of shaft and joints ${name} is asked too much: it bears ${margin} times its peaks.`
  return p.margin.value >= limits.holds.value
    ? say`Shaft and joints hold: the weakest of them, ${name} bears ${margin} times its peaks${day}${later}.`
    : say`Shaft and joints do not hold: ${name} bears ${margin} times its peaks${day}${later}.`
}
