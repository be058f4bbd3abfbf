/**
 * Reads a GPX track (Topografix, GPX 1.1 schema, 2004; GPX 1.0 also has speed) and makes speeds of it.
 * Smoothing: A. Savitzky and M. J. E. Golay, Anal. Chem. 36 (1964) 1627, seven points, second order.
 */
import { XMLParser } from 'fast-xml-parser'
import type { Flag } from '../../base/answers/solved.ts'
import { type SoundLimits, soundLimits } from './soundLimits.ts'

export interface GpxPoint {
  /** degrees */
  latitude: number
  longitude: number
  /** m, NaN when absent */
  height: number
  /** s since 1970, UTC */
  time: number
  /** m/s as the receiver measured it, NaN when absent */
  speed: number
}

export interface GpxTrack {
  points: GpxPoint[]
  flags: Flag[]
}

/** mean radius of the earth, m (IUGG) */
const EARTH = 6_371_000
/** m/s²; more than this is the receiver's error */
const MOST_ACCELERATION = 6

type Node = Record<string, unknown>
const list = (v: unknown): unknown[] =>
  Array.isArray(v) ? v : v === undefined || v === null || v === '' ? [] : [v]
const asNode = (v: unknown): Node => (typeof v === 'object' && v !== null ? (v as Node) : {})
const asNumber = (v: unknown) =>
  typeof v === 'number' ? v : typeof v === 'string' && v.trim() !== '' ? Number(v) : Number.NaN

/** First number called `speed` at any depth of the extensions. */
function findSpeed(v: unknown, depth = 0): number {
  if (depth > 6 || typeof v !== 'object' || v === null) return Number.NaN
  for (const [key, value] of Object.entries(v)) {
    if (/(^|:)speed$/i.test(key)) {
      const n = asNumber(asNode(value)['#text'] ?? value)
      if (Number.isFinite(n)) return n
    }
    const inner = findSpeed(value, depth + 1)
    if (Number.isFinite(inner)) return inner
  }
  return Number.NaN
}

function readPoint(raw: unknown): GpxPoint {
  const p = asNode(raw)
  const at = Date.parse(String(p['time'] ?? ''))
  return {
    latitude: asNumber(p['@lat']),
    longitude: asNumber(p['@lon']),
    height: asNumber(p['ele']),
    time: at / 1000,
    speed: Number.isFinite(asNumber(p['speed'])) ? asNumber(p['speed']) : findSpeed(p['extensions']),
  }
}

/** All track points of a GPX file in order of time. Never throws; what was left out stands in `flags`. */
export function readGpx(xml: string): GpxTrack {
  const flags: Flag[] = []
  let root: Node
  try {
    const parser = new XMLParser({
      ignoreAttributes: false,
      attributeNamePrefix: '@',
      processEntities: false,
      parseTagValue: false,
    })
    root = asNode(parser.parse(xml))
  } catch (error) {
    return {
      points: [],
      flags: [
        { code: 'gpx-broken', text: `The GPX file cannot be read: ${(error as Error).message}`, path: 'gpx' },
      ],
    }
  }
  const gpx = asNode(root['gpx'])
  if (!root['gpx'])
    return {
      points: [],
      flags: [{ code: 'not-gpx', text: 'This is not a GPX file: it holds no gpx element.', path: 'gpx' }],
    }
  const raw = list(gpx['trk'])
    .flatMap((t) => list(asNode(t)['trkseg']))
    .flatMap((s) => list(asNode(s)['trkpt']))
  const all = raw.map(readPoint)
  const placed = all.filter((p) => Math.abs(p.latitude) <= 90 && Math.abs(p.longitude) <= 180)
  const timed = placed.filter((p) => Number.isFinite(p.time))
  // receivers without a fix write 0, 0
  const fixed = timed.filter((p) => Math.abs(p.latitude) > 1e-6 || Math.abs(p.longitude) > 1e-6)
  fixed.sort((a, b) => a.time - b.time)
  const points = fixed.filter((p, i) => i === 0 || p.time > fixed[i - 1]!.time)
  const say = (n: number, code: string, why: string) => {
    if (n > 0)
      flags.push({ code, text: `${n} of ${all.length} GPX points were left out: ${why}.`, path: 'gpx' })
  }
  say(all.length - placed.length, 'gpx-place', 'their place cannot be read')
  say(placed.length - timed.length, 'gpx-time', 'they carry no time')
  say(
    timed.length - fixed.length,
    'gpx-no-fix',
    'they stand at 0, 0, which receivers write when they have no fix',
  )
  say(fixed.length - points.length, 'gpx-twice', 'another point has the same time')
  if (points.length < 3)
    flags.push({
      code: 'gpx-short',
      text: `The GPX file has ${points.length} usable points; at least 3 are needed.`,
      path: 'gpx',
    })
  return { points, flags }
}

