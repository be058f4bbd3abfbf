import { expect, test } from 'vitest'
import { hear } from './hear.ts'
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
