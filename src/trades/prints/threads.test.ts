import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { threadLimits } from './threadFits.ts'
import { metricThread, ownThread } from './threadForms.ts'
import { identifyThread } from './threadIdentify.ts'
import { radiusAt, threadProfile } from './threadProfile.ts'
import { knownThreads } from './threadSizes.ts'
import { nearestStep, pitchToleranceFormula, pitchToleranceRows, stepped } from './threadTolerances.ts'

const mm = 1e-3

describe('limits', () => {
  test('of every known thread let the fattest bolt into the tightest nut', () => {
    for (const { thread } of knownThreads) {
      const { external: e, internal: i } = threadLimits(thread)
      expect(e.pitch.high, thread.name).toBeLessThanOrEqual(i.pitch.low + 1e-9)
      expect(e.major.high, thread.name).toBeLessThanOrEqual(i.majorLeast + 1e-9)
      // minor diameters of inch threads are rounded to a thousandth
      expect(e.minorMost, thread.name).toBeLessThanOrEqual(i.minor.low + 13e-6)
      for (const s of [e.major, e.pitch, i.minor, i.pitch]) expect(s.low, thread.name).toBeLessThan(s.high)
      // and the loosest pair still overlaps
      expect(e.major.low, thread.name).toBeGreaterThan(i.minor.high)
    }
  })

  test('are the wider the coarser the grade, each within the next', () => {
    for (const [d, p] of [
      [6, 1],
      [28, 1.5],
      [90, 3],
    ] as const) {
      const width = (cls: string) => {
        const { low, high } = threadLimits(metricThread(d * mm, p * mm), { external: cls }).external.pitch
        return high - low
      }
      const widths = ['3h', '4h', '5h', '6h', '7h', '8h', '9h'].map(width)
      for (let i = 1; i < widths.length; i++) expect(widths[i]!).toBeGreaterThan(widths[i - 1]!)
    }
  })

  test('e, f, g and h stand ever nearer the basic size', () => {
    const top = (c: string) =>
      threadLimits(metricThread(20 * mm, 2.5 * mm), { external: c }).external.major.high
    expect(top('6e')).toBeLessThan(top('6f'))
    expect(top('6f')).toBeLessThan(top('6g'))
    expect(top('6g')).toBeLessThan(top('6h'))
    expect(top('6h')).toBeCloseTo(20 * mm, 9)
  })

  test('the table lies within one step of the standard’s formula, five steps below its nut’s', () => {
    for (const [range, pitch, um] of pitchToleranceRows) {
      const formula = nearestStep(pitchToleranceFormula(range, pitch))
      expect(Math.abs(Math.log(um / formula)), `${range} ${pitch}`).toBeLessThan(0.065)
    }
    expect(stepped(132, 5)).toBe(180)
  })

  test('a thread outside the standard is told with field, value and limit', () => {
    expect(() => threadLimits(metricThread(27.3 * mm, 1.51 * mm))).toThrow(/^pitch: 1.51 mm is outside/)
    expect(() => threadLimits(metricThread(400 * mm, 3 * mm))).toThrow(/^d: 400 mm is outside 0.99 to 355/)
    expect(() => threadLimits(metricThread(20 * mm, 2 * mm), { external: '2z' })).toThrow(/^class: "2z"/)
    expect(() => threadLimits(metricThread(2 * mm, 0.25 * mm), { external: '6e' })).toThrow(/^class: "e"/)
    expect(() => metricThread(10 * mm, 6 * mm)).toThrow(/^pitch/)
    expect(() => ownThread({ d: 0.14, pitch: 6 * mm, height: 4 * mm, half: 0.785 })).toThrow(/^height/)
    expect(() => threadLimits(ownThread({ d: 0.14, pitch: 6 * mm, height: 1.5 * mm, half: 0.785 }))).toThrow(
      /^form/,
    )
  })
})

