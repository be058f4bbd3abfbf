import { expect, test } from 'vitest'
import type { LivePoint } from '../../../../trades/sound/listener.ts'
import { type Highest, holdHighest } from './highest.ts'

const step = 0.1
/** Points ten a second with the speeds of engine A, none where it is not heard. */
const through = (speeds: readonly (number | undefined)[]): number | undefined => {
  const all: Highest = {}
  speeds.forEach((rpm, i) => {
    const engines = rpm === undefined ? [] : [{ label: 'A', rpm, confidence: 1 }]
    holdHighest(all, { time: i * step, engines } as unknown as LivePoint)
  })
  return all.A?.highest
}
const lasting = (rpm: number, seconds: number) =>
  Array.from({ length: Math.round(seconds / step) }, () => rpm)

test('a speed counts when it was held for a second', () => {
  expect(through([...lasting(5000, 3), ...lasting(9000, 0.5), ...lasting(5200, 2)])).toBe(5200)
  expect(through([...lasting(5000, 3), ...lasting(9000, 1.3)])).toBe(9000)
})

test('the lowest speed within the second is what was held', () => {
  expect(through([...lasting(6000, 0.6), ...lasting(6400, 0.6), ...lasting(6000, 0.6)])).toBe(6000)
})

test('an engine that falls silent begins its second anew', () => {
  expect(through([...lasting(7000, 0.8), undefined, ...lasting(7000, 0.8)])).toBeUndefined()
})

test('it never falls', () => {
  expect(through([...lasting(6000, 2), ...lasting(3000, 5)])).toBe(6000)
})
