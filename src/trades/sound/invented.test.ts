import { expect, test } from 'vitest'
import { hear } from './hearSamples.ts'
import { inventedRun } from './invented.ts'

const pair = { rotations: [105, 105], locked: false, firingsPerTurn: 1, seed: 3 }

test('the same seed gives the same sound, another seed another', () => {
  const order = { ...pair, rotations: [105] }
  const bytes = (seed: number) => Buffer.from(inventedRun({ ...order, seed }).samples.buffer)
  const sound = bytes(3)
  expect(sound.equals(bytes(3))).toBe(true)
  expect(sound.equals(bytes(4))).toBe(false)
})

test('a speed that is no engine speed is refused with its path', () => {
  expect(() => inventedRun({ ...pair, rotations: [105, 900] })).toThrow(/rotations\.1: 900 rev\/s/)
})

test('one invented engine is heard within 3 % over nine tenths of its run, with its start, flare and stop', () => {
  const clip = inventedRun({ ...pair, rotations: [105] })
  const h = hear(clip.samples, clip.rate, { engines: 1 })
  const truth = clip.truth[0]!
  let on = 0
  let right = 0
  h.time.forEach((t, i) => {
    const f = truth[Math.min(truth.length - 1, Math.round(t * 200))]!
    if (f <= 0) return
    on++
    if (Math.abs(h.tracks[0]!.firing[i]! / f - 1) < 0.03) right++
  })
  expect(right / on).toBeGreaterThan(0.9)
  for (const kind of ['start', 'flare', 'stop'] as const) {
    const true_ = clip.script.events.find((e) => e.kind === kind)!
    expect(
      h.events.some((e) => e.kind === kind && Math.abs(e.time - true_.time) < 0.7),
      kind,
    ).toBe(true)
  }
})

test('two invented engines 3 % apart are both heard all through the pull, each within 1 %', () => {
  const clip = inventedRun({ rotations: [123.8, 123.8], locked: false, firingsPerTurn: 1, seed: 2 })
  const h = hear(clip.samples, clip.rate, { engines: 2 })
  let frames = 0
  let right = 0
  h.time.forEach((t, i) => {
    // before and after the load slips away, while both run
    if (!((t > 11.5 && t < 16.5) || (t > 19.5 && t < 22.5))) return
    frames++
    const at = Math.round(t * 200)
    const truth = clip.truth.map((x) => x[at]!).sort((p, q) => p - q)
    const heard = h.tracks.map((x) => x.firing[i]!).sort((p, q) => p - q)
    if (truth.every((f, k) => Math.abs(heard[k]! / f - 1) < 0.01)) right++
  })
  expect(h.verdict.code).toBe('two')
  expect(right / frames).toBeGreaterThan(0.8)
})

test('two engines on one shaft start at idle, not at a speed heard in the noise before', () => {
  const clip = inventedRun({ rotations: [123.8, 123.8], locked: true, firingsPerTurn: 1, seed: 10 })
  const starts = hear(clip.samples, clip.rate).events.filter((e) => e.kind === 'start')
  expect(starts).toHaveLength(1)
  expect(Math.abs(starts[0]!.time - 1.6)).toBeLessThan(0.3)
  expect(starts[0]!.value).toBeLessThan(4000)
})
