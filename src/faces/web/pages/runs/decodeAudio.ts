import type { Flag } from '../../../../base/answers/solved.ts'
import {
  lengthFlags,
  OGG_TAIL,
  oggCut,
  oggEnds,
  readContainer,
  whyNothing,
} from '../../../../trades/sound/container.ts'
import { fileKind, makeWavReader } from '../../../../trades/sound/wav.ts'
import { flag, type Reading, type Sink } from './sink.ts'
import { decodeStreamed } from './streamed.ts'

/**
 * What the browser is asked to decode as a whole: quick, but all of it lies in memory at once. Longer recordings, and
 * files of which most is picture, are read bit by bit.
 */
const AT_ONCE = { bytes: 40e6, seconds: 600 }

/**
 * Reads any recording and hands its sound on stretch by stretch. Answers what is missing or odd, in sentences; when no
 * sound came, why. Never throws for what is in the file.
 */
export async function readRecording(file: File, sink: Sink, reading: Reading): Promise<Flag[]> {
  let frames = 0
  const counted: Sink = (channels, rate, expected) => {
    frames += channels[0]?.length ?? 0
    sink(channels, rate, expected)
  }
  const flags = await read(file, counted, {
    ...reading,
    async decodeAtOnce() {
      const whole = await reading.decodeAtOnce()
      frames += whole
      return whole
    },
  })
  if (frames === 0 && flags.length === 0) flags.push(flag('no-sound', 'There is no sound in this file.'))
  return flags
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
    const other = await decodeOther(file, kind, sink, reading)
    return other.frames > 0 ? other.flags : flags
  }
  const { flags, frames } = await decodeOther(file, kind, sink, reading)
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
    if (done) break
    const block = reader.push(value)
    if (block?.[0]) {
      frames += block[0].length
      const { rate, bits, channels } = reader.format!
      sink(block, rate, file.size / ((bits / 8) * channels * rate))
    }
    taken += value.length
    reading.progress(taken / file.size)
    if (reader.failed) break
  }
  await bytes.cancel().catch(() => {})
  reader.end()
  return { frames, flags: [...reader.flags] }
}

async function decodeOther(file: File, kind: string | undefined, sink: Sink, reading: Reading) {
  const { BlobSource } = await import('mediabunny')
  const container = await readContainer(new BlobSource(file))
  const why = whyNothing(container)
  if (why) return { frames: 0, flags: [why] }
  let seconds = 0
  const timed: Sink = (channels, rate, expected) => {
    seconds += (channels[0]?.length ?? 0) / rate
    sink(channels, rate, expected)
  }
  const short = file.size <= AT_ONCE.bytes && (container.soundLasts ?? 0) <= AT_ONCE.seconds
  let frames = short ? await reading.decodeAtOnce() : 0
  let flags: Flag[] = []
  if (frames > 0) seconds = frames / AT_ONCE_RATE
  else {
    ;({ frames, flags } = await decodeStreamed(file, timed, reading, container.soundLasts))
    // what the page cannot take apart the browser's decoder may still know
    if (frames === 0 && !short && file.size <= 5 * AT_ONCE.bytes) {
      frames = await reading.decodeAtOnce()
      if (frames > 0) {
        seconds = frames / AT_ONCE_RATE
        flags = []
      }
    }
  }
  if (frames === 0) return { frames, flags }
  const lengths = lengthFlags(container, seconds)
  if (kind === 'an Ogg file' && !oggEnds(new Uint8Array(await file.slice(-OGG_TAIL).arrayBuffer())))
    lengths.push(oggCut(seconds))
  // how much is missing says more than that something is
  const rest = lengths.some((f) => f.code === 'truncated') ? flags.filter((f) => f.code !== 'damaged') : flags
  return { frames, flags: [...rest, ...lengths] }
}

/** samples a second the browser's own decoder is asked for: enough for engines, a third of the memory */
export const AT_ONCE_RATE = 16000

/** samples handed on at a time */
const STRETCH = 1 << 18

/** The browser's own decoder on the whole file; only a page has it. Answers the frames handed on, 0 when it cannot. */
export async function decodeWhole(
  file: Blob,
  sink: (channels: Float32Array<ArrayBuffer>[], rate: number, expected: number) => void,
): Promise<number> {
  try {
    const context = new OfflineAudioContext(1, 1, AT_ONCE_RATE)
    const sound = await context.decodeAudioData(await file.arrayBuffer())
    for (let i = 0; i < sound.length; i += STRETCH) {
      const channels = Array.from({ length: sound.numberOfChannels }, (_, k) =>
        sound.getChannelData(k).slice(i, i + STRETCH),
      )
      sink(channels, sound.sampleRate, sound.duration)
    }
    return sound.length
  } catch {
    return 0
  }
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
