import { useSyncExternalStore } from 'react'
import type { Flag } from '../../../answers/solved.ts'
import type { HearAnswer } from '../../../jobs/hear.ts'
import { type GpxPoint, readGpx } from '../../../sound/gpx.ts'
import type { InventedOrder } from '../../../sound/invented.ts'
import type { HearOptions, LockedPoint } from '../../../sound/listener.ts'
import type { Observed } from '../../../sound/observations.ts'
import { writeWav } from '../../../sound/wav.ts'
import { type Call, callJob } from '../../work/call.ts'
import { decode } from './decode.ts'

/** How the craft ran; decides which predicted speed stands beside the heard one. */
export type RunKind = 'not said' | 'tied up' | 'under way'

/** What the user tells of a run, beside its sound. */
export interface Told {
  kind: RunKind
  engines: 'auto' | 1 | 2
  locks: readonly LockedPoint[]
  observed: readonly Observed[]
  notes: string
  /** luggage-scale readings as typed, kg */
  readings: string
  gpxName: string
  gpx: readonly GpxPoint[]
  /** s of the GPX track before the recording begins */
  lag: number
}

const nothingTold: Told = {
  kind: 'not said',
  engines: 'auto',
  locks: [],
  observed: [],
  notes: '',
  readings: '',
  gpxName: '',
  gpx: [],
  lag: 0,
}

/** The recording on the bench. */
export interface Recording {
  id: string
  name: string
  /** what plays it; absent when the run was kept without its sound */
  audio: Blob | undefined
  /** true when the project made it up */
  invented: boolean
  flags: readonly Flag[]
  /** s */
  seconds: number
  answer: HearAnswer | undefined
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

let call: Call<HearAnswer> | undefined
let turn = 0

/** Reads a recording and listens to it; what was told of the one before goes. */
async function open(file: File, options: Settings, invented = false): Promise<void> {
  cancel()
  const mine = ++turn
  const wanted = () => mine === turn
  put({ fault: undefined, work: { says: `Reading ${file.name}`, part: undefined } })
  const decoded = await decode(file, {
    progress: (part) => wanted() && put({ work: { says: `Reading ${file.name}`, part } }),
    cancelled: () => !wanted(),
  })
  if (!wanted()) return
  if (decoded.seconds === 0)
    return put({
      work: undefined,
      fault: { name: file.name, says: decoded.flags.map((f) => f.text) },
    })
  const recording: Recording = {
    id: crypto.randomUUID(),
    name: file.name,
    audio: file,
    invented,
    flags: decoded.flags,
    seconds: decoded.seconds,
    answer: undefined,
  }
  put({ recording, told: { ...nothingTold, kind: invented ? 'tied up' : 'not said' } })
  await listen(recording, decoded.channels, options)
}

export type Settings = Omit<HearOptions, 'progress' | 'cancelled' | 'locks'>

async function listen(recording: Recording, channels: Float32Array[], options: Settings): Promise<void> {
  call?.cancel()
  const { engines, locks } = state.told
  const mine: Call<HearAnswer> = callJob(
    'hear',
    {
      name: recording.id,
      channels,
      options: { ...options, ...(engines === 'auto' ? {} : { engines }), locks },
    },
    (part, says) => call === mine && put({ work: { says, part } }),
    [],
    (early) =>
      call === mine && !state.recording?.answer && put({ recording: { ...recording, answer: early } }),
  )
  call = mine
  put({ work: { says: 'Listening', part: 0 } })
  try {
    const answer = await mine.done
    if (call === mine) put({ recording: { ...recording, answer }, work: undefined })
  } catch (error) {
    if (call !== mine || (error as Error).name === 'AbortError') return
    put({ work: undefined, fault: { name: recording.name, says: [(error as Error).message] } })
  }
}

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
    put({ told: { ...state.told, gpx: points, gpxName: file.name, kind } })
  }
  return flags.map((f) => f.text).join(' ')
}

/** Follows the engines again, with the locked points and the engine count told meanwhile. */
function again(options: Settings): void {
  const { recording } = state
  if (!recording?.answer?.hearing || recording.answer.sound.length === 0) return
  void listen(recording, [recording.answer.sound], options)
}

function cancel(): void {
  turn++
  call?.cancel()
  call = undefined
  put({ work: undefined })
}

export const bench = {
  open,
  invent,
  addGpx,
  has: () => state.recording !== undefined,
  again,
  cancel,
  tell: (part: Partial<Told>) => put({ told: { ...state.told, ...part } }),
  /** a run kept earlier */
  takeUp(recording: Recording, told: Told) {
    cancel()
    put({ recording, told, fault: undefined })
  },
  close() {
    cancel()
    put({ recording: undefined, told: nothingTold, fault: undefined })
  },
}
