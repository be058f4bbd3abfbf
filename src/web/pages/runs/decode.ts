import type { Flag } from '../../../answers/solved.ts'
import { mixed } from '../../../sound/hear.ts'
import { ANALYSIS_RATE, makeResampler, type Resampler } from '../../../sound/resample.ts'
import { fileKind, makeWavReader } from '../../../sound/wav.ts'
import { flag, type Reading, type Sink } from './sink.ts'
import { decodeStreamed } from './streamed.ts'

/** A recording's sound at the analysis rate. */
export interface Decoded {
  channels: Float32Array[]
  /** s */
  seconds: number
  /** what is missing or odd, in sentences; the only content when nothing could be read */
  flags: Flag[]
}

/** bytes above which the browser is not asked to decode the whole file at once */
const MOST_AT_ONCE = 200e6

/** Reads any recording, stretch by stretch where it is long. Never throws for what is in the file. */
export async function decode(file: File, reading: Reading): Promise<Decoded> {
  const gather = makeGatherer()
  const flags = await read(file, gather.sink, reading)
  const channels = gather.end()
  const seconds = (channels[0]?.length ?? 0) / ANALYSIS_RATE
  if (seconds === 0 && flags.length === 0) flags.push(flag('no-sound', 'There is no sound in this file.'))
  return { channels, seconds, flags }
}

async function read(file: File, sink: Sink, reading: Reading): Promise<Flag[]> {
  if (file.size === 0) return [flag('empty', 'The file is empty.')]
  let head: Uint8Array
  try {
    head = new Uint8Array(await file.slice(0, 64).arrayBuffer())
  } catch {
    return [
      flag('unreadable', 'The file cannot be read; it may have been moved or deleted since it was picked.'),
    ]
  }
  const kind = fileKind(head)
  if (kind === 'a WAV file') {
    const { flags, frames } = await decodeWav(file, sink, reading)
    // codings this reader does not know are left to the browser
    if (frames > 0 || !flags.some((f) => f.code === 'wav-format')) return flags
    const other = await decodeOther(file, sink, reading)
    return other.frames > 0 ? other.flags : flags
  }
  const { flags, frames } = await decodeOther(file, sink, reading)
  if (frames > 0) return [...extension(file.name, kind), ...flags]
  if (kind && /JPEG|PNG|PDF|XML|ZIP|picture/i.test(kind))
    return [flag('not-sound', `This is ${kind}, not a recording${named(file.name)}.`)]
  return flags
}

async function decodeWav(file: File, sink: Sink, reading: Reading) {
  const reader = makeWavReader()
  let frames = 0
  let taken = 0
  const bytes = file.stream().getReader()
  for (;;) {
    const { done, value } = await bytes.read()
    if (done || reading.cancelled()) break
    const block = reader.push(value)
    if (block?.[0]) {
      frames += block[0].length
      sink(block, reader.format!.rate)
    }
    taken += value.length
    reading.progress(taken / file.size)
    if (reader.failed) break
  }
  await bytes.cancel().catch(() => {})
  reader.end()
  return { frames, flags: [...reader.flags] }
}

async function decodeOther(file: File, sink: Sink, reading: Reading) {
  if (file.size <= MOST_AT_ONCE) {
    const frames = await decodeAtOnce(file, sink)
    if (frames > 0) return { frames, flags: [] as Flag[] }
  }
  return decodeStreamed(file, sink, reading)
}

/** The browser's own decoder on the whole file; 0 frames when it cannot. */
async function decodeAtOnce(file: File, sink: Sink): Promise<number> {
  try {
    // the context's rate is the one the sound is decoded to: enough for engines, a third of the memory
    const context = new OfflineAudioContext(1, 1, 16000)
    const sound = await context.decodeAudioData(await file.arrayBuffer())
    const channels = Array.from({ length: sound.numberOfChannels }, (_, k) => sound.getChannelData(k))
    sink(channels, sound.sampleRate)
    return sound.length
  } catch {
    return 0
  }
}

/** Brings what comes to the analysis rate: up to two channels as they are, more as their mean. */
function makeGatherer() {
  let resamplers: Resampler[] = []
  let from = 0
  const parts: Float32Array[][] = []
  const sink: Sink = (given, rate) => {
    const channels = given.length > 2 ? [mixed(given)] : given
    if (resamplers.length === 0) {
      from = rate
      resamplers = channels.map(() => makeResampler(from, ANALYSIS_RATE))
      parts.push(...channels.map(() => []))
    }
    const long = 1 << 18
    resamplers.forEach((r, k) => {
      const c = channels[k] ?? channels[0]!
      for (let i = 0; i < c.length; i += long) parts[k]!.push(r.push(c.subarray(i, i + long)))
    })
  }
  const end = () => {
    for (const [k, r] of resamplers.entries()) parts[k]!.push(r.flush())
    return parts.map((list) => {
      const out = new Float32Array(list.reduce((n, p) => n + p.length, 0))
      let at = 0
      for (const p of list) {
        out.set(p, at)
        at += p.length
      }
      return out
    })
  }
  return { sink, end }
}

const named = (name: string) => {
  const ending = /\.(\w{2,5})$/.exec(name)?.[1]
  return ending ? `, whatever its name ends in (.${ending})` : ''
}

const endings: Record<string, RegExp> = {
  wav: /WAV/,
  mp3: /MP3/,
  flac: /FLAC/i,
  ogg: /Ogg/i,
  opus: /Ogg/i,
  webm: /WebM/,
  mkv: /WebM/,
  mp4: /MP4|MOV/i,
  m4a: /MP4|MOV/i,
  mov: /MP4|MOV/i,
}

/** A word when the file is something else than its name says; it is read all the same. */
function extension(name: string, kind: string | undefined): Flag[] {
  const ending = /\.(\w{2,5})$/.exec(name)?.[1]?.toLowerCase() ?? ''
  const expected = endings[ending]
  if (!kind || !expected || expected.test(kind)) return []
  return [flag('ending', `The name ends in .${ending}, but this is ${kind}; it was read as that.`)]
}
