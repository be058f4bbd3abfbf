import { type DBSchema, type IDBPDatabase, openDB } from 'idb'
import type { Work } from './work.ts'

/** One saved state of one craft; whole in itself, so a crash between two of them loses at most the newer. */
export interface Snapshot {
  craftId: string
  /** ms since 1970, strictly rising for one craft */
  time: number
  work: Work
}

interface Shelf extends DBSchema {
  snapshots: { key: [string, number]; value: Snapshot }
  settings: { key: string; value: unknown }
}

/** A craft kept in this browser. */
export interface Shelved {
  craftId: string
  fileName: string
  time: number
}

export interface Store {
  save(work: Work, now: number): Promise<number>
  newest(craftId: string): Promise<Snapshot | undefined>
  history(craftId: string): Promise<Snapshot[]>
  list(): Promise<Shelved[]>
  forget(craftId: string): Promise<void>
  setting<T>(key: string): Promise<T | undefined>
  setSetting(key: string, value: unknown): Promise<void>
}

const mostSnapshots = 30
const day = 86_400_000

/** Times that may go: all but the newest thirty and the newest of each day. */
export function spare(times: readonly number[]): number[] {
  const newestFirst = [...times].sort((a, b) => b - a)
  const seen = new Set<number>()
  return newestFirst.filter((time, i) => {
    const firstOfDay = !seen.has(Math.floor(time / day))
    seen.add(Math.floor(time / day))
    return i >= mostSnapshots && !firstOfDay
  })
}

const range = (craftId: string) => IDBKeyRange.bound([craftId, 0], [craftId, Number.MAX_VALUE])

/** The browser's store of crafts. Every write is one strict transaction: all of it is on disk, or none. */
export async function openStore(name = 'wakewright'): Promise<Store> {
  let opened: Promise<IDBPDatabase<Shelf>> | undefined
  // the browser may close it under us (the user clears the data, another tab brings a newer version): then it is opened again
  const base = () =>
    (opened ??= openDB<Shelf>(name, 1, {
      upgrade(fresh) {
        fresh.createObjectStore('snapshots', { keyPath: ['craftId', 'time'] })
        fresh.createObjectStore('settings')
      },
      blocking(_, __, event) {
        opened = undefined
        ;(event.target as IDBDatabase).close()
      },
      terminated: () => (opened = undefined),
    }))
  await base()
  const newest = async (craftId: string) =>
    (await (await base()).transaction('snapshots').store.openCursor(range(craftId), 'prev'))?.value
  return {
    newest,
    async save(work, now) {
      const tx = (await base()).transaction(['snapshots', 'settings'], 'readwrite', { durability: 'strict' })
      const snapshots = tx.objectStore('snapshots')
      const keys = await snapshots.getAllKeys(range(work.id))
      const last = keys.at(-1)?.[1] ?? 0
      const time = Math.max(now, last + 1)
      void snapshots.add({ craftId: work.id, time, work })
      void tx.objectStore('settings').put(work.id, 'last')
      for (const old of spare([...keys.map((key) => key[1]), time])) void snapshots.delete([work.id, old])
      await tx.done
      return time
    },
    history: async (craftId) => (await (await base()).getAll('snapshots', range(craftId))).reverse(),
    async list() {
      const shelved: Shelved[] = []
      let cursor = await (await base()).transaction('snapshots').store.openCursor(null, 'prev')
      while (cursor) {
        const { craftId, time, work } = cursor.value
        shelved.push({ craftId, time, fileName: work.fileName })
        // keys are [craft, time]: the next craft's newest is the first key below [craft, 0]
        cursor = await cursor.continue([craftId, 0])
      }
      return shelved.sort((a, b) => b.time - a.time)
    },
    async forget(craftId) {
      await (await base()).delete('snapshots', range(craftId))
    },
    setting: async <T>(key: string) => (await (await base()).get('settings', key)) as T | undefined,
    async setSetting(key, value) {
      await (await base()).put('settings', value, key)
    },
  }
}
