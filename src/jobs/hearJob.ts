import type { Hearing, Spectrogram, Track } from '../trades/sound/hearingTypes.ts'
import { makeChannelPicker } from '../trades/sound/hearSamples.ts'
import { listenTo } from '../trades/sound/listen.ts'
import { type HearOptions, type Listener, makeListener } from '../trades/sound/listener.ts'
import { ANALYSIS_RATE, makeResampler } from '../trades/sound/resample.ts'
import type { Half, ScoredHalf } from '../trades/sound/scorer.ts'
import { quickSpectrogram } from '../trades/sound/spectrogram.ts'
import { pcm16, WAV_HEAD, wavHead } from '../trades/sound/wav.ts'

export type SessionOptions = Omit<HearOptions, 'progress' | 'cancelled'>

/**
 * One recording being listened to: its sound comes in stretch by stretch, is scored frame by frame, and is kept, so
 * that what is put right by hand or played alone later needs no second reading. Pure; whoever drives it decides on
 * pauses, pictures on the way and stopping.
 */
export interface HearSession {
  /** the next stretch of all channels, at `rate` samples a second; `expected` s are likely to come in all */
  take(channels: readonly Float32Array[], rate: number, expected?: number): void
  /** all sound is in */
  close(): void
  /** s of sound so far */
  seconds(): number
  /** a quick picture of what there is */
  picture(): Spectrogram
  /** scores `most` further frames; the part of all that is done, 1 when nothing is left */
  score(most: number): number
  /** after `close`: the later half of the scoring, for another worker; undefined when it is not worth it, or fewer than `least` frames */
  halve(least?: number): Half | undefined
  /** takes the half scored elsewhere, once `score` has done its own; without it `score` goes on with that half too */
  join(scored: ScoredHalf | undefined): void
  /** tracks, count, events and verdict; again with other locks or another engine count as often as wanted */
  answer(change: Pick<HearOptions, 'locks' | 'engines'>): Hearing
  /** one engine's lines alone as a WAV file */
  alone(track: Pick<Track, 'firing' | 'change' | 'rpm'>, step: number): Uint8Array<ArrayBuffer>
}

export function makeHearSession(options: SessionOptions): HearSession {
  const picker = makeChannelPicker(options)
  let listener: Listener | undefined
  let rateIn = ANALYSIS_RATE
  /** s up to which this session scores, while another one has the rest */
  let until: number | undefined
  const listen = (stretches: readonly Float32Array[], expected?: number) => {
    for (const x of stretches) {
      listener ??= makeListener(rateIn, { ...options, ...(expected ? { expected } : {}) })
      listener.take(x)
    }
  }
  const whole = () => listener ?? makeListener(rateIn, options)
  return {
    take: (channels, rate, expected) => {
      rateIn = rate
      listen(picker.push(channels, rate), expected)
    },
    close: () => {
      listen(picker.end())
      listener?.end()
    },
    seconds: () => listener?.seconds ?? 0,
    picture: () => quickSpectrogram(listener?.signal ?? new Float32Array(0)),
    score: (most) => {
      if (!listener?.score(most)) return 1
      return (listener.frames * HOP_SECONDS) / (until ?? listener.seconds)
    },
    halve: (least) => {
      const half = listener?.halve(least)
      // while another worker has its half, the part done is that of the own one
      if (half) until = half.from * HOP_SECONDS
      return half
    },
    join: (scored) => {
      listener?.join(scored)
      until = undefined
    },
    answer: (change) => {
      const { spectrogram, ...rest } = whole().again(change)
      // what leaves the session may be handed over to another thread, so it gets a picture of its own
      return { ...rest, spectrogram: { ...spectrogram, level: spectrogram.level.slice() } }
    },
    alone: (track, step) => aloneWav(listenTo(whole().signal, ANALYSIS_RATE, track, step, { halves: true })),
  }
}

/** s from one frame to the next */
const HOP_SECONDS = 0.025

/** samples a second at which one engine alone is played, and s above which the lower one has to do */
const PLAY_RATE = 16000
const PLAY_RATE_LONG = 8000
const LONG = 900

/** The sound as a WAV file with its strongest sample at nine tenths, made block by block. */
function aloneWav(sound: Float32Array): Uint8Array<ArrayBuffer> {
  let most = 0
  for (const v of sound) most = Math.max(most, Math.abs(v))
  const gain = most > 0 ? 0.9 / most : 0
  const rate = sound.length > LONG * ANALYSIS_RATE ? PLAY_RATE_LONG : PLAY_RATE
  const resampler = makeResampler(ANALYSIS_RATE, rate)
  const out = new Uint8Array(WAV_HEAD + 2 * (Math.ceil((sound.length * rate) / ANALYSIS_RATE) + rate))
  let at = WAV_HEAD
  const put = (x: Float32Array) => {
    const bytes = pcm16([x.map((v) => gain * v)])
    const n = Math.min(bytes.length, out.length - at)
    out.set(bytes.subarray(0, n), at)
    at += n
  }
  const block = 1 << 18
  for (let i = 0; i < sound.length; i += block) put(resampler.push(sound.subarray(i, i + block)))
  put(resampler.flush())
  out.set(wavHead(1, rate, (at - WAV_HEAD) / 2))
  return out.slice(0, at)
}