describe('the section of a printed pair', () => {
  const threads = fc.oneof(
    fc.constantFrom(...knownThreads.map((k) => k.thread)),
    fc
      .record({
        d: fc.double({ min: 0.02, max: 0.2, noNaN: true }),
        pitch: fc.double({ min: 2e-3, max: 8e-3, noNaN: true }),
        half: fc.double({ min: 0.35, max: 0.8, noNaN: true }),
      })
      .map(({ d, pitch, half }) => ownThread({ d, pitch, half, height: (0.25 * pitch) / Math.tan(half) })),
  )
  test('stands off by both clearances on the radius, nowhere nearer', () => {
    fc.assert(
      fc.property(threads, fc.double({ min: 0, max: 0.1, noNaN: true }), (thread, part) => {
        const clearance = part * thread.pitch
        const plug = threadProfile(thread, 'external', { clearance })
        const cap = threadProfile(thread, 'internal', { clearance })
        for (let i = 0; i < 200; i++) {
          const z = (i / 200) * thread.pitch
          expect(radiusAt(cap, z) - radiusAt(plug, z)).toBeGreaterThanOrEqual(2 * clearance - 1e-9)
        }
      }),
    )
  })
  test('flats asked for only take away: never past the form', () => {
    fc.assert(
      fc.property(threads, fc.double({ min: 0, max: 0.35, noNaN: true }), (thread, part) => {
        const plain = threadProfile(thread, 'external', { clearance: 0 })
        const flat = threadProfile(thread, 'external', { clearance: 0, crestFlat: part * thread.pitch })
        expect(flat.crest).toBeLessThanOrEqual(plain.crest + 1e-12)
        for (let i = 0; i < 50; i++)
          expect(radiusAt(flat, (i / 50) * thread.pitch)).toBeLessThanOrEqual(
            radiusAt(plain, (i / 50) * thread.pitch) + 1e-12,
          )
      }),
    )
  })
  test('no flank left is told', () => {
    const t = metricThread(10 * mm, 1 * mm)
    expect(() => threadProfile(t, 'external', { clearance: 0.1 * mm, crestFlat: 0.9 * mm })).toThrow(
      /^pitch: 1 mm/,
    )
  })
})

describe('naming a thread', () => {
  const read = { side: 'external', acrossDoubt: 0.05 * mm } as const
  test('27.8 mm over crests, 8 pitches in 12.1 mm, is M28 × 1.5 with odds of nine in ten and more', () => {
    const got = identifyThread({ ...read, across: 27.8 * mm, span: 12.1 * mm, pitches: 8 })
    expect(got.guesses[0]!.thread.name).toBe('M28 × 1.5')
    expect(got.guesses[0]!.odds).toBeGreaterThan(0.9)
    expect(got.none).toBeLessThan(0.1)
  })
  test('odds of all and of none add up to one', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 3, max: 120, noNaN: true }),
        fc.double({ min: 0.4, max: 6, noNaN: true }),
        fc.integer({ min: 2, max: 15 }),
        fc.constantFrom('external' as const, 'internal' as const),
        (across, pitch, pitches, side) => {
          const got = identifyThread({ side, across: across * mm, span: pitch * pitches * mm, pitches })
          const sum = got.guesses.reduce((s, g) => s + g.odds, got.none)
          // what is left out is below a thousandth each
          expect(sum).toBeGreaterThan(0.9)
          expect(sum).toBeLessThanOrEqual(1 + 1e-9)
          expect(got.none).toBeGreaterThanOrEqual(0)
        },
      ),
    )
  })
  test('every known thread read without error in the middle of its limits is among the three likeliest, its pitch kept', () => {
    for (const { thread } of knownThreads) {
      const { low, high } = threadLimits(thread).external.major
      const got = identifyThread({
        side: 'external',
        across: (low + high) / 2,
        span: 10 * thread.pitch,
        pitches: 10,
        acrossDoubt: 0.02 * mm,
        spanDoubt: 0.03 * mm,
      })
      expect(
        got.guesses.slice(0, 3).map((g) => g.thread.name),
        thread.name,
      ).toContain(thread.name)
    }
  })
  test('a thread of no table is none of these, with its own size', () => {
    const got = identifyThread({ ...read, across: 37.2 * mm, span: 16.9 * mm, pitches: 4 })
    expect(got.none).toBeGreaterThan(0.95)
    expect(got.free).toEqual({ d: 37.2 * mm, pitch: (16.9 * mm) / 4 })
  })
  test('more pitches counted never leave more doubt about a true one', () => {
    const odds = [2, 4, 8, 16].map(
      (pitches) =>
        identifyThread({ ...read, across: 20.85 * mm, span: pitches * 1.814 * mm, pitches }).guesses[0]!.odds,
    )
    for (let i = 1; i < odds.length; i++) expect(odds[i]!).toBeGreaterThanOrEqual(odds[i - 1]! - 1e-9)
  })
  test('flanks of 55° speak for a pipe thread', () => {
    const rough = { ...read, across: 13.1 * mm, span: 5.35 * mm, pitches: 4 }
    const pipe = (flanks?: number) =>
      identifyThread({ ...rough, ...(flanks ? { flanks } : {}) }).guesses.find(
        (g) => g.thread.name === 'G 1/4',
      )?.odds ?? 0
    expect(pipe((55 * Math.PI) / 180)).toBeGreaterThan(pipe((60 * Math.PI) / 180))
  })
  test('wrong readings are told with field, value and limit', () => {
    expect(() => identifyThread({ ...read, across: 0.1, span: 0.01, pitches: 2.5 })).toThrow(/^pitches: 2.5/)
    expect(() => identifyThread({ ...read, across: Number.NaN, span: 0.01, pitches: 2 })).toThrow(
      /^across: — is outside/,
    )
    expect(() => identifyThread({ ...read, across: 0.02, span: 0.1, pitches: 2 })).toThrow(/^span: 100 mm/)
  })
})
