import { expect, test } from 'vitest'
import { seededRandom } from '../../base/numerics/random.ts'
import { atSource, dopplerFactor, passSpeed } from './doppler.ts'
import { hear } from './hearSamples.ts'
import { observations } from './observations.ts'
import { findBladePass, halfOrderIndex, onAngle, orderSpectrum, readCycles, turnsAlong } from './orders.ts'
import { parseReadings, readingsFault, readPull, timedSpeed } from './pull.ts'
import { ANALYSIS_RATE } from './resample.ts'
import { STEP } from './settings.ts'
import { pulseTrain, resampled } from './sound.testkit.ts'
import { makeClip } from './synth/clip.ts'
import { passDistance } from './synth/path.ts'
import { drawScript } from './synth/script.testkit.ts'
import { CONTROL_RATE } from './synth/scriptTypes.ts'
import type { FrameTrack } from './tracks.ts'

/** A steady engine's clip with the given uneven firing, and its true track. */
function engine(alternate: number, misfire: number): { signal: Float32Array; track: FrameTrack } {
  const script = drawScript('steady', 8, seededRandom(4))
  script.engines[0]!.alternate.fill(alternate)
  script.engines[0]!.misfire.fill(misfire)
  const clip = makeClip(script, { snr: 15, noise: { wind: 1, splash: 0, voice: 0, pink: 0.5, hiss: 0.2 } }, 4)
  const signal = resampled(clip.samples, clip.rate, ANALYSIS_RATE)
  const n = Math.floor(signal.length / 100)
  const rate = Float64Array.from(
    { length: n },
    (_, i) => clip.truth[0]![Math.min(clip.truth[0]!.length - 1, Math.round(i * STEP * CONTROL_RATE))]!,
  )
  return { signal, track: { rate, score: new Float64Array(n), slope: new Uint8Array(n) } }
}
const part = { from: 40, to: 280 }

test('the half-order index rises with every step of alternate weakness', () => {
  const values = [0, 0.3, 0.6, 0.85].map((depth) => {
    const { signal, track } = engine(depth, 0)
    return halfOrderIndex(orderSpectrum(onAngle(signal, turnsAlong(track, part), part.from * 100)))
  })
  for (let i = 1; i < values.length; i++) expect(values[i]!).toBeGreaterThan(values[i - 1]! + 1)
})

test('the share of weak cycles follows the misfire rate within 0.04, and rises with it', () => {
  let last = -1
  for (const rate of [0, 0.05, 0.1, 0.2]) {
    const { signal, track } = engine(0, rate)
    const weak = readCycles(signal, track, part).weak
    expect(Math.abs(weak - rate), `${rate}`).toBeLessThan(0.04)
    expect(weak).toBeGreaterThan(last)
    last = weak
  }
})

test('firing every second turn makes a cycle’s energy foretell the next one’s lack', () => {
  const { signal, track } = engine(0.8, 0)
  expect(readCycles(signal, track, part).nextCorrelation).toBeLessThan(-0.3)
})

test('a line that does not turn with the engine is found, with the slip it means', () => {
  const f = 60
  const x = pulseTrain(f, 8, ANALYSIS_RATE, { noise: 0.05 })
  const tone = x.map((v, i) => v + 0.06 * Math.sin((2 * Math.PI * 2.75 * f * i) / ANALYSIS_RATE))
  const n = 310
  const track = { rate: new Float64Array(n).fill(f), score: new Float64Array(n), slope: new Uint8Array(n) }
  const spectrum = (y: Float32Array) => orderSpectrum(onAngle(y, turnsAlong(track, { from: 0, to: n }), 0))
  const found = findBladePass(spectrum(tone), 3)!
  expect(found.order).toBeCloseTo(2.75, 1)
  expect(found.slip).toBeCloseTo(1 - 2.75 / 3, 1)
  expect(findBladePass(spectrum(x), 3)).toBeUndefined()
})

test('Doppler factor and its inverse agree; a pass gives the speed that made it', () => {
  expect(atSource(100 * dopplerFactor(7), 7)).toBeCloseTo(100, 9)
  expect(passSpeed(100 * dopplerFactor(6), 100 * dopplerFactor(-6))).toBeCloseTo(6, 9)
  expect(() => dopplerFactor(400)).toThrow('closing: 400')
})

test('a simulated pass, corrected with its geometry, comes within 0.4 % of the true speed', () => {
  const script = drawScript('steady', 8, seededRandom(9))
  const pass = { speed: 7, distance: 8, closest: 4, sound: 343 }
  const clip = makeClip(script, { snr: 20, pass, echoes: false }, 9)
  const h = hear(clip.samples, clip.rate, { engines: 1 })
  const errors: number[] = []
  for (let i = 40; i < h.time.length - 40; i++) {
    const t = h.time[i]!
    const closing = -(passDistance(pass, t + 0.01) - passDistance(pass, t - 0.01)) / 0.02
    const f = h.tracks[0]!.firing[i]!
    if (f > 0)
      errors.push(Math.abs(atSource(f, closing, 343) / clip.truth[0]![Math.round(t * CONTROL_RATE)]! - 1))
  }
  errors.sort((a, b) => a - b)
  expect(errors.length).toBeGreaterThan(150)
  expect(errors[Math.floor(errors.length / 2)]!).toBeLessThan(0.004)
})

test('pull readings: the median counts, the rope’s angle is taken off, nonsense is left out', () => {
  expect(readPull([12, 13, 40])!.force.value).toBeCloseTo(13 * 9.80665, 6)
  expect(readPull([10], 0.2618)!.force.value).toBeCloseTo(10 * 9.80665 * 0.9659, 1)
  expect(readPull([])).toBeUndefined()
  expect(() => readPull([10], 1)).toThrow('angle: 1')
  expect(parseReadings('12.4 kg; 13; 12,8')).toEqual([12.4, 13, 12.8])
  expect(parseReadings('12.4 13')).toEqual([12.4, 13])
  expect(parseReadings('none')).toEqual([])
  const r = timedSpeed(20, 4)
  expect(r.low).toBeLessThan(5)
  expect(r.high).toBeGreaterThan(5)
})

test.each([
  ['21.4,22.0,21.7', [21.4, 22, 21.7]],
  ['21.4 22.0, 21.7', [21.4, 22, 21.7]],
  ['21,4 22,0; 21,7', [21.4, 22, 21.7]],
  ['21,4, 22,0', [21.4, 22]],
  ['21,22,23', [21, 22, 23]],
  ['21.4kg,22kg', [21.4, 22]],
  [' 20 ,\n21 kg', [20, 21]],
  ['47 lb', [21.3188]],
])('readings typed as %j are all read', (text, readings) => {
  expect(parseReadings(text)).toEqual(readings)
  expect(readingsFault(text)).toBeUndefined()
})

test.each(['47 stone', '21.4, about 22', '21,4,22,0', '0', '2140', '-3'])(
  'readings typed as %j are refused, with the piece that is none',
  (text) => {
    expect(readingsFault(text)).toMatch(/^“.+” is no reading in kg/)
  },
)

test('each question about a run says what its answer parts from what', () => {
  for (const o of observations) expect(o.tells, o.id).toMatch(/ from /)
  expect(new Set(observations.map((o) => o.tells)).size).toBe(observations.length)
})
