import { describe, expect, test } from 'vitest'
import { printed } from '../../base/answers/sentence.ts'
import { expectGolden } from '../../drawing/golden.testkit.ts'
import type { Sheet } from '../../drawing/sheet.ts'
import { deg, sled } from './float.testkit.ts'
import { floatAnswer } from './floatAnswer.ts'
import { floatHeadline, liveHeadline, stiffGm } from './floatHeadline.ts'
import { floatLimits } from './floatLimits.ts'
import { rightingOf } from './heeled.ts'
import type { FloatInput } from './input.ts'
import { leakFromInput } from './leakCase.ts'
import { liveFloat } from './live.ts'
import { loadsFigure } from './loadsFigure.ts'
import { armAt, foamFigure, leakFigure, rightingFigure } from './pageFigures.ts'
import { deckFromAbove } from './roomFigure.ts'

const input: FloatInput = {
  hull: sled,
  water: 999,
  weights: [{ name: 'craft', mass: 64, at: [1, 0, 0.13], give: 2 }],
  rider: { mass: 78, stature: 1.76, stance: 'kneeling', x: 0.95, y: 0 },
  openings: [{ name: 'intake', kind: 'air intake', at: [1.3, 0.1, 0.4], area: 1e-3 }],
  foam: [{ name: 'bow', low: [1.6, -0.3, 0.02], high: [2.2, 0.3, 0.2], density: 30, soaked: 0.03 }],
  compartments: [],
}
const answer = floatAnswer(input)
const righting = {
  rider: rightingOf(input, 'rider'),
  stiff: rightingOf(input, 'stiff rider'),
  nobody: rightingOf(input, 'nobody'),
}
const words = (s: Sheet) => s.marks.flatMap((m) => (m.kind === 'text' ? [m.text] : []))
const names = (s: Sheet) => (s.plots?.[0]?.series ?? []).map((l) => l.name)

describe('figures of the page look as they did, wide and narrow', () => {
  const leak = leakFromInput(input, answer.cases[0]!)
  for (const [name, width] of [
    ['wide', 240],
    ['narrow', 94],
  ] as const)
    test(name, () => {
      const put = (sheet: Sheet, what: string) =>
        expectGolden(sheet, `${import.meta.dirname}/golden`, `${what}-${name}`)
      put(rightingFigure(righting, undefined, width), 'righting')
      put(
        loadsFigure({ hull: sled, cases: answer.cases, rider: { x: 0.9, y: 0, stature: 1.76 } }, width),
        'loads',
      )
      put(leakFigure(leak, undefined, width), 'leak')
      put(foamFigure(sled, input.foam, answer.need.blocks, width), 'foam')
      put(deckFromAbove(sled, width), 'deck')
    })
})

test('the righting figure starts with a slope of GM and marks where it goes over', () => {
  const c = righting.rider
  // the arm at 2 degrees is GM sin(heel) but for the change of waterplane
  expect(armAt(c, 2 * deg)).toBeCloseTo(answer.ridden.gmFeet * Math.sin(2 * deg), 3)
  expect(armAt(c, c.vanishing!)).toBeCloseTo(0, 3)
  expect(words(rightingFigure(righting, undefined, 240)).join()).toMatch(/goes over past \d+°/)
})

test('tried curves are drawn only where they differ', () => {
  expect(names(rightingFigure(righting, righting))).toEqual(names(rightingFigure(righting, undefined)))
  const heavier = { ...input, rider: { ...input.rider, mass: 95 } }
  const tried = {
    rider: rightingOf(heavier, 'rider'),
    stiff: rightingOf(heavier, 'stiff rider'),
    nobody: righting.nobody,
  }
  expect(names(rightingFigure(righting, tried))).toContain('rider balancing, now')
  expect(names(rightingFigure(righting, tried))).not.toContain('nobody aboard, now')
})

