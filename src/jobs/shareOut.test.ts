import fc from 'fast-check'
import { expect, test } from 'vitest'
import { shareOut } from './shareOut.ts'

test('answers come in the order of the items, whoever worked them out', async () => {
  await fc.assert(
    fc.asyncProperty(fc.array(fc.integer()), async (items) => {
      const asked: number[] = []
      const answers = await shareOut(
        items,
        (x) => `answer ${x}`,
        async (theirs) => {
          asked.push(...theirs)
          return theirs.map((x) => `answer ${x}`)
        },
      )
      expect(answers).toEqual(items.map((x) => `answer ${x}`))
      expect(asked).toEqual(items.filter((_, i) => i % 2 === 1))
    }),
  )
})

test('the others are asked before anything is worked out here, and one item alone stays here', async () => {
  const done: string[] = []
  const share = (items: number[]) =>
    shareOut(
      items,
      (x) => done.push(`here ${x}`),
      async (theirs) => theirs.map((x) => done.push(`there ${x}`)),
    )
  await share([1, 2, 3])
  expect(done).toEqual(['there 2', 'here 1', 'here 3'])
  done.length = 0
  await share([4])
  expect(done).toEqual(['here 4'])
})

test('a failure on either side is the failure of the whole', async () => {
  const fails = () => Promise.reject(new Error('gone'))
  await expect(shareOut([1, 2], (x) => x, fails)).rejects.toThrow('gone')
  const breaks = () => {
    throw new Error('broken')
  }
  await expect(shareOut([1, 2], breaks, async (theirs) => theirs)).rejects.toThrow('broken')
})
