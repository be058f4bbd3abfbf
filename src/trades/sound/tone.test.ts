import { expect, test } from 'vitest'
import { hear } from './hearSamples.ts'
import { median, noiseOnly, pulseTrain, resampled, sum } from './sound.testkit.ts'
import { quickSpectrogram } from './spectrogram.ts'
import { shrink, warpedTime } from './warp.ts'

const one = { engines: 1 } as const
const heardAt = (x: Float32Array, rate: number) => {
  const t = hear(x, rate, one).tracks[0]!
  return median(t.firing.subarray(20, t.firing.length - 20))
}

test('a pulse train at f is heard at f within 0.2 %, without an octave error, from 25 to 200 Hz', () => {
  for (const f of [25, 33.3, 57, 100, 150, 166.7, 200])
    expect(Math.abs(heardAt(pulseTrain(f, 2.5, 8000), 8000) / f - 1), `${f} Hz`).toBeLessThan(0.002)
})

test('a missing fundamental, and a missing second line too, change nothing', () => {
  for (const skip of [1, 2])
    expect(Math.abs(heardAt(pulseTrain(90, 2.5, 8000, { skip }), 8000) / 90 - 1)).toBeLessThan(0.002)
})

test('gain, polarity and the order of channels change nothing', () => {
  const x = pulseTrain((t) => 80 + 10 * Math.sin(t), 3, 8000)
  const base = hear(x, 8000, one).tracks[0]!.firing
  const quiet = hear(
    x.map((v) => 0.01 * v),
    8000,
    one,
  ).tracks[0]!.firing
  const turned = hear(
    x.map((v) => -v),
    8000,
    one,
  ).tracks[0]!.firing
  base.forEach((f, i) => {
    expect(Math.abs(quiet[i]! - f)).toBeLessThan(1e-3 * f + 1e-6)
    expect(Math.abs(turned[i]! - f)).toBeLessThan(1e-5 * f + 1e-6)
  })
  const noise = noiseOnly(3, 8000, 9, 0.2)
  const lr = hear([x, noise], 8000, one).tracks[0]!.firing
  const rl = hear([noise, x], 8000, one).tracks[0]!.firing
  expect(rl).toEqual(lr)
})

test('a slow change of gain moves the track by less than 0.3 %', () => {
  const x = pulseTrain(95, 3, 8000)
  const swell = x.map((v, i) => v * (0.2 + 0.8 * (i / x.length)))
  expect(Math.abs(heardAt(swell, 8000) / 95 - 1)).toBeLessThan(0.003)
})

test('delaying by whole hops delays the track by as many frames', () => {
  const x = pulseTrain((t) => 70 + 8 * t, 3, 8000)
  const later = new Float32Array(x.length + 8 * 200)
  later.set(x, 8 * 200)
  const a = hear(x, 8000, one).tracks[0]!.firing
  const b = hear(later, 8000, one).tracks[0]!.firing
  for (let i = 20; i < a.length - 20; i++) expect(Math.abs(b[i + 8]! / a[i]! - 1)).toBeLessThan(5e-3)
})

test('44.1, 48 and 16 kHz recordings of one sound give one track within 0.2 %', () => {
  const at = (rate: number) => heardAt(pulseTrain(112, 2.5, rate), rate)
  for (const rate of [44100, 48000, 16000]) expect(Math.abs(at(rate) / 112 - 1)).toBeLessThan(0.002)
})

test('a rise of 20000 rpm a second is followed within 3 % in noise, and its slope within 25 %', () => {
  const f = (t: number) => (t < 1 ? 50 : Math.min(160, 50 + (20000 / 60) * (t - 1)))
  const x = sum(pulseTrain(f, 3, 8000), noiseOnly(3, 8000, 3, 0.05))
  const t = hear(x, 8000, one).tracks[0]!
  for (let i = 44; i < 51; i++) {
    expect(Math.abs(t.firing[i]! / f(i * 0.025) - 1), `${i}`).toBeLessThan(0.04)
    expect(Math.abs(t.change[i]! / 20000 - 1), `slope ${i}`).toBeLessThan(0.3)
  }
})

test('the warp without slope is the identity, and otherwise never leaves the window', () => {
  expect(warpedTime(0.1, 0)).toBe(0.1)
  for (const a of [0.6, 2.8, 4.2, -4.2])
    for (const phi of [-0.18, 0.18])
      expect(Math.abs(warpedTime(phi * shrink(a, 0.36), a))).toBeLessThanOrEqual(0.1801)
})

test('resampling keeps a tone below half the lower rate and removes one above', () => {
  const tone = (f: number) =>
    resampled(
      Float32Array.from({ length: 44100 }, (_, i) => Math.sin((2 * Math.PI * f * i) / 44100)),
      44100,
      4000,
    )
  const level = (x: Float32Array) => Math.sqrt(x.subarray(500, 3500).reduce((a, v) => a + v * v, 0) / 3000)
  expect(level(tone(440))).toBeCloseTo(Math.SQRT1_2, 3)
  expect(level(tone(1500))).toBeCloseTo(Math.SQRT1_2, 2)
  expect(level(tone(2700))).toBeLessThan(1e-3)
})

test('silence, noise and an empty recording hold no engine, and say so', () => {
  const silent = hear(new Float32Array(16000), 8000)
  expect(silent.verdict.says).toBe('No engine was heard.')
  expect(silent.flags[0]!.code).toBe('silent')
  const noise = hear(noiseOnly(5, 8000), 8000)
  expect(noise.verdict.code).toBe('no engine')
  expect(noise.count.every((c) => c === 0)).toBe(true)
  const empty = hear(new Float32Array(0), 8000)
  expect(empty.verdict.code).toBe('no engine')
  expect(empty.duration).toBe(0)
  expect(hear(noiseOnly(0.3, 8000), 8000).flags[0]!.text).toContain('only 0.30 s long')
})

test('a scale played on a whistle is not an engine that ran for long', () => {
  // notes of 0.25 s with three harmonics each, as in a tune
  const notes = [262, 294, 330, 349, 392, 440, 494, 523]
  const x = pulseTrain((t) => notes[Math.floor(t * 4) % 8]!, 6, 8000, { harmonics: 3 })
  const h = hear(x, 8000)
  const share = h.count.filter((c) => c > 0).length / h.count.length
  expect(share).toBeLessThan(0.1)
})

test('impossible options are refused with the value and the range', () => {
  expect(() => hear(new Float32Array(10), 12)).toThrow('sampleRate: 12; 1000 to 1000000')
  expect(() => hear(new Float32Array(10), 8000, { cylinders: 0 })).toThrow('cylinders: 0')
  expect(() => hear(new Float32Array(10), 8000, { range: { low: 9000, high: 8000 } })).toThrow(
    'range: 9000 to 8000 rpm',
  )
})

test('the quick picture has its ridge at the tone', () => {
  const p = quickSpectrogram(
    Float32Array.from({ length: 40000 }, (_, i) => Math.sin((2 * Math.PI * 300 * i) / 4000)),
    50,
  )
  expect(p.columns).toBe(50)
  const column = p.level.subarray(20 * p.rows, 21 * p.rows)
  expect(Math.abs(column.indexOf(Math.max(...column)) * p.hertzStep - 300)).toBeLessThan(4)
})
