import fc from 'fast-check'
import { expect, test } from 'vitest'
import { printed } from '../../base/answers/sentence.ts'
import { between, contextOf, trackOf } from './frames.testkit.ts'
import { runningEvents } from './shaftEvents.ts'
import { soundLimits } from './soundLimits.ts'
import { readStop } from './stops.ts'
import { soundingStretches } from './tracks.ts'

const read = (line: (t: number) => number) => {
  const t = trackOf(10, line)
  return readStop(t, soundingStretches(t).at(-1)!, 60, soundLimits)
}

test('a line that ends at the speed it kept was cut, whatever the speed', () => {
  fc.assert(
    fc.property(fc.double({ min: 30, max: 160, noNaN: true }), (f) => {
      expect(read((t) => (t < 7 ? f : 0))).toMatchObject({ how: 'killed', takes: 0 })
    }),
  )
})

test('a speed that sags for over a second while it still fires is an engine that starves; what it kept and how long it took are told', () => {
  fc.assert(
    fc.property(
      fc.double({ min: 60, max: 150, noNaN: true }),
      fc.double({ min: 1.2, max: 2.6, noNaN: true }),
      (f, takes) => {
        const r = read((t) => (t < 7 ? f / (1 + 1.6 * between(t, 7 - takes, 7)) : 0))
        expect(r.how).toBe('starved')
        expect(Math.abs(r.kept / f - 1)).toBeLessThan(0.03)
        expect(Math.abs(r.takes - takes)).toBeLessThan(0.25)
      },
    ),
  )
})

test('a quick run-down is neither: it is told as such', () => {
  expect(read((t) => (t < 7 ? 100 / (1 + between(t, 6.6, 7)) : 0)).how).toBe('ran down')
})

test('closed to idle and cut there was cut, not starved', () => {
  expect(read((t) => (t < 7 ? 100 - 58 * between(t, 5, 6) : 0)).how).toBe('killed')
})

test('the slope of a run-down tells whether the pump still loaded the shaft', () => {
  expect(read((t) => (t < 7 ? 1 / (0.01 + 0.015 * between(t, 5, 7)) : 0)).slope).toBe('against a load')
  expect(read((t) => (t < 7 ? 120 - 85 * between(t, 5, 7) : 0)).slope).toBe('free of load')
})

test('a stop is told with the speed before it, how it came, and what it excludes', () => {
  const t = trackOf(10, (s) => (s > 1 && s < 7 ? 100 / (1 + 1.6 * between(s, 5, 7)) : 0))
  const stop = runningEvents(t, 'A', contextOf(t.rate.length)).find((e) => e.kind === 'stop')!
  expect(stop).toMatchObject({ how: 'starved', after: 0 })
  expect(stop.before).toBeCloseTo(6000, -2)
  expect(stop.excludes).toContain('kill switch')
  expect(printed(stop.says)).toContain('starves')
})
