import fc from 'fast-check'
import { expect, test } from 'vitest'
import { printed } from '../../base/answers/sentence.ts'
import { between, contextOf, trackOf } from './frames.testkit.ts'
import { loadEvents, withLoads } from './loadEvents.ts'
import { speedEvents } from './speedEvents.ts'

type Line = (t: number) => number
const told = (seconds: number, line: Line) => {
  const t = trackOf(seconds, line)
  const c = contextOf(t.rate.length)
  return withLoads(speedEvents(t, 'A', c), loadEvents(t, 'A', c))
}
const kinds = (seconds: number, line: Line) => told(seconds, line).map((e) => e.kind)
/** pulls at 65 Hz, then races to 156 Hz in `takes` s and stays there */
const lost =
  (takes: number, from = 65): Line =>
  (t) =>
    from + (156 - from) * between(t, 6, 6 + takes)

test('a shaft that jumps from its pulling speed and stays up has lost its load, at 2.4 times the speed too', () => {
  const [e] = told(12, lost(0.45))
  expect(e).toMatchObject({ kind: 'load lost', engine: 'A' })
  expect(Math.abs(e!.time - 6)).toBeLessThan(0.15)
  expect(e!.before! / 3900).toBeCloseTo(1, 1)
  expect(e!.after! / 9360).toBeCloseTo(1, 1)
  expect(e!.excludes).toContain('throttle')
})

test('the same rise made as slowly as water lets a throttle make it is no loss', () => {
  expect(kinds(12, lost(1.4))).not.toContain('load lost')
})

test('from idle the same rise is a throttle opened', () => {
  expect(kinds(12, (t) => 40 + 70 * between(t, 6, 6.3))).not.toContain('load lost')
})

test('load back is told where the shaft comes down to a pulling speed again', () => {
  const list = told(20, (t) => 90 + 60 * between(t, 5, 5.25) - 58 * between(t, 11, 11.4))
  expect(list.map((e) => e.kind)).toEqual(['load lost', 'load back'])
  expect(Math.abs(list[1]!.time - 11.2)).toBeLessThan(0.3)
})

test('a short race is a flare, as before', () => {
  expect(kinds(12, (t) => 90 + 40 * (between(t, 6, 6.2) - between(t, 6.9, 7.1)))).toEqual(['flare'])
})

test('even swings are hunting, once, and neither bogs nor openings', () => {
  const list = told(14, (t) => 45 + 6 * between(t, 3, 3.2) * Math.sin((2 * Math.PI * t) / 1.3))
  expect(list.map((e) => e.kind)).toEqual(['hunting'])
  expect(list[0]!.lasts).toBeGreaterThan(8)
  expect(printed(list[0]!.says)).toMatch(/swings from 23\d0 rpm to 30\d0 rpm by itself/)
})

test('a hand that blips the throttle hunts nothing', () => {
  const blips = (t: number) =>
    40 +
    90 *
      [2, 4.1, 5.5, 8.3].reduce((s, at) => s + between(t, at, at + 0.15) - between(t, at + 0.5, at + 0.9), 0)
  expect(kinds(12, blips)).not.toContain('hunting')
  expect(kinds(12, blips)).not.toContain('load lost')
})

test('a step up between two kept speeds is told with both, and says when it leads back', () => {
  const [e] = told(16, (t) => 90 - 20 * between(t, 4, 4.3) + 20 * between(t, 9, 9.6)).filter(
    (x) => x.kind === 'step up',
  )
  expect(e!.before! / 4200).toBeCloseTo(1, 2)
  expect(printed(e!.says)).toContain('the speed before')
})

test('a steady engine has no events, whatever its speed and wander', () => {
  fc.assert(
    fc.property(
      fc.double({ min: 30, max: 150, noNaN: true }),
      fc.double({ min: 0, max: 0.02, noNaN: true }),
      (rate, by) => {
        expect(kinds(10, (t) => rate * (1 + by * Math.sin(t) * Math.sin(2.7 * t)))).toEqual([])
      },
    ),
    { numRuns: 40 },
  )
})
