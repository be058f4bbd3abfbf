import { expect, test } from 'vitest'
import { madeUpTrace } from './breath.testkit.ts'
import { exhaustNote } from './note.ts'

const order = { flow: madeUpTrace().outFlow, rpm: 9000, cylinders: 1, rate: 24000, seconds: 0.5 }

/** strength of one frequency in a sound, by its Fourier sum */
function strength(samples: Float32Array, rate: number, f: number): number {
  let [re, im] = [0, 0]
  samples.forEach((v, i) => {
    re += v * Math.cos((2 * Math.PI * f * i) / rate)
    im += v * Math.sin((2 * Math.PI * f * i) / rate)
  })
  return Math.hypot(re, im) / samples.length
}

test('the note has the length asked for, its loudest sample near one, and starts and ends in silence', () => {
  const note = exhaustNote(order)
  expect(note).toHaveLength(12000)
  const loudest = note.reduce((m, v) => Math.max(m, Math.abs(v)), 0)
  expect(loudest).toBeLessThanOrEqual(1)
  expect(loudest).toBeGreaterThan(0.5)
  expect(note[0]).toBe(0)
  expect(note.at(-1)).toBe(0)
})

test('its pitch is the firing frequency: 150 Hz at 9000 rpm, and nothing between the harmonics', () => {
  const note = exhaustNote({ ...order, unevenness: 0 })
  expect(strength(note, 24000, 150)).toBeGreaterThan(20 * strength(note, 24000, 225))
})

test('two cylinders that fire evenly sound an octave higher', () => {
  const note = exhaustNote({ ...order, cylinders: 2, unevenness: 0 })
  expect(strength(note, 24000, 300)).toBeGreaterThan(20 * strength(note, 24000, 150))
})

test('the same turn gives the same sound every time', () => {
  expect(exhaustNote(order)).toEqual(exhaustNote(order))
})

test('a flow that does not change is silent', () => {
  const still = exhaustNote({ ...order, flow: new Float64Array(360) })
  expect(still.every((v) => v === 0)).toBe(true)
})
