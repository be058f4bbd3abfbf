import { expect, test } from 'vitest'
import { hear } from '../../src/trades/sound/hearSamples.ts'
import { freeClip, lifelikeClips } from './lifelike.ts'

test('rain that drums on a plate is shown as perhaps an engine at most, and a lifelike engine in waves as one', () => {
  const rain = freeClip('rain', 5)
  expect(hear(rain.samples, rain.rate).verdict.code).toBe('no engine')
  const [engine] = lifelikeClips('steady', 1, [10])
  expect(hear(engine!.samples, engine!.rate).verdict.code).toBe('one')
})
