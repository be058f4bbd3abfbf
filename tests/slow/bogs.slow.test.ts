import { expect, test } from 'vitest'
import { evaluationClips } from '../../bench/hearing/evaluation.ts'
import { makeListener } from '../../src/trades/sound/listener.ts'
import type { ScriptKind } from '../../src/trades/sound/synth/scriptTypes.ts'

/** Bogs on clips of the tuning seeds, 10 dB of noise: true ones in the script, and those told within 0.6 s of one or not. */
function bogsOf(kind: ScriptKind) {
  const sum = { real: 0, hit: 0, extra: 0 }
  for (let seed = 1; seed <= 8; seed++)
    for (const clip of evaluationClips(kind, seed, 'usual', [10])) {
      const listener = makeListener(clip.rate)
      listener.push(clip.samples)
      const times = (events: readonly { kind: string; time: number }[]) =>
        events.filter((e) => e.kind === 'bog').map((e) => e.time)
      const real = times(clip.script.events)
      const told = times(listener.finish().events)
      const near = (a: number, all: readonly number[]) => all.some((b) => Math.abs(a - b) < 0.6)
      sum.real += real.length
      sum.hit += real.filter((t) => near(t, told)).length
      sum.extra += told.filter((t) => !near(t, real)).length
    }
  return sum
}

test('bogs are found, and no others are told', () => {
  const { real, hit, extra } = bogsOf('bogcut')
  expect(real).toBe(8)
  expect(hit).toBeGreaterThanOrEqual(7)
  expect(extra).toBe(0)
})

test('a throttle worked by hand is told as revs, not as bogs', () => {
  expect(bogsOf('blips')).toEqual({ real: 0, hit: 0, extra: 0 })
})
