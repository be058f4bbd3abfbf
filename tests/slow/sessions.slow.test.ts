import { expect, test } from 'vitest'
import { seededRandom } from '../../src/base/numerics/random.ts'
import { drawnSession, heardSession, scored } from '../../src/trades/sound/session.testkit.ts'
import { worstDay } from '../../src/trades/sound/synth/session.testkit.ts'

/** Whole invented sessions of two engines on one shaft, made into sound and heard. */

test('the day in which most goes wrong is told in order: one stops firing, the load is lost, silence, hunting, a clean rise', () => {
  const { hearing } = heardSession(worstDay, 10, 5)
  const told = hearing.events.filter((e) => e.confidence > 0.25)
  expect(told.map((e) => e.kind)).toEqual([
    'one dead',
    'load lost',
    'stop',
    'start',
    'hunting',
    'speed rises',
    'stop',
  ])
  const [dead, lost, stop, start] = told
  expect(Math.abs(dead!.time - 6.2)).toBeLessThan(0.5)
  expect(dead!.before! / 5200).toBeCloseTo(1, 1)
  expect(dead!.after! / 3930).toBeCloseTo(1, 1)
  expect(Math.abs(lost!.time - 12.1)).toBeLessThan(0.3)
  expect(lost!.after! / 9350).toBeCloseTo(1, 1)
  expect(Math.abs(stop!.time - 14)).toBeLessThan(0.3)
  expect(Math.abs(start!.time - 18.7)).toBeLessThan(0.6)
})

test('drawn sessions are told nearly whole, and little that did not happen', () => {
  let [hits, misses, wrong] = [0, 0, 0]
  for (const seed of [4101, 4106, 4107]) {
    const { hearing, truth } = heardSession(drawnSession(seededRandom(seed)), 10, seed)
    const s = scored(hearing.events, truth)
    hits += s.hits
    misses += s.misses.length
    wrong += s.wrong.length
  }
  expect(hits / (hits + misses)).toBeGreaterThanOrEqual(0.95)
  expect(hits / (hits + wrong)).toBeGreaterThanOrEqual(0.95)
})
