import type { Flag } from '../../../../base/answers/solved.ts'
import type { SessionOptions } from '../../../../jobs/hearJob.ts'
import type { Hearing, Spectrogram, Track } from '../../../../trades/sound/hearingTypes.ts'
import type { HearOptions } from '../../../../trades/sound/listener.ts'
import { decodeWhole } from './decodeAudio.ts'
import type { HearingNews, HearingOrder } from './hearing.worker.ts'

export type Change = Pick<HearOptions, 'locks' | 'engines'>

export interface Heard {
  hearing: Hearing
  /** s */
  seconds: number
  flags: Flag[]
}

/** What comes of a listening before its end. */
export interface OnTheWay {
  progress(part: number, says: string): void
  picture(picture: Spectrogram, seconds: number): void
}

/** A recording in a worker that keeps its sound, so that the page need not. */
export interface Listening {
  /** rejects with Unread when nothing could be read, with an AbortError when ended before */
  done: Promise<Heard>
  /** decides anew; only after `done` */
  again(change: Change): Promise<Heard>
  /** one engine's lines as a WAV file; only after `done` */
  alone(track: Track, step: number): Promise<Blob>
  end(): void
}

/** Nothing could be read of a file; says why. */
export class Unread extends Error {
  readonly flags: readonly Flag[]
  constructor(flags: readonly Flag[]) {
    super(flags.map((f) => f.text).join(' '))
    this.name = 'Unread'
    this.flags = flags
  }
}

/** Opens a recording in a worker of its own and listens to it. */
export function listenTo(file: File, options: SessionOptions, change: Change, on: OnTheWay): Listening {
  const worker = new Worker(new URL('./hearing.worker.ts', import.meta.url), { type: 'module' })
  const send = (order: HearingOrder, transfer: Transferable[] = []) => worker.postMessage(order, transfer)
  let waiting: { resolve(news: HearingNews): void; reject(error: Error): void } | undefined
  const answer = () =>
    new Promise<HearingNews>((resolve, reject) => {
      waiting = { resolve, reject }
    })
  worker.onmessage = ({ data }: MessageEvent<HearingNews>) => {
    if ('part' in data) return on.progress(data.part, data.says)
    if ('picture' in data) return on.picture(data.picture, data.seconds)
    if ('decode' in data) {
      void decodeWhole(file, (sound, rate, expected) =>
        send(
          { sound, rate, expected },
          sound.map((x) => x.buffer),
        ),
      ).then((frames) => send({ decoded: frames }))
      return
    }
    if ('nothing' in data) waiting?.reject(new Unread(data.nothing))
    else if ('failed' in data) waiting?.reject(new Error(data.failed))
    else waiting?.resolve(data)
    waiting = undefined
  }
  worker.onerror = (event) =>
    waiting?.reject(new Error(event.message || 'the listening could not be started'))
  const heard = async (order: HearingOrder): Promise<Heard> => {
    const news = answer()
    send(order)
    return (await news) as Heard
  }
  const done = heard({ open: file, options, change })
  // questions wait for one another: the worker answers in turn
  let last: Promise<unknown> = done.catch(() => {})
  const inTurn = <T>(ask: () => Promise<T>): Promise<T> => {
    const next = last.then(ask)
    last = next.catch(() => {})
    return next
  }
  return {
    done,
    again: (again) => inTurn(() => heard({ again })),
    alone: ({ firing, change: slope, rpm }, step) =>
      inTurn(async () => {
        const news = answer()
        send({ alone: { firing, change: slope, rpm }, step })
        return new Blob([((await news) as { alone: Uint8Array<ArrayBuffer> }).alone], { type: 'audio/wav' })
      }),
    end() {
      worker.terminate()
      waiting?.reject(new DOMException('called off', 'AbortError'))
      waiting = undefined
    },
  }
}
