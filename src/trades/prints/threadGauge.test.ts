import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { asPrinted, clearanceFor, comesOutAs, type Printer, printerOf } from './printerOf.ts'
import { metricThread, ownThread } from './threadForms.ts'
import { gaugeThread } from './threadGauge.ts'
import { printedThread } from './threadPrinted.ts'
import { threadProfile } from './threadProfile.ts'
import { sweptCorners } from './threadSwept.ts'

const mm = 1e-3
const usual = printerOf({})
const fine: Printer = { ...usual, layer: 0.1 * mm }

const m28 = metricThread(28 * mm, 1.5 * mm)
const hatch = ownThread({ d: 140 * mm, pitch: 6 * mm, height: 1.5 * mm, half: Math.PI / 4 })

describe('the gauges', () => {
  const cases = fc.record({
    thread: fc.constantFrom(m28, hatch, metricThread(12 * mm, 1.75 * mm)),
    side: fc.constantFrom('external' as const, 'internal' as const),
    clearance: fc.double({ min: -0.1 * mm, max: 0.3 * mm, noNaN: true }),
    hand: fc.constantFrom('left' as const, 'right' as const),
  })
  test('find the clearance a thread was made with, whichever side and hand', () => {
    fc.assert(
      fc.property(cases, ({ thread, side, clearance, hand }) => {
        const profile = threadProfile(thread, side, { clearance })
        const mesh = sweptCorners(profile, 4 * thread.pitch, 48, hand === 'left' ? -1 : 1)
        const got = gaugeThread(mesh, { thread, side, hand, from: 0, to: 1 }, 0.15 * mm)
        expect(got.gap).toBeCloseTo(clearance, 5)
        expect(got.loose).toBeGreaterThanOrEqual(got.gap - 1e-9)
        expect(got.goes).toBe(got.gap >= -1e-9)
        expect(got.held).toBe(got.loose <= 0.15 * mm + 1e-9)
      }),
      { numRuns: 25 },
    )
  })
  test('go on the more easily the more clearance, and hold the less', () => {
    const at = (clearance: number) =>
      gaugeThread(
        sweptCorners(threadProfile(m28, 'external', { clearance, crestFlat: 0.45 * mm }), 6 * mm, 36),
        { thread: m28, side: 'external', from: 0, to: 1 },
        0.2 * mm,
      )
    const all = [-0.1, -0.02, 0.05, 0.15, 0.25].map((c) => at(c * mm))
    for (let i = 1; i < all.length; i++) {
      expect(all[i]!.gap).toBeGreaterThan(all[i - 1]!.gap)
      expect(all[i]!.loose).toBeGreaterThan(all[i - 1]!.loose)
    }
    expect(all.map((g) => g.goes)).toEqual([false, false, true, true, true])
    expect(all.map((g) => g.held)).toEqual([true, true, true, true, false])
  })
  test('a wrong pitch does not go on', () => {
    const mesh = sweptCorners(
      threadProfile(metricThread(28 * mm, 2 * mm), 'external', { clearance: 0.1 * mm }),
      12 * mm,
      36,
    )
    expect(gaugeThread(mesh, { thread: m28, side: 'external', from: 0, to: 1 }, 1).goes).toBe(false)
  })
  test('a left thread does not go on a right one', () => {
    const mesh = sweptCorners(threadProfile(m28, 'external', { clearance: 0.1 * mm }), 9 * mm, 36, -1)
    expect(gaugeThread(mesh, { thread: m28, side: 'external', from: 0, to: 1 }, 1).goes).toBe(false)
  })
  test('flat facets of an inside thread count against it', () => {
    const mesh = sweptCorners(threadProfile(m28, 'internal', { clearance: 0.1 * mm }), 6 * mm, 24)
    const order = { thread: m28, side: 'internal', from: 0, to: 1 } as const
    expect(gaugeThread(mesh, { ...order, facets: 24 }, 1).gap).toBeLessThan(
      gaugeThread(mesh, order, 1).gap - 0.05 * mm,
    )
  })
  test('corners that lie on no thread are told', () => {
    expect(() =>
      gaugeThread(Float64Array.of(1, 0, 0), { thread: m28, side: 'external', from: 0, to: 1 }, 1),
    ).toThrow(/^corners: none lies on the thread/)
  })
})

