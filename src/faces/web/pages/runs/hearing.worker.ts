import type { Flag } from '../../../../base/answers/solved.ts'
import { type HearSession, makeHearSession, type SessionOptions } from '../../../../jobs/hearJob.ts'
import type { Hearing, Spectrogram, Track } from '../../../../trades/sound/hearingTypes.ts'
import type { HearOptions } from '../../../../trades/sound/listener.ts'
import type { Half, ScoredHalf } from '../../../../trades/sound/scorer.ts'
import { readRecording } from './decodeAudio.ts'
import type { HalfNews } from './half.worker.ts'

/** What the page asks of the worker that holds one recording. */
export type HearingOrder =
  | { open: File; options: SessionOptions; change: Pick<HearOptions, 'locks' | 'engines'> }
  /** sound the page has decoded for the worker, and how many frames it was in all */
  | { sound: Float32Array[]; rate: number; expected: number }
  | { decoded: number }
  | { again: Pick<HearOptions, 'locks' | 'engines'> }
  | { alone: Pick<Track, 'firing' | 'change' | 'rpm'>; step: number }

export type HearingNews =
  | { part: number; says: string }
  | { picture: Spectrogram; seconds: number }
  /** the page is to decode the file with the browser's own decoder */
  | { decode: true }
  /** nothing could be read, and why */
  | { nothing: Flag[] }
  | { hearing: Hearing; seconds: number; flags: Flag[] }
  | { alone: Uint8Array<ArrayBuffer> }
  | { failed: string }

const scope = self as unknown as {
  onmessage: ((event: MessageEvent<HearingOrder>) => void) | null
  postMessage(news: HearingNews, transfer?: Transferable[]): void
}

let session: HearSession | undefined
let flags: Flag[] = []
/** ends the wait for the page's decoder */
let decoded: ((frames: number) => void) | undefined

/** frames scored between two words on how far it is, a few seconds of sound */
const STRIDE = 200
/** part of the work that reading takes, and that following takes */
const READING = 0.15
const FOLLOWING = 0.9
/** ms after which the first picture of a long reading is shown, though it is not read to its end */
const FIRST_PICTURE = 1200

const say = (part: number, says: string) => scope.postMessage({ part, says })
const hand = (hearing: Hearing) =>
  scope.postMessage({ hearing, seconds: session!.seconds(), flags }, [
    hearing.spectrogram.level.buffer as ArrayBuffer,
  ])

const listening = (part: number) => say(READING + (FOLLOWING - READING) * part, 'Listening for engines')

/** Scores all frames, half of them in a second worker where the recording is long and there is a core for it. */
async function scoreAll(mine: HearSession): Promise<void> {
  const half = (navigator.hardwareConcurrency ?? 1) > 1 ? mine.halve() : undefined
  const other = half && scoreElsewhere(half)
  for (let part = 0; part < 1; ) {
    part = mine.score(STRIDE)
    listening(part)
  }
  if (!half) return
  mine.join(await other)
  // nothing is left, unless the second worker failed
  for (let part = 0; part < 1; part = mine.score(STRIDE)) listening(part)
}

/** Undefined when no second worker can be had. */
function scoreElsewhere(half: Half): Promise<ScoredHalf | undefined> {
  return new Promise((done) => {
    try {
      const worker = new Worker(new URL('./half.worker.ts', import.meta.url), { type: 'module' })
      const end = (scored: ScoredHalf | undefined) => {
        worker.terminate()
        done(scored)
      }
      worker.onmessage = ({ data }: MessageEvent<HalfNews>) => 'scored' in data && end(data.scored)
      worker.onerror = () => end(undefined)
      worker.postMessage(half, [half.signal.buffer])
    } catch {
      done(undefined)
    }
  })
}

async function open(file: File, options: SessionOptions, change: Pick<HearOptions, 'locks' | 'engines'>) {
  const mine = makeHearSession(options)
  session = mine
  const began = performance.now()
  let shown = 0
  const show = () => {
    const picture = mine.picture()
    scope.postMessage({ picture, seconds: mine.seconds() }, [picture.level.buffer as ArrayBuffer])
  }
  const read = await readRecording(
    file,
    (channels, rate, expected) => {
      mine.take(channels, rate, expected)
      // a picture soon, and another each time there is twice as much of it
      const late = performance.now() - began > FIRST_PICTURE
      if (late && mine.seconds() > 2 * Math.max(1, shown)) {
        shown = mine.seconds()
        show()
      }
    },
    {
      progress: (part) => say(READING * part, `Reading ${file.name}`),
      decodeAtOnce: () =>
        new Promise<number>((done) => {
          decoded = done
          scope.postMessage({ decode: true })
        }),
    },
  )
  mine.close()
  flags = read
  if (mine.seconds() === 0) return scope.postMessage({ nothing: read })
  show()
  await scoreAll(mine)
  say(FOLLOWING, 'Following the engines')
  hand(mine.answer(change))
}

scope.onmessage = async ({ data }) => {
  try {
    if ('open' in data) await open(data.open, data.options, data.change)
    else if ('sound' in data) session?.take(data.sound, data.rate, data.expected)
    else if ('decoded' in data) decoded?.(data.decoded)
    else if ('again' in data) {
      say(FOLLOWING, 'Following the engines')
      hand(session!.answer(data.again))
    } else {
      const alone = session!.alone(data.alone, data.step)
      scope.postMessage({ alone }, [alone.buffer])
    }
  } catch (error) {
    scope.postMessage({ failed: error instanceof Error ? error.message : String(error) })
  }
}
