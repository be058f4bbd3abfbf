import { makeResampler } from '../../../../../trades/sound/resample.ts'
import { pcm16, wavHead } from '../../../../../trades/sound/wav.ts'

/** samples a second that are kept: enough for engines and for the ear, a third of what a microphone gives */
export const KEPT_RATE = 16000
/** s of sound in one piece; a crash loses at most the last one */
const PIECE = 4
const FOLDER = 'recordings'

/** Where the pieces of a recording go as they come. */
interface Shelf {
  put(piece: Uint8Array<ArrayBuffer>): Promise<void>
  all(): Promise<Blob[]>
  clear(): Promise<void>
  /** true when the pieces outlive the page */
  lasting: boolean
}

/** A recording under way; its memory does not grow with its length. */
export interface Recorder {
  take(samples: Float32Array): void
  /** s so far */
  readonly seconds: number
  readonly lasting: boolean
  /** the whole as a WAV file; the pieces go */
  finish(): Promise<File>
}

const inMemory = (): Shelf => {
  const pieces: Blob[] = []
  return {
    // a blob may be put on disk by the browser, an array may not
    put: async (piece) => void pieces.push(new Blob([piece])),
    all: async () => pieces,
    clear: async () => {},
    lasting: false,
  }
}

const folders = async () =>
  (await navigator.storage.getDirectory()).getDirectoryHandle(FOLDER, { create: true })

/** A folder of the browser's own file system for this page; pieces are whole once written. */
async function onDisk(name: string): Promise<Shelf> {
  const parent = await folders()
  const folder = await parent.getDirectoryHandle(name, { create: true })
  let count = 0
  return {
    async put(piece) {
      const handle = await folder.getFileHandle(`${String(count++).padStart(6, '0')}.pcm`, { create: true })
      const out = await handle.createWritable()
      await out.write(piece)
      await out.close()
    },
    all: () => piecesOf(folder),
    clear: () => parent.removeEntry(name, { recursive: true }),
    lasting: true,
  }
}

async function piecesOf(folder: FileSystemDirectoryHandle): Promise<Blob[]> {
  const found: [string, File][] = []
  for await (const [name, handle] of entriesOf(folder))
    if (handle.kind === 'file') found.push([name, await (handle as FileSystemFileHandle).getFile()])
  found.sort(([a], [b]) => (a < b ? -1 : 1))
  // copied piece by piece, so that the folder can go
  const blobs: Blob[] = []
  for (const [, file] of found) blobs.push(new Blob([await file.arrayBuffer()]))
  return blobs
}

// the iterator of folders is younger than the type library
const entriesOf = (folder: FileSystemDirectoryHandle) =>
  (folder as unknown as { entries(): AsyncIterable<[string, FileSystemHandle]> }).entries()

function wavOf(pieces: readonly Blob[], began: Date): File {
  const bytes = pieces.reduce((n, p) => n + p.size, 0)
  return new File([wavHead(1, KEPT_RATE, bytes / 2), ...pieces], `run ${timeName(began)}.wav`, {
    type: 'audio/wav',
  })
}

/** "2026-11-25 14.05.09" */
export function timeName(now: Date): string {
  const two = (n: number) => String(n).padStart(2, '0')
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())} ${two(now.getHours())}.${two(now.getMinutes())}.${two(now.getSeconds())}`
}

/** Begins a recording of sound at `rate`; on the browser's disk where it has one, so that it outlives a reload. */
export async function startRecorder(rate: number, began: Date): Promise<Recorder> {
  const name = String(began.getTime())
  let shelf: Shelf
  try {
    shelf = await onDisk(name)
  } catch {
    shelf = inMemory()
  }
  // held while this page records, so that no other one takes the recording for a broken-off one
  let release = () => {}
  if (shelf.lasting && navigator.locks)
    void navigator.locks.request(`${FOLDER} ${name}`, () => new Promise<void>((done) => (release = done)))
  const resampler = makeResampler(rate, KEPT_RATE)
  let waiting: Float32Array[] = []
  let waited = 0
  let seconds = 0
  let writing: Promise<void> = Promise.resolve()
  const flush = () => {
    const pieces = waiting
    waiting = []
    waited = 0
    const bytes = new Uint8Array(pieces.reduce((n, p) => n + 2 * p.length, 0))
    let at = 0
    for (const p of pieces) {
      bytes.set(pcm16([p]), at)
      at += 2 * p.length
    }
    writing = writing.then(() => shelf.put(bytes))
  }
  const keep = (x: Float32Array) => {
    if (x.length === 0) return
    waiting.push(x)
    waited += x.length
    seconds += x.length / KEPT_RATE
    if (waited >= PIECE * KEPT_RATE) flush()
  }
  return {
    take: (samples) => keep(resampler.push(samples)),
    get seconds() {
      return seconds
    },
    lasting: shelf.lasting,
    async finish() {
      keep(resampler.flush())
      flush()
      try {
        await writing
        return wavOf(await shelf.all(), began)
      } finally {
        await shelf.clear().catch(() => {})
        release()
      }
    },
  }
}

/** A recording that was broken off by a reload or a crash. */
export interface Broken {
  began: Date
  /** s */
  seconds: number
  file(): Promise<File>
  drop(): Promise<void>
}

/** Recordings that no page is at any more, newest first. */
export async function brokenOff(): Promise<Broken[]> {
  try {
    const parent = await folders()
    const held = new Set((await navigator.locks?.query())?.held?.map((l) => l.name))
    const found: Broken[] = []
    for await (const [name, handle] of entriesOf(parent)) {
      if (handle.kind !== 'directory' || held.has(`${FOLDER} ${name}`)) continue
      const folder = handle as FileSystemDirectoryHandle
      let bytes = 0
      for await (const [, piece] of entriesOf(folder))
        bytes += (await (piece as FileSystemFileHandle).getFile()).size
      const drop = () => parent.removeEntry(name, { recursive: true })
      if (bytes < 2 * KEPT_RATE) {
        await drop()
        continue
      }
      const began = new Date(Number(name))
      found.push({
        began,
        seconds: bytes / 2 / KEPT_RATE,
        file: async () => wavOf(await piecesOf(folder), began),
        drop,
      })
    }
    return found.sort((a, b) => b.began.getTime() - a.began.getTime())
  } catch {
    return []
  }
}
