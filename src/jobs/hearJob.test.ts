import { expect, test } from 'vitest'
import { hear } from '../trades/sound/hearSamples.ts'
import { inventedRun } from '../trades/sound/invented.ts'
import { scoreHalf } from '../trades/sound/scorer.ts'
import { readWav } from '../trades/sound/wav.ts'
import { makeHearSession } from './hearJob.ts'

const clip = inventedRun({ rotations: [105], locked: false, firingsPerTurn: 1, seed: 20 })
const sound = clip.samples.subarray(19 * clip.rate, 25 * clip.rate)

test('a session fed in pieces hears what listening to the whole at once hears', () => {
  const whole = hear(sound, clip.rate, { engines: 1 })
  const session = makeHearSession({ engines: 1 })
  for (let i = 0; i < sound.length; i += 7777)
    session.take([sound.subarray(i, i + 7777)], clip.rate, sound.length / clip.rate)
  session.close()
  const parts: number[] = []
  for (let part = 0; part < 1; ) parts.push((part = session.score(50)))
  expect(parts.length).toBeGreaterThan(3)
  expect([...parts].sort((a, b) => a - b)).toEqual(parts)
  const heard = session.answer({})
  expect(heard.tracks[0]!.rpm).toEqual(whole.tracks[0]!.rpm)
  expect(heard.verdict).toEqual(whole.verdict)
})

test('an answer with other locks leaves the sound and the earlier answer as they were', () => {
  const session = makeHearSession({ engines: 1 })
  session.take([sound], clip.rate)
  session.close()
  while (session.score(1000) < 1);
  const first = session.answer({})
  const before = first.tracks[0]!.rpm.slice()
  const silenced = session.answer({ locks: [{ label: 'A', time: 3, rpm: 0 }] })
  expect(silenced.tracks[0]!.rpm[120]).toBe(0)
  expect(first.tracks[0]!.rpm).toEqual(before)
  expect(session.answer({}).tracks[0]!.rpm).toEqual(before)
})

test('one engine alone is a WAV file as long as the recording, its strongest sample at nine tenths', () => {
  const session = makeHearSession({ engines: 1 })
  session.take([sound], clip.rate)
  session.close()
  while (session.score(1000) < 1);
  const h = session.answer({})
  const wav = readWav(session.alone(h.tracks[0]!, h.step))
  expect(wav.rate).toBe(16000)
  expect(wav.flags).toEqual([])
  expect(wav.channels[0]!.length / wav.rate).toBeCloseTo(6, 1)
  expect(wav.channels[0]!.reduce((a, v) => Math.max(a, Math.abs(v)), 0)).toBeCloseTo(0.9, 2)
})

test('a session without sound answers that no engine was heard', () => {
  const session = makeHearSession({})
  session.close()
  expect(session.score(10)).toBe(1)
  expect(session.answer({}).verdict.code).toBe('no engine')
})

test('a recording scored in two halves by two workers gives exactly what one gives', () => {
  const two = inventedRun({ rotations: [105, 98], locked: false, firingsPerTurn: 1, seed: 21 })
  const session = (halved: boolean) => {
    const s = makeHearSession({})
    s.take([two.samples.subarray(18 * two.rate, 29 * two.rate)], two.rate)
    s.close()
    const half = halved ? s.halve(100) : undefined
    expect(half !== undefined).toBe(halved)
    while (s.score(1000) < 1);
    // as it comes back from another worker
    if (half) s.join(structuredClone(scoreHalf(structuredClone(half))))
    return s.answer({})
  }
  expect(session(true)).toEqual(session(false))
})

test('when the other worker fails its half is scored here', () => {
  const two = inventedRun({ rotations: [105], locked: false, firingsPerTurn: 1, seed: 20 })
  const session = (halved: boolean) => {
    const s = makeHearSession({ engines: 1 })
    s.take([two.samples.subarray(18 * two.rate, 26 * two.rate)], two.rate)
    s.close()
    if (halved) expect(s.halve(100)).toBeDefined()
    while (s.score(1000) < 1);
    if (halved) s.join(undefined)
    while (s.score(1000) < 1);
    return s.answer({})
  }
  expect(session(true)).toEqual(session(false))
})
