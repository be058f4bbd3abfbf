import { type Half, type ScoredHalf, scoreHalf } from '../../../../trades/sound/scorer.ts'

export type HalfNews = { frames: number } | { scored: ScoredHalf }

const scope = self as unknown as {
  onmessage: ((event: MessageEvent<Half>) => void) | null
  postMessage(news: HalfNews, transfer?: Transferable[]): void
}

/** Scores one half of a recording for the worker that holds it. */
scope.onmessage = ({ data }) => {
  const scored = scoreHalf(data, (frames) => scope.postMessage({ frames }))
  const arrays = [...Object.values(scored.store), scored.columns].filter((v) => ArrayBuffer.isView(v))
  scope.postMessage(
    { scored },
    arrays.map((v) => v.buffer as ArrayBuffer),
  )
}