test('a load that sinks or does not stay is said so, and has no waterline of its own', () => {
  const lead = floatAnswer({ ...input, weights: [{ name: 'lead', mass: 900, at: [1, 0, 0.1] }] })
  const sheet = loadsFigure({ hull: sled, cases: lead.cases }, 180)
  expect(words(sheet)).toContain('sinks')
  // and the word stands clear of the lines over it, at every width
  for (const width of [94, 180, 260])
    for (const cases of [lead.cases, answer.cases.map((c) => ({ ...c, over: true }))]) {
      const lines = loadsFigure({ hull: sled, cases }, width).marks.flatMap((m) =>
        m.kind === 'text' ? [m] : [],
      )
      const verdicts = lines.filter((m) => m.anchor === 'middle')
      expect(verdicts.length).toBe(cases.length)
      for (const v of verdicts) {
        const over = lines.filter((m) => m !== v && m.y > v.y && m.x < v.x).map((m) => m.y - v.y)
        expect(Math.min(...over)).toBeGreaterThan(1.2 * v.size)
      }
    }
  expect(sheet.says).toMatch(/sinks, \d+ kg too heavy/)
  expect(
    words(
      rightingFigure(
        {
          rider: rightingOf({ ...input, weights: [{ name: 'lead', mass: 900, at: [1, 0, 0.1] }] }, 'rider'),
          stiff: rightingOf(
            { ...input, weights: [{ name: 'lead', mass: 900, at: [1, 0, 0.1] }] },
            'stiff rider',
          ),
          nobody: rightingOf({ ...input, weights: [{ name: 'lead', mass: 900, at: [1, 0, 0.1] }] }, 'nobody'),
        },
        undefined,
      ),
    ).join(' '),
  ).toContain('sinks')
})

describe('the answer in a sentence', () => {
  const live = liveFloat(input)
  const liveSays = (of: FloatInput, state: ReturnType<typeof live>, assumed = false) => {
    const f = liveHeadline(of, state, assumed, floatLimits)
    return { ...f, says: printed(f.says), sure: printed(f.because[0]!.says) }
  }
  const fullSays = (more: Partial<typeof answer.ridden> = {}) =>
    floatHeadline(input, { ...answer, ridden: { ...answer.ridden, ...more } }, false, floatLimits)

  test('says the same from the live state as from the whole answer', () => {
    const quick = liveSays(input, live(0.95, 0))
    expect(quick.says).toBe(printed(fullSays().says))
    expect(quick.says).toMatch(/^With its rider kneeling it floats/)
  })
  test('GM of a stiff rider follows from that of a balancing one by the height of his weight, with liquid in a tank too', () => {
    expect(stiffGm(input, answer.ridden.gmFeet)).toBeCloseTo(answer.ridden.gmRigid, 3)
    const shape = { kind: 'box', length: 0.3, width: 0.3, height: 0.2, cells: 1 } as const
    const tank = { name: 'tank', shape, foot: [1.3, 0, 0.04], volume: 0.012, give: 0, density: 745 } as const
    const wet = { ...input, tanks: [{ ...tank, sealed: true }] }
    const ridden = floatAnswer(wet).ridden
    expect(stiffGm(wet, ridden.gmFeet)).toBeCloseTo(ridden.gmRigid, 3)
    expect(liveSays(wet, liveFloat(wet)(0.95, 0)).sure).toMatch(/add up to 73 kg/)
  })
  test('a rider so high that held stiff he tips it over nose or tail has no GM, and is not said to stand by himself', () => {
    const says = (more: Partial<typeof answer.ridden>) => printed(fullSays(more).says)
    expect(says({ gmRigid: Number.NaN })).toMatch(/has to be balanced like a bicycle/)
    expect(says({ gmRigid: Number.NaN, gmFeet: -0.01 })).toMatch(/falls over at rest whatever the rider does/)
    expect(says({ gmRigid: 0.06 })).toMatch(/and stands by itself/)
  })
  test('a deck edge under water is a stop and is not said to stand by itself', () => {
    const f = fullSays({ freeboard: -0.02, gmRigid: 0.3 })
    expect(f.standing).toBe('stop')
    expect(printed(f.says)).toMatch(/the deck edge 2\.0 cm under water: water comes over it/)
    expect(printed(f.says)).not.toMatch(/stands by itself/)
    const low = fullSays({ freeboard: 0.03, gmRigid: 0.3 })
    expect(low.standing).not.toBe('good')
    expect(printed(low.says)).toMatch(/the deck edge only 3\.0 cm above water/)
  })
  test('a craft too heavy sinks, by so much', () => {
    const lead = { ...input, weights: [{ name: 'lead', mass: 900, at: [1, 0, 0.1] as const }] }
    expect(liveSays(lead, undefined)).toMatchObject({
      says: expect.stringMatching(/^It sinks: 978 kg/),
      standing: 'stop',
    })
  })
  test('a rider off the deck has no answer, a list left out is said', () => {
    expect(liveSays(input, live(0.95, 2), true)).toMatchObject({
      says: expect.stringMatching(/off the deck/),
      sure: expect.stringMatching(/lists no weights/),
      standing: 'unknown',
    })
  })
})
