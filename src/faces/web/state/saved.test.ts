import fc from 'fast-check'
import { expect, test } from 'vitest'
import { spare } from './saved.ts'

const day = 86_400_000

test('the newest thirty and the newest of every day are kept', () => {
  fc.assert(
    fc.property(fc.uniqueArray(fc.nat(40 * day), { maxLength: 120 }), (times) => {
      const gone = new Set(spare(times))
      const kept = times.filter((t) => !gone.has(t))
      const newest = [...times].sort((a, b) => b - a)
      for (const t of newest.slice(0, 30)) expect(gone.has(t)).toBe(false)
      for (const t of times) {
        const ofDay = kept.filter((k) => Math.floor(k / day) === Math.floor(t / day))
        expect(Math.max(...ofDay)).toBeGreaterThanOrEqual(t)
      }
    }),
  )
})

test('of two hundred snapshots of one day thirty stay', () => {
  const times = Array.from({ length: 200 }, (_, i) => 1000 * i)
  expect(times.length - spare(times).length).toBe(30)
})
