import fc from 'fast-check'
import { expect, test } from 'vitest'
import { canGoCloser, following, scaled, shifted } from './span.ts'

const recording = fc.record({
  duration: fc.double({ min: 0.5, max: 7200, noNaN: true }),
  at: fc.double({ min: 0, max: 1, noNaN: true }),
  steps: fc.array(fc.constantFrom('closer', 'wider', 'earlier', 'later', 'follow'), { maxLength: 20 }),
})

test('whatever is pressed, what is shown lies within the recording and has a length', () => {
  fc.assert(
    fc.property(recording, ({ duration, at, steps }) => {
      let s = { from: 0, to: duration }
      for (const step of steps) {
        if (step === 'closer' || step === 'wider') s = scaled(s, at * duration, step === 'closer', duration)
        else if (step === 'follow') s = following(s, at * duration, duration)
        else s = shifted(s, step === 'earlier' ? -1 : 1, duration)
        expect(s.from).toBeGreaterThanOrEqual(0)
        expect(s.to).toBeLessThanOrEqual(duration)
        expect(s.to - s.from).toBeGreaterThanOrEqual(Math.min(4, duration) - 1e-9)
      }
    }),
  )
})

test('the moment of the cursor stays in sight when the picture goes closer, wider or after it', () => {
  fc.assert(
    fc.property(recording, fc.boolean(), ({ duration, at }, closer) => {
      const time = at * duration
      const start = following(scaled({ from: 0, to: duration }, 0, true, duration), time, duration)
      for (const s of [start, scaled(start, time, closer, duration)]) {
        expect(time).toBeGreaterThanOrEqual(s.from - 1e-9)
        expect(time).toBeLessThanOrEqual(s.to + 1e-9)
      }
    }),
  )
})

test('closer ends at four seconds, wider at the whole, and a cursor in sight moves nothing', () => {
  let s = { from: 0, to: 3600 }
  for (let i = 0; i < 12; i++) s = scaled(s, 1800, true, 3600)
  expect(s.to - s.from).toBeCloseTo(4)
  expect(canGoCloser(s)).toBe(false)
  expect(following(s, 1800, 3600)).toBe(s)
  for (let i = 0; i < 12; i++) s = scaled(s, 1800, false, 3600)
  expect(s).toEqual({ from: 0, to: 3600 })
})
