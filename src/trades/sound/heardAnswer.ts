/** A hearing in sentences. */

import type { Hearing, Track } from './hearingTypes.ts'
import type { RunEvent } from './shaftEvents.ts'

/** The value below which part `q` (0 to 1) of what was heard lies; 0 where nothing was. */
export function percentile(values: Float32Array, q: number): number {
  const v = values.filter((x) => x > 0).sort()
  return v[Math.min(v.length - 1, Math.floor(q * v.length))] ?? 0
}

/** "1:07.3" of seconds. */
export function clockText(seconds: number): string {
  const tenths = Math.round(Math.max(0, seconds) * 10)
  const minutes = Math.floor(tenths / 600)
  return `${minutes}:${((tenths % 600) / 10).toFixed(1).padStart(4, '0')}`
}

/** "6340 rpm", to ten. */
export const rpmText = (rpm: number) => `${Math.round(rpm / 10) * 10} rpm`

/** The usual speed of a track over what was heard of it, rev/min; 0 when nothing was. */
export const usualSpeed = (t: Track) => percentile(t.rpm, 0.5)

/** The tracks on which an engine was heard at all. */
export const heardTracksOf = (h: Hearing): Track[] =>
  h.verdict.code === 'no engine' ? [] : h.tracks.filter((t) => usualSpeed(t) > 0)

/** Part of the recording in which an engine was heard, and the mean confidence there, both 0 to 1. */
export function heardPart(t: Track): { part: number; confidence: number } {
  let n = 0
  let sum = 0
  for (let i = 0; i < t.rpm.length; i++)
    if (t.rpm[i]! > 0) {
      n++
      sum += t.confidence[i]!
    }
  return { part: n / Math.max(1, t.rpm.length), confidence: n > 0 ? sum / n : 0 }
}

/** s below which an unbroken stretch of line is no proof of an engine: a shout, a chord or a horn lasts as long */
const SNATCH = 1.5
/** s of recording from which only snatches are remarkable */
const LONG_ENOUGH = 4

/**
 * s of the longest unbroken stretch heard of any engine, where nothing longer than a snatch was heard in a recording that had
 * room for it; undefined otherwise. A line that never lasts is no proof of an engine.
 */
function snatches(h: Hearing): number | undefined {
  if (h.duration < LONG_ENOUGH) return undefined
  let longest = 0
  for (const t of h.tracks)
    for (let i = 0, run = 0; i < t.rpm.length; i++) {
      run = t.rpm[i]! > 0 ? run + 1 : 0
      longest = Math.max(longest, run * h.step)
    }
  return longest > 0 && longest < SNATCH ? longest : undefined
}

/** What stands instead of a verdict where the recording is too short for one, or only snatches were heard; undefined otherwise. */
export function doubtOf(h: Hearing): string | undefined {
  const heard = heardTracksOf(h)
  if (heard.length === 0) return undefined
  const about = `about ${heard.map((t) => rpmText(usualSpeed(t))).join(' and ')}`
  if (h.flags.some((f) => f.code === 'short'))
    return `Too short to tell an engine from another sound; if this is one, it turns at ${about}.`
  const most = snatches(h)
  return most === undefined
    ? undefined
    : `Whether an engine ran cannot be told: something like one, at ${about}, was heard only in snatches of at most ${most.toFixed(1)} s. A voice, music or a horn does that too.`
}

const noEngine = { text: 'No engine was heard.' }

export interface RunAnswer {
  says: string
  /** spread of the speeds, and how sure it is */
  confidence: string
}

/** What is known of the engines beside the sound. */
export interface KnownEngines {
  coupling: 'none' | 'single' | 'one shaft' | 'one-way' | 'apart'
}

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

/** What the engines did, in one sentence, with the range of speeds and how sure that is; `known` from the craft file. */
export function runAnswer(h: Hearing, known?: KnownEngines): RunAnswer {
  const heard = heardTracksOf(h)
  if (heard.length === 0)
    return {
      says: [...h.flags.filter((f) => f.code === 'silent' || f.code === 'short').slice(0, 1), noEngine]
        .map((f) => f.text)
        .join(' '),
      confidence:
        'Nothing in the recording has the even comb of lines that an engine makes; a far or a quiet engine can be missed.',
    }
  const doubted = doubtOf(h)
  if (doubted)
    return {
      says: doubted,
      confidence:
        'Play it: the ear knows a voice at once. A recording of ten seconds or more of steady running says most.',
    }
  const speeds = heard.map((t) =>
    heard.length > 1 ? `${t.label} mostly at ${rpmText(usualSpeed(t))}` : rpmText(usualSpeed(t)),
  )
  const octave = h.verdict.code === 'cannot tell' ? otherOctave(h, heard[0]!) : ''
  const [who, remark] = whoRan(known)
  const ran =
    heard.length > 1
      ? known?.coupling === 'one shaft'
        ? `Two speeds were heard though both engines are on one shaft, ${speeds.join(' and ')}`
        : `Two engines ran independently, ${speeds.join(' and ')}`
      : h.verdict.code === 'cannot tell'
        ? `The sound cannot tell whether the engine ran at ${speeds[0]}${octave}`
        : `${who}, mostly at ${speeds[0]}`
  const told = tellEvents(h.events, heard.length > 1)
  const sure = heard.reduce((sum, t) => sum + heardPart(t).confidence, 0) / heard.length
  const spread = heard.map((t) => {
    const [low, high] = [percentile(t.rpm, 0.05), percentile(t.rpm, 0.95)].map((v) => Math.round(v / 10) * 10)
    return `${heard.length > 1 ? `${t.label} ` : ''}${low} to ${high} rpm`
  })
  return {
    says: `${ran}${told}.`,
    confidence: `Nine tenths of the time from ${spread.join(', ')}. ${h.verdict.code === 'one' ? remark : ''}Heard ${sure > 0.8 ? 'clearly' : sure > 0.5 ? 'fairly clearly' : 'faintly'} (confidence ${Math.min(99, Math.round(100 * sure))} %).`,
  }
}

function otherOctave(h: Hearing, t: Track): string {
  const o = h.octaves[0]
  return o ? ` or ${rpmText(usualSpeed(t) * o.factor)}` : ', or was two engines an octave apart'
}

const verbs: Partial<Record<RunEvent['kind'], [string, string]>> = {
  flare: ['raced once', 'raced'],
  bog: ['bogged once', 'bogged'],
  'cut-out': ['cut out once', 'cut out'],
  'water hit': ['was hit by spray once', 'was hit by spray'],
  ventilation: ['drew air once', 'drew air'],
  misfire: ['misfired', 'misfired'],
  'four-stroking': ['four-stroked', 'four-stroked'],
}

/** The two most telling things that happened, as a tail of the sentence. */
function tellEvents(events: readonly RunEvent[], two: boolean): string {
  const parts: string[] = []
  for (const kind of Object.keys(verbs) as (keyof typeof verbs)[]) {
    const all = events.filter((e) => e.kind === kind && e.confidence > 0.25)
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
