/** What the craft file says of the engines, laid beside what was heard of them: octave, and count. */
import { clockText } from '../../base/answers/clockText.ts'
import { printed, type Sentence, say } from '../../base/answers/sentence.ts'
import { usualSpeed } from './heardAnswer.ts'
import type { Hearing, Track } from './hearingTypes.ts'
import { type Prediction, predictedAt } from './residuals.ts'
import { atRpm } from './saySpeed.ts'
import { onSharedShaft } from './sharedShaft.ts'
import type { CraftExpects } from './soundFromCraft.ts'
import { type SoundLimits, soundLimits } from './soundLimits.ts'

function scaled(t: Track, factor: number, from: number, to: number, step: number): Track {
  const scale = (v: Float32Array) =>
    v.map((x, i) => (i * step >= from - 1e-6 && i * step < to - 1e-6 ? x * factor : x))
  return { ...t, rpm: scale(t.rpm), change: scale(t.change) }
}

const middle = (t: Track, from: number, to: number, step: number) => {
  const v = t.rpm.slice(Math.round(from / step), Math.round(to / step)).filter((x) => x > 0)
  return v.sort()[v.length >> 1] ?? 0
}

function fits(rpm: number, p: Prediction, time: number, { octaveMargin }: SoundLimits): boolean {
  const { low, high } = predictedAt(p, time)
  return rpm >= low * (1 - octaveMargin.value) && rpm <= high * (1 + octaveMargin.value)
}

/**
 * The hearing with its octaves chosen by what the craft can do. Two engines that fire in turn on one shaft sound like one twice
 * as fast: a speed no engine reaches is halved. Where the sound leaves two readings open and only the other one lies in the
 * predicted range, that one is taken. Each choice is said in the flags; nothing else changes.
 */
export function withExpected(
  h: Hearing,
  expects: CraftExpects,
  prediction?: Prediction,
  limits: SoundLimits = soundLimits,
): Hearing {
  let tracks = h.tracks
  const flags = [...h.flags]
  // a speed is in rev/min in every system of units
  const flag = (code: string, says: Sentence) => flags.push({ code, text: printed(says), path: 'recording' })
  if (expects.coupling === 'one shaft' && expects.most !== undefined && tracks.length === 1) {
    const speed = usualSpeed(tracks[0]!)
    if (speed > expects.most) {
      tracks = [scaled(tracks[0]!, 0.5, 0, h.duration + h.step, h.step)]
      flag(
        'in-turn',
        say`The lines stand at ${atRpm(speed)}, faster than these engines can turn: taken as two engines on one shaft that fire in turn, at ${atRpm(speed / 2)}.`,
      )
    }
  }
  const named = onSharedShaft(h.events, expects, prediction?.roots)
  const events = named.some((e, i) => e !== h.events[i]) ? named : h.events
  let octaves = h.octaves
  if (prediction)
    for (const o of h.octaves) {
      const t = tracks.find((x) => x.label === o.label)
      const speed = t ? middle(t, o.from, o.to, h.step) : 0
      const mid = 0.5 * (o.from + o.to)
      const inside = (rpm: number) => fits(rpm, prediction, mid, limits)
      if (!t || speed === 0 || inside(speed) || !inside(speed * o.factor)) continue
      tracks = tracks.map((x) => (x === t ? scaled(x, o.factor, o.from, o.to, h.step) : x))
      octaves = octaves.filter((x) => x !== o)
      const taken = atRpm(speed * o.factor)
      flag(
        'octave-chosen',
        say`From ${clockText(o.from)} to ${clockText(o.to)} the sound leaves ${atRpm(speed)} and ${taken} open; the craft should run near ${atRpm(predictedAt(prediction, mid).rpm)}, so ${taken} was taken.`,
      )
    }
  if (tracks === h.tracks && events === h.events) return h
  const settled =
    octaves.length < h.octaves.length && octaves.length === 0 && h.verdict.code === 'cannot tell'
  return {
    ...h,
    tracks,
    events,
    octaves,
    flags,
    verdict: settled
      ? { ...h.verdict, code: 'one', says: 'One set of lines was heard; the craft file settles its speed.' }
      : h.verdict,
  }
}

/** How the count of lines heard goes with the craft file; undefined when it needs no word. */
export function countAgainst(
  h: Hearing,
  expects: CraftExpects,
): { agrees: boolean; says: string } | undefined {
  if (h.verdict.code === 'no engine' || h.verdict.code === 'cannot tell') return undefined
  const lines = h.verdict.code === 'two' ? 2 : 1
  switch (expects.coupling) {
    case 'none':
      return {
        agrees: false,
        says: 'An engine was heard, but the craft file has none that runs with a sound.',
      }
    case 'single':
      return lines === 1
        ? undefined
        : {
            agrees: false,
            says: 'Two engines were heard, but the craft file has one: another ran nearby, or a voice or an echo was taken for one.',
          }
    case 'one shaft':
      return lines === 1
        ? {
            agrees: true,
            says: 'Both engines are on one shaft, so they sound as one; whether both fired, the speed alone does not tell.',
          }
        : {
            agrees: false,
            says: 'Two speeds were heard although both engines are on one shaft: a coupling slips, or another engine ran nearby.',
          }
    case 'one-way':
      return lines === 1
        ? {
            agrees: true,
            says: 'One speed was heard: both engines drive the shaft together, or one stood still behind its clutch.',
          }
        : {
            agrees: true,
            says: 'Two speeds were heard: one engine ran free of the shaft behind its one-way clutch.',
          }
    case 'apart':
      return lines === 2
        ? undefined
        : {
            agrees: false,
            says: 'Only one engine was heard, where each of two drives a jet of its own: the other was dead, too quiet, or turned at the very same speed.',
          }
  }
}
