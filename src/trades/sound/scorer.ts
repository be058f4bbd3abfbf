/** Scores frames of a signal: candidates into a store, levels into a picture. Whoever scores a frame finds the same. */
import { makeFrameReader } from './candidates.ts'
import { makeCombGrid } from './comb.ts'
import { FOLLOW_BLOCK } from './follower.ts'
import { type FrameStore, makeFrameStore, trimmed } from './frameStore.ts'
import { makeLimiter } from './limited.ts'
import { FRAME, HOP } from './settings.ts'
import { frontFrame } from './soundFrames.ts'
import { makeSpectrogram, type SpectrogramBuilder } from './spectrogram.ts'
import { makeWarper, type Warper } from './warp.ts'

/** samples the low-pass in front of the warp reaches to each side */
const MARGIN = 24
/** samples on each side of a frame's middle that it looks at */
export const reach = FRAME / 2 + MARGIN
/** frames that are filtered together */
export const BLOCK = FOLLOW_BLOCK

export interface Scoring {
  /** firing rates, Hz */
  low: number
  high: number
  pairs: boolean
}

export interface Scorer {
  store: FrameStore
  picture: SpectrogramBuilder
  warper: Warper
  /** scores frames `from` to `to`, at most BLOCK; `signal` begins at sample `base` of the recording */
  read: (signal: Float32Array, base: number, from: number, to: number) => void
}

export function makeScorer({ low, high, pairs }: Scoring, expected = 0): Scorer {
  const warper = makeWarper()
  const reader = makeFrameReader(makeCombGrid({ low, high }))
  const store = makeFrameStore(Math.max(512, expected + 40))
  const picture = makeSpectrogram(Math.max(256, Math.ceil(expected / 2) + 20))
  const frame = new Float64Array(FRAME)
  const raw = new Float64Array(FRAME + 2 * MARGIN)
  const limiter = makeLimiter(raw.length)
  return {
    store,
    picture,
    warper,
    read: (signal, base, from, to) => {
      const first = from * HOP - reach - base
      const cut = new Float32Array((to - from) * HOP + 2 * reach)
      const lead = Math.max(0, -first)
      cut.set(signal.subarray(first + lead, Math.min(signal.length, first + cut.length)), lead)
      for (let i = from; i < to; i++) {
        const start = (i - from) * HOP
        for (let k = 0; k < raw.length; k++) raw[k] = cut[start + k]!
        const lost = limiter.cut(raw)
        frontFrame(raw, frame)
        reader.read(frame, warper, store, pairs)
        // the picture shows how loud it was
        for (let b = 0; b < warper.plain.length; b++) warper.plain[b]! += lost
        picture.add(i, warper.plain)
      }
    },
  }
}

/** The later half of a recording, for somebody else to score. */
export interface Half {
  scoring: Scoring
  signal: Float32Array<ArrayBuffer>
  base: number
  from: number
  to: number
}

export interface ScoredHalf {
  store: FrameStore
  /** levels of the picture, column after column */
  columns: Uint8Array<ArrayBuffer>
}

/** Scores a half; `progress` is told the frames done. */
export function scoreHalf(
  { scoring, signal, base, from, to }: Half,
  progress: (frames: number) => void = () => {},
): ScoredHalf {
  const scorer = makeScorer(scoring, to - from)
  for (let i = from; i < to; i += BLOCK) {
    scorer.read(signal, base, i, Math.min(to, i + BLOCK))
    progress(Math.min(to, i + BLOCK) - from)
  }
  return { store: trimmed(scorer.store), columns: scorer.picture.finish().level.slice() }
}