/** Metres east and north of the first point; flat earth, good to 0.5 % over a few kilometres. */
export function toMetres(points: readonly GpxPoint[]): { east: Float64Array; north: Float64Array } {
  const first = points[0]
  const rad = Math.PI / 180
  const east = new Float64Array(points.length)
  const north = new Float64Array(points.length)
  if (!first) return { east, north }
  const c = Math.cos(first.latitude * rad)
  points.forEach((p, i) => {
    east[i] = (p.longitude - first.longitude) * rad * c * EARTH
    north[i] = (p.latitude - first.latitude) * rad * EARTH
  })
  return { east, north }
}

export interface SpeedTrace {
  /** s since the first point */
  time: Float64Array
  /** m/s over ground */
  speed: Float64Array
  /** 'receiver' = as measured by the receiver, 'positions' = from smoothed positions */
  from: 'receiver' | 'positions'
}

/** Slope at t0 of the parabola fitted to (t, x): least squares over up to seven points. */
function slope(t: Float64Array, x: Float64Array, i: number): number {
  const from = Math.max(0, Math.min(i - 3, t.length - 7))
  const to = Math.min(t.length, from + 7)
  let s0 = 0
  let s1 = 0
  let s2 = 0
  let s3 = 0
  let s4 = 0
  let y0 = 0
  let y1 = 0
  let y2 = 0
  for (let k = from; k < to; k++) {
    const u = t[k]! - t[i]!
    const v = x[k]! - x[i]!
    s0++
    s1 += u
    s2 += u * u
    s3 += u ** 3
    s4 += u ** 4
    y0 += v
    y1 += u * v
    y2 += u * u * v
  }
  const d = s0 * (s2 * s4 - s3 * s3) - s1 * (s1 * s4 - s2 * s3) + s2 * (s1 * s3 - s2 * s2)
  if (to - from < 4 || Math.abs(d) < 1e-12)
    return (x[to - 1]! - x[from]!) / Math.max(1e-9, t[to - 1]! - t[from]!)
  return (s0 * (y1 * s4 - y2 * s3) - y0 * (s1 * s4 - s2 * s3) + s2 * (s1 * y2 - s2 * y1)) / d
}

/** Speed over ground; the receiver's own speed where at least four in five points carry it. Needs 3 points. */
export function speedsOf(points: readonly GpxPoint[]): SpeedTrace {
  const time = Float64Array.from(points, (p) => p.time - points[0]!.time)
  const told = points.filter((p) => Number.isFinite(p.speed) && p.speed >= 0).length
  if (points.length > 0 && told > 0.8 * points.length) {
    const speed = Float64Array.from(points, (p) => p.speed)
    for (let i = 0; i < speed.length; i++) if (!Number.isFinite(speed[i]!)) speed[i] = speed[i - 1] ?? 0
    return { time, speed, from: 'receiver' }
  }
  const { east, north } = toMetres(points)
  const speed = Float64Array.from(points, (_, i) => Math.hypot(slope(time, east, i), slope(time, north, i)))
  return { time, speed, from: 'positions' }
}

/** Best mean speed over `span` s, with its likely error; never the receiver's highest single speed. */
export function bestSpeed(
  trace: SpeedTrace,
  span = 5,
): { speed: number; from: number; error: number } | undefined {
  const { time, speed } = trace
  let best: { speed: number; from: number; error: number } | undefined
  for (let i = 0; i < time.length; i++) {
    let sum = 0
    let n = 0
    let k = i
    for (; k < time.length && time[k]! - time[i]! <= span; k++) {
      const jump = k > i ? Math.abs(speed[k]! - speed[k - 1]!) / (time[k]! - time[k - 1]!) : 0
      if (jump > MOST_ACCELERATION) break
      sum += speed[k]!
      n++
    }
    if (n < 3 || time[k - 1]! - time[i]! < 0.8 * span) continue
    if (!best || sum / n > best.speed)
      best = { speed: sum / n, from: time[i]!, error: trace.from === 'receiver' ? 0.15 : 0.4 }
  }
  return best
}

