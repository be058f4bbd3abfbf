/** What a hearing comes to: the facts of each engine heard, and the answer in one sentence. */
import { inPercent, inSeconds, withEnds } from '../../base/answers/amounts.ts'
import { clockText } from '../../base/answers/clockText.ts'
import { joined, type Sentence, say } from '../../base/answers/sentence.ts'
import type { Hearing, Track } from './hearingTypes.ts'
import { atRpm, percentile } from './saySpeed.ts'
import type { RunEvent } from './shaftEvents.ts'
import type { CraftExpects } from './soundFromCraft.ts'
import { type SoundLimits, soundLimits } from './soundLimits.ts'

/** What was heard of one engine. */
export interface HeardEngine {
  label: 'A' | 'B'
  /** rev/min: the median of what was heard, and where nine tenths of the time lie */
  usual: number
  low: number
  high: number
  /** part of the recording in which it was heard, and the mean confidence there, both 0 to 1 */
  part: number
  confidence: number
  /** s of the longest unbroken stretch */
  longest: number
}

/** The usual speed of a track over what was heard of it, rev/min; 0 when nothing was. */
export const usualSpeed = (t: Track) => percentile(t.rpm, 0.5)

function heardEngine(t: Track, step: number): HeardEngine {
  let n = 0
  let sum = 0
  let longest = 0
  for (let i = 0, run = 0; i < t.rpm.length; i++) {
    run = t.rpm[i]! > 0 ? run + 1 : 0
    longest = Math.max(longest, run)
    if (run === 0) continue
    n++
    sum += t.confidence[i]!
  }
  return {
    label: t.label,
    usual: usualSpeed(t),
    low: percentile(t.rpm, 0.05),
    high: percentile(t.rpm, 0.95),
    part: n / Math.max(1, t.rpm.length),
    confidence: n > 0 ? sum / n : 0,
    longest: longest * step,
  }
}

/** The engines heard; none where the hearing says that none was. */
export const enginesHeard = (h: Hearing): HeardEngine[] =>
  h.verdict.code === 'no engine' ? [] : h.tracks.map((t) => heardEngine(t, h.step)).filter((e) => e.usual > 0)

/** "Engine A", or "The engine" where there is only one. */
export const nameOf = (h: Hearing, label: 'A' | 'B') =>
  h.tracks.length > 1 ? `Engine ${label}` : 'The engine'

/**
 * What stands instead of a verdict where the recording is too short for one, or only snatches were heard in one that had room for
 * more; undefined otherwise. A line that never lasts is no proof of an engine.
 */
export function doubtOf(
  h: Hearing,
  heard: readonly HeardEngine[] = enginesHeard(h),
  limits: SoundLimits = soundLimits,
): Sentence | undefined {
  if (heard.length === 0) return undefined
  const about = say`about ${joined(
    heard.map((e) => [atRpm(e.usual)]),
    ' and ',
  )}`
  if (h.duration < limits.shortest.value)
    return say`Too short to tell an engine from another sound; if this is one, it turns at ${about}.`
  const longest = Math.max(...heard.map((e) => e.longest))
  if (h.duration < limits.roomForMore.value || longest >= limits.snatch.value) return undefined
  return say`Whether an engine ran cannot be told: something like one, at ${about}, was heard only in snatches of at most ${inSeconds(longest)}. A voice, music or a horn does that too.`
}

export interface RunAnswer {
  says: Sentence
  /** spread of the speeds, and how sure it is */
  confidence: Sentence
  /** neither the count nor the speed can be stood by */
  open: boolean
}

/** What is known of the engines beside the sound. */
export type KnownEngines = Pick<CraftExpects, 'coupling'>

/** Who ran, for a sentence about one set of lines. */
function whoRan(known: KnownEngines | undefined): [who: string, remark: string] {
  switch (known?.coupling) {
    case 'single':
      return ['The engine ran', '']
    case 'one shaft':
      return [
        'The two engines on their one shaft turned as one',
        'Whether both fired, the speed alone does not tell. ',
      ]
    case 'one-way':
      return [
        'One speed was heard of the two engines on their one shaft',
        'One may have stood still behind its clutch. ',
      ]
    case 'apart':
      return ['Only one of the two engines was heard', 'The other may have turned at the very same speed. ']
    default:
      return ['One engine ran', 'A pair locked together would sound the same. ']
  }
}

function nothingHeard(h: Hearing): RunAnswer {
  const why = h.flags.find((f) => f.code === 'silent' || f.code === 'short')
  return {
    says: `${why ? `${why.text} ` : ''}No engine was heard.${h.perhaps ? ' The thin grey line is perhaps one: too few of its lines stand clear, or it does not last.' : ''}`,
    confidence:
      'Nothing in the recording has the even comb of lines that an engine makes; a far or a quiet engine can be missed.',
    open: true,
  }
}

