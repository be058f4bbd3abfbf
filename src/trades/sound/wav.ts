/**
 * Reads RIFF/WAVE (and RF64) as it arrives, so that long recordings need little memory.
 * Chunk layout: IBM and Microsoft, Multimedia Programming Interface and Data Specifications 1.0 (1991), and
 * EBU Tech 3306 (RF64). Broken files give what can be had, and say what is missing.
 */
import { inSeconds } from '../../base/answers/amounts.ts'
import { printed, say } from '../../base/answers/sentence.ts'
import type { Flag } from '../../base/answers/solved.ts'

export interface WavFormat {
  rate: number
  channels: number
  bits: number
  float: boolean
}

/** One stretch of sound, one array a channel, within ±1. */
export type ChannelBlock = Float32Array[]

export interface WavReader {
  /** takes the file's next bytes, gives the sound they complete */
  push: (bytes: Uint8Array) => ChannelBlock | null
  /** call once after the last byte */
  end: () => void
  readonly format: WavFormat | null
  readonly flags: readonly Flag[]
  /** set once the file cannot be read any further */
  readonly failed: boolean
}

const text = (v: DataView, at: number) =>
  String.fromCharCode(v.getUint8(at), v.getUint8(at + 1), v.getUint8(at + 2), v.getUint8(at + 3))

/** names of other containers by their first bytes */
const known: readonly [string, number, string][] = [
  ['OggS', 0, 'an Ogg file'],
  ['fLaC', 0, 'a FLAC file'],
  ['ftyp', 4, 'an MP4, M4A or MOV file'],
  ['ID3', 0, 'an MP3 file'],
  ['FORM', 0, 'an AIFF file'],
  ['caff', 0, 'a CAF file'],
  ['%PDF', 0, 'a PDF'],
  ['<?xm', 0, 'an XML file'],
  ['\x1aE\xdf\xa3', 0, 'a WebM or Matroska file'],
]

/** What the first bytes of a file look like, or undefined when they say nothing. */
export function fileKind(bytes: Uint8Array): string | undefined {
  const head = String.fromCharCode(...bytes.subarray(0, 16))
  if (/^(RIFF|RF64).{4}WAVE/s.test(head)) return 'a WAV file'
  for (const [mark, at, name] of known) if (head.startsWith(mark, at)) return name
  if (bytes.length > 1 && bytes[0] === 0xff && (bytes[1]! & 0xe0) === 0xe0) return 'an MP3 or AAC stream'
  return undefined
}

function readFormat(v: DataView, at: number, size: number, flags: Flag[]): WavFormat | null {
  if (size < 16) return null
  let tag = v.getUint16(at, true)
  const channels = v.getUint16(at + 2, true)
  const rate = v.getUint32(at + 4, true)
  const bits = v.getUint16(at + 14, true)
  // the extensible form keeps the real tag in the first bytes of its identifier
  if (tag === 0xfffe && size >= 26) tag = v.getUint16(at + 24, true)
  const refuse = (why: string) => {
    flags.push({ code: 'wav-format', text: why, path: 'recording' })
    return null
  }
  if (tag !== 1 && tag !== 3)
    return refuse(
      `The WAV file is coded in a way this reader does not know (format ${tag}); save it as plain PCM.`,
    )
  if (channels < 1 || channels > 64)
    return refuse(`The WAV file claims ${channels} channels; 1 to 64 can be read.`)
  if (rate < 1000 || rate > 1_000_000)
    return refuse(`The WAV file claims ${rate} samples a second; 1000 to 1000000 can be read.`)
  const ok = tag === 3 ? [32, 64].includes(bits) : [8, 16, 24, 32].includes(bits)
  if (!ok)
    return refuse(
      `The WAV file has ${bits} bits a sample${tag === 3 ? ' in floating point' : ''}; 8, 16, 24 and 32 bits and 32 or 64 bit floating point can be read.`,
    )
  return { rate, channels, bits, float: tag === 3 }
}

/** One sample at byte `at`. */
function sampleAt(v: DataView, at: number, bits: number, float: boolean): number {
  if (float) {
    const x = bits === 32 ? v.getFloat32(at, true) : v.getFloat64(at, true)
    return Number.isFinite(x) ? Math.max(-8, Math.min(8, x)) : 0
  }
  if (bits === 8) return (v.getUint8(at) - 128) / 128
  if (bits === 16) return v.getInt16(at, true) / 32768
  if (bits === 24) return (v.getUint8(at) | (v.getUint8(at + 1) << 8) | (v.getInt8(at + 2) << 16)) / 8388608
  return v.getInt32(at, true) / 2147483648
}

