import fc from 'fast-check'
import { expect, test } from 'vitest'
import { allLocks, dragMeans, markStretch, stretchAround } from './byHand.ts'
import type { Hearing } from './hearingTypes.ts'
import { hear } from './hearSamples.ts'
import { noiseOnly, pulseTrain, sum } from './sound.testkit.ts'

const n = 400
const step = 0.025
/** silent, 3000, silent, 6000 rpm, a quarter each */
const rpm = Float32Array.from({ length: n }, (_, i) => (i < 100 ? 0 : i < 200 ? 3000 : i < 300 ? 0 : 6000))
const h = {
  duration: n * step,
  step,
  tracks: [{ label: 'A', rpm, firing: rpm, confidence: rpm, change: rpm }],
} as unknown as Hearing

test('a stretch marked as a voice is silent at points less than a second apart', () => {
  const m = markStretch(h, 'voice', 'A', 2.5, 4.9)!
  expect(m.points.every((p) => p.rpm === 0)).toBe(true)
  m.points.slice(1).forEach((p, i) => {
    expect(p.time - m.points[i]!.time).toBeLessThan(1)
  })
  expect(m.points.at(-1)!.time).toBeCloseTo(4.9, 9)
})

test('an octave mark takes twice or half the speed heard there, and leaves silence alone', () => {
  const m = markStretch(h, 'twice', 'A', 0, 4.9)!
  expect(new Set(m.points.map((p) => p.rpm))).toEqual(new Set([6000]))
  expect(m.points[0]!.time).toBeGreaterThanOrEqual(2.4)
  expect(markStretch(h, 'half', 'A', 8, 9)!.points[0]!.rpm).toBe(3000)
})

test('nothing is marked where the line is silent, or on a line that is not there', () => {
  expect(markStretch(h, 'voice', 'A', 0, 2)).toBeUndefined()
  expect(markStretch(h, 'voice', 'B', 3, 4)).toBeUndefined()
  expect(() => markStretch(h, 'voice', 'A', 3, 3)).toThrow('rising')
})

test('the stretch around a moment ends where the line falls silent', () => {
  expect(stretchAround(h, 'A', 4)).toEqual({ from: 2.5, to: 199 * step })
  expect(stretchAround(h, 'A', 1)).toBeUndefined()
})

test('letting go near an octave moves the octave, elsewhere it lays a point', () => {
  fc.assert(
    fc.property(
      fc.double({ min: 1000, max: 9000, noNaN: true }),
      fc.double({ min: 0.93, max: 1.07, noNaN: true }),
      (was, off) => {
        expect(dragMeans(was, 2 * was * off)).toBe('twice')
        expect(dragMeans(was, 0.5 * was * off)).toBe('half')
        expect(dragMeans(was, was * off)).toBe('point')
      },
    ),
  )
  expect(dragMeans(0, 3000)).toBe('point')
})

test('a point laid singly goes before a mark at the same moment', () => {
  const m = markStretch(h, 'voice', 'A', 2.5, 4.9)!
  const point = { label: 'A' as const, time: 3.6, rpm: 3100 }
  const all = allLocks([point], [m])
  expect(all.filter((p) => Math.abs(p.time - 3.6) < 0.5)).toEqual([point])
})

test('an engine marked half as fast is followed at half the speed through the stretch', () => {
  const x = sum(pulseTrain(95, 4, 8000), noiseOnly(4, 8000, 4, 0.03))
  const first = hear(x, 8000, { engines: 1 })
  const mark = markStretch(first, 'half', 'A', 1, 3)!
  const then = hear(x, 8000, { engines: 1, locks: allLocks([], [mark]) })
  expect(then.tracks[0]!.rpm[80]! / first.tracks[0]!.rpm[80]!).toBeCloseTo(0.5, 2)
})
