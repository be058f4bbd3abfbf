import { expect, test } from 'vitest'
import { printed } from '../../base/answers/sentence.ts'
import { doubtOf, runAnswer } from './heardAnswer.ts'
import type { Hearing } from './hearingTypes.ts'
import { percentile } from './saySpeed.ts'
import { heardTracks, steadyTrack, toldOfRun } from './sound.testkit.ts'
import { runPicture } from './soundFigures.ts'

const answer = (h: Hearing) => printed(runAnswer(h).says)

test('a percentile leaves out moments in which nothing was heard', () => {
  expect(percentile(Float32Array.of(0, 0, 0, 5000), 0.5)).toBe(5000)
  expect(percentile(new Float32Array(3), 0.5)).toBe(0)
})

test('the answer names one engine, two engines, none, and doubt', () => {
  expect(answer(heardTracks([steadyTrack('A', 6003)]))).toBe('One engine ran, mostly at 6000 rpm.')
  expect(answer(heardTracks([steadyTrack('A', 6003), steadyTrack('B', 5800)]))).toBe(
    'Two engines ran independently, A mostly at 6000 rpm and B mostly at 5800 rpm.',
  )
  const none = { code: 'no engine', says: '', coupling: 'none' } as const
  expect(answer(heardTracks([], { verdict: none }))).toBe('No engine was heard.')
  const silent = { code: 'silent', text: 'The recording is silent.', path: 'recording' }
  expect(answer(heardTracks([], { verdict: none, flags: [silent] }))).toBe(
    'The recording is silent. No engine was heard.',
  )
  const doubt = heardTracks([steadyTrack('A', 6000)], {
    verdict: { code: 'cannot tell', says: '', coupling: 'unknown' },
    octaves: [{ label: 'A', from: 0, to: 10, factor: 0.5 }],
  })
  expect(answer(doubt)).toBe('The sound cannot tell whether the engine ran at 6000 rpm or 3000 rpm.')
})

test('the picture has every track as a named line inside its frame, and the numbers for read-outs', () => {
  const sheet = runPicture({
    width: 150,
    spectrogram: heardTracks([]).spectrogram,
    rpmPerHertz: 60,
    hearing: heardTracks([steadyTrack('A', 6000), steadyTrack('B', 5000)]),
  })
  const plot = sheet.plots![0]!
  expect(plot.series.map((s) => s.name)).toEqual(['engine A', 'engine B'])
  const lines = sheet.marks.flatMap((m) => (m.kind === 'polyline' && m.name ? [m] : []))
  expect(new Set(lines.map((l) => l.name))).toEqual(new Set(['engine A', 'engine B']))
  for (const l of lines)
    l.points.forEach((v, i) => {
      const [low, high] = i % 2 === 0 ? [plot.left, plot.right] : [plot.bottom, plot.top]
      expect(v).toBeGreaterThanOrEqual(low - 1e-9)
      expect(v).toBeLessThanOrEqual(high + 1e-9)
    })
})

test('the names of two lines keep clear of each other and of both lines', () => {
  const h = heardTracks([steadyTrack('A', 6000), steadyTrack('B', 5700)])
  const sheet = runPicture({ width: 100, spectrogram: h.spectrogram, rpmPerHertz: 60, hearing: h })
  const names = sheet.marks.flatMap((m) => (m.kind === 'text' && /^engine [AB]$/.test(m.text) ? [m] : []))
  expect(names.map((m) => m.text)).toEqual(['engine A', 'engine B'])
  const lines = sheet.marks.flatMap((m) => (m.kind === 'polyline' && m.name ? [m.points[1]!] : []))
  const [a, b] = names
  expect(Math.abs(a!.x - b!.x) > 17 || Math.abs(a!.y - b!.y) > 3.4).toBe(true)
  for (const name of names) for (const line of lines) expect(line <= name.y || line >= name.y + 3).toBe(true)
})

test('what lasts no longer than a shout, or stands in too short a clip, is not called an engine', () => {
  const shouts = steadyTrack('A', 9000)
  shouts.rpm.forEach((_, i) => {
    if (i % 100 >= 40) shouts.rpm[i] = 0
  })
  const memo = heardTracks([shouts])
  expect(answer(memo)).toMatch(/cannot be told: .*9000 rpm.* snatches of at most 1\.0 s/)
  const short = { code: 'short', text: 'only 0.6 s', path: 'recording' }
  const clip = heardTracks([steadyTrack('A', 6000)], { flags: [short], duration: 0.6 })
  expect(answer(clip)).toBe(
    'Too short to tell an engine from another sound; if this is one, it turns at about 6000 rpm.',
  )
  for (const h of [memo, clip]) {
    const event = { time: 1, lasts: 0, kind: 'one dead', engine: 'A', says: 'dies', confidence: 1 } as const
    const found = toldOfRun({ hearing: { ...h, events: [event] } })
    expect(found.map((f) => [f.id, f.standing])).toEqual([['runs.headline', 'unknown']])
  }
  // one stretch that lasts is an engine's
  shouts.rpm.fill(9000, 200, 280)
  expect(doubtOf(memo)).toBeUndefined()
})
