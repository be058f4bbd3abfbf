/** What is kept of every frame: the candidates, and how well pairs of them explain it together. */
import {
  addMaskedPeaks,
  type Candidates,
  type CombGrid,
  type FrameScores,
  type Leak,
  makeCandidates,
  makeScores,
  pickPeaks,
  QUICK_SLOPES,
  scoreBeside,
  scoreFrame,
  skirtLoss,
} from './comb.ts'
import { makeFollower } from './follower.ts'
import {
  CANDIDATES,
  type FrameStore,
  MASKED_PEAKS,
  nextFrame,
  OWN_PEAKS,
  PAIR_APART,
  PAIR_UNIT,
  PAIRS,
} from './frameStore.ts'
import { SLOPES, WINDOW } from './settings.ts'
import { SPECTRUM_POINTS, SPECTRUM_TOP, type Warper } from './warp.ts'

/** teeth of a candidate whose levels are kept while pairs are scored */
const TEETH = 46

/** most that different slopes add to it */
const SMEAR_MOST = 0.04

export interface FrameReader {
  /** scores one frame of samples and adds it to the store */
  read: (frame: Float64Array, warper: Warper, store: FrameStore, pairs: boolean) => void
  /** the scores of the last frame over the whole grid */
  scores: FrameScores
}

/** best score from which a frame with one engine is settled */
const CLEAR = 5

/** slopes tried again after masking: 0, ±0.6, ±1.8 */
const RETRY = [0, 3, 4, 7, 8]

/** Adds a frame's candidates, and the pairs of them that explain it best, to the store. */
export interface PairScorer {
  /** `levels` are the flattened spectra by slope index */
  add: (store: FrameStore, peaks: Candidates, levels: readonly Float64Array[] | null, warper?: Warper) => void
}

/**
 * Pairs nearer than `apart` in ln f are left out, and further ones where the slopes differ: under the wrong slope one engine's
 * lines smear over half a window's worth of the difference, and a second comb fits the edge of the smear.
 */
export function makePairScorer(grid: CombGrid, apart: number): PairScorer {
  const slopes = SLOPES
  const best = new Float64Array(PAIRS)
  const pairA = new Uint8Array(PAIRS)
  const pairB = new Uint8Array(PAIRS)
  const beside = new Float64Array(CANDIDATES * CANDIDATES)

  const teeth = new Float64Array(CANDIDATES * TEETH)
  const leakOf = (warper: Warper, peaks: Candidates, b: number, a: number): Leak => {
    const kb = peaks.slope[b]!
    return {
      level: (hertz) => warper.level(kb, hertz),
      tooth: (n) => teeth[a * TEETH + Math.min(n, TEETH - 1)]!,
      smear: 0.5 * WINDOW * Math.abs(slopes[kb]! - slopes[peaks.slope[a]!]!),
    }
  }
  const scorePairs = (peaks: Candidates, levels: readonly Float64Array[], warper?: Warper): number => {
    const n = peaks.count
    if (warper)
      for (let a = 0; a < n; a++)
        for (let h = 1; h < TEETH; h++) {
          const f = h * peaks.rate[a]!
          teeth[a * TEETH + h] = f < SPECTRUM_TOP ? warper.level(peaks.slope[a]!, f) : -9
        }
    for (let b = 0; b < n; b++)
      for (let a = 0; a < n; a++)
        if (a !== b)
          beside[b * CANDIDATES + a] = scoreBeside(
            grid,
            peaks.place[b]!,
            peaks.score[b]!,
            levels[peaks.slope[b]!]!,
            peaks.rate[a]!,
          )
    let count = 0
    for (let a = 0; a < n; a++)
      for (let b = a + 1; b < n; b++) {
        const turn = Math.abs(slopes[peaks.slope[a]!]! - slopes[peaks.slope[b]!]!)
        if (
          Math.abs(Math.log(peaks.rate[a]! / peaks.rate[b]!)) <=
          apart + Math.min(SMEAR_MOST, 0.5 * WINDOW * turn)
        )
          continue
        const sa = peaks.score[a]!
        const sb = peaks.score[b]!
        const joint = Math.max(sa + beside[b * CANDIDATES + a]!, sb + beside[a * CANDIDATES + b]!)
        let e = Math.min(joint, sa + sb)
        if (count === PAIRS && e <= best[count - 1]!) continue
        // the weaker of the two may live on the stronger one's skirts
        if (warper) {
          const [weak, strong] = sa < sb ? [a, b] : [b, a]
          e -= skirtLoss(
            grid,
            peaks.place[weak]!,
            levels[peaks.slope[weak]!]!,
            peaks.rate[strong]!,
            leakOf(warper, peaks, weak, strong),
          )
        }
        if (count === PAIRS && e <= best[count - 1]!) continue
        let k = count < PAIRS ? count++ : count - 1
        for (; k > 0 && best[k - 1]! < e; k--) {
          best[k] = best[k - 1]!
          pairA[k] = pairA[k - 1]!
          pairB[k] = pairB[k - 1]!
        }
        best[k] = e
        pairA[k] = a
        pairB[k] = b
      }
    return count
  }

  const add: PairScorer['add'] = (store, peaks, levels, warper) => {
    const pairCount = levels ? scorePairs(peaks, levels, warper) : 0
    const i = nextFrame(store)
    const base = i * CANDIDATES
    store.count[i] = peaks.count
    for (let k = 0; k < peaks.count; k++) {
      store.rate[base + k] = peaks.rate[k]!
      store.score[base + k] = peaks.score[k]!
      store.slope[base + k] = peaks.slope[k]!
    }
    store.pairCount[i] = pairCount
    for (let k = 0; k < pairCount; k++) {
      store.pairA[i * PAIRS + k] = pairA[k]!
      store.pairB[i * PAIRS + k] = pairB[k]!
      store.pairScore[i * PAIRS + k] = Math.round(best[k]! / PAIR_UNIT)
    }
  }
  return { add }
}

/** Working arrays for reading frames; frames must come in their order. */
export function makeFrameReader(grid: CombGrid): FrameReader {
  const scores = makeScores(grid)
  const work = { again: makeScores(grid), masked: new Float64Array(SPECTRUM_POINTS) }
  const peaks = makeCandidates(CANDIDATES)
  const scorer = makePairScorer(grid, PAIR_APART)
  const follower = makeFollower(grid)
  const read: FrameReader['read'] = (frame, warper, store, pairs) => {
    let settled = false
    if (!pairs) {
      // a clear engine at a nearly steady speed needs no steeper slopes
      warper.frame(frame, 0, QUICK_SLOPES)
      scoreFrame(grid, warper, scores, true)
      pickPeaks(grid, scores, peaks, 0, OWN_PEAKS)
      settled = peaks.count > 0 && peaks.score[0]! > CLEAR && Math.abs(SLOPES[peaks.slope[0]!]!) < 0.5
      if (!settled) warper.frame(frame, QUICK_SLOPES)
    } else warper.frame(frame)
    if (!settled) {
      scoreFrame(grid, warper, scores)
      pickPeaks(grid, scores, peaks, 0, OWN_PEAKS)
    }
    if (pairs) {
      const retry = RETRY.map((k) => warper.clipped[k]!)
      addMaskedPeaks(grid, retry, scores, work, peaks, MASKED_PEAKS)
      follower.add(scores, peaks, store.frames)
    }
    scorer.add(store, peaks, pairs ? warper.clipped : null, warper)
    if (pairs) follower.learn(store, peaks)
  }
  return { read, scores }
}
