/** Listens to a whole recording. */
import type { Hearing } from './hearingTypes.ts'
import { type HearOptions, makeListener } from './listener.ts'
import { joined } from './resample.ts'

/**
 * What the engines did in `samples` (one channel, or several of equal length; within ±1) at `sampleRate`.
 * Never throws for poor sound: 'no engine' is an answer. Throws RangeError for impossible options.
 */
export function hear(
  samples: Float32Array | readonly Float32Array[],
  sampleRate: number,
  options: HearOptions = {},
): Hearing {
  const channels = samples instanceof Float32Array ? [samples] : samples
  const mono = chooseChannel(channels, sampleRate, options)
  const listener = makeListener(sampleRate, options)
  const block = Math.max(1024, Math.round(sampleRate))
  for (let i = 0; i < mono.length; i += block) {
    if (options.cancelled?.()) break
    listener.push(mono.subarray(i, i + block))
    options.progress?.((0.85 * Math.min(mono.length, i + block)) / mono.length)
  }
  return listener.finish()
}

/** Mean of all channels. */
export function mixed(channels: readonly Float32Array[]): Float32Array {
  const n = channels[0]?.length ?? 0
  const out = new Float32Array(n)
  for (const c of channels) for (let i = 0; i < n; i++) out[i]! += (c[i] ?? 0) / channels.length
  return out
}

/** s listened to in each channel before one is chosen */
const TRIAL = 3

/**
 * The channel, or the mean of all, in which engines stand out most over a few seconds of the loudest part:
 * a phone may gate or steer its channels differently.
 */
export function chooseChannel(
  channels: readonly Float32Array[],
  rate: number,
  options: Pick<HearOptions, 'cylinders' | 'strokes'> = {},
): Float32Array {
  const first = channels[0]
  if (!first) return new Float32Array(0)
  if (channels.length === 1) return first
  const choices = [mixed(channels), ...channels.slice(0, 6)]
  const span = Math.min(first.length, Math.round(TRIAL * rate))
  const start = loudest(choices[0]!, span)
  let best = choices[0]!
  let most = Number.NEGATIVE_INFINITY
  for (const c of choices) {
    const trial = makeListener(rate, { ...options, engines: 1 })
    trial.push(c.subarray(start, start + span))
    const h = trial.finish()
    const clear = h.tracks[0]?.confidence.reduce((a, v) => a + v, 0) ?? 0
    // the mean comes first and wins ties
    if (clear > most * 1.02 + 1e-9) {
      most = clear
      best = c
    }
  }
  return best
}

function loudest(x: Float32Array, span: number): number {
  let best = 0
  let most = -1
  for (let s = 0; s + span <= x.length; s += Math.max(1, Math.floor(span / 2))) {
    let sum = 0
    for (let i = s; i < s + span; i += 16) sum += x[i]! * x[i]!
    if (sum > most) {
      most = sum
      best = s
    }
  }
  return best
}

/** s of sound after which the channel is chosen while a recording still comes in */
const CHOOSE_AFTER = 12

/** Takes a recording's channels as they come and gives the one to listen to. */
export interface ChannelPicker {
  /** stretches of all channels in; what is ready of the chosen one out, perhaps nothing yet */
  push: (channels: readonly Float32Array[], rate: number) => Float32Array[]
  /** the rest, when the recording was too short for a choice so far */
  end: () => Float32Array[]
}

/** Chooses as `chooseChannel` does, from the first seconds; a single channel passes straight through. */
export function makeChannelPicker(options: Pick<HearOptions, 'cylinders' | 'strokes'> = {}): ChannelPicker {
  let waiting: (readonly Float32Array[])[] = []
  let waited = 0
  let rate = 0
  /** -1 = the mean of all */
  let pick: number | undefined
  const chosen = (channels: readonly Float32Array[]) =>
    pick === -1 ? mixed(channels) : (channels[pick!] ?? channels[0]!)
  const settle = (): Float32Array[] => {
    const first = waiting[0]
    if (!first) return []
    const whole = first.map((_, c) => joined(waiting.map((b) => b[c] ?? b[0]!)))
    pick = whole.length === 1 ? 0 : whole.indexOf(chooseChannel(whole, rate, options))
    const out = waiting.map(chosen)
    waiting = []
    return out
  }
  return {
    push: (channels, at) => {
      if (!channels[0]?.length) return []
      rate = at
      if (pick !== undefined) return [chosen(channels)]
      waiting.push(channels)
      waited += channels[0].length
      return channels.length === 1 || waited > CHOOSE_AFTER * rate ? settle() : []
    },
    end: () => (pick === undefined ? settle() : []),
  }
}
