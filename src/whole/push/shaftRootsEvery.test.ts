import fc from 'fast-check'
import { expect, test } from 'vitest'
import { cubicAt, pchip } from '../../base/numerics/interpolate.ts'
import { referenceJet } from '../../trades/jet/jetReference.ts'
import { buildPumpMap, jetPoint } from '../../trades/jet/pumpMap.ts'
import { allRoots, settle } from './shaftRoots.ts'

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true })
const idle = 15
const most = 170
const seed = 20_241

/** a torque curve with hollows and peaks, scaled to the load at the place where the two should meet */
const anyCurve = fc
  .record({
    torque: fc.array(between(0.3, 1.6), { minLength: 5, maxLength: 14 }),
    meets: between(0.3, 0.9),
  })
  .map((x) => {
    const at = x.torque.map((_, i) => idle + ((most - idle) * (i + 0.5)) / x.torque.length)
    return { curve: pchip([0, ...at, most + 5], [x.torque[0]!, ...x.torque, 0]), at, meets: x.meets }
  })

/** the load of a jet: with the square of rotation up to a knee, falling or rising slowly past it, with a corner there */
const anyLoad = fc
  .record({ k: between(3e-4, 2e-3), knee: between(40, 240), fall: between(0, 1) })
  .map(({ k, knee, fall }) => ({
    knee,
    load: (n: number) =>
      n < knee ? k * n * n : k * knee * knee * (0.15 * (n / knee) ** 2 + 0.85 * (knee / n) ** (2 * fall)),
  }))

/** places where s changes sign in 20 000 even steps, and the step */
function scan(s: (n: number) => number): { at: number[]; step: number } {
  const steps = 20_000
  const step = (most - idle) / steps
  const at: number[] = []
  let before = s(idle)
  for (let i = 1; i <= steps; i++) {
    const now = s(idle + i * step)
    if (before > 0 !== now > 0) at.push(idle + (i - 0.5) * step)
    before = now
  }
  return { at, step }
}

/** `roots` holds each place of the scan, and nothing that is no root */
function holdsEvery(s: (n: number) => number, roots: readonly { rotation: number; stable: boolean }[]): void {
  const { at, step } = scan(s)
  for (const n of at)
    expect(Math.min(...roots.map((r) => Math.abs(r.rotation - n))), `root at ${n}`).toBeLessThanOrEqual(step)
  roots.forEach((r, i) => {
    const e = 1e-6 * r.rotation
    expect(s(r.rotation - e) > 0, `sign before ${r.rotation}`).toBe(r.stable)
    expect(s(r.rotation + e) > 0, `sign past ${r.rotation}`).toBe(!r.stable)
    // along a continuous curve stable and unstable take turns
    if (i > 0) expect(r.stable).toBe(!roots[i - 1]!.stable)
  })
}

test('allRoots finds whatever a scan of 20 000 steps finds, on random curves against random loads', () => {
  let many = 0
  fc.assert(
    fc.property(anyCurve, anyLoad, ({ curve, at, meets }, { load }) => {
      const n0 = idle + meets * (most - idle)
      const scale = load(n0) / cubicAt(curve, n0)
      const s = (n: number) => scale * cubicAt(curve, n) - load(n)
      const roots = allRoots(s, load, idle, most, at)
      holdsEvery(s, roots)
      if (roots.length > 2) many++
    }),
    { numRuns: 400, seed, endOnFailure: true },
  )
  expect(many).toBeGreaterThan(30)
})

test('the same against real pump maps with their knees, tied up and under way', () => {
  fc.assert(
    fc.property(
      anyCurve,
      fc.record({
        pitch: between(0.07, 0.13),
        nozzle: between(0.055, 0.08),
        p: between(7e4, 1e5),
        V: between(0, 8),
      }),
      ({ curve, at, meets }, x) => {
        const spec = referenceJet()
        Object.assign(spec.rotor, { pitchLeading: x.pitch, pitchTrailing: x.pitch })
        spec.system.nozzleDiameter = x.nozzle
        spec.water.atmosphere = x.p
        const map = buildPumpMap(spec)
        const load = (n: number) => jetPoint(map, spec, n, x.V).T
        const n0 = idle + meets * (most - idle)
        const scale = load(n0) / cubicAt(curve, n0)
        const s = (n: number) => scale * cubicAt(curve, n) - load(n)
        holdsEvery(s, allRoots(s, load, idle, most, at))
      },
    ),
    { numRuns: 8, seed, endOnFailure: true },
  )
})

test('two roots that nearly touch are both found down to 1/4000 of the range apart, and none where the curves just miss', () => {
  fc.assert(
    fc.property(
      between(30, 150),
      between(Math.log(1 / 4000), Math.log(0.02)),
      between(1e-4, 1e-2),
      fc.boolean(),
      anyLoad,
      (place, logApart, steep, above, { load }) => {
        const half = (Math.exp(logApart) * (most - idle)) / 2
        const sign = above ? 1 : -1
        // a dip that the drive makes against the load, 2·half wide where it is through
        const meet = (n: number) => sign * steep * ((n - place) ** 2 - half * half)
        const roots = allRoots(meet, load, idle, most)
        expect(roots.length).toBe(2)
        expect(roots[0]!.rotation).toBeCloseTo(place - half, 6)
        expect(roots[1]!.rotation).toBeCloseTo(place + half, 6)
        const miss = (n: number) => sign * steep * ((n - place) ** 2 + half * half)
        expect(allRoots(miss, load, idle, most)).toEqual([])
      },
    ),
    { numRuns: 300, seed, endOnFailure: true },
  )
})

test('from idle the shaft settles at the root the scan calls reachable', () => {
  fc.assert(
    fc.property(anyCurve, anyLoad, ({ curve, at, meets }, { load }) => {
      const n0 = idle + meets * (most - idle)
      const scale = load(n0) / cubicAt(curve, n0)
      const s = (n: number) => scale * cubicAt(curve, n) - load(n)
      const roots = allRoots(s, load, idle, most, at)
      const reachable = roots.find((r) => r.reachable)
      fc.pre(reachable !== undefined)
      expect(settle(s, idle, idle, most).rotation).toBeCloseTo(reachable!.rotation, 5)
    }),
    { numRuns: 400, seed, endOnFailure: true },
  )
})

test('the scan stays cheap: a plain engine on a plain jet takes fewer than 90 looks', () => {
  let looks = 0
  const load = (n: number) => 1.2e-3 * n * n
  const roots = allRoots(
    (n) => {
      looks++
      return 12 - 4 * ((n - 100) / 60) ** 2 - load(n)
    },
    load,
    idle,
    most,
  )
  expect(roots.length).toBe(1)
  expect(looks).toBeLessThan(90)
})
