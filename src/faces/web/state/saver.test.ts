import { readFileSync } from 'node:fs'
import { afterEach, beforeEach, expect, test, vi } from 'vitest'
import { Overtaken, type Snapshot, type Store } from './saved.ts'
import { createSaver } from './saver.ts'
import { createStore } from './store.ts'
import { change, newWork } from './work.ts'

const heron = readFileSync('demo/heron.yaml', 'utf8')
const named = (name: string) => heron.replace('name: Heron', `name: ${name}`)

/** A shelf in memory that refuses as the real one does; `slow` holds its writes back. */
function memoryShelf() {
  const held: Snapshot[] = []
  const gates: (() => void)[] = []
  const shelf = {
    held,
    slow: false,
    broken: false,
    release() {
      for (const open of gates.splice(0)) open()
    },
    async save(work, now, base) {
      if (shelf.slow) await new Promise<void>((open) => gates.push(open))
      if (shelf.broken) throw new Error('the disk is full')
      const last = held.findLast((s) => s.craftId === work.id)?.time ?? 0
      if (last !== 0 && last !== base) throw new Overtaken()
      const time = Math.max(now, last + 1)
      held.push({ craftId: work.id, time, work })
      return time
    },
    newest: async (craftId) => held.findLast((s) => s.craftId === craftId),
  } as Pick<Store, 'save' | 'newest'> & { held: Snapshot[]; slow: boolean; broken: boolean; release(): void }
  return shelf
}

function bench(holds = false) {
  const shelf = memoryShelf()
  const store = createStore()
  const saver = createSaver(store, shelf as unknown as Store, () => Date.now(), {
    holds: () => holds,
    tellSaved: () => {},
  })
  const type = (text: string) =>
    store.setWork(change(store.get().work!, { text, label: 'type', merge: 'text' }, Date.now()))
  const texts = () => shelf.held.map((s) => s.work.text)
  return { shelf, store, saver, type, texts }
}

beforeEach(() => void vi.useFakeTimers({ now: 1_000_000 }))
afterEach(() => void vi.useRealTimers())
const pass = (ms: number) => vi.advanceTimersByTimeAsync(ms)

test('typing on without a pause puts no write off: what is kept is never more than 150 ms old', async () => {
  const { saver, type, texts } = bench()
  saver.show(newWork('x', 'x.yaml', heron), 0)
  await pass(1000)
  let typed = 'A'
  let oldest = 0
  const since = new Map<string, number>()
  for (let t = 0; t < 15_000; t += 40) {
    typed += 'x'
    since.set(named(typed), t)
    type(named(typed))
    await pass(40)
    const kept = since.get(texts().at(-1)!) ?? -1
    oldest = Math.max(oldest, t - kept)
  }
  expect(oldest).toBeLessThanOrEqual(150)
})

test('the first change after a quiet spell is written at once, the next ones together a moment later', async () => {
  const { saver, type, texts, store } = bench()
  saver.show(newWork('x', 'x.yaml', heron), 0)
  await pass(1)
  expect(texts()).toEqual([heron])
  await pass(1000)
  type(named('A'))
  await pass(1)
  type(named('AB'))
  await pass(100)
  type(named('ABC'))
  expect(store.get().saving).toBe('pending')
  await pass(15)
  expect(texts()).toEqual([heron, named('A')])
  await pass(5)
  expect(texts()).toEqual([heron, named('A'), named('ABC')])
  expect(store.get().saving).toBe('saved')
})

test('a craft taken from the shelf counts as kept and is not written again', async () => {
  const { saver, shelf, store, texts } = bench()
  const work = newWork('x', 'x.yaml', heron)
  shelf.held.push({ craftId: 'x', time: 5, work })
  saver.show(work, 5)
  await pass(1000)
  expect(texts()).toHaveLength(1)
  expect(store.get().saving).toBe('saved')
})

