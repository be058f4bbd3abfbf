import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { withLimit } from '../../base/answers/limit.testkit.ts'
import { printed } from '../../base/answers/sentence.ts'
import { demoCraft } from '../../craft/craft.testkit.ts'
import { fieldAt, whatIf } from '../../craft/index.ts'
import { solveTrade } from '../trade.ts'
import { dragSaid } from './drag.testkit.ts'
import { type DragLimits, dragLimits } from './dragLimits.ts'
import { dragTrade } from './dragTrade.ts'

/** crafts that are well, and crafts that are wrong in one way each */
const crafts = [
  demoCraft('heron'),
  demoCraft('teal'),
  demoCraft('dabchick'),
  whatIf(demoCraft('heron'), { 'rider.position': 0.4 }),
  whatIf(demoCraft('heron'), { 'rider.position': 1.9 }),
  whatIf(demoCraft('heron'), { 'place.depth': 0.5 }),
  whatIf(demoCraft('teal'), { 'jet.intake.front': 1.6 }),
  whatIf(demoCraft('teal'), { 'weights.0.mass': 700 }),
  whatIf(demoCraft('dabchick'), { 'hull.beam': 2.2, 'hull.chine beam': 2 }),
]

const standings = (limits: DragLimits): string =>
  crafts
    .map((craft) =>
      dragSaid(craft, 9, { limits })
        .map((f) => `${f.id} ${f.standing}`)
        .join(),
    )
    .join('\n')

describe('each limit', () => {
  const usual = standings(dragLimits)
  for (const name of Object.keys(dragLimits) as (keyof typeof dragLimits)[])
    test(`${name} moved changes how something stands`, () => {
      const { value } = dragLimits[name]
      const moves = value === 0 ? [0.5, 1] : [0.1 * value, 10 * value]
      expect(moves.some((to) => standings(withLimit(dragLimits, name, to) as DragLimits) !== usual)).toBe(
        true,
      )
    })
})

const metric = /\d\s?(mm|cm|m|km\/h|kg|N|L|kPa|m\/s|°C|kg\/m²)(?![\w/²³])/

test('a reader of inches sees no metric figure, in findings or numbers', () => {
  for (const craft of crafts) {
    for (const f of dragSaid(craft, 9, { system: 'inch' }))
      for (const words of [f.says, ...f.because.map((b) => b.says)]) expect(words, f.id).not.toMatch(metric)
    for (const table of dragTrade.numbers!(solveTrade(dragTrade, craft, 9)))
      for (const row of table.rows)
        for (const cell of row)
          if (typeof cell !== 'string') expect(printed([cell], 'inch')).not.toMatch(metric)
  }
})

test('what is tried stands in the table beside what is', () => {
  const now = solveTrade(dragTrade, crafts[0]!, 9)
  const tried = solveTrade(dragTrade, crafts[3]!, 9)
  const words = dragTrade.numbers!(now, tried)[0]!.rows.map((r) => r[1])
  expect(new Set(words)).toEqual(new Set(['now', 'tried']))
})

test('a craft of any shape gets texts with no hole in them, at any top speed', () => {
  const paths = [
    'rider.mass',
    'rider.position',
    'hull.length',
    'hull.beam',
    'hull.depth',
    'hull.deadrise',
    'weights.0.mass',
    'place.depth',
    'place.wind',
    'place.altitude',
    'jet.intake.front',
  ]
  const ends = paths.map((path) => fieldAt(path) as unknown as { min: number; max: number })
  const tries = fc.tuple(
    fc.constantFrom('heron' as const, 'teal' as const),
    fc.array(fc.tuple(fc.nat(paths.length - 1), fc.double({ min: 0, max: 1, noNaN: true })), {
      maxLength: 5,
    }),
    fc.option(fc.double({ min: 0, max: 40 }), { nil: undefined }),
  )
  fc.assert(
    fc.property(tries, ([name, moves, top]) => {
      const values = Object.fromEntries(
        moves.map(([k, part]) => {
          const { min, max } = ends[k]!
          return [paths[k]!, min + part * (Math.min(max, 5e3) - min)]
        }),
      )
      const list = dragSaid(whatIf(demoCraft(name), values), top)
      expect(list.length).toBeGreaterThan(0)
      for (const f of list) {
        for (const words of [f.says, ...f.because.map((b) => b.says)])
          expect(words, f.id).not.toMatch(/NaN|Infinity|undefined|\[object|—/)
        for (const v of [f.value, f.low, f.high])
          if (v !== undefined) expect(Number.isFinite(v), f.id).toBe(true)
      }
    }),
    { numRuns: 60 },
  )
}, 120_000)