/** bytes; no format chunk is longer */
const MOST_FORMAT = 4096

/** Two stretches of sound one after the other. */
function joined(a: ChannelBlock | null, b: ChannelBlock | null): ChannelBlock | null {
  if (!a || !b) return a ?? b
  return a.map((x, c) => {
    const both = new Float32Array(x.length + b[c]!.length)
    both.set(x)
    both.set(b[c]!, x.length)
    return both
  })
}

/** A reader for one file; feed it bytes in order, in pieces of any size. */
export function makeWavReader(): WavReader {
  const flags: Flag[] = []
  let format: WavFormat | null = null
  let failed = false
  let held: Uint8Array = new Uint8Array(0)
  let stage: 'riff' | 'chunk' | 'skip' | 'data' | 'after' | 'done' = 'riff'
  let left = 0
  let announced = 0
  let seen = 0
  let frames = 0
  let dataSeen = false
  /** sound was found behind the end that the header announces */
  let goesOn = false

  const fail = (code: string, says: string) => {
    failed = true
    stage = 'done'
    flags.push({ code, text: says, path: 'recording' })
  }

  /** consumes the head of `held` where a whole header is there; true when something was used */
  const step = (): boolean => {
    const v = new DataView(held.buffer, held.byteOffset, held.byteLength)
    if (stage === 'riff') {
      if (held.length < 12) return false
      const riff = text(v, 0)
      if ((riff !== 'RIFF' && riff !== 'RF64') || text(v, 8) !== 'WAVE') {
        const kind = fileKind(held)
        fail(
          'not-wav',
          kind
            ? `This is ${kind}, not a WAV file, whatever its name says.`
            : 'This is not a sound file that can be recognised: it does not begin as a WAV file does.',
        )
        return false
      }
      held = held.subarray(12)
      stage = 'chunk'
      return true
    }
    if (stage === 'chunk') {
      if (held.length < 8) return false
      const name = text(v, 0)
      const size = v.getUint32(4, true)
      if (name === 'data') {
        if (!format) {
          fail(
            'wav-format',
            'The WAV file has sound in it but does not say in which format before it begins.',
          )
          return false
        }
        held = held.subarray(8)
        stage = 'data'
        dataSeen = true
        announced = size
        // 0 and 0xffffffff are left by recorders that were stopped, or that stream: read to the end
        left = size === 0 || size === 0xffffffff ? Number.POSITIVE_INFINITY : size
        return true
      }
      if (name === 'fmt ') {
        // a size that cannot be true stands for the plain form
        const long = size > MOST_FORMAT ? 16 : size
        if (held.length < 8 + Math.min(long, 40)) return false
        format = readFormat(v, 8, Math.min(long, held.length - 8), flags)
        if (!format) {
          if (flags.length === 0)
            flags.push({
              code: 'wav-format',
              text: 'The WAV file does not describe its format fully.',
              path: 'recording',
            })
          failed = true
          stage = 'done'
          return false
        }
        held = held.subarray(8)
        stage = 'skip'
        left = long + (long & 1)
        return true
      }
      held = held.subarray(8)
      stage = 'skip'
      left = size + (size & 1)
      return true
    }
    if (stage === 'skip') {
      const n = Math.min(left, held.length)
      held = held.subarray(n)
      left -= n
      if (left > 0) return false
      stage = 'chunk'
      return true
    }
    if (stage === 'after') {
      // what follows the sound is another chunk, with a name of letters; anything else is more sound
      const next = left + (announced & 1)
      if (held.length < next + 8) return false
      if (/^[A-Za-z0-9_ ]{4}$/.test(text(v, next)) || held.every((b) => b === 0)) {
        stage = 'done'
        return false
      }
      goesOn = true
      left = Number.POSITIVE_INFINITY
      stage = 'data'
      return true
    }
    return false
  }

  const take = (): ChannelBlock | null => {
    if (stage !== 'data' || !format) return null
    const bytes = (format.bits / 8) * format.channels
    const n = Math.floor(Math.min(left, held.length) / bytes)
    if (n === 0) return null
    const v = new DataView(held.buffer, held.byteOffset, n * bytes)
    const { bits, float, channels } = format
    const out = Array.from({ length: channels }, () => new Float32Array(n))
    for (let c = 0; c < channels; c++) {
      const x = out[c]!
      for (let i = 0, at = (c * bits) / 8; i < n; i++, at += bytes) x[i] = sampleAt(v, at, bits, float)
    }
    held = held.subarray(n * bytes)
    left -= n * bytes
    seen += n * bytes
    frames += n
    if (left < bytes) stage = 'after'
    return out
  }

  return {
    push: (bytes) => {
      if (stage === 'done') return null
      if (held.length === 0) held = bytes
      else {
        const joined = new Uint8Array(held.length + bytes.length)
        joined.set(held)
        joined.set(bytes, held.length)
        held = joined
      }
      while (step());
      let out = take()
      // a header that announces too little is found out as soon as its sound ends
      if (stage === 'after' && step()) out = [out, take()].reduce(joined, null)
      // keep only what is left over, not the whole piece it lies in
      held = held.slice()
      return out
    },
    end: () => {
      if (failed) return
      if (stage === 'riff')
        fail('empty', held.length === 0 ? 'The file is empty.' : 'The file is too short to be a recording.')
      else if (!dataSeen) fail('no-sound', 'The WAV file ends before any sound begins.')
      else if (frames === 0) fail('no-sound', 'The WAV file holds no sound.')
      else if (format && Number.isFinite(left) && stage === 'data' && announced > seen) {
        const per = (format.bits / 8) * format.channels * format.rate
        flags.push({
          code: 'truncated',
          text: printed(
            say`The WAV file is cut short: ${inSeconds(seen / per)} are there of ${inSeconds(announced / per)} announced.`,
          ),
          path: 'recording',
        })
      }
      if (goesOn && format) {
        const per = (format.bits / 8) * format.channels * format.rate
        flags.push({
          code: 'header',
          text: printed(
            say`The WAV file's header announces ${inSeconds(announced / per)} of sound, but it goes on for ${inSeconds(seen / per)}; all of it was read.`,
          ),
          path: 'recording',
        })
      }
      stage = 'done'
    },
    get format() {
      return format
    },
    get flags() {
      return flags
    },
    get failed() {
      return failed
    },
  }
}

