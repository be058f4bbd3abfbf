/** Takes from tracks what is no engine by its ends, its length, or by living on another one's teeth. Rules are authored judgement. */
import { meanProfile } from './octave.ts'
import type { Lock } from './pathOne.ts'
import { HOP, STEP } from './settings.ts'
import type { ToothProfile } from './teeth.ts'
import { type FrameTrack, silence, soundingStretches } from './tracks.ts'

/** shortest sounding stretch kept, s, unless it is very clear */
const SHORTEST = 0.8
const CLEAR_SCORE = 5

/** Silences stretches too short to be an engine. */
export function dropShort(t: FrameTrack, locks: readonly Lock[] = []): void {
  for (const s of soundingStretches(t)) {
    if (locks.some((l) => l.rate > 0 && l.frame >= s.from && l.frame < s.to)) continue
    let sum = 0
    for (let i = s.from; i < s.to; i++) sum += t.score[i]!
    const mean = sum / (s.to - s.from)
    const seconds = (s.to - s.from) * STEP
    if (seconds < SHORTEST && !(mean > CLEAR_SCORE && seconds > 0.5 * SHORTEST)) silence(t, s)
  }
}

/** frames the score is averaged over, and the part of a stretch's median score under which nothing sounds */
const SMOOTH = 3
const FADED = 0.4
/** a piece at the end that short, s, behind a fade is an echo or a shout */
const AFTERMATH = 1.5
/** power after over power before, SIDE frames on each side, that means a cut */
const LOSS = 0.35
const SIDE = 4

/** Mean square of the sound around each frame. */
export function framePower(signal: Float32Array, frames: number): Float64Array {
  const raw = new Float64Array(frames)
  for (let i = 0; i < signal.length; i++) {
    const f = Math.floor(i / HOP)
    if (f < frames) raw[f]! += signal[i]! * signal[i]!
  }
  return raw.map((_, i) => ((raw[i - 1] ?? raw[i]!) + raw[i]! + (raw[i + 1] ?? raw[i]!)) / 3 + 1e-12)
}

/** ln f in three frames */
const LEAP = 0.12

/** share of a stretch's median score under which what comes before a fade, a leap or a rise of level is no engine yet */
const NOT_YET = 0.6

/**
 * Frame at which the engine itself starts, from `from` on: behind a fade, a leap or a sudden rise of level within the first
 * moments, where what came before was far less clear. The path likes to reach back into the noise before a start.
 */
function startOf(
  t: FrameTrack,
  from: number,
  to: number,
  median: number,
  faded: (i: number) => boolean,
  power: Float64Array | undefined,
): number {
  let start = from
  let run = 0
  let before = 0
  const last = Math.min(to - 2 * SIDE, from + Math.round(AFTERMATH / STEP))
  for (let i = from + 1; i < last; i++) {
    before += t.score[i - 1]!
    run = faded(i - 1) ? run + 1 : 0
    const leaps = i + 2 < to && Math.abs(Math.log(t.rate[i + 2]! / t.rate[i - 1]!)) > LEAP
    const rises = power !== undefined && i >= SIDE && power[i - SIDE]! / power[i + SIDE]! < LOSS
    if (before / (i - from) < NOT_YET * median && (run * STEP >= 0.15 || leaps || rises)) start = i
  }
  return start
}

/**
 * Takes off the ends of each stretch where the score has faded (the window and echoes reach past a stop),
 * and short pieces behind a fade at the end. Locked frames stay.
 */
export function trimEnds(t: FrameTrack, locks: readonly Lock[] = [], power?: Float64Array): void {
  for (const s of soundingStretches(t)) {
    if (locks.some((l) => l.rate > 0 && l.frame >= s.from && l.frame < s.to)) continue
    const sorted = t.score.slice(s.from, s.to).sort()
    const median = sorted[Math.floor(sorted.length / 2)]!
    const floor = FADED * median
    const faded = new Uint8Array(s.to - s.from)
    for (let i = s.from; i < s.to; i++) {
      let sum = 0
      let n = 0
      for (let k = Math.max(s.from, i - SMOOTH); k <= Math.min(s.to - 1, i + SMOOTH); k++) {
        sum += t.score[k]!
        n++
      }
      faded[i - s.from] = sum / n < floor ? 1 : 0
    }
    let from = s.from
    let to = s.to
    while (to > from && faded[to - 1 - s.from]) to--
    while (from < to && faded[from - s.from]) from++
    from = startOf(t, from, to, median, (i) => faded[i - s.from] === 1, power)
    // only where silence follows: at the end of the recording the engine just goes on
    const ends = s.to < t.rate.length - 2
    // the last fade of at least 0.15 s
    let run = 0
    for (let i = to - 1; ends && i > from && (to - i) * STEP < AFTERMATH; i--) {
      run = faded[i - s.from] ? run + 1 : 0
      if (run * STEP >= 0.15) {
        to = i
        run = 0
      }
    }
    // a sudden loss of level just before the end: the engine was cut, and what goes on is an echo or a shout
    if (power && ends) {
      let at = -1
      let least = LOSS
      for (let i = Math.max(from + SIDE, to - Math.round(AFTERMATH / STEP)); i < to; i++) {
        const ratio = power[Math.min(power.length - 1, i + SIDE)]! / power[i - SIDE]!
        if (ratio < least) {
          least = ratio
          at = i
        }
      }
      if (at >= 0) to = at
    }
    // a leap just before the end is another sound taking over
    for (let i = Math.max(from + 1, to - Math.round(AFTERMATH / STEP)); ends && i + 2 < to; i++)
      if (Math.abs(Math.log(t.rate[i + 2]! / t.rate[i - 1]!)) > LEAP) {
        to = i
        break
      }
    silence(t, { from: s.from, to: from })
    silence(t, { from: to, to: s.to })
  }
}

/** teeth of a comb far above a dense one must stand out this much, ln, to be an engine of their own */
const CLEAR_TEETH = 0.9
/** speed ratio from which that is asked, ln */
const FAR = Math.log(2.2)

/** Silences stretches of one track that live on the crowded teeth of a much slower one. */
export function dropHangersOn(t: FrameTrack, other: FrameTrack, profile: ToothProfile): void {
  for (const s of soundingStretches(t)) {
    let far = 0
    for (let i = s.from; i < s.to; i++)
      if (other.rate[i]! > 0 && Math.log(t.rate[i]! / other.rate[i]!) > FAR) far++
    if (far < 0.7 * (s.to - s.from)) continue
    const mean = meanProfile(profile, s).filter((v, h) => h % 2 === 1 && !Number.isNaN(v))
    const clear = mean.reduce((a, v) => a + v, 0) / Math.max(1, mean.length)
    if (mean.length < 2 || clear < CLEAR_TEETH) silence(t, s)
  }
}
