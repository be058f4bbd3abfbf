import {
  type HearOptions,
  type Listener,
  type LivePoint,
  makeListener,
} from '../../../../../trades/sound/listener.ts'

export type LiveOrder =
  | { rate: number; options: Omit<HearOptions, 'progress' | 'cancelled'> }
  | { samples: Float32Array }

const scope = self as unknown as {
  onmessage: ((event: MessageEvent<LiveOrder>) => void) | null
  postMessage(point: LivePoint & { level: number }): void
}

/** s after which a new listener takes over, so that an afternoon of listening needs no more memory than this */
const AFRESH = 120
/** s the new one has listened before the old one goes */
const OVERLAP = 6

let rate = 0
let options: Omit<HearOptions, 'progress' | 'cancelled'> = {}
let current: Listener | undefined
let next: Listener | undefined
let before = 0

/** Listens while the sound comes in and says after every stretch what is heard now. */
scope.onmessage = ({ data }) => {
  if ('rate' in data) {
    ;({ rate, options } = data)
    current = makeListener(rate, options)
    return
  }
  if (!current) return
  current.push(data.samples)
  next?.push(data.samples)
  if (!next && current.seconds > AFRESH) next = makeListener(rate, options)
  if (next && next.seconds > OVERLAP) {
    before += current.seconds - next.seconds
    current = next
    next = undefined
  }
  let sum = 0
  for (const v of data.samples) sum += v * v
  const now = current.now()
  scope.postMessage({ ...now, time: before + now.time, level: Math.sqrt(sum / data.samples.length) })
}
