/** Tracks on the frame grid while they are worked on; the finished kind is in hearing.ts. */
import { CANDIDATES, type FrameStore } from './frameStore.ts'
import { SLOPES } from './settings.ts'

/** One engine's firing rate over the frames; arrays of equal length, frame i at time i * STEP. */
export interface FrameTrack {
  /** Hz; 0 = not heard */
  rate: Float64Array
  /** comb score of the chosen candidate */
  score: Float64Array
  /** index into SLOPES */
  slope: Uint8Array
}

export const emptyTrack = (frames: number): FrameTrack => ({
  rate: new Float64Array(frames),
  score: new Float64Array(frames),
  slope: new Uint8Array(frames),
})

export function trackOf(store: FrameStore, path: Int16Array): FrameTrack {
  const t = emptyTrack(path.length)
  for (let i = 0; i < path.length; i++) {
    const k = path[i]!
    if (k < 0) continue
    t.rate[i] = store.rate[i * CANDIDATES + k]!
    t.score[i] = store.score[i * CANDIDATES + k]!
    t.slope[i] = store.slope[i * CANDIDATES + k]!
  }
  return t
}

/** A stretch of frames in which a track sounds, from inclusive to exclusive. */
export interface Stretch {
  from: number
  to: number
}

/** Stretches where `on` holds. */
export function stretches(n: number, on: (i: number) => boolean): Stretch[] {
  const out: Stretch[] = []
  let from = -1
  for (let i = 0; i <= n; i++) {
    const now = i < n && on(i)
    if (now && from < 0) from = i
    if (!now && from >= 0) {
      out.push({ from, to: i })
      from = -1
    }
  }
  return out
}

export const soundingStretches = (t: FrameTrack) => stretches(t.rate.length, (i) => t.rate[i]! > 0)

/** Slope as measured by the warp, d ln f/dt, 1/s. */
export const slopeAt = (t: FrameTrack, i: number) => SLOPES[t.slope[i]!]!

/** Silences the track inside a stretch. */
export function silence(t: FrameTrack, s: Stretch): void {
  t.rate.fill(0, s.from, s.to)
  t.score.fill(0, s.from, s.to)
  t.slope.fill(0, s.from, s.to)
}