test('leaving writes what is still waiting', async () => {
  const { saver, type, texts } = bench()
  saver.show(newWork('x', 'x.yaml', heron), 0)
  type(named('A'))
  type(named('B'))
  await saver.save()
  expect(texts().at(-1)).toBe(named('B'))
})

test('what is typed while a slow write is under way is written after it, in order', async () => {
  const { saver, shelf, type, texts, store } = bench()
  shelf.slow = true
  saver.show(newWork('x', 'x.yaml', heron), 0)
  await pass(1)
  type(named('A'))
  await pass(400)
  shelf.release()
  await pass(1)
  shelf.release()
  await pass(400)
  shelf.release()
  await pass(1)
  expect(texts()).toEqual([heron, named('A')])
  expect(store.get().saving).toBe('saved')
})

test('a shelf that refuses is said, and the next change is tried again', async () => {
  const { saver, shelf, type, texts, store } = bench()
  shelf.broken = true
  saver.show(newWork('x', 'x.yaml', heron), 0)
  await pass(1000)
  expect(store.get().saving).toBe('failed')
  expect(store.get().notice).toContain('the disk is full')
  shelf.broken = false
  type(named('A'))
  await pass(1)
  expect(texts()).toEqual([named('A')])
  expect(store.get().saving).toBe('saved')
})

test('a tab that was overtaken writes nothing over the other, keeps its own aside and shows the other', async () => {
  const { saver, shelf, type, store } = bench()
  saver.show(newWork('x', 'x.yaml', heron), 0)
  await pass(1000)
  shelf.held.push({ craftId: 'x', time: 2_000_000, work: newWork('x', 'x.yaml', named('theirs')) })
  type(named('mine'))
  await pass(1)
  expect(store.get().work?.text).toBe(named('theirs'))
  expect(store.get().role).toBe('follower')
  expect(shelf.held.findLast((s) => s.craftId === 'x')?.work.text).toBe(named('theirs'))
  const aside = shelf.held.filter((s) => s.craftId !== 'x')
  expect(aside.map((s) => [s.work.text, s.work.fileName])).toEqual([[named('mine'), 'x (other tab).yaml']])
})

test('a tab that loses the craft with everything written keeps nothing aside', async () => {
  const { saver, shelf, store } = bench()
  saver.show(newWork('x', 'x.yaml', heron), 0)
  await pass(1000)
  saver.overtaken()
  await pass(1)
  expect(store.get().role).toBe('follower')
  expect(shelf.held).toHaveLength(1)
})

test('the tab that holds the craft stays when one that woke up late has written, and keeps its text aside', async () => {
  const { saver, shelf, type, store } = bench(true)
  saver.show(newWork('x', 'x.yaml', heron), 0)
  await pass(1000)
  shelf.held.push({ craftId: 'x', time: 2_000_000, work: newWork('x', 'x.yaml', named('late')) })
  type(named('mine'))
  await pass(1)
  expect(store.get()).toMatchObject({ role: 'writer', saving: 'saved' })
  expect(shelf.held.findLast((s) => s.craftId === 'x')?.work.text).toBe(named('mine'))
  expect(shelf.held.filter((s) => s.craftId !== 'x').map((s) => s.work.text)).toEqual([named('late')])
})

test('what another tab saved is shown when nothing of this one waits, and not when something does', async () => {
  const { saver, shelf, type, store } = bench(true)
  saver.show(newWork('x', 'x.yaml', heron), 0)
  await pass(1000)
  shelf.held.push({ craftId: 'x', time: 2_000_000, work: newWork('x', 'x.yaml', named('theirs')) })
  saver.follow()
  await pass(1)
  expect(store.get().work?.text).toBe(named('theirs'))
  type(named('mine'))
  saver.follow()
  expect(store.get().work?.text).toBe(named('mine'))
  await pass(1)
  expect(store.get().work?.text).toBe(named('mine'))
})
