import { expect, test } from 'vitest'
import { printed } from '../../base/answers/sentence.ts'
import { soundSpeed } from '../../trades/sound/doppler.ts'
import type { GpxPoint } from '../../trades/sound/gpx.ts'
import type { Hearing } from '../../trades/sound/hearingTypes.ts'
import { comparedSpeeds } from '../../trades/sound/residuals.ts'
import type { Balance } from '../push/balanceTypes.ts'
import { besideRun, matchTrack, type ToldOfRun } from './besideRun.ts'

const balance = {
  ranged: true,
  tiedUpRotation: { value: 100, low: 96, high: 105 },
  pull: { value: 230, low: 200, high: 260 },
  curve: { speed: [0, 4, 8], rpm: [6000, 6200, 6800] },
} as unknown as Balance
const step = 0.025

/** 40 s: idle, then full throttle from 20 s on, as a phone on shore hears a craft that goes straight away. */
const leaving = (away: (t: number) => number): Hearing => {
  const n = 1600
  const c = soundSpeed(20)
  const rpm = Float32Array.from({ length: n }, (_, i) => {
    const t = i * step
    return (t < 20 ? 2400 : 6200) / (1 + away(t) / c)
  })
  return {
    duration: 40,
    step,
    time: Float32Array.from({ length: n }, (_, i) => i * step),
    tracks: [{ label: 'A', rpm, firing: rpm, confidence: rpm.map(() => 0.9), change: rpm }],
    verdict: { code: 'one' },
    octaves: [],
    events: [],
    flags: [],
  } as unknown as Hearing
}

/** An invented track, one point a second, that begins `early` s before the recording. */
const trackOf = (speed: (t: number) => number, early: number): GpxPoint[] => {
  let north = 0
  return Array.from({ length: 60 }, (_, i) => {
    north += speed(i - early)
    return {
      latitude: 50 + (north / 6_371_000 / Math.PI) * 180,
      longitude: 8,
      height: 0,
      time: 1000 + i,
      speed: speed(i - early),
    }
  })
}
const speed = (t: number) => (t < 20 ? 0 : Math.min(4, (t - 20) * 1.2))
const told = (part: Partial<ToldOfRun>): ToldOfRun => ({
  kind: 'under way',
  readings: '',
  gpx: trackOf(speed, 12),
  phone: 'on shore',
  ...part,
})
const expects = { engines: 1, coupling: 'single' as const }

test('a craft leaving a phone on shore is read at its own speed once the track is matched', () => {
  const h = leaving(speed)
  const t = told({})
  const match = matchTrack(h, t.gpx)!
  expect(match.matched).toBe(true)
  expect(Math.abs(match.lag + 12)).toBeLessThanOrEqual(1.5)
  const b = besideRun(h, t, expects, balance, match)
  const last = comparedSpeeds({ ...b, hearing: b.hearing! }).at(-1)!
  expect(Math.abs(last.heard / 6200 - 1)).toBeLessThan(0.002)
  expect(last.predicted).toBeCloseTo(6200, -1)
  expect(last.standing).toBe('within')
})

test('with the phone on the craft nothing is corrected', () => {
  const h = leaving(() => 0)
  const t = told({ phone: 'on the craft' })
  const b = besideRun(h, t, expects, balance, matchTrack(h, t.gpx))
  expect(b.closing).toBeUndefined()
  const last = comparedSpeeds({ ...b, hearing: b.hearing! }).at(-1)!
  expect(Math.abs(last.heard / 6200 - 1)).toBeLessThan(1e-4)
})

test('a lag set by hand goes before the match, and is said', () => {
  const h = leaving(speed)
  const t = told({ lag: -5.5 })
  const b = besideRun(h, t, expects, balance, matchTrack(h, t.gpx))
  expect(printed(b.says)).toContain('set by hand to begin 5.5 s before the recording')
  expect(b.prediction!.time[0]).toBeCloseTo(-5.5, 9)
})

test('what is missing for a comparison is named', () => {
  const h = leaving(speed)
  const says = (part: Partial<ToldOfRun>, b: Balance | undefined = balance) =>
    printed(
      besideRun(h, told(part), expects, b, part.gpx?.length === 0 ? undefined : matchTrack(h, told(part).gpx))
        .says,
    )
  expect(says({ kind: 'not said' })).toContain('tied up or under way')
  expect(says({ gpx: [] })).toContain('Add the GPX track')
  expect(says({ throttle: 'half' })).toContain('half throttle')
  expect(printed(besideRun(h, told({}), expects, undefined, undefined).says)).toContain('see the Push page')
})

test('tied up, the scale’s readings stand beside the predicted pull', () => {
  const b = besideRun(
    leaving(() => 0),
    told({ kind: 'tied up', readings: '21, 22, 23' }),
    expects,
    balance,
    undefined,
  )
  expect(b.pull!.predicted.value).toBe(230)
  expect(b.pull!.read.force.value).toBeCloseTo(22 * 9.80665, 6)
})

test('at half throttle neither speed nor pull is compared with what full throttle gives', () => {
  const run = told({ kind: 'tied up', readings: '21, 22, 23', throttle: 'half' })
  const b = besideRun(
    leaving(() => 0),
    run,
    expects,
    balance,
    undefined,
  )
  expect([b.pull, b.prediction]).toEqual([undefined, undefined])
})
