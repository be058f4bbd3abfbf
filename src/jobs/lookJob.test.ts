import { readFileSync } from 'node:fs'
import { expect, test } from 'vitest'
import type { JobContext } from './job.ts'
import { type LookAnswer, look } from './lookJob.ts'

const demo = (name: string) => readFileSync(`${import.meta.dirname}/../../demo/${name}.yaml`, 'utf8')

/** Looks, and keeps what is told on the way. */
async function looked(order: Parameters<typeof look.run>[0]) {
  const early: LookAnswer[] = []
  const context: JobContext = {
    progress: () => {},
    cancelled: () => false,
    early: (answer) => early.push(structuredClone(answer) as LookAnswer),
  }
  return { early, answer: await look.run(order, context) }
}

const width = ({ low, high }: { low: number; high: number }) => high - low

test('a look first tells how it goes, with a range from few draws close to the good one, and no changes yet', async () => {
  const { early, answer } = await looked({ text: demo('sandpiper') })
  expect(early).toHaveLength(1)
  const [first] = early
  expect(first!.first).toBe(true)
  expect(first!.now.map((f) => f.id)).toEqual(['push.headline'])
  expect(first!.balance!.changes).toEqual([])
  expect(answer.first).toBeUndefined()
  expect(answer.balance!.changes.length).toBeGreaterThan(2)
  for (const name of ['pull', 'topSpeed'] as const) {
    const [few, good] = [first!.balance![name], answer.balance![name]]
    expect(Math.abs(few.value - good.value)).toBeLessThan(0.1 * width(good))
    expect(width(few) / width(good)).toBeGreaterThan(0.75)
    expect(width(few) / width(good)).toBeLessThan(1.25)
  }
})

test('with something tried the first answer is of that, beside the good one of the craft as it is', async () => {
  const text = demo('sandpiper')
  const { answer: alone } = await looked({ text })
  const { early, answer } = await looked({ text, tried: { 'jet.rotor.pitch': 0.07 } })
  expect(early).toHaveLength(1)
  expect(early[0]!.balance).toEqual(alone.balance)
  expect(early[0]!.triedBalance!.pull.low).toBeGreaterThan(0)
  expect(early[0]!.triedBalance!.changes).toEqual([])
  expect(answer.triedBalance!.changes.length).toBeGreaterThan(2)
})

test('where an engine is simulated, coarse answers come before the fine one and say so', async () => {
  const { early, answer } = await looked({ text: demo('dabchick') })
  expect(early.map((e) => [e.first, e.coarse])).toEqual([
    [true, true],
    [undefined, true],
  ])
  expect(early[1]!.decisions.length).toBeGreaterThan(0)
  expect(answer.coarse).toBeUndefined()
})
