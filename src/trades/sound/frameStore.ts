/** What is kept of every frame of a recording, in arrays that grow with it. */

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
export function nextFrame(s: FrameStore): number {
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