/** Speed away from (-) or toward (+) a phone that stood at the first point or at `phone`, m/s at each point. */
export function closingSpeeds(
  points: readonly GpxPoint[],
  phone?: { latitude: number; longitude: number },
): Float64Array {
  const all = phone ? [{ ...points[0]!, ...phone }, ...points] : points
  const { east, north } = toMetres(all)
  const skip = phone ? 1 : 0
  const time = Float64Array.from(points, (p) => p.time)
  const range = Float64Array.from(points, (_, i) => Math.hypot(east[i + skip]!, north[i + skip]!))
  return Float64Array.from(points, (_, i) => -slope(time, range, i))
}

export interface Sync {
  /** s that a moment stands later in the recording than in the track */
  lag: number
  /** likeness there, -1 to 1 */
  correlation: number
  /** best likeness at a lag more than 3 s away */
  second: number
}

/** s between the samples that are laid beside each other, and s that must overlap */
const SYNC_STEP = 0.5
const SYNC_OVERLAP = 10
/** s in which a small craft takes up a new speed, two thirds of the way */
const SETTLING = 3

/**
 * Lag at which the craft's speeding up goes best with rpm² rising. Lags within `most` s are tried, by default all at which
 * track and recording overlap by 10 s or more.
 */
export function syncLag(
  trace: SpeedTrace,
  rpmTime: ArrayLike<number>,
  rpm: ArrayLike<number>,
  most = Number.POSITIVE_INFINITY,
): Sync {
  const rises = (time: ArrayLike<number>, v: ArrayLike<number>, by: (x: number) => number) => {
    const n = Math.max(0, Math.floor((time[time.length - 1] ?? 0) / SYNC_STEP))
    return Float64Array.from(
      { length: n },
      (_, i) => by(at(time, v, (i + 1) * SYNC_STEP)) - by(at(time, v, i * SYNC_STEP)),
    )
  }
  const a = rises(trace.time, trace.speed, (x) => x)
  // a craft's speed comes after its thrust (about rpm²) as a lag of the first order, so its speeding up is the thrust's rise that dies away
  const r = rises(rpmTime, rpm, (x) => x * x)
  const keep = Math.exp(-SYNC_STEP / SETTLING)
  for (let i = 1; i < r.length; i++) if (Number.isFinite(r[i]! + r[i - 1]!)) r[i]! += keep * r[i - 1]!
  const need = Math.min(SYNC_OVERLAP / SYNC_STEP, a.length, r.length)
  const reach = Math.floor(most / SYNC_STEP)
  const first = Math.max(-reach, need - a.length)
  const last = Math.min(reach, r.length - need)
  const likeness = (k: number) => {
    let xy = 0
    let xx = 0
    let yy = 0
    for (let i = Math.max(0, -k), end = Math.min(a.length, r.length - k); i < end; i++) {
      const y = r[i + k]!
      if (!Number.isFinite(y + a[i]!)) continue
      xy += a[i]! * y
      xx += a[i]! ** 2
      yy += y * y
    }
    return xx > 0 && yy > 0 ? xy / Math.sqrt(xx * yy) : 0
  }
  const all: number[] = []
  for (let k = first; k <= last; k++) all.push(likeness(k))
  const best = all.reduce((b, v, i) => (v > all[b]! ? i : b), 0)
  const away = all.filter((_, i) => Math.abs(i - best) * SYNC_STEP > 3)
  return {
    lag: all.length > 0 ? (first + best) * SYNC_STEP : 0,
    correlation: all[best] ?? 0,
    second: away.reduce((m, v) => Math.max(m, v), 0),
  }
}

/** True when a match stands out enough to be used without being asked. */
export const isMatch = (s: Pick<Sync, 'correlation' | 'second'>, limits: SoundLimits = soundLimits) =>
  s.correlation > limits.matchLikeness.value && s.second < limits.matchSecond.value * s.correlation

function at(time: ArrayLike<number>, value: ArrayLike<number>, t: number): number {
  const n = time.length
  if (n === 0 || t < time[0]! || t > time[n - 1]!) return Number.NaN
  let lo = 0
  let hi = n - 1
  while (hi - lo > 1) {
    const mid = (lo + hi) >> 1
    if (time[mid]! <= t) lo = mid
    else hi = mid
  }
  const span = time[hi]! - time[lo]!
  return span > 0 ? value[lo]! + ((t - time[lo]!) / span) * (value[hi]! - value[lo]!) : value[lo]!
}

/** Closing speed of `closingSpeeds` at a moment of the recording, m/s; 0 where the track does not reach. `lag` as in `Sync`. */
export function closingAt(trace: SpeedTrace, closing: Float64Array, lag: number): (time: number) => number {
  return (time) => {
    const v = at(trace.time, closing, time - lag)
    return Number.isFinite(v) ? v : 0
  }
}
