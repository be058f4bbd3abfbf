import { readFileSync } from 'node:fs'
import { afterEach, beforeEach, expect, test, vi } from 'vitest'
import type { Finding, Question } from '../../../base/answers/finding.ts'
import { keepLooking } from './looking.ts'
import { createStore } from './store.ts'
import { change, newWork } from './work.ts'

const heron = readFileSync('demo/heron.yaml', 'utf8')
const found = (id: string, question: Question): Finding => ({
  id,
  question,
  says: id,
  standing: 'watch',
  because: [],
  sources: [],
})
// handed in: modules are shared between test files, so a mock of the worker may come too late
const call = () => ({
  done: Promise.resolve({ now: [found('push.new', 'push')], decisions: [], solved: [] }),
})
beforeEach(() => {
  vi.useFakeTimers()
})
afterEach(() => {
  vi.useRealTimers()
})

const looking = async () => {
  const store = createStore()
  keepLooking(store, call)
  store.setWork(newWork('x', 'x.yaml', heron))
  await vi.runAllTimersAsync()
  store.set({ findings: { push: [found('push.old', 'push')], runs: [found('runs.flare', 'runs')] } })
  return store
}
const ids = (store: ReturnType<typeof createStore>) =>
  Object.values(store.get().findings).flatMap((list) => list.map((f) => f.id))

test('an edit replaces what a look finds and leaves what was heard in a run', async () => {
  const store = await looking()
  const text = heron.replace('bore: 120.0 mm', 'bore: 121.0 mm')
  store.setWork(change(store.get().work!, { text, label: 'edit' }, 0))
  await vi.runAllTimersAsync()
  expect(ids(store)).toEqual(['runs.flare', 'push.new'])
})

test('another craft has no runs yet', async () => {
  const store = await looking()
  store.setWork(newWork('y', 'y.yaml', heron))
  expect(ids(store)).toEqual([])
  await vi.runAllTimersAsync()
  expect(ids(store)).toEqual(['push.new'])
})
