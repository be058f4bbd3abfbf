import fc from 'fast-check'
import { expect, test } from 'vitest'
import { bestSpeed, closingAt, closingSpeeds, isMatch, readGpx, speedsOf, syncLag } from './gpx.ts'

const rad = Math.PI / 180
/** Points along the meridian, `speed` m/s, one a second. */
function track(speeds: readonly number[], extra = ''): string {
  let north = 0
  const points = speeds.map((v, i) => {
    north += i === 0 ? 0 : v
    return `<trkpt lat="${(50 + north / 6_371_000 / rad).toFixed(9)}" lon="8.0"><time>2026-07-01T10:00:${String(i).padStart(2, '0')}Z</time>${extra}</trkpt>`
  })
  return `<?xml version="1.0"?><gpx version="1.1"><trk><trkseg>${points.join('')}</trkseg></trk></gpx>`
}

test('points at constant speed give exactly that speed', () => {
  const { points, flags } = readGpx(track(new Array(20).fill(4)))
  expect(flags).toEqual([])
  const s = speedsOf(points)
  expect(s.from).toBe('positions')
  s.speed.forEach((v) => {
    expect(v).toBeCloseTo(4, 3)
  })
  expect(bestSpeed(s)!.speed).toBeCloseTo(4, 3)
})

test('a reversed track gives the same speeds', () => {
  const forward = speedsOf(readGpx(track([3, 3, 4, 5, 5, 5, 4, 4, 3, 3, 2, 2])).points).speed
  const points = readGpx(track([3, 3, 4, 5, 5, 5, 4, 4, 3, 3, 2, 2])).points
  const back = points.map((p, i) => ({ ...points[points.length - 1 - i]!, time: p.time }))
  speedsOf(back).speed.forEach((v, i) => {
    expect(v).toBeCloseTo(forward[forward.length - 1 - i]!, 6)
  })
})

test('the receiver’s own speed is preferred where it is given, in GPX 1.0 and in extensions', () => {
  const one = readGpx(track(new Array(6).fill(4), '<speed>2.5</speed>'))
  expect(speedsOf(one.points).from).toBe('receiver')
  const two = readGpx(
    track(
      new Array(6).fill(4),
      '<extensions><x:TrackPointExtension><x:speed>3.25</x:speed></x:TrackPointExtension></extensions>',
    ),
  )
  expect(speedsOf(two.points).speed[2]).toBe(3.25)
})

test('an island at 0, 0, double times and points without time are left out and counted', () => {
  const xml = track(new Array(8).fill(4)).replace(
    '</trkseg>',
    '<trkpt lat="0" lon="0"><time>2026-07-01T10:00:30Z</time></trkpt><trkpt lat="50" lon="8"><time>2026-07-01T10:00:01Z</time></trkpt><trkpt lat="50" lon="8"/></trkseg>',
  )
  const { points, flags } = readGpx(xml)
  expect(points).toHaveLength(8)
  expect(flags.map((f) => f.code).sort()).toEqual(['gpx-no-fix', 'gpx-time', 'gpx-twice'])
})

test('closing speed is minus the speed away from the start', () => {
  const { points } = readGpx(track(new Array(12).fill(4)))
  const c = closingSpeeds(points)
  expect(c[6]).toBeCloseTo(-4, 2)
})

test('the lag between sound and GPS is found from speeding up', () => {
  const v = (t: number) => (t < 12 ? 0 : t < 20 ? 0.5 * (t - 12) : t < 35 ? 4 : 2)
  const time = Float64Array.from({ length: 50 }, (_, i) => i)
  const rpmTime = Float64Array.from({ length: 500 }, (_, i) => i / 10)
  const rpm = rpmTime.map((t) => 2000 + 900 * Math.sqrt(v(t - 3)))
  const r = syncLag({ time, speed: time.map(v), from: 'receiver' }, rpmTime, rpm)
  // this craft takes up its speed at once, a real one a little later
  expect(Math.abs(r.lag - 3)).toBeLessThanOrEqual(0.5)
  expect(r.correlation).toBeGreaterThan(0.6)
})

test('no text whatever makes the reader throw', () => {
  const good = track(new Array(5).fill(4))
  fc.assert(
    fc.property(fc.nat(good.length), fc.nat(good.length), fc.string({ maxLength: 30 }), (a, b, text) => {
      const broken = good.slice(0, Math.min(a, b)) + text + good.slice(Math.max(a, b))
      const g = readGpx(broken)
      if (g.points.length >= 3)
        for (const v of speedsOf(g.points).speed) expect(Number.isFinite(v)).toBe(true)
      else expect(g.flags.length).toBeGreaterThan(0)
    }),
    { numRuns: 300 },
  )
  expect(readGpx('').flags[0]!.code).toBe('not-gpx')
  expect(readGpx('<kml/>').flags[0]!.text).toContain('not a GPX file')
})

/** A craft at rest that sets off and stops three times, and the engine speed that goes with it. */
const goes = (t: number) => {
  const on = (from: number, to: number) => (t > from && t < to ? 1 : 0)
  return on(130, 150) + 0.7 * on(170, 181) + on(200, 225)
}

test('a recording of two minutes is found inside an hour of track, and a steady one is not matched', () => {
  const time = Float64Array.from({ length: 3600 }, (_, i) => i)
  const speed = new Float64Array(3600)
  for (let i = 1; i < 3600; i++) speed[i] = speed[i - 1]! + 0.25 * (5 * goes(i) - speed[i - 1]!)
  const trace = { time, speed, from: 'receiver' as const }
  const rpmTime = Float64Array.from({ length: 1200 }, (_, i) => 0.1 * i)
  // the recording begins 115 s into the track
  const rpm = rpmTime.map((t) => 2400 + 3600 * goes(t + 115))
  const found = syncLag(trace, rpmTime, rpm)
  expect(Math.abs(found.lag + 115)).toBeLessThanOrEqual(2)
  expect(isMatch(found)).toBe(true)
  expect(isMatch(syncLag(trace, rpmTime, new Float64Array(1200).fill(6000)))).toBe(false)
})

test('the closing speed follows the lag and is 0 where the track does not reach', () => {
  const trace = { time: Float64Array.of(0, 1, 2), speed: new Float64Array(3), from: 'receiver' as const }
  const closing = closingAt(trace, Float64Array.of(4, 2, -2), 10)
  expect([9.9, 10, 10.5, 11.5, 12, 12.1].map(closing)).toEqual([0, 4, 3, 0, -2, 0])
})
