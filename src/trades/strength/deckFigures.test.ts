import { describe, expect, test } from 'vitest'
import { expectGolden } from '../../drawing/golden.testkit.ts'
import type { Sheet } from '../../drawing/sheet.ts'
import type { BayAir } from '../../hull/site/airOfBay.ts'
import { alloyOf } from './alloys.ts'
import { hatSection } from './beams.ts'
import { deckSays, searchFor, valuesOf } from './deckAnswer.ts'
import { type DeckBay, deckBay } from './deckBay.ts'
import { deflectionFigure, loadSweep, sectionFigure, shareFigure } from './deckFigures.ts'
import { frameAcross, frameOf } from './deckFrames.ts'
import { foamOf } from './foams.ts'
import { frameFigure } from './frameFigure.ts'
import { guarded, type HotPart } from './guards.ts'
import { heatFigure, heatSketch } from './heatFigures.ts'
import type { StrengthInputs } from './strengthFromCraft.ts'

const base = { length: 0.42, width: 0.32, alloy: alloyOf('5052-H32'), welded: false, held: false, t: 1.5e-3 }
const bays: Record<string, DeckBay> = {
  alone: { ...base, name: 'lid', support: { kind: 'alone' } },
  stringers: {
    ...base,
    name: 'fore deck',
    support: { kind: 'stringers', spacing: 0.1, section: hatSection(0.03, 0.03, 1.5e-3) },
  },
  foam: { ...base, name: 'knee pads', support: { kind: 'foam', foam: foamOf('XPS 25'), depth: 0.18 } },
  sandwich: {
    ...base,
    name: 'panel',
    t: 1e-3,
    support: { kind: 'sandwich', foam: foamOf('XPS 35'), core: 0.03, inner: 1e-3 },
  },
}
const bayAir: BayAir = {
  ...{ value: 308, low: 308, high: 308, soak: 308, known: true },
  ...{ says: 'as tested', link: 'bay' },
}
const hot: HotPart = {
  name: 'belly',
  guard: 'bare',
  foam: foamOf('XPS 25'),
  low: 550,
  high: 630,
  bay: bayAir,
  spot: {
    ...{ radius: 0.048, distance: 0.13, pipe: 590, air: 308, emissivity: 0.7, film: 8 },
    ...{ conductivity: 0.034, depth: 0.1, cool: 289 },
  },
}
const put = (sheet: Sheet, name: string) => expectGolden(sheet, `${import.meta.dirname}/golden`, name)

describe('figures look as they did', () => {
  for (const [kind, bay] of Object.entries(bays))
    test(`a bay: ${kind}`, () => {
      put(sectionFigure(deckBay(bay, 78), 180), `section-${kind}`)
      put(shareFigure(loadSweep(bay, 78), undefined, 78, 180), `share-${kind}`)
    })
  test('on a phone a hat, and the line that measures it, are drawn to the scale of the bay', () => {
    const width = 85
    const { marks } = sectionFigure(deckBay(bays['stringers']!, 78), width)
    const scale = (width - 44) / base.width
    const tallOf = (points: Float64Array) => {
      const ys = points.filter((_, i) => i % 2 === 1)
      return Math.max(...ys) - Math.min(...ys)
    }
    const lines = (layer: string, of: number) =>
      marks.flatMap((m) =>
        m.kind === 'polyline' && m.layer === layer && m.points.length === of ? [m.points] : [],
      )
    for (const hat of lines('data', 12)) expect(tallOf(hat)).toBeCloseTo(0.03 * scale, 6)
    // the two level lines that lead out to the arrows, left of the bay
    const levels = lines('dimension', 4).flatMap((p) => (p[1] === p[3] && p[2]! < 22 ? [p[1]!] : []))
    expect(Math.max(...levels) - Math.min(...levels)).toBeCloseTo(0.03 * scale, 6)
  })
  test('the foot stands between two stringers where the sheet gives first, on one where they do, odd or even', () => {
    for (const width of [0.4, 0.5])
      for (const height of [0.012, 0.03]) {
        const a = deckBay(
          {
            ...bays['stringers']!,
            width,
            // thin sheet gives before high hats, low hats before stout sheet
            t: height < 0.02 ? 2e-3 : 0.6e-3,
            support: { kind: 'stringers', spacing: 0.1, section: hatSection(height, 0.03, 1.5e-3) },
          },
          78,
        )
        const { marks } = sectionFigure(a, 180)
        const middleOf = (points: Float64Array) =>
          (points.filter((_, i) => i % 2 === 0).reduce((v, x) => v + x, 0) * 2) / points.length
        const stringers = marks.flatMap((m) =>
          m.kind === 'polyline' && m.points.length === 12 ? [middleOf(m.points)] : [],
        )
        const [foot] = marks.flatMap((m) =>
          m.kind === 'polygon' && m.style.opacity === 0.7 ? [middleOf(m.points)] : [],
        )
        const off = Math.min(...stringers.map((x) => Math.abs(x - foot!)))
        const half = (stringers[1]! - stringers[0]!) / 2
        expect(a.governs.weakest).toBe(height < 0.02 ? 'stringer' : 'skin')
        expect(off).toBeCloseTo(a.governs.weakest === 'stringer' ? 0 : half, 6)
      }
  })
  test('narrow, with a tried build', () => {
    const [now, tried] = [loadSweep(bays['alone']!, 78), loadSweep({ ...bays['alone']!, t: 2.5e-3 }, 78)]
    put(deflectionFigure(now, tried, 78, 94), 'deflection-narrow')
    put(sectionFigure(deckBay(bays['foam']!, 78), 94), 'section-narrow')
    put(heatFigure(hot, 94), 'heat-narrow')
  })
  test('a hot part cut across, bare, shielded and wrapped', () => {
    for (const guard of ['bare', 'shield', 'wrap'] as const)
      put(heatSketch({ ...hot, guard }, 94), `heat-across-${guard}`)
  })
  test('a frame across stringers, and across a sheet alone', () => {
    for (const kind of ['stringers', 'alone']) {
      const answer = deckBay(bays[kind]!, 78)
      put(frameFigure(answer.bay, frameAcross(answer, 78, frameOf(0.03))!, 0.03, 120), `frame-${kind}`)
    }
  })
})

