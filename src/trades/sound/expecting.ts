/** What the craft file says of the engines, laid beside what was heard of them: octave, and count. */
import { rpmText, usualSpeed } from './heardAnswer.ts'
import type { Hearing, Track } from './hearingTypes.ts'
import { type Prediction, predictedAt } from './residuals.ts'
import type { CraftExpects } from './soundFromCraft.ts'

function scaled(t: Track, factor: number, from: number, to: number, step: number): Track {
  const scale = (v: Float32Array) =>
    v.map((x, i) => (i * step >= from - 1e-6 && i * step < to - 1e-6 ? x * factor : x))
  return { ...t, rpm: scale(t.rpm), change: scale(t.change) }
}

const middle = (t: Track, from: number, to: number, step: number) => {
  const v = t.rpm.slice(Math.round(from / step), Math.round(to / step)).filter((x) => x > 0)
  return v.sort()[v.length >> 1] ?? 0
}

/** part of the predicted range that a speed may lie outside of it and still be taken for that reading */
const MARGIN = 0.08

function fits(rpm: number, p: Prediction, time: number): boolean {
  const { low, high } = predictedAt(p, time)
  return rpm >= low * (1 - MARGIN) && rpm <= high * (1 + MARGIN)
}

/**
 * The hearing with its octaves chosen by what the craft can do. Two engines that fire in turn on one shaft sound like one twice
 * as fast: a speed no engine reaches is halved. Where the sound leaves two readings open and only the other one lies in the
 * predicted range, that one is taken. Each choice is said in the flags; nothing else changes.
 */
export function withExpected(h: Hearing, expects: CraftExpects, prediction?: Prediction): Hearing {
  let tracks = h.tracks
  const flags = [...h.flags]
  const say = (code: string, text: string) => flags.push({ code, text, path: 'recording' })
  if (expects.coupling === 'one shaft' && expects.most !== undefined && tracks.length === 1) {
    const speed = usualSpeed(tracks[0]!)
    if (speed > expects.most) {
      tracks = [scaled(tracks[0]!, 0.5, 0, h.duration + h.step, h.step)]
      say(
        'in-turn',
        `The lines stand at ${rpmText(speed)}, faster than these engines can turn: taken as two engines on one shaft that fire in turn, at ${rpmText(speed / 2)}.`,
      )
    }
  }
  let octaves = h.octaves
  if (prediction)
    for (const o of h.octaves) {
      const t = tracks.find((x) => x.label === o.label)
      const speed = t ? middle(t, o.from, o.to, h.step) : 0
      const mid = 0.5 * (o.from + o.to)
      if (!t || speed === 0 || fits(speed, prediction, mid) || !fits(speed * o.factor, prediction, mid))
        continue
      tracks = tracks.map((x) => (x === t ? scaled(x, o.factor, o.from, o.to, h.step) : x))
      octaves = octaves.filter((x) => x !== o)
      say(
        'octave-chosen',
        `From ${o.from.toFixed(1)} to ${o.to.toFixed(1)} s the sound leaves ${rpmText(speed)} and ${rpmText(speed * o.factor)} open; the craft should run near ${rpmText(predictedAt(prediction, mid).rpm)}, so ${rpmText(speed * o.factor)} was taken.`,
      )
    }
  if (tracks === h.tracks) return h
  const settled =
    octaves.length < h.octaves.length && octaves.length === 0 && h.verdict.code === 'cannot tell'
  return {
    ...h,
    tracks,
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
