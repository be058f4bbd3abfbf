import { useSyncExternalStore } from 'react'
import type { Flag } from '../../../../base/answers/solved.ts'
import type { SessionOptions } from '../../../../jobs/hearJob.ts'
import { allLocks } from '../../../../trades/sound/byHand.ts'
import { readGpx } from '../../../../trades/sound/gpx.ts'
import type { Hearing, Spectrogram, Track } from '../../../../trades/sound/hearingTypes.ts'
import type { InventedOrder } from '../../../../trades/sound/invented.ts'
import { writeWav } from '../../../../trades/sound/wav.ts'
import { callJob } from '../../work/call.ts'
import { type Listening, listenTo, Unread } from './listening.ts'
import { nothingTold, type Told } from './told.ts'

/** The recording on the bench. */
export interface Recording {
  id: string
  name: string
  /** what plays it and is listened to; absent when the run was kept without its sound */
  audio: Blob | undefined
  /** true when the project made it up */
  invented: boolean
  flags: readonly Flag[]
  /** s */
  seconds: number
  /** the picture comes first, the hearing when all was listened to */
  answer: { spectrogram: Spectrogram; hearing?: Hearing } | undefined
}

export interface Bench {
  recording: Recording | undefined
  told: Told
  /** long work under way */
  work: { says: string; part: number | undefined } | undefined
  /** why the last file gave nothing */
  fault: { name: string; says: readonly string[] } | undefined
}

let state: Bench = { recording: undefined, told: nothingTold, work: undefined, fault: undefined }
const listeners = new Set<() => void>()
const put = (part: Partial<Bench>) => {
  state = { ...state, ...part }
  for (const listener of listeners) listener()
}
const subscribe = (listener: () => void) => {
  listeners.add(listener)
  return () => listeners.delete(listener)
}
export const useBench = (): Bench => useSyncExternalStore(subscribe, () => state)

export type Settings = SessionOptions

let listening: { of: string; settings: string; it: Listening } | undefined
let turn = 0

const change = () => {
  const { engines, locks, marks } = state.told
  return { ...(engines === 'auto' ? {} : { engines }), locks: allLocks(locks, marks) }
}

/** Reads a recording and listens to it; what was told of the one before goes. */
async function open(file: File, options: Settings, invented = false): Promise<void> {
  const recording: Recording = {
    id: crypto.randomUUID(),
    name: file.name,
    audio: file,
    invented,
    flags: [],
    seconds: 0,
    answer: undefined,
  }
  await listen(recording, file, options, { ...nothingTold, kind: invented ? 'tied up' : 'not said' })
}

/** Has a worker listen to a recording; with `told`, a new one takes the bench as soon as there is something to see. */
async function listen(recording: Recording, file: File, options: Settings, told?: Told): Promise<void> {
  cancel()
  const mine = ++turn
  const wanted = () => mine === turn
  put({ fault: undefined, work: { says: `Reading ${file.name}`, part: undefined } })
  const fresh = told ? { told } : {}
  let shown = !told
  const engines = options.engines === 1 || state.told.engines === 1 ? { engines: 1 as const } : {}
  const it = listenTo(file, { ...options, ...engines }, told ? {} : change(), {
    progress: (part, says) => wanted() && put({ work: { says, part } }),
    picture(spectrogram, seconds) {
      // a run that has been heard before keeps its picture until the new one is whole
      if (!wanted() || !told) return
      put({ recording: { ...recording, seconds, answer: { spectrogram } }, ...(shown ? {} : fresh) })
      shown = true
    },
  })
  listening = { of: recording.id, settings: keyOf(options), it }
  try {
    const { hearing, seconds, flags } = await it.done
    if (!wanted()) return
    put({
      recording: { ...recording, seconds, flags, answer: { spectrogram: hearing.spectrogram, hearing } },
      ...(shown ? {} : fresh),
      work: undefined,
    })
  } catch (error) {
    if (!wanted()) return
    listening = undefined
    it.end()
    const says = error instanceof Unread ? error.flags.map((f) => f.text) : [(error as Error).message]
    put({ work: undefined, fault: { name: file.name, says } })
  }
}

/** a listener told of one engine only keeps no pairs, so it serves no other count */
const keyOf = (options: Settings) =>
  JSON.stringify([options, state.told.engines === 1 || options.engines === 1])

/** A run made up by the project's own synthesis, opened like any other recording. */
async function invent(order: InventedOrder, options: Settings): Promise<void> {
  cancel()
  const mine = ++turn
  put({ fault: undefined, work: { says: 'Making up a run', part: undefined } })
  const { samples, rate } = await callJob('invented-run', order).done
  if (mine !== turn) return
  const bytes = writeWav([samples], rate) as Uint8Array<ArrayBuffer>
  await open(new File([bytes], 'Invented run', { type: 'audio/wav' }), options, true)
}

/** Puts a GPX track beside the run; answers what is wrong with it, '' when nothing is. */
async function addGpx(file: File): Promise<string> {
  const { points, flags } = readGpx(await file.text())
  if (points.length >= 3) {
    const kind = state.told.kind === 'not said' ? 'under way' : state.told.kind
    put({ told: { ...state.told, gpx: points, gpxName: file.name, kind, lag: undefined } })
  }
  return flags.map((f) => f.text).join(' ')
}

/** Follows the engines again, with what was put right by hand and the engine count told meanwhile. */
async function again(options: Settings): Promise<void> {
  const { recording } = state
  if (!recording?.answer?.hearing || !recording.audio) return
  const open = listening
  if (!open || open.of !== recording.id || open.settings !== keyOf(options))
    return listen(recording, new File([recording.audio], recording.name), options)
  const mine = ++turn
  put({ work: { says: 'Following the engines', part: 0.9 }, fault: undefined })
  try {
    const { hearing } = await open.it.again(change())
    if (mine !== turn) return
    put({
      recording: { ...recording, answer: { spectrogram: hearing.spectrogram, hearing } },
      work: undefined,
    })
  } catch (error) {
    if (mine === turn)
      put({ work: undefined, fault: { name: recording.name, says: [(error as Error).message] } })
  }
}

/** One engine's lines alone; reads the recording again when its worker has gone. */
async function alone(track: Track, options: Settings): Promise<Blob | undefined> {
  const { recording } = state
  const hearing = recording?.answer?.hearing
  if (!recording?.audio || !hearing) return undefined
  if (!listening || listening.of !== recording.id)
    await listen(recording, new File([recording.audio], recording.name), options)
  return listening?.it.alone(track, hearing.step)
}

/** Ends what is under way. A recording already heard keeps its worker, which holds its sound. */
function cancel(): void {
  turn++
  if (listening && (state.work || listening.of !== state.recording?.id)) {
    listening.it.end()
    listening = undefined
  }
  put({ work: undefined })
}

export const bench = {
  open,
  invent,
  addGpx,
  again,
  alone,
  cancel,
  state: () => state,
  subscribe,
  has: () => state.recording !== undefined,
  tell: (part: Partial<Told>) => put({ told: { ...state.told, ...part } }),
  /** a run kept earlier; what it lacks because it was kept before that could be told, is as not told */
  takeUp(recording: Recording, told: Partial<Told>, options: Settings) {
    cancel()
    put({ recording, told: { ...nothingTold, ...told }, fault: undefined })
    cancel()
    // the page went before it was listened to
    if (!recording.answer?.hearing && recording.audio)
      void listen(recording, new File([recording.audio], recording.name), options, { ...state.told })
  },
  close() {
    cancel()
    put({ recording: undefined, told: nothingTold, fault: undefined })
    cancel()
  },
}