/** What the engines did, in one sentence, with the range of speeds and how sure that is; `known` from the craft file. */
export function runAnswer(
  h: Hearing,
  known?: KnownEngines,
  heard: readonly HeardEngine[] = enginesHeard(h),
  limits: SoundLimits = soundLimits,
): RunAnswer {
  const first = heard[0]
  if (!first) return nothingHeard(h)
  const doubted = doubtOf(h, heard, limits)
  if (doubted)
    return {
      says: doubted,
      confidence:
        'Play it: the ear knows a voice at once. A recording of ten seconds or more of steady running says most.',
      open: true,
    }
  const open = h.verdict.code === 'cannot tell'
  const told = tellEvents(h.events, heard.length > 1, limits)
  return {
    says: say`${whatRan(h, known, heard, first)}${told}.`,
    confidence: howSure(h.verdict.code === 'one' ? whoRan(known)[1] : '', heard, limits),
    open,
  }
}

function whatRan(
  h: Hearing,
  known: KnownEngines | undefined,
  heard: readonly HeardEngine[],
  first: HeardEngine,
): Sentence {
  if (heard.length > 1) {
    const speeds = joined(
      heard.map((e) => say`${e.label} mostly at ${atRpm(e.usual)}`),
      ' and ',
    )
    return known?.coupling === 'one shaft'
      ? say`Two speeds were heard though both engines are on one shaft, ${speeds}`
      : say`Two engines ran independently, ${speeds}`
  }
  if (h.verdict.code !== 'cannot tell') return say`${whoRan(known)[0]}, mostly at ${atRpm(first.usual)}`
  const octave = h.octaves[0]
  const other = octave
    ? say` or ${atRpm(first.usual * octave.factor)}`
    : ', or was two engines an octave apart'
  return say`The sound cannot tell whether the engine ran at ${atRpm(first.usual)}${other}`
}

function howSure(remark: string, heard: readonly HeardEngine[], limits: SoundLimits): Sentence {
  const sure = heard.reduce((sum, e) => sum + e.confidence, 0) / heard.length
  const word =
    sure > limits.heardClearly.value
      ? 'clearly'
      : sure > limits.heardFairly.value
        ? 'fairly clearly'
        : 'faintly'
  const spread = heard.map(
    (e) => say`${heard.length > 1 ? `${e.label} ` : ''}${atRpm(e.low)} to ${atRpm(e.high)}`,
  )
  return say`Nine tenths of the time from ${joined(spread)}. ${remark}Heard ${word} (confidence ${inPercent(Math.min(0.99, sure))}).`
}

/** An amount with the speeds between which nine tenths of the time lie. */
export const usualRange = (e: HeardEngine) => withEnds(atRpm(e.usual), { low: e.low / 60, high: e.high / 60 })

const verbs: Partial<Record<RunEvent['kind'], [string, string]>> = {
  'load lost': ['lost its load once', 'lost its load'],
  'coupling opens': ['opened its coupling once', 'opened its coupling'],
  flare: ['raced once', 'raced'],
  hunting: ['hunted once', 'hunted'],
  bog: ['bogged once', 'bogged'],
  fall: ['lost speed once', 'lost speed'],
  'cut-out': ['cut out once', 'cut out'],
  'water hit': ['was hit by spray once', 'was hit by spray'],
  ventilation: ['drew air once', 'drew air'],
  misfire: ['misfired', 'misfired'],
  'four-stroking': ['four-stroked', 'four-stroked'],
}

/** The two most telling things that happened, as a tail of the sentence. */
function tellEvents(events: readonly RunEvent[], two: boolean, limits: SoundLimits): string {
  const parts: string[] = []
  for (const kind of Object.keys(verbs) as (keyof typeof verbs)[]) {
    const all = events.filter((e) => e.kind === kind && e.confidence > limits.told.value)
    const first = all[0]
    if (!first) continue
    const [once, more] = verbs[kind]!
    const who = two && first.engine !== 'both' ? `${first.engine} ` : two ? 'both ' : ''
    parts.push(
      all.length > 1 && once !== more
        ? `${who}${more} ${all.length} times`
        : `${who}${once} at ${clockText(first.time)}`,
    )
  }
  const dead = events.find((e) => e.kind === 'one dead')
  if (dead) parts.unshift(`one died at ${clockText(dead.time)}`)
  return parts.length > 0 ? `; ${two ? '' : 'it '}${parts.slice(0, 2).join(' and ')}` : ''
}

/** An event that may not have been. */
export const isUnsure = (e: RunEvent, limits: SoundLimits = soundLimits) => e.confidence < limits.unsure.value
