/** Pitched sounds that are no engine: hollow combs, tunes, voices. Rules are authored judgement. */
import { inSeconds } from '../../base/answers/amounts.ts'
import { printed, say as sentence } from '../../base/answers/sentence.ts'
import type { Flag } from '../../base/answers/solved.ts'
import { meanProfile } from './octave.ts'
import type { Lock } from './pathOne.ts'
import { STEP } from './settings.ts'
import type { ToothProfile } from './teeth.ts'
import { type FrameTrack, type Stretch, silence, soundingStretches } from './tracks.ts'

/** teeth under this, Hz, may be missing because of the phone */
const TRUSTED_FROM = 120
/** a tooth is there when its mean level stands this far over the floor, ln, and this part of the strongest one */
const THERE = 0.25
const THERE_PART = 0.15
const FILLED = 0.6
const IN_A_ROW = 3

/** Which of a comb's teeth are there, up to the highest one that is; no entry for those the phone may have taken. */
function teethThere(mean: Float64Array, rate: number): boolean[] {
  const whole: number[] = []
  for (let h = 1; 2 * h <= mean.length; h++) {
    const v = mean[2 * h - 1]!
    if (!Number.isNaN(v) && h * rate >= TRUSTED_FROM) whole.push(v)
  }
  const top = Math.max(...whole)
  const there = whole.map((v) => v > Math.max(THERE, THERE_PART * top))
  return there.slice(0, there.lastIndexOf(true) + 1)
}

/**
 * True for a comb with gaps: laid under a higher note it has every second or third tooth only. An engine's teeth stand side by
 * side; high up a resonance may raise one out of the noise again, so three in a row are enough.
 */
export function isHollow(mean: Float64Array, rate: number): boolean {
  const there = teethThere(mean, rate)
  if (there.length < 3) return false
  let run = 0
  for (const tooth of there) {
    run = tooth ? run + 1 : 0
    if (run >= IN_A_ROW) return false
  }
  return there.filter(Boolean).length / there.length < FILLED
}

const middle = (t: FrameTrack, from: number, to: number) => {
  const v = t.rate.slice(from, to).sort()
  return { median: v[Math.floor(v.length / 2)]!, spread: v[v.length - 1]! / v[0]! - 1 }
}

/** Steps between level notes in a stretch: a tune has several a second, an engine none. */
export function noteSteps(t: FrameTrack, s: Stretch): number {
  let steps = 0
  for (let i = s.from + 8; i + 9 < s.to; i++) {
    const a = middle(t, i - 8, i - 2)
    const b = middle(t, i + 3, i + 9)
    if (a.spread > 0.012 || b.spread > 0.012 || Math.abs(Math.log(b.median / a.median)) < 0.045) continue
    steps++
    i += 7
  }
  return steps
}

/** True where the score keeps falling away between syllables and the pitch stays where voices are. */
export function isVoice(t: FrameTrack, s: Stretch): boolean {
  const rate = t.rate.slice(s.from, s.to).sort()
  const score = t.score.slice(s.from, s.to).sort()
  const low = rate[Math.floor(0.1 * rate.length)]!
  const high = rate[Math.floor(0.9 * rate.length)]!
  if (low < 90 || high > 2.4 * low) return false
  const strong = score[Math.floor(0.8 * score.length)]!
  const weak = score.filter((v) => v < 0.4 * strong).length / score.length
  return weak > 0.15
}

/** s, Hz and score of a shout: short, in the range of voices, not as clear as an engine near by */
const SHOUT = 1.6
const SHOUT_SCORE = 5.5

/** True for a short stretch with silence on both sides that lies where voices do. */
export function isShout(t: FrameTrack, s: Stretch): boolean {
  const around = Math.round(0.4 / STEP)
  if ((s.to - s.from) * STEP > SHOUT || s.from < around || s.to > t.rate.length - around) return false
  for (let k = 1; k <= around; k++) if (t.rate[s.from - k]! > 0 || t.rate[s.to + k - 1]! > 0) return false
  const rate = t.rate.slice(s.from, s.to).sort()
  const score = t.score.slice(s.from, s.to).reduce((a, v) => a + v, 0) / (s.to - s.from)
  return rate[0]! > 90 && rate[rate.length - 1]! < 300 && score < SHOUT_SCORE
}

/** Silences what is no engine, and says why. */
export function dropFalse(t: FrameTrack, profile: ToothProfile, locks: readonly Lock[] = []): Flag[] {
  let hollow = 0
  let tune = 0
  let voice = 0
  for (const s of soundingStretches(t)) {
    if (locks.some((l) => l.rate > 0 && l.frame >= s.from && l.frame < s.to)) continue
    const seconds = (s.to - s.from) * STEP
    const rate = t.rate.slice(s.from, s.to).sort()[Math.floor((s.to - s.from) / 2)]!
    const steps = noteSteps(t, s)
    if (steps >= 3 && steps / seconds > 0.6) tune += seconds
    else if (isVoice(t, s) || isShout(t, s)) voice += seconds
    else if (isHollow(meanProfile(profile, s), rate)) hollow += seconds
    else continue
    silence(t, s)
  }
  const flags: Flag[] = []
  const say = (n: number, code: string, what: string) => {
    if (n > 0)
      flags.push({
        code,
        text: printed(sentence`${inSeconds(n)} of ${what} left out: not taken for an engine.`),
        path: 'recording',
      })
  }
  say(tune, 'music', 'sound that steps from note to note, as music does,')
  say(voice, 'voice', 'sound that rises and falls as a voice does')
  say(hollow, 'whistle', 'whistling or ringing')
  return flags
}
