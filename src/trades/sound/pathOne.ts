/**
 * The most likely track of one engine through the candidates of all frames.
 * A. J. Viterbi, IEEE Trans. Information Theory 13 (1967) 260: dynamic programming over states.
 */
import { CANDIDATES, type FrameStore } from './frameStore.ts'
import type { PathCosts } from './settings.ts'
import { moveCost } from './trackMoves.ts'

/** A point laid down by hand: the engine must be within 2 % of `rate` Hz there; rate 0 = must be silent. */
export interface Lock {
  frame: number
  rate: number
}

/** within this of a lock counts as on it, ln f */
export const LOCK_WIDTH = 0.02
/** large against any path's cost */
export const LOCK_BREAK = 1e6

/** True when candidate rate `f` may stand where a lock says `lock`. */
export const onLock = (f: number, lock: number) => lock > 0 && Math.abs(Math.log(f / lock)) < LOCK_WIDTH

/**
 * Candidate index per frame, -1 = silent. States: silence, the rest after a stop (a chain of
 * `restFrames`), and each candidate.
 */
export function pathOne(store: FrameStore, costs: PathCosts, locks: readonly Lock[] = []): Int16Array {
  const n = store.frames
  const rest = Math.max(1, costs.restFrames)
  // states 0 = free silence, 1 … rest = resting, then candidates
  const states = 1 + rest + CANDIDATES
  const back = new Uint8Array(n * states)
  const lockAt = new Map(locks.map((l) => [l.frame, l.rate]))
  let cost = new Float64Array(states).fill(Number.POSITIVE_INFINITY)
  let next = new Float64Array(states)
  cost[0] = 0
  const head = 1 + rest
  for (let i = 0; i < n; i++) {
    next.fill(Number.POSITIVE_INFINITY)
    const base = i * CANDIDATES
    const before = (i - 1) * CANDIDATES
    const was = i > 0 ? store.count[i - 1]! : 0
    // silence
    next[0] = cost[0]!
    back[i * states] = 0
    if (cost[rest]! < next[0]!) {
      next[0] = cost[rest]!
      back[i * states] = rest
    }
    for (let r = 2; r <= rest; r++) {
      next[r] = cost[r - 1]!
      back[i * states + r] = r - 1
    }
    for (let k = 0; k < was; k++) {
      const c = cost[head + k]! + costs.death
      if (c < next[1]!) {
        next[1] = c
        back[i * states + 1] = head + k
      }
    }
    for (let k = 0; k < store.count[i]!; k++) {
      const f = store.rate[base + k]!
      // out of free silence, or of a rest just over
      let from = cost[rest]! < cost[0]! ? rest : 0
      let least = cost[from]! + (i === 0 ? 0 : costs.birth)
      for (let j = 0; j < was; j++) {
        const c0 = cost[head + j]!
        if (c0 >= least) continue
        const c =
          c0 +
          moveCost(
            Math.log(f / store.rate[before + j]!),
            store.slope[before + j]!,
            store.slope[base + k]!,
            costs,
          )
        if (c < least) {
          least = c
          from = head + j
        }
      }
      next[head + k] = least - costs.reward * (store.score[base + k]! - costs.offset)
      back[i * states + head + k] = from
    }
    const lock = lockAt.get(i)
    if (lock !== undefined) {
      for (let r = 0; r <= rest; r++) if (lock > 0) next[r]! += LOCK_BREAK
      for (let k = 0; k < store.count[i]!; k++)
        if (!onLock(store.rate[base + k]!, lock)) next[head + k]! += LOCK_BREAK
    }
    ;[cost, next] = [next, cost]
  }
  const path = new Int16Array(n).fill(-1)
  let state = 0
  for (let s = 1; s < states; s++) if (cost[s]! < cost[state]!) state = s
  for (let i = n - 1; i >= 0; i--) {
    path[i] = state >= head ? state - head : -1
    state = back[i * states + state]!
  }
  return path
}
