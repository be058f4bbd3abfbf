import { expect, test } from 'vitest'
import { printed } from '../../base/answers/sentence.ts'
import { fallEvents, fallsUntold } from './falls.ts'
import { between, contextOf, trackOf } from './frames.testkit.ts'
import type { RunEvent } from './shaftEvents.ts'

/** 100 Hz, down to `low` at 4 s within 0.3 s, for `lasts` s, and up again */
const dip = (low: number, lasts: number) =>
  trackOf(14, (t) => 100 - (100 - low) * (between(t, 4, 4.3) - between(t, 4.3 + lasts, 4.6 + lasts)))
const falls = (t: ReturnType<typeof trackOf>) => fallEvents(t, 'A', contextOf(t.rate.length))

test('a fall of a kept speed that holds for two seconds is told with where from, where to and how long', () => {
  for (const low of [60, 70, 80]) {
    const [fall, ...more] = falls(dip(low, 2))
    expect(more).toEqual([])
    expect(Math.abs(fall!.time - 4.15)).toBeLessThan(0.2)
    expect(printed(fall!.says)).toMatch(
      new RegExp(`^from 6000 rpm to ${60 * low} rpm for 2\\.\\d s, and back$`),
    )
  }
})

test('a fall that stays is told as staying, when it is none that a closed throttle makes', () => {
  const down = (low: number) => trackOf(14, (t) => 100 - (100 - low) * between(t, 4, 4.3))
  expect(falls(down(71)).map((e) => printed(e.says))).toEqual(['from 6000 rpm to 4260 rpm, and stays there'])
  expect(falls(down(60))).toEqual([])
})

test('what is short, slow, shallow, deep as idle, or comes from no kept speed is no fall', () => {
  expect(falls(dip(75, 0.8))).toEqual([])
  expect(falls(dip(90, 3))).toEqual([])
  expect(falls(dip(38, 3))).toEqual([])
  expect(falls(trackOf(14, (t) => 100 - 30 * between(t, 3, 10)))).toEqual([])
  // a throttle worked by hand, up for a second and down for two
  expect(falls(trackOf(14, (t) => 60 + 35 * between(t % 3, 0, 0.2) - 35 * between(t % 3, 1, 1.3)))).toEqual(
    [],
  )
})

test('an engine that stops, or is lost for a moment, has not fallen', () => {
  expect(falls(trackOf(10, (t) => (t < 6 ? 100 : 0)))).toEqual([])
  expect(falls(trackOf(10, (t) => (t < 6 || t > 6.1 ? 100 : 0)))).toEqual([])
})

test('the end of racing, a bog, and the other engine’s death are told once', () => {
  const [fall] = falls(dip(70, 2))
  const event = (kind: RunEvent['kind'], time: number, lasts = 0): RunEvent => ({
    kind,
    time,
    lasts,
    engine: 'A',
    says: '',
    confidence: 1,
  })
  for (const other of [event('flare', 1.5, 2.5), event('one dead', 4), event('bog', 3.6, 1)])
    expect(fallsUntold([fall!], [other])).toEqual([])
  expect(fallsUntold([fall!], [event('flare', 9, 1), event('start', 4)])).toEqual([fall])
})