describe('a growing load', () => {
  test('at twice the weight is the hard step of the bay’s own answer', () => {
    for (const bay of Object.values(bays)) {
      const step = deckBay(bay, 78, 293.15, 29).loads.find((l) => l.load === 'step')!
      const s = loadSweep(bay, 78)
      const i = s.force.findIndex((f) => Math.abs(f - step.force) < 1e-6)
      expect(i).toBeGreaterThan(0)
      expect(s.deflection[i]).toBeCloseTo(step.deflection, 12)
      expect(s.skin[i]).toBeCloseTo(step.stress / step.allowed, 12)
    }
  })
  test('always gives more, and a thin sheet alone gives less than bending alone would say', () => {
    for (const bay of Object.values(bays)) {
      const { deflection } = loadSweep(bay, 78)
      for (let i = 1; i < deflection.length; i++) expect(deflection[i]!).toBeGreaterThan(deflection[i - 1]!)
    }
    const s = loadSweep(bays['alone']!, 78)
    expect(s.deflection.at(-1)!).toBeLessThan(s.bendingOnly.at(-1)!)
  })
  test('has a line for each part the bay has and none for those it has not', () => {
    const of = (kind: string) =>
      shareFigure(loadSweep(bays[kind]!, 78), undefined, 78).plots![0]!.series.map((x) => x.name)
    expect(of('alone')).toEqual(['sheet'])
    expect(of('stringers')).toEqual(['sheet', 'stringers'])
    expect(of('foam')).toEqual(['sheet', 'foam'])
    expect(of('sandwich')).toEqual(['sheet', 'foam', 'core in shear'])
  })
})

test('the heat figure crosses what the foam takes at the distance it names', () => {
  const sheet = heatFigure(hot, 180)
  const mm = Number(/bare it wants (\d+) mm/.exec(sheet.says)![1])
  const { x, y } = sheet.plots![0]!.series[0]!
  const i = Array.from(x).findIndex((v) => v >= mm)
  const limit = hot.foam.hottest - 10 - 273.15
  expect(y[i - 1]!).toBeGreaterThan(limit)
  expect(y[i + 1]!).toBeLessThan(limit)
})

test('each guard’s distance is where the foam’s face just reaches what it may have, and a guard never asks for more room than none', () => {
  const limit = hot.foam.hottest - 10
  const bare = guarded(hot, 'bare')
  for (const guard of ['bare', 'shield', 'wrap'] as const) {
    const g = guarded(hot, guard)
    expect(g.low).toBeLessThanOrEqual(g.face)
    expect(g.high).toBeGreaterThanOrEqual(g.face)
    expect(g.clear).toBeLessThanOrEqual(bare.clear)
    const there = guarded({ ...hot, spot: { ...hot.spot, distance: g.clear } }, guard)
    expect(there.face).toBeLessThan(limit + 0.05)
    if (g.clear > 0.08) expect(there.face).toBeGreaterThan(limit - 0.5)
  }
})

/** a bay of which nothing is doubtful */
const sure = (bay: DeckBay) => ({ doubts: [], at: () => ({ bay, rider: 78 }) })

describe('the answer and the search', () => {
  const inputs = (list: readonly DeckBay[]): StrengthInputs => ({
    ...{
      bays: [...list],
      doubtful: list.map(sure),
      rider: 78,
      riderHigh: 79,
      joined: 'riveted',
      bayAir,
      hot: [],
    },
    rivet: { diameter: 4.8e-3, pitch: 0.03 },
  })
  test('the weakest bay decides, and no bay gives no answer', () => {
    const list = [bays['alone']!, bays['sandwich']!]
    const answers = list.map((b) => deckBay(b, 78))
    const worst = answers.reduce((a, b) => (b.margin < a.margin ? b : a))
    expect(deckSays(inputs(list), answers).says).toContain(worst.bay.name)
    expect(deckSays(inputs([]), []).says).toMatch(/not known/)
  })
  test('a build of the same kind comes as craft values; another kind brings its word first and every value it needs', () => {
    const thicker = { ...bays['foam']!, t: 2e-3 }
    expect(valuesOf(bays['foam']!, thicker)).toEqual([
      ['skin', 2e-3],
      ['foam', 'XPS 25'],
      ['depth', 0.18],
    ])
    expect(valuesOf(bays['foam']!, bays['alone']!)).toEqual([
      ['kind', 'alone'],
      ['skin', bays['alone']!.t],
    ])
    expect(valuesOf(bays['alone']!, bays['sandwich']!).map(([key]) => key)).toEqual([
      'kind',
      'skin',
      'foam',
      'core',
      'lower skin',
    ])
  })
  test('the search is asked with the bay’s own size and the foam room it has', () => {
    expect(searchFor(bays['foam']!, 80)).toMatchObject({
      length: 0.42,
      width: 0.32,
      rider: 80,
      foamDepth: 0.18,
    })
  })
})