export interface WavSound {
  rate: number
  channels: Float32Array[]
  flags: Flag[]
}

/** A whole WAV file in memory. Never throws: what is wrong stands in `flags`, what could be read in `channels`. */
export function readWav(bytes: Uint8Array): WavSound {
  const reader = makeWavReader()
  const parts: ChannelBlock[] = []
  const block = reader.push(bytes)
  if (block) parts.push(block)
  reader.end()
  return { rate: reader.format?.rate ?? 0, channels: parts[0] ?? [], flags: [...reader.flags] }
}

/** bytes before the sound in the files written here */
export const WAV_HEAD = 44

/** The head of a 16-bit WAV file with `frames` samples a channel. */
export function wavHead(count: number, rate: number, frames: number): Uint8Array<ArrayBuffer> {
  const size = frames * count * 2
  const bytes = new Uint8Array(WAV_HEAD)
  const v = new DataView(bytes.buffer)
  const put = (at: number, s: string) => {
    for (let i = 0; i < s.length; i++) v.setUint8(at + i, s.charCodeAt(i))
  }
  put(0, 'RIFF')
  v.setUint32(4, 36 + size, true)
  put(8, 'WAVEfmt ')
  v.setUint32(16, 16, true)
  v.setUint16(20, 1, true)
  v.setUint16(22, count, true)
  v.setUint32(24, rate, true)
  v.setUint32(28, rate * count * 2, true)
  v.setUint16(32, count * 2, true)
  v.setUint16(34, 16, true)
  put(36, 'data')
  v.setUint32(40, size, true)
  return bytes
}

/** Samples within ±1 as 16-bit little-endian bytes, the channels in turn. */
export function pcm16(channels: readonly Float32Array[]): Uint8Array<ArrayBuffer> {
  const n = channels[0]?.length ?? 0
  const bytes = new Uint8Array(2 * n * channels.length)
  const v = new DataView(bytes.buffer)
  let at = 0
  for (let i = 0; i < n; i++)
    for (let c = 0; c < channels.length; c++, at += 2)
      v.setInt16(at, Math.round(Math.max(-1, Math.min(1, channels[c]![i]!)) * 32767), true)
  return bytes
}

/** A 16-bit WAV file of the given channels (within ±1, equal lengths). */
export function writeWav(channels: readonly Float32Array[], rate: number): Uint8Array {
  const n = channels[0]?.length ?? 0
  const bytes = new Uint8Array(WAV_HEAD + 2 * n * channels.length)
  bytes.set(wavHead(channels.length, rate, n))
  bytes.set(pcm16(channels), WAV_HEAD)
  return bytes
}