describe('a printed thread', () => {
  test('passes the gauges at the printer’s clearance', () => {
    for (const side of ['external', 'internal'] as const) {
      const made = printedThread({ thread: m28, side, printer: fine })
      const mesh = sweptCorners(made.profile, made.length, 96)
      const got = gaugeThread(mesh, { thread: m28, side, from: 0, to: 1, facets: 96 }, 1.5 * made.clearance)
      expect(got.goes, side).toBe(true)
      expect(got.held, side).toBe(true)
    }
  })
  test('has crests no narrower than a laid line', () => {
    const { profile } = printedThread({ thread: m28, side: 'external', printer: usual })
    expect(2 * profile.z[0]!).toBeGreaterThanOrEqual(usual.line - 1e-12)
  })
  test('asks for thin layers on steep flanks only: 0.13 mm at 30°, 0.225 mm at 45°', () => {
    const of = (thread: typeof m28) => printedThread({ thread, side: 'external', printer: usual })
    expect(of(m28).layerMost).toBeCloseTo(0.1299 * mm, 6)
    expect(of(hatch).layerMost).toBeCloseTo(0.225 * mm, 9)
    expect(of(m28).problems.map((p) => p.field)).toContain('layer')
    expect(of(hatch).problems).toEqual([])
    expect(printedThread({ thread: m28, side: 'external', printer: fine }).problems).toEqual([])
  })
  test('too fine a pitch, and too few turns, are told with the limit', () => {
    const small = printedThread({
      thread: metricThread(10 * mm, 1 * mm),
      side: 'internal',
      printer: usual,
      length: 2 * mm,
    })
    expect(small.problems.find((p) => p.field === 'pitch')!.limit).toBeCloseTo(1.2 * mm, 9)
    expect(small.problems.find((p) => p.field === 'turns')!.value).toBeCloseTo(2, 9)
  })
})

describe('a size as printed', () => {
  const printers = fc
    .record({
      scale: fc.double({ min: 0.95, max: 1.05, noNaN: true }),
      holeOffset: fc.double({ min: -0.5 * mm, max: 1.5 * mm, noNaN: true }),
      elephantFoot: fc.double({ min: 0, max: 1 * mm, noNaN: true }),
    })
    .map((o): Printer => ({ ...usual, ...o }))
  test('comes out as wanted, of every kind', () => {
    fc.assert(
      fc.property(
        printers,
        fc.double({ min: 5 * mm, max: 0.3, noNaN: true }),
        fc.constantFrom('outside' as const, 'hole' as const, 'length' as const, 'foot' as const),
        (printer, size, kind) => {
          expect(comesOutAs(asPrinted(size, kind, printer), kind, printer)).toBeCloseTo(size, 10)
        },
      ),
    )
  })
  test('that is none is told', () => {
    expect(() => asPrinted(-1, 'hole', usual)).toThrow(/^size: -1/)
    expect(() => asPrinted(0.1 * mm, 'foot', usual)).toThrow(/^size/)
  })
  test('a try-piece’s clearance goes before the usual one', () => {
    expect(clearanceFor(1.5 * mm, usual)).toBeCloseTo(0.2 * mm, 9)
    expect(clearanceFor(6 * mm, usual)).toBeCloseTo(0.35 * mm, 9)
    expect(clearanceFor(6 * mm, { ...usual, threadClearance: 0.28 * mm })).toBe(0.28 * mm)
    expect(clearanceFor(6 * mm, { ...usual, kind: 'resin' })).toBeLessThan(0.1 * mm)
  })
})
