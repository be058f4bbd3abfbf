import { useSyncExternalStore } from 'react'
import type { JobInput, JobOutput } from '../../../jobs/jobs.ts'
import { type Call, callJob } from './call.ts'

type SearchName = 'pipe-search' | 'stinger-search' | 'design-search' | 'deciding'

/** A search of this session: it goes on while another page is looked at, and its answer is there on coming back. */
export interface Search<N extends SearchName> {
  /** the first answer, then the last */
  answer?: JobOutput<N>
  running?: { says: string; part: number }
  error?: string
  stopped?: boolean
}

const known = new Map<string, Search<SearchName>>()
const calls = new Map<string, Call<unknown>>()
const listeners = new Set<() => void>()

function put(id: string, search: Search<SearchName>): void {
  known.set(id, search)
  for (const listener of listeners) listener()
}

const listen = (listener: () => void) => {
  listeners.add(listener)
  return () => listeners.delete(listener)
}

/** Starts a search; one of the same name and key that runs already goes on. */
export function startSearch<N extends SearchName>(name: N, key: string, input: JobInput<N>): void {
  const id = `${name} ${key}`
  if (calls.has(id)) return
  const mine: Call<JobOutput<N>> = callJob(
    name,
    input,
    (part, says) => calls.get(id) === mine && put(id, { ...known.get(id), running: { says, part } }),
    [],
    (answer) => put(id, { ...known.get(id), answer }),
  )
  calls.set(id, mine)
  put(id, { running: { says: 'Starting', part: 0 } })
  mine.done.then(
    (answer) => {
      calls.delete(id)
      put(id, { answer })
    },
    (error: Error) => {
      calls.delete(id)
      const { running: _, ...left } = known.get(id) ?? {}
      put(id, error.name === 'AbortError' ? { ...left, stopped: true } : { ...left, error: error.message })
    },
  )
}

export function cancelSearch(name: SearchName, key: string): void {
  calls.get(`${name} ${key}`)?.cancel()
}

export function useSearch<N extends SearchName>(name: N, key: string): Search<N> | undefined {
  const snapshot = () => known.get(`${name} ${key}`) as Search<N> | undefined
  return useSyncExternalStore(listen, snapshot, snapshot)
}
