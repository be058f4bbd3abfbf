import { chooseChannel, mixed } from '../sound/hear.ts'
import type { Hearing, Spectrogram } from '../sound/hearing.ts'
import { listenTo } from '../sound/listen.ts'
import { type HearOptions, type Listener, makeListener } from '../sound/listener.ts'
import { ANALYSIS_RATE } from '../sound/resample.ts'
import { quickSpectrogram } from '../sound/spectrogram.ts'
import { Cancelled, defineJob } from './job.ts'

export interface HearOrder {
  /** names the recording; with the same name and settings only what locks change is worked out again */
  name: string
  /** at the analysis rate, within ±1, of equal length */
  channels: Float32Array[]
  options: Omit<HearOptions, 'progress' | 'cancelled'>
}

/** The first answer has the picture only. */
export interface HearAnswer {
  spectrogram: Spectrogram
  /** the channel that was listened to, at the analysis rate */
  sound: Float32Array
  hearing?: Hearing
}

/** the listener of the last recording, so that locks laid by hand do not take the whole work again */
let last: { key: string; listener: Listener; sound: Float32Array; spectrogram: Spectrogram } | undefined

// a listener told of one engine only keeps no pairs, so it serves no other count
const keyOf = ({ name, options: { locks: _, engines, ...rest } }: HearOrder) =>
  `${name} ${engines === 1 ? 'one' : 'pairs'} ${JSON.stringify(rest)}`

/** s of sound taken at a time, between two looks at whether it is still wanted */
const BLOCK = 2

/** Listens to a recording: the picture first, then tracks, count, events and verdict. */
export const hearJob = defineJob('hear', (order: HearOrder, context): HearAnswer => {
  const { channels, options } = order
  const stop = () => {
    if (context.cancelled()) throw new Cancelled()
  }
  const key = keyOf(order)
  if (last?.key === key) {
    context.progress(0.9, 'Following the engines')
    const { engines, locks } = options
    const hearing = last.listener.again({ ...(engines ? { engines } : {}), locks: locks ?? [] })
    // what leaves the worker is handed over, so the kept parts go as copies
    return { spectrogram: copyOf(last.spectrogram), sound: last.sound.slice(), hearing }
  }
  context.progress(0, 'Drawing the recording')
  const spectrogram = quickSpectrogram(mixed(channels))
  context.early?.({ spectrogram, sound: new Float32Array(0) } satisfies HearAnswer)
  stop()
  context.progress(0.02, 'Choosing the clearest channel')
  const sound = chooseChannel(channels, ANALYSIS_RATE, options)
  const listener = makeListener(ANALYSIS_RATE, { ...options, cancelled: () => context.cancelled() })
  const block = BLOCK * ANALYSIS_RATE
  for (let i = 0; i < sound.length; i += block) {
    stop()
    listener.push(sound.subarray(i, i + block))
    context.progress(
      0.03 + (0.85 * Math.min(sound.length, i + block)) / sound.length,
      'Listening for engines',
    )
  }
  context.progress(0.9, 'Following the engines')
  const hearing = listener.finish()
  stop()
  last = { key, listener, sound, spectrogram }
  return { spectrogram: copyOf(spectrogram), sound: sound.slice(), hearing }
})

const copyOf = (s: Spectrogram): Spectrogram => ({ ...s, level: s.level.slice() })

export interface AloneOrder {
  /** at the analysis rate */
  sound: Float32Array
  track: { firing: Float32Array; change: Float32Array; rpm: Float32Array }
  step: number
}

/** One engine's comb alone, at the analysis rate. */
export const aloneJob = defineJob('alone', ({ sound, track, step }: AloneOrder, context): Float32Array => {
  context.progress(0, 'Keeping one engine’s lines only')
  return listenTo(sound, ANALYSIS_RATE, track, step, { halves: true })
})
