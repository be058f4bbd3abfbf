import { useEffect, useSyncExternalStore } from 'react'
import type { FloatOrder } from '../../../../jobs/floatJob.ts'
import type { FloatReport } from '../../../../trades/float/floatReport.ts'
import type { Craft } from '../../state/craftFile.ts'
import { type Call, callJob } from '../../work/call.ts'

/** One craft's report, or how far it is. Reports outlive the page, the oldest go first. */
export interface ReportState {
  report?: FloatReport
  running?: { says: string; part: number }
  /** called off by the user; starts again only when asked */
  stopped?: boolean
  error?: string
}

const most = 20
const known = new Map<string, ReportState>()
const calls = new Map<string, Call<FloatReport>>()
const listeners = new Set<() => void>()
const nothing: ReportState = {}

function put(key: string, state: ReportState): void {
  known.delete(key)
  known.set(key, state)
  for (const old of known.keys()) {
    if (known.size <= most) break
    if (!calls.has(old)) known.delete(old)
  }
  for (const listener of listeners) listener()
}

/** What the report is made of, as a key: crafts that float alike share it. */
export function reportKey(craft: Craft, filesAre: string): string {
  const { hull, weights, tanks, rider, openings, foam, compartments, place } = craft
  return JSON.stringify([filesAre, hull, weights, tanks, rider, openings, foam, compartments, place])
}

function start(key: string, order: FloatOrder): void {
  if (calls.has(key)) return
  const call = callJob('float', order, (part, says) => {
    if (calls.get(key) === call) put(key, { running: { says, part } })
  })
  calls.set(key, call)
  put(key, { running: { says: 'Starting', part: 0 } })
  call.done.then(
    (report) => {
      calls.delete(key)
      put(key, { report })
    },
    (error: Error) => {
      calls.delete(key)
      put(
        key,
        error.name === 'AbortError'
          ? known.get(key)?.stopped
            ? { stopped: true }
            : {}
          : { error: error.message },
      )
    },
  )
}

/** Calls a report off; it waits until it is asked for again. */
export function stopReport(key: string): void {
  put(key, { stopped: true })
  calls.get(key)?.cancel()
}

export function resumeReport(key: string): void {
  put(key, {})
}

const listen = (listener: () => void) => {
  listeners.add(listener)
  return () => listeners.delete(listener)
}

/** milliseconds of quiet before tried values are worked out */
const quiet = 250

/** The report of one craft, worked out in a worker when it is not known. What is only tried is called off when it changes. */
export function useReport(
  key: string | undefined,
  order: FloatOrder | undefined,
  tried: boolean,
): ReportState {
  const state = useSyncExternalStore(listen, () =>
    key === undefined ? nothing : (known.get(key) ?? nothing),
  )
  const idle = !state.report && !state.running && !state.stopped && !state.error
  // biome-ignore lint/correctness/useExhaustiveDependencies: the key stands for the order
  useEffect(() => {
    if (key === undefined || !order || !idle) return
    const timer = setTimeout(() => start(key, order), tried ? quiet : 0)
    return () => clearTimeout(timer)
  }, [key, idle, tried])
  useEffect(() => {
    if (key === undefined || !tried) return
    return () => calls.get(key)?.cancel()
  }, [key, tried])
  return state
}
