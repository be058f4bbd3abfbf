import { expect, test } from 'vitest'
import { seededRandom } from '../../base/numerics/random.ts'
import { hear } from './hearSamples.ts'
import { median, noiseOnly, pulseTrain, sum } from './sound.testkit.ts'
import { rainNoise, seaNoise, windNoise } from './synth/noise.ts'

const RATE = 8000
const shown = (h: ReturnType<typeof hear>) =>
  h.tracks.flatMap((t) => [...t.firing]).filter((f) => f > 0).length / Math.max(1, h.time.length)

test('a recording played backwards gives the track backwards within 0.5 %, with its changes the other way round', () => {
  const x = pulseTrain((t) => 60 + 12 * t, 4, RATE)
  const forth = hear(x, RATE, { engines: 1 }).tracks[0]!
  const back = hear(x.slice().reverse(), RATE, { engines: 1 }).tracks[0]!
  const n = Math.min(forth.firing.length, back.firing.length)
  const off: number[] = []
  const turned: number[] = []
  for (let i = 20; i < n - 20; i++) {
    off.push(Math.abs(back.firing[n - 1 - i]! / forth.firing[i]! - 1))
    turned.push(Math.sign(back.change[n - 1 - i]!) * Math.sign(forth.change[i]!))
  }
  expect(median(off)).toBeLessThan(0.005)
  expect(turned.filter((v) => v > 0)).toEqual([])
})

test('white noise 40 dB under the engine moves the track by less than 0.1 %', () => {
  const x = pulseTrain(80, 4, RATE, { noise: 0 })
  const clean = hear(x, RATE, { engines: 1 }).tracks[0]!.firing
  const power = Math.sqrt(x.reduce((n, v) => n + v * v, 0) / x.length)
  const heard = hear(sum(x, noiseOnly(4, RATE, 3, power / 100)), RATE, { engines: 1 }).tracks[0]!.firing
  for (let i = 10; i < clean.length - 10; i++) expect(Math.abs(heard[i]! / clean[i]! - 1)).toBeLessThan(0.001)
})

test('wind, waves and rain alone hold no engine for more than a twentieth of the time', () => {
  for (const [k, make] of [windNoise, seaNoise, rainNoise].entries())
    for (const seed of [1, 2]) {
      const y = make(10 * RATE, RATE, seededRandom(100 * seed + k))
      const top = y.reduce((m, v) => Math.max(m, Math.abs(v)), 0)
      const h = hear(
        Float32Array.from(y, (v) => (0.5 * v) / top),
        RATE,
      )
      expect([k, seed, shown(h) < 0.05]).toEqual([k, seed, true])
    }
})

test('two engines put the other way round give the same two speeds, and each what it gives alone within 0.5 %', () => {
  const a = pulseTrain(70, 5, RATE, { seed: 1 })
  const b = pulseTrain(88, 5, RATE, { seed: 2 })
  const both = hear(sum(a, b), RATE)
  const other = hear(sum(b, a), RATE)
  const speeds = (h: ReturnType<typeof hear>) => h.tracks.map((t) => median(t.firing)).sort((x, y) => x - y)
  expect(both.verdict.code).toBe('two')
  expect(speeds(other)).toEqual(speeds(both))
  const alone = [a, b].map((x) => median(hear(x, RATE, { engines: 1 }).tracks[0]!.firing))
  for (const [k, f] of speeds(both).entries()) expect(Math.abs(f / alone[k]! - 1)).toBeLessThan(0.005)
})
