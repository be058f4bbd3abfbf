/**
 * A whole engine or nothing: what a line must have before it counts as one. Tuned on this project's own clips of the tuning seeds:
 * rain on a plate, rotors and whistles held three lines over the floor, engines down to -5 dB six or more.
 */
import { meanProfile } from './octave.ts'
import type { Lock } from './pathOne.ts'
import { STEP } from './settings.ts'
import type { ToothProfile } from './teeth.ts'
import { type FrameTrack, type Stretch, silence, soundingStretches } from './tracks.ts'

/** s a line must hold; a piece this near another is part of the same running */
const HOLDS = 1
const SAME_RUNNING = 0.5
/** a tooth stands clear when its mean level lies this far over the floor, ln; so many must, and the best of them this far on average */
const CLEAR = 0.5
const CLEAR_TEETH = 4
const BEST = 5
const BEST_LEVEL = 1.1
/** a moment is a pause when its power is under this part of the loud ones'; an engine has none between its start and its stop */
const PAUSE = 0.03
const PAUSES = 0.12

/** What may have been an engine: shown, and counted as none. */
export interface PerhapsLine extends Stretch {
  /** Hz, frame by frame */
  rate: Float64Array
}

/** Whether the comb of a stretch is as full as an engine's; `mean` as meanProfile gives it. */
export function isFullComb(mean: Float64Array): boolean {
  const teeth = mean.filter((v, h) => h % 2 === 1 && !Number.isNaN(v)).sort()
  if (teeth.filter((v) => v > CLEAR).length < CLEAR_TEETH) return false
  const best = teeth.subarray(-BEST)
  return best.reduce((a, v) => a + v, 0) / best.length >= BEST_LEVEL
}

/** Whether the sound falls silent again and again in a stretch, as speech does between its syllables; `power` frame by frame. */
export function hasPauses(power: Float64Array, s: Stretch): boolean {
  const sorted = power.slice(s.from, s.to).sort()
  const loud = sorted[Math.floor(0.9 * sorted.length)]!
  return sorted.filter((v) => v < PAUSE * loud).length > PAUSES * sorted.length
}

/** Silences what is no whole engine and hands it back; what a hand laid down stays. */
export function dropDoubtful(
  t: FrameTrack,
  profile: ToothProfile,
  power: Float64Array,
  locks: readonly Lock[] = [],
): PerhapsLine[] {
  const out: PerhapsLine[] = []
  const all = soundingStretches(t)
  const near = (s: Stretch) =>
    all.some((o) => o !== s && Math.max(o.from - s.to, s.from - o.to) * STEP < SAME_RUNNING)
  for (const s of all) {
    if (locks.some((l) => l.rate > 0 && l.frame >= s.from && l.frame < s.to)) continue
    // a short recording is judged by what there is of it
    const holds = (s.to - s.from) * STEP >= Math.min(HOLDS, 0.6 * t.rate.length * STEP) || near(s)
    if (holds && isFullComb(meanProfile(profile, s)) && !hasPauses(power, s)) continue
    out.push({ ...s, rate: t.rate.slice(s.from, s.to) })
  }
  for (const s of out) silence(t, s)
  return out
}
