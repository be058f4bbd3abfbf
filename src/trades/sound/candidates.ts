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
import { SLOPES, WINDOW } from './settings.ts'
import { SPECTRUM_POINTS, SPECTRUM_TOP, type Warper } from './warp.ts'

/** teeth of a candidate whose levels are kept while pairs are scored */
const TEETH = 46

/** candidates from the frame itself */
export const OWN_PEAKS = 10
/** further ones found after masking each of the two best */
export const MASKED_PEAKS = 3
/** places kept open for lines of the frames before that are no peak of this one */
export const FOLLOWED = 3
export const CANDIDATES = OWN_PEAKS + 2 * MASKED_PEAKS + FOLLOWED
/** pairs kept */
export const PAIRS = 40
/** unit of the pair scores kept */
export const PAIR_UNIT = 0.001
/** a pair must lie this far apart in ln f; nearer is one line */
export const PAIR_APART = 0.045

/** most that different slopes add to it */
const SMEAR_MOST = 0.04

/** Grows with the recording; frame i's candidates stand at i * CANDIDATES. */
export interface FrameStore {
  frames: number
  count: Uint8Array
  rate: Float32Array
  score: Float32Array
  /** index into SLOPES */
  slope: Uint8Array
  pairCount: Uint8Array
  pairA: Uint8Array
  pairB: Uint8Array
  /** thousandths, to keep an hour of sound small */
  pairScore: Int16Array
}

export function makeFrameStore(expected = 512): FrameStore {
  return {
    frames: 0,
    count: new Uint8Array(expected),
    rate: new Float32Array(expected * CANDIDATES),
    score: new Float32Array(expected * CANDIDATES),
    slope: new Uint8Array(expected * CANDIDATES),
    pairCount: new Uint8Array(expected),
    pairA: new Uint8Array(expected * PAIRS),
    pairB: new Uint8Array(expected * PAIRS),
    pairScore: new Int16Array(expected * PAIRS),
  }
}

function room<T extends Uint8Array | Int16Array | Float32Array>(a: T, need: number): T {
  if (a.length >= need) return a
  const bigger = new (a.constructor as new (n: number) => T)(Math.max(need, Math.ceil(1.25 * a.length)))
  bigger.set(a)
  return bigger
}

/** Makes place for one more frame and returns its index. */
function nextFrame(s: FrameStore): number {
  const n = s.frames + 1
  s.count = room(s.count, n)
  s.pairCount = room(s.pairCount, n)
  s.rate = room(s.rate, n * CANDIDATES)
  s.score = room(s.score, n * CANDIDATES)
  s.slope = room(s.slope, n * CANDIDATES)
  s.pairA = room(s.pairA, n * PAIRS)
  s.pairB = room(s.pairB, n * PAIRS)
  s.pairScore = room(s.pairScore, n * PAIRS)
  return s.frames++
}

/** The frames of a store without the room behind them. */
export const trimmed = (s: FrameStore): FrameStore => ({
  frames: s.frames,
  count: s.count.slice(0, s.frames),
  rate: s.rate.slice(0, s.frames * CANDIDATES),
  score: s.score.slice(0, s.frames * CANDIDATES),
  slope: s.slope.slice(0, s.frames * CANDIDATES),
  pairCount: s.pairCount.slice(0, s.frames),
  pairA: s.pairA.slice(0, s.frames * PAIRS),
  pairB: s.pairB.slice(0, s.frames * PAIRS),
  pairScore: s.pairScore.slice(0, s.frames * PAIRS),
})

/** Adds the frames of a trimmed store behind those of another. */
export function appendFrames(to: FrameStore, more: FrameStore): void {
  const n = to.frames + more.frames
  to.count = room(to.count, n)
  to.pairCount = room(to.pairCount, n)
  to.rate = room(to.rate, n * CANDIDATES)
  to.score = room(to.score, n * CANDIDATES)
  to.slope = room(to.slope, n * CANDIDATES)
  to.pairA = room(to.pairA, n * PAIRS)
  to.pairB = room(to.pairB, n * PAIRS)
  to.pairScore = room(to.pairScore, n * PAIRS)
  to.count.set(more.count, to.frames)
  to.pairCount.set(more.pairCount, to.frames)
  to.rate.set(more.rate, to.frames * CANDIDATES)
  to.score.set(more.score, to.frames * CANDIDATES)
  to.slope.set(more.slope, to.frames * CANDIDATES)
  to.pairA.set(more.pairA, to.frames * PAIRS)
  to.pairB.set(more.pairB, to.frames * PAIRS)
  to.pairScore.set(more.pairScore, to.frames * PAIRS)
  to.frames = n
}

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
