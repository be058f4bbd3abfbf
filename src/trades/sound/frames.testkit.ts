import { STEP } from './settings.ts'
import type { EventContext } from './shaftEvents.ts'
import { type SoundLimits, soundLimits } from './soundLimits.ts'
import { emptyTrack } from './tracks.ts'

/** A line whose firing rate, Hz, is told for each moment, s; 0 where it is silent. */
export const trackOf = (seconds: number, rate: (t: number) => number) => {
  const t = emptyTrack(Math.round(seconds / STEP))
  for (let i = 0; i < t.rate.length; i++) {
    t.rate[i] = rate(i * STEP)
    t.score[i] = t.rate[i]! > 0 ? 6 : 0
  }
  return t
}

/** 0 before `from`, 1 after `to`, straight between */
export const between = (t: number, from: number, to: number) =>
  Math.min(1, Math.max(0, (t - from) / (to - from)))

/** A two-stroke single heard without a doubt, in silence. */
export const contextOf = (n: number, limits: SoundLimits = soundLimits): EventContext => ({
  rpmPerHertz: 60,
  confidence: new Float64Array(n).fill(1),
  hiss: new Float64Array(n),
  limits,
})
