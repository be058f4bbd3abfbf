import { afterEach, beforeEach, expect, test, vi } from 'vitest'
import type { Answer, Order } from './call.ts'

/** A worker whose answers the test gives. */
class FakeWorker {
  static all: FakeWorker[] = []
  onmessage: ((event: { data: Answer }) => void) | null = null
  onerror: ((event: { message: string }) => void) | null = null
  orders: Order[] = []
  ended = false
  constructor() {
    FakeWorker.all.push(this)
  }
  postMessage(order: Order) {
    this.orders.push(order)
  }
  terminate() {
    this.ended = true
  }
  answer(data: Answer) {
    this.onmessage?.({ data })
  }
}

beforeEach(() => {
  FakeWorker.all = []
  vi.resetModules()
  vi.stubGlobal('Worker', FakeWorker)
})
afterEach(() => vi.unstubAllGlobals())

const order = { text: '' }
const start = async (onProgress?: (part: number, says: string) => void) => {
  const { callJob } = await import('./call.ts')
  return callJob('look', order, onProgress)
}

test('a job answers, telling how far it is on the way', async () => {
  const told: [number, string][] = []
  const call = await start((part, says) => told.push([part, says]))
  const [worker] = FakeWorker.all
  const { id, name, input } = worker!.orders[0]!
  expect([name, input]).toEqual(['look', order])
  worker!.answer({ id, part: 0.5, says: 'half' })
  worker!.answer({ id, output: { now: [] } })
  expect(await call.done).toEqual({ now: [] })
  expect(told).toEqual([[0.5, 'half']])
})

test('calling off ends the worker at once and rejects with an AbortError', async () => {
  const call = await start()
  call.cancel()
  await expect(call.done).rejects.toMatchObject({ name: 'AbortError' })
  expect(FakeWorker.all[0]!.ended).toBe(true)
  // the next job gets a worker of its own
  await start()
  expect(FakeWorker.all).toHaveLength(2)
})

test('a worker that ended its job well is used again', async () => {
  const call = await start()
  const [worker] = FakeWorker.all
  worker!.answer({ id: worker!.orders[0]!.id, output: { now: [] } })
  await call.done
  await start()
  expect(FakeWorker.all).toHaveLength(1)
})

test('two jobs at once have two workers, and neither hears the other', async () => {
  const first = await start()
  const second = await start()
  const [a, b] = FakeWorker.all
  a!.answer({ id: b!.orders[0]!.id, output: 'not yours' })
  a!.answer({ id: a!.orders[0]!.id, output: 'first' })
  b!.answer({ id: b!.orders[0]!.id, output: 'second' })
  expect([await first.done, await second.done]).toEqual(['first', 'second'])
})

test('a job that fails rejects with its own words', async () => {
  const call = await start()
  const [worker] = FakeWorker.all
  worker!.answer({ id: worker!.orders[0]!.id, error: 'text: the craft file cannot be read' })
  await expect(call.done).rejects.toThrow('text: the craft file cannot be read')
})

test('cancelling a job that is done does nothing to the worker, which may be at another job', async () => {
  const call = await start()
  const [worker] = FakeWorker.all
  worker!.answer({ id: worker!.orders[0]!.id, output: 1 })
  await call.done
  call.cancel()
  expect(worker!.ended).toBe(false)
})
