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
  /** Writes a work whose newest snapshot so far is `base` (0 when it has none); rejects with Overtaken when another tab wrote since. */
  save(work: Work, now: number, base: number): Promise<number>
  newest(craftId: string): Promise<Snapshot | undefined>
  history(craftId: string): Promise<Snapshot[]>
  list(): Promise<Shelved[]>
  forget(craftId: string): Promise<void>
  setting<T>(key: string): Promise<T | undefined>
  setSetting(key: string, value: unknown): Promise<void>
}

/** Another tab has saved the craft since this one read it; nothing was written. */
export class Overtaken extends Error {
  constructor() {
    super('another tab saved this craft since')
    this.name = 'Overtaken'
  }
}

const mostSnapshots = 30
const day = 86_400_000

/** ms of typing on that count as one snapshot, once others came after */
const spell = 10_000

/** Times that may go: all but the newest two, the newest thirty that end a spell of typing, and the newest of each day. */
export function spare(times: readonly number[]): number[] {
  const newestFirst = [...times].sort((a, b) => b - a)
  const days = new Set<number>()
  const spells = new Set<number>()
  return newestFirst.filter((time, i) => {
    const firstOfDay = !days.has(Math.floor(time / day))
    days.add(Math.floor(time / day))
    const firstOfSpell = !spells.has(Math.floor(time / spell))
    spells.add(Math.floor(time / spell))
    const stays = i < 2 || (firstOfSpell && spells.size <= mostSnapshots)
    return !stays && !firstOfDay
  })
}

const range = (craftId: string) => IDBKeyRange.bound([craftId, 0], [craftId, Number.MAX_VALUE])

/** The browser's store of crafts. Every write is one strict transaction: all of it is on disk, or none. */
export async function openStore(name = 'wakewright'): Promise<Store> {
  let opened: Promise<IDBPDatabase<Shelf>> | undefined
  // the browser may close it under us (the user clears the data, another tab brings a newer version): then it is opened again
  const shelf = () =>
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
  await shelf()
  const newest = async (craftId: string) =>
    (await (await shelf()).transaction('snapshots').store.openCursor(range(craftId), 'prev'))?.value
  return {
    newest,
    async save(work, now, base) {
      const tx = (await shelf()).transaction(['snapshots', 'settings'], 'readwrite', { durability: 'strict' })
      const snapshots = tx.objectStore('snapshots')
      const keys = await snapshots.getAllKeys(range(work.id))
      const last = keys.at(-1)?.[1] ?? 0
      if (last !== 0 && last !== base) {
        tx.abort()
        await tx.done.catch(() => {})
        throw new Overtaken()
      }
      const time = Math.max(now, last + 1)
      const old = spare([...keys.map((key) => key[1]), time])
      await Promise.all([
        snapshots.add({ craftId: work.id, time, work }),
        tx.objectStore('settings').put(work.id, 'last'),
        ...old.map((gone) => snapshots.delete([work.id, gone])),
        tx.done,
      ])
      return time
    },
    history: async (craftId) => (await (await shelf()).getAll('snapshots', range(craftId))).reverse(),
    async list() {
      const shelved: Shelved[] = []
      let cursor = await (await shelf()).transaction('snapshots').store.openCursor(null, 'prev')
      while (cursor) {
        const { craftId, time, work } = cursor.value
        shelved.push({ craftId, time, fileName: work.fileName })
        // keys are [craft, time]: the next craft's newest is the first key below [craft, 0]
        cursor = await cursor.continue([craftId, 0])
      }
      return shelved.sort((a, b) => b.time - a.time)
    },
    async forget(craftId) {
      await (await shelf()).delete('snapshots', range(craftId))
    },
    setting: async <T>(key: string) => (await (await shelf()).get('settings', key)) as T | undefined,
    async setSetting(key, value) {
      await (await shelf()).put('settings', value, key)
    },
  }
}
