import { readFileSync } from 'node:fs'
import { expect, test } from 'vitest'
import type { DesignAnswer } from '../whole/push/designTypes.ts'
import { designSearchJob } from './designSearchJob.ts'
import { designTrialsJob } from './designTrialsJob.ts'
import { Cancelled, type JobContext } from './job.ts'

const text = readFileSync(`${import.meta.dirname}/../../demo/sandpiper.yaml`, 'utf8')
const quiet: JobContext = { progress: () => {}, cancelled: () => false }

test('the search shares its work with a second thread and answers as it would alone, telling how far it is', async () => {
  const asked: string[] = []
  const parts: number[] = []
  const shared = await designSearchJob.run(
    { text, draws: 2 },
    {
      ...quiet,
      progress: (part) => parts.push(part),
      second: async (name, input) => {
        asked.push(name)
        return structuredClone(await designTrialsJob.run(structuredClone(input) as never, quiet))
      },
    },
  )
  expect(new Set(asked)).toEqual(new Set(['design-trials']))
  expect(parts).toEqual([...parts].sort((a, b) => a - b))
  expect(shared).toEqual(await designSearchJob.run({ text, draws: 2 }, quiet))
})

test('called off, it has told the best so far: plain data that goes from thread to thread', async () => {
  const early: DesignAnswer[] = []
  const run = async () =>
    designSearchJob.run(
      { text, draws: 2 },
      {
        ...quiet,
        early: (a) => early.push(structuredClone(a) as DesignAnswer),
        cancelled: () => early.length > 0,
      },
    )
  await expect(run()).rejects.toThrow(Cancelled)
  expect(early[0]!.options.some((o) => o.offered)).toBe(true)
})

test('a tried value is searched from, and a text that does not read is refused with its place', async () => {
  const early: DesignAnswer[] = []
  const context = {
    ...quiet,
    early: (a: unknown) => early.push(a as DesignAnswer),
    cancelled: () => early.length > 0,
  }
  const order = { text, tried: { 'jet.rotor.pitch': 0.062 }, draws: 2 }
  await expect((async () => designSearchJob.run(order, context))()).rejects.toThrow(Cancelled)
  expect(early[0]!.now.design.pitch).toBe(0.062)
  expect(() => designSearchJob.run({ text: 'wakewright: 1\nname: x\n' }, quiet)).toThrow(/missing/)
})
