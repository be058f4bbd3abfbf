/** Sound of any recording on disk: own reader for WAV, ffmpeg on the path for the rest. */
import { spawn } from 'node:child_process'
import { closeSync, createReadStream, openSync, readSync, statSync } from 'node:fs'
import type { Flag } from '../../base/answers/solved.ts'
import {
  lengthFlags,
  mostSeconds,
  OGG_TAIL,
  oggCut,
  oggEnds,
  readContainer,
  whyNothing,
} from '../../trades/sound/container.ts'
import { fileKind, makeWavReader } from '../../trades/sound/wav.ts'

/** Takes the sound as it comes: channels of one stretch, at `rate` samples a second; `expected` s are likely to come in all. */
export type SoundSink = (channels: readonly Float32Array[], rate: number, expected?: number) => void

export interface Decoded {
  ok: boolean
  rate: number
  /** s of sound handed over */
  seconds: number
  flags: Flag[]
}

/** rate and channels asked of ffmpeg */
const FFMPEG_RATE = 16000

/** bytes of a file from `at` on, fewer where it ends */
function part(path: string, at: number, most: number): Uint8Array {
  const bytes = new Uint8Array(most)
  const handle = openSync(path, 'r')
  try {
    return bytes.subarray(0, readSync(handle, bytes, 0, bytes.length, Math.max(0, at)))
  } finally {
    closeSync(handle)
  }
}

async function decodeWav(path: string, sink: SoundSink): Promise<Decoded> {
  const reader = makeWavReader()
  const { size } = statSync(path)
  let frames = 0
  for await (const piece of createReadStream(path, { highWaterMark: 1 << 18 })) {
    const block = reader.push(piece as Uint8Array)
    if (block?.[0]) {
      frames += block[0].length
      const { rate, bits, channels } = reader.format!
      sink(block, rate, size / ((bits / 8) * channels * rate))
    }
    if (reader.failed) break
  }
  reader.end()
  const rate = reader.format?.rate ?? 0
  return { ok: frames > 0, rate, seconds: rate > 0 ? frames / rate : 0, flags: [...reader.flags] }
}

function decodeWithFfmpeg(
  path: string,
  sink: SoundSink,
  command: string,
  expected?: number,
): Promise<Decoded> {
  return new Promise((resolve) => {
    const child = spawn(
      command,
      [
        '-nostdin',
        '-v',
        'error',
        '-i',
        path,
        '-map',
        '0:a:0',
        '-vn',
        '-ac',
        '2',
        '-ar',
        String(FFMPEG_RATE),
        '-t',
        String(mostSeconds(statSync(path).size)),
        '-f',
        's16le',
        '-',
      ],
      { stdio: ['ignore', 'pipe', 'pipe'] },
    )
    let held = new Uint8Array(0)
    let frames = 0
    let says = ''
    const flags: Flag[] = []
    child.stderr.on('data', (d: Buffer) => {
      if (says.length < 4000) says += d.toString()
    })
    child.stdout.on('data', (d: Buffer) => {
      const bytes = new Uint8Array(held.length + d.length)
      bytes.set(held)
      bytes.set(d, held.length)
      const n = Math.floor(bytes.length / 4)
      const v = new DataView(bytes.buffer, 0, n * 4)
      const left = new Float32Array(n)
      const right = new Float32Array(n)
      for (let i = 0; i < n; i++) {
        left[i] = v.getInt16(4 * i, true) / 32768
        right[i] = v.getInt16(4 * i + 2, true) / 32768
      }
      held = bytes.slice(n * 4)
      frames += n
      if (n > 0) sink([left, right], FFMPEG_RATE, expected)
    })
    const done = () => resolve({ ok: frames > 0, rate: FFMPEG_RATE, seconds: frames / FFMPEG_RATE, flags })
    child.on('error', (error: NodeJS.ErrnoException) => {
      const text =
        error.code === 'ENOENT'
          ? 'This recording is not a WAV file, and ffmpeg, which reads the others, was not found on this machine: install it, or save the recording as WAV.'
          : `ffmpeg could not be started: ${error.message}`
      flags.push({ code: 'no-decoder', text, path: 'recording' })
      done()
    })
    child.on('close', () => {
      if (flags.length > 0) return
      if (frames === 0)
        flags.push(
          /matches no streams|does not contain any stream|Output file #0 does not contain/i.test(says)
            ? {
                code: 'no-sound',
                text: 'There is no sound in this file: it may be a video filmed without it.',
                path: 'recording',
              }
            : { code: 'unreadable', text: 'This file could not be read as a recording.', path: 'recording' },
        )
      else if (says.trim() !== '')
        flags.push({
          code: 'damaged',
          text: `The recording is damaged in places; ${(frames / FFMPEG_RATE).toFixed(1)} s could be read.`,
          path: 'recording',
        })
      done()
    })
  })
}

/** Reads a recording from disk stretch by stretch; never throws for what is in the file. `ffmpeg` names the program to call. */
export async function decodeFile(path: string, sink: SoundSink, ffmpeg = 'ffmpeg'): Promise<Decoded> {
  const nothing = (code: string, text: string): Decoded => ({
    ok: false,
    rate: 0,
    seconds: 0,
    flags: [{ code, text, path: 'recording' }],
  })
  let first: Uint8Array
  try {
    const s = statSync(path)
    if (s.isDirectory()) return nothing('folder', 'This is a folder, not a recording.')
    first = part(path, 0, 64)
  } catch (error) {
    const code = (error as NodeJS.ErrnoException).code
    return nothing(
      'no-file',
      code === 'ENOENT'
        ? 'There is no such file.'
        : code === 'EACCES'
          ? 'The file may not be read.'
          : `The file cannot be opened (${code ?? 'unknown'}).`,
    )
  }
  if (first.length === 0) return nothing('empty', 'The file is empty.')
  const kind = fileKind(first)
  if (kind === 'a WAV file') {
    const wav = await decodeWav(path, sink)
    // odd codings inside a WAV file are left to ffmpeg
    if (wav.ok || !wav.flags.some((f) => f.code === 'wav-format')) return wav
    const other = await decodeWithFfmpeg(path, sink, ffmpeg)
    return other.ok ? other : wav
  }
  const { FilePathSource } = await import('mediabunny')
  const container = await readContainer(new FilePathSource(path))
  const other = await decodeWithFfmpeg(path, sink, ffmpeg, container.soundLasts)
  if (other.flags.some((f) => f.code === 'no-decoder')) return other
  if (!other.ok) {
    const why = whyNothing(container)
    return why ? { ...other, flags: [why] } : other
  }
  const lengths = lengthFlags(container, other.seconds)
  if (kind === 'an Ogg file' && !oggEnds(part(path, statSync(path).size - OGG_TAIL, OGG_TAIL)))
    lengths.push(oggCut(other.seconds))
  // how much is missing says more than that something is
  const rest = lengths.some((f) => f.code === 'truncated')
    ? other.flags.filter((f) => f.code !== 'damaged')
    : other.flags
  return { ...other, flags: [...rest, ...lengths] }
}
