import fc from 'fast-check'
import { expect, test } from 'vitest'
import { spare } from './saved.ts'

const day = 86_400_000
const spell = 10_000

test('the newest two, the newest thirty that end ten seconds of typing and the newest of every day are kept', () => {
  fc.assert(
    fc.property(fc.uniqueArray(fc.nat(40 * day), { maxLength: 120 }), (times) => {
      const gone = new Set(spare(times))
      const kept = times.filter((t) => !gone.has(t))
      const newest = [...times].sort((a, b) => b - a)
      for (const t of newest.slice(0, 2)) expect(gone.has(t)).toBe(false)
      const ends = newest.filter(
        (t, i) => i === 0 || Math.floor(t / spell) !== Math.floor(newest[i - 1]! / spell),
      )
      for (const t of ends.slice(0, 30)) expect(gone.has(t)).toBe(false)
      for (const t of times) {
        const ofDay = kept.filter((k) => Math.floor(k / day) === Math.floor(t / day))
        expect(Math.max(...ofDay)).toBeGreaterThanOrEqual(t)
      }
    }),
  )
})

test('an hour of typing without a pause leaves five minutes of it in steps of ten seconds', () => {
  const times = Array.from({ length: 8 * 3600 }, (_, i) => 125 * i)
  const gone = new Set(spare(times))
  const kept = times.filter((t) => !gone.has(t)).sort((a, b) => b - a)
  // the newest two and thirty that end a spell, one of them among the two
  expect(kept.length).toBe(31)
  expect(kept[0]! - kept.at(-1)!).toBeGreaterThan(280_000)
})

test('of two hundred snapshots a minute apart thirty stay', () => {
  const times = Array.from({ length: 200 }, (_, i) => 60_000 * i)
  expect(times.length - spare(times).length).toBe(30)
})
