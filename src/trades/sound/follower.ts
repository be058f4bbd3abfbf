/** Keeps faint lines among the candidates while they are no peaks of their own. */

import type { Candidates, CombGrid, FrameScores } from './comb.ts'
import { FOLLOWED, type FrameStore, PAIRS } from './frameStore.ts'
import { SLOPES, STEP } from './settings.ts'

/** frames a line is looked for after it was last part of a good pair */
const FOLLOW_FRAMES = 8
/** best pairs whose members are followed */
const FOLLOW_PAIRS = 3
/** grid steps on each side of the expected place that are searched */
const FOLLOW_REACH = 4

/** Frames after which nothing is followed on, so that a recording can be scored in parts that begin at a multiple of it. */
export const FOLLOW_BLOCK = 200

interface Line {
  /** Hz, expected in the next frame */
  rate: number
  /** frames left */
  life: number
}

/**
 * Beside a loud engine a faint one is no peak in every frame. The members of the best pairs of each frame are looked for in the
 * next ones where they should be by then, so that a path can go on through the gap on what truly stands there.
 */
export function makeFollower(grid: CombGrid) {
  let lines: Line[] = []
  const known = (peaks: Candidates, g: number) => {
    for (let k = 0; k < peaks.count; k++) if (Math.abs(peaks.place[k]! - g) <= 3) return true
    return false
  }
  const add = (scores: FrameScores, peaks: Candidates, frame: number) => {
    if (frame % FOLLOW_BLOCK === 0) lines = []
    let room = FOLLOWED
    for (const line of lines) {
      if (room === 0) break
      const at = Math.round(Math.log(line.rate / grid.rates[0]!) / grid.step)
      if (at < 1 || at > grid.rates.length - 2 || known(peaks, at)) continue
      let best = at
      const from = Math.max(1, at - FOLLOW_REACH)
      const to = Math.min(grid.rates.length - 2, at + FOLLOW_REACH)
      // the nearer place wins among equals, or a neighbour's skirt would always be taken
      const worth = (g: number) => scores.score[g]! - 0.08 * Math.abs(g - at)
      for (let g = from; g <= to; g++) if (worth(g) > worth(best)) best = g
      if (known(peaks, best)) continue
      const k = peaks.count++
      peaks.place[k] = best
      peaks.rate[k] = grid.rates[best]!
      peaks.score[k] = scores.score[best]!
      peaks.slope[k] = scores.slope[best]!
      room--
    }
  }
  const learn = (store: FrameStore, peaks: Candidates) => {
    const i = store.frames - 1
    const next: Line[] = []
    const take = (k: number, life: number) => {
      const rate = peaks.rate[k]! * Math.exp(SLOPES[peaks.slope[k]!]! * STEP)
      const same = next.find((l) => Math.abs(Math.log(l.rate / rate)) < 3 * grid.step)
      if (same) same.life = Math.max(same.life, life)
      else next.push({ rate, life })
    }
    for (let p = 0; p < Math.min(FOLLOW_PAIRS, store.pairCount[i]!); p++) {
      take(store.pairA[i * PAIRS + p]!, FOLLOW_FRAMES)
      take(store.pairB[i * PAIRS + p]!, FOLLOW_FRAMES)
    }
    for (const line of lines) {
      if (line.life <= 1) continue
      let k = -1
      for (let j = 0; j < peaks.count; j++)
        if (
          Math.abs(Math.log(peaks.rate[j]! / line.rate)) < FOLLOW_REACH * grid.step &&
          (k < 0 || peaks.score[j]! > peaks.score[k]!)
        )
          k = j
      if (k >= 0) take(k, line.life - 1)
    }
    lines = next
  }
  return { add, learn }
}
