import { useEffect, useSyncExternalStore } from 'react'
import { addEntry } from '../../../whole/log/logText.ts'
import type { LogEntry } from '../../../whole/log/logTypes.ts'
import { openStore, type Store } from './saved.ts'

/** The log beside each craft, as plain text in this browser; it leaves as a file or with the runs. */
let opened: Promise<Store> | undefined
const store = () => (opened ??= openStore())
const key = (craftId: string) => `log ${craftId}`

const texts = new Map<string, string>()
const listeners = new Set<() => void>()
const subscribe = (listener: () => void) => {
  listeners.add(listener)
  return () => listeners.delete(listener)
}
const put = (craftId: string, text: string) => {
  texts.set(craftId, text)
  for (const listener of listeners) listener()
}

const keptLog = async (craftId: string): Promise<string> =>
  (await (await store()).setting<string>(key(craftId))) ?? ''

/** Changes the log of a craft by what stands in it now; two tabs never do so at once. Rejects when the browser has no room. */
export async function changeLog(craftId: string, by: (text: string) => string): Promise<void> {
  const change = async () => {
    const text = by(await keptLog(craftId))
    await (await store()).setSetting(key(craftId), text)
    put(craftId, text)
  }
  if (navigator.locks) await navigator.locks.request(key(craftId), change)
  else await change()
}

export const addToLog = (craftId: string, entry: LogEntry, craftName: string): Promise<void> =>
  changeLog(craftId, (text) => addEntry(text, entry, craftName))

/** The log of a craft, '' until it has been read or where there is none. */
export function useLogText(craftId: string | undefined): string {
  useEffect(() => {
    if (craftId) void keptLog(craftId).then((text) => texts.get(craftId) !== text && put(craftId, text))
  }, [craftId])
  const snapshot = () => (craftId ? (texts.get(craftId) ?? '') : '')
  return useSyncExternalStore(subscribe, snapshot, snapshot)
}
