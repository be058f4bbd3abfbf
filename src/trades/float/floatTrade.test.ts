import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { withLimit } from '../../base/answers/limit.testkit.ts'
import { printed } from '../../base/answers/sentence.ts'
import { craftOf, demoCraft, rootFile } from '../../craft/craft.testkit.ts'
import { fieldAt, whatIf } from '../../craft/index.ts'
import { NotKnown, solveTrade } from '../trade.ts'
import { floatSaid } from './float.testkit.ts'
import { type FloatLimits, floatLimits } from './floatLimits.ts'
import { floatTrade } from './floatTrade.ts'

const changed = (name: 'heron' | 'teal' | 'dabchick', from: string | RegExp, to: string) => {
  const text = rootFile(`demo/${name}.yaml`)
  const next = text.replace(from, to)
  if (next === text) throw new Error(`${from} is not in ${name}`)
  return craftOf(next)
}

/** crafts that are well, and crafts that are wrong in one way each */
const crafts = [
  demoCraft('heron'),
  demoCraft('teal'),
  demoCraft('dabchick'),
  whatIf(demoCraft('heron'), { 'rider.mass': 160 }),
  whatIf(demoCraft('heron'), { 'rider.stance': 'standing' }),
  whatIf(demoCraft('heron'), { 'rider.stance': 'standing', 'hull.beam': 0.55, 'hull.chine beam': 0.5 }),
  whatIf(demoCraft('heron'), { 'rider.mass': 130, 'rider.off centre': 0.1 }),
  whatIf(demoCraft('teal'), { 'rider.position': 0.3 }),
  changed('heron', '[1.02 m, 0.12 m, 0.44 m]', '[1.02 m, 0.12 m, 0.25 m]'),
  changed('heron', '[1.50 m, 0.05 m, 0.40 m]', '[1.50 m, 0.05 m, 0.03 m]'),
  changed('dabchick', '[0 m, 0.24 m, 0.235 m]', '[0 m, 0.24 m, 0.17 m]'),
  changed('dabchick', 'height: 120 mm ±15 (measured)', 'height: 180 mm (measured)'),
  changed('dabchick', /at: \[0\.95 m, 0 m, 0\.27 m\]/, 'at: [0.95 m, 0 m, 0.16 m]'),
]

describe('each limit', () => {
  // solved once for all limits, as none of them is asked before there is something to judge
  const solved = crafts.map((craft) => solveTrade(floatTrade, craft, undefined))
  const standings = (limits: FloatLimits): string =>
    solved
      .map((one) =>
        [floatTrade.headline!(one, limits), ...floatTrade.judge(one, limits)]
          .map((f) => `${f.id} ${f.standing}`)
          .join(),
      )
      .join('\n')
  const usual = standings(floatLimits)
  for (const name of Object.keys(floatLimits) as (keyof typeof floatLimits)[])
    test(`${name} moved changes how something stands`, () => {
      const { value } = floatLimits[name]
      const moves = value === 0 ? [-0.3, 0.05, 0.3] : [0.1 * value, 10 * value]
      const moved = moves.some((to) => standings(withLimit(floatLimits, name, to) as FloatLimits) !== usual)
      expect(moved).toBe(true)
    }, 180_000)
})

test('each limit has a unit, says what it does and where it comes from', () => {
  for (const l of Object.values(floatLimits)) {
    expect(l.unit).toMatch(/^(m|rad|1)$/)
    expect(l.says.length).toBeGreaterThan(10)
    expect(l.source.length).toBeGreaterThan(5)
  }
})

/** metric units that a reader of inches must not see behind a number */
const metric = /\d\s?(mm|cm|m|km\/h|kg|N|L|kPa|m\/s|°C|kg\/m³)(?![\w/²³])/

test('a reader of inches sees no metric figure, in findings, numbers or figures', () => {
  for (const craft of crafts) {
    for (const f of floatSaid(craft, { system: 'inch' }))
      for (const words of [f.says, ...f.because.map((b) => b.says), f.measureNext?.what ?? ''])
        expect(words, f.id).not.toMatch(metric)
    const now = solveTrade(floatTrade, craft, undefined)
    for (const figure of floatTrade.figures!) {
      const sheet = figure.draw(now, undefined, { width: 180, system: 'inch' })
      const texts = sheet.marks.flatMap((m) => (m.kind === 'text' ? [m.text] : []))
      for (const words of [sheet.says, sheet.title, ...texts]) expect(words, figure.id).not.toMatch(metric)
    }
    for (const table of floatTrade.numbers!(now))
      for (const row of table.rows)
        for (const cell of row)
          if (typeof cell !== 'string') expect(printed([cell], 'inch')).not.toMatch(metric)
  }
}, 120_000)

test('a hull whose measures close to no solid is not known, with the reason', () => {
  const none = whatIf(demoCraft('heron'), { 'hull.depth': -0.2 })
  expect(() => solveTrade(floatTrade, none, undefined)).toThrow(NotKnown)
  expect(floatSaid(none)[0]!.because[0]!.link).toBe('hull')
})

test('a craft of any shape gets texts with no hole in them, and ranges that hold their value', () => {
  const paths = [
    'rider.mass',
    'rider.position',
    'rider.off centre',
    'rider.height',
    'hull.length',
    'hull.beam',
    'hull.depth',
    'hull.deadrise',
    'weights.0.mass',
    'weights.1.mass',
    'place.water temperature',
  ]
  const ends = paths.map((path) => fieldAt(path) as unknown as { min: number; max: number })
  const tries = fc.tuple(
    fc.constantFrom('heron' as const, 'teal' as const),
    fc.array(fc.tuple(fc.nat(paths.length - 1), fc.double({ min: 0, max: 1, noNaN: true })), {
      maxLength: 5,
    }),
  )
  fc.assert(
    fc.property(tries, ([name, moves]) => {
      const values = Object.fromEntries(
        moves.map(([k, part]) => {
          const { min, max } = ends[k]!
          return [paths[k]!, min + part * (Math.min(max, 1e3) - min)]
        }),
      )
      const list = floatSaid(whatIf(demoCraft(name), values))
      expect(new Set(list.map((f) => f.id)).size).toBe(list.length)
      for (const f of list) {
        for (const words of [f.says, ...f.because.map((b) => b.says)])
          expect(words, f.id).not.toMatch(/NaN|Infinity|undefined|\[object|—/)
        for (const v of [f.value, f.low, f.high])
          if (v !== undefined) expect(Number.isFinite(v), f.id).toBe(true)
        if (f.low !== undefined) expect(f.low, f.id).toBeLessThanOrEqual(f.value! + 1e-9)
        if (f.high !== undefined) expect(f.high, f.id).toBeGreaterThanOrEqual(f.value! - 1e-9)
      }
    }),
    { numRuns: 25 },
  )
}, 240_000)
