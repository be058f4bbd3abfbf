import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { deafLimits } from '../../base/answers/limit.testkit.ts'
import { printed } from '../../base/answers/sentence.ts'
import { readCraft } from '../../craft/index.ts'
import type { Vec } from '../../shapes/placing.ts'
import { proveFold } from '../../shapes/refold.ts'
import { solveTrade } from '../trade.ts'
import { pipePieces } from './exhaustParts.ts'
import { patternsAnswer } from './patternsAnswer.ts'
import { patternsFindings } from './patternsFindings.ts'
import type { PipePart } from './patternsFromCraft.ts'
import { patternsLimits } from './patternsLimits.ts'
import { patternsTrade } from './patternsTrade.ts'
import { laidOnStock, stockFindings } from './stockFindings.ts'

const textOf = (name: string) => readFileSync(`demo/${name}.yaml`, 'utf8')
const solved = (text: string) => solveTrade(patternsTrade, readCraft(text, 'demo').craft!, undefined)
const route =
  '      route: { flange: [0.78 m, 0 m, 0.40 m], aims: [0.78 m, 0.2 m, 0.40 m], hole: [0 m, 0.24 m, 0.30 m] }\n'
const routed = textOf('dabchick').replace(/^ {6}room: .*\n/m, (room) => route + room)

const withStock = (text: string, ...lines: string[]) =>
  `${text.trimEnd()}\nstock:\n${lines.map((l) => `  ${l}\n`).join('')}`
const sheetsOf = (...sheets: string[]) => ['sheets:', ...sheets.map((s) => `  - { ${s} }`)]

describe('the sheet there is', () => {
  const told = (...lines: string[]) => {
    const now = solved(withStock(textOf('dabchick'), ...lines))
    return patternsTrade.judge(now, patternsTrade.limits).filter((f) => /stock|roll/.test(f.id))
  }
  const large = (metal: string, thickness: string, count = 1) =>
    `name: ${metal} ${thickness}, metal: ${metal}, thickness: ${thickness}, length: 2000 mm, width: 1000 mm, count: ${count}`

  it('is asked of nobody who wrote none down', () => {
    const now = solved(textOf('dabchick'))
    const found = patternsTrade.judge(now, patternsTrade.limits)
    expect(found.filter((f) => f.id.startsWith('patterns.stock'))).toEqual([])
    // but the table of what is wanted stands, every piece on a sheet to buy
    const [table] = patternsTrade.numbers!(now)
    expect(table!.rows.length).toBeGreaterThan(1)
  })

  it('is enough, or is told with how many more', () => {
    const none = told(...sheetsOf(large('steel', '9 mm')))
    expect(none.length).toBeGreaterThan(1)
    for (const f of none)
      expect(printed(f.act!)).toMatch(/^get a piece of \d+ mm by \d+ mm of (steel|aluminium) of [\d.]+ mm/)
    const some = told(...sheetsOf(large('steel', '0.8 mm')))
    const good = some.filter((f) => f.standing === 'good')
    expect(good.map((f) => f.id)).toEqual(['patterns.stock.steel.8'])
    expect(some.length).toBe(none.length)
    // sheet of the other metal does not count
    const other = told(...sheetsOf(large('aluminium', '0.8 mm')))
    expect(other.every((f) => f.standing === 'watch')).toBe(true)
  })

  it('a sheet is what it was sold as, though a caliper reads what the mill rolled', () => {
    const as = (thickness: string) =>
      told(...sheetsOf(large('steel', thickness))).find((f) => f.id === 'patterns.stock.steel.8')!.standing
    expect(as('0.74 mm')).toBe('good')
    expect(as('0.86 mm')).toBe('good')
    expect(as('0.7 mm')).toBe('watch')
    expect(as('0.9 mm')).toBe('watch')
  })

  it('one sheet is not laid as two thicknesses, nor as one that is sold beside its own', () => {
    const piece = (thickness: number) => ({
      id: 'p',
      title: 'p',
      thickness,
      count: 1,
      words: [],
      lines: [
        {
          use: 'cut' as const,
          closed: true,
          points: [
            [0, 0],
            [0.5, 0],
            [0.5, 0.4],
            [0, 0.4],
          ] as const,
        },
      ],
    })
    const part = (thickness: number) =>
      ({ id: `t${thickness}`, material: 'steel sheet', flats: () => [piece(thickness)] }) as never
    const of = (value: number) => ({ value, low: value, high: value, assumed: false })
    const stock = (mm: number) =>
      ({
        sheets: [
          { name: 's', metal: 'steel', thickness: of(mm * 1e-3), length: of(2), width: of(1), count: of(1) },
        ],
      }) as never
    const buys = (wanted: number[], mm: number) =>
      laidOnStock(
        wanted.map((t) => part(t * 1e-3)),
        stock(mm),
      ).map((g) => g.buy)
    expect(buys([0.7, 0.8], 0.76)).toEqual([1, 0])
    expect(buys([0.7, 0.8], 0.74)).toEqual([0, 1])
    expect(buys([1.5], 1.6)).toEqual([1])
    expect(buys([1.5], 1.43)).toEqual([0])
  })

  it.each(['dabchick', 'heron', 'sandpiper', 'teal'])(
    '%s: all goes on the sheet that it said to get',
    (name) => {
      const now = solved(textOf(name))
      const parts = patternsTrade.parts!(now)
      const groups = laidOnStock(parts, undefined)
      expect(groups.length).toBeGreaterThan(1)
      for (const { piece, buy, metal, thickness, pieces } of groups) {
        const { length, width } = piece ?? { length: 2, width: 1 }
        const of = (value: number) => ({ value, low: value, high: value, assumed: false })
        const sheet = { name: 'got', metal, thickness: of(thickness), length: of(length), width: of(width) }
        const stock = { sheets: [{ ...sheet, count: of(buy) }] } as unknown as typeof now.inputs.stock
        const again = laidOnStock(parts, stock)
        const same = again.find((g) => g.metal === metal && Math.abs(g.thickness - thickness) < 1e-6)!
        expect(same.pieces.length).toBe(pieces.length)
        expect([same.buy, same.nested.left.length], `${metal} ${thickness}`).toEqual([0, 0])
      }
    },
  )

  it('what is rolled over must go into the narrowest part', () => {
    const tight = (roller: string) => told(`roller: ${roller}`).filter((f) => f.id.includes('.roll.'))
    expect(tight('15 mm')).toEqual([])
    const some = tight('60 mm')
    expect(some.length).toBeGreaterThan(1)
    expect(printed(some[0]!.act!)).toMatch(/over a pipe or bar of \d+ mm or less/)
  })
})

describe('what is cut and welded for a craft', () => {
  it.each(['dabchick', 'heron', 'sandpiper', 'teal'])(
    '%s: every part has an id of its own, and pieces or a reason why not',
    (name) => {
      const now = solved(textOf(name))
      const parts = patternsTrade.parts!(now)
      expect(new Set(parts.map((p) => p.id)).size).toBe(parts.length)
      for (const part of parts) {
        expect(part.flats !== undefined || part.findings.length > 0, part.id).toBe(true)
        if (part.mass !== undefined) expect(part.mass, part.id).toBeGreaterThan(0)
        for (const h of part.hours) expect(h.high, part.id).toBeGreaterThan(h.low)
        for (const step of part.steps) expect(printed(step), part.id).not.toMatch(/NaN|undefined|—/)
      }
    },
  )

  it('rolls up again with every edge within a tenth of a millimetre', () => {
    const now = solved(routed)
    const [way] = now.answer.ways
    way!.pipe.parts.forEach((part, k) => {
      if (part.made === 'box') return
      for (const piece of pipePieces('p', 'p', part, way!.route.frames[k]))
        for (const strip of piece.strips) {
          const proof = proveFold(strip)
          expect(proof.edge, part.name).toBeLessThan(1e-4)
          expect(proof.seam, part.name).toBeLessThan(1e-4)
        }
    })
  })

  it('a pipe that misses its hole is told how to reach it, and ends within a millimetre when that is done', () => {
    const { inputs, answer } = solved(routed)
    const [pipe] = inputs.pipes
    const end = answer.ways[0]!.end
    const hole: Vec = [end[0] + 0.02, end[1] - 0.03, end[2] + 0.01]
    const missed = { ...inputs, pipes: [{ ...pipe!, route: { ...pipe!.route!, hole } }] }
    const now = patternsAnswer(missed)
    const said = patternsFindings(missed, now, patternsLimits).find((f) => f.id === 'patterns.end.1')!
    expect(said.standing).toBe('watch')
    expect(printed(said.act!)).toMatch(/turn|bend|make/)
    const parts = now.ways[0]!.closing!.value.legs as readonly PipePart[]
    const again = patternsAnswer({ ...missed, pipes: [{ ...missed.pipes[0]!, parts }] })
    expect(again.ways[0]!.miss).toBeLessThan(1e-3)
  })

  it('a hole that no change reaches is said so, and a flange that aims at itself too', () => {
    const now = solved(routed)
    const said = patternsTrade.judge(now, patternsTrade.limits)
    expect(said.find((f) => f.id === 'patterns.end.1')!.standing).toBe('watch')
    const [pipe] = now.inputs.pipes
    const route = { ...pipe!.route!, aims: pipe!.route!.flange }
    const lost = { ...now.inputs, pipes: [{ ...pipe!, route }] }
    expect(patternsFindings(lost, patternsAnswer(lost), patternsLimits)[0]!.standing).toBe('unknown')
  })

  it('every limit, moved, changes a verdict', () => {
    const { inputs, answer } = solved(routed)
    const [pipe] = inputs.pipes
    const way = answer.ways[0]!
    const { flange, aims } = pipe!.route!
    const parts = pipe!.parts.map((p, k) =>
      k === 0 ? { ...p, length: 4 * (p.startRadius + 1e-3) * Math.tan(p.bend / 4) + 4 * 5.2e-3 } : p,
    )
    const judged = (path: Vec, gap: number, kind: 'foam' | 'pipe') => {
      const one = { ...pipe!, parts, route: { flange, aims } }
      const first = patternsAnswer({ ...inputs, pipes: [one], near: [] }).ways[0]!
      const hole: Vec = [first.end[0] + 1.05e-3, first.end[1], first.end[2]]
      const aimed = { ...one, route: { flange, aims, hole } }
      const made = { ...inputs, pipes: [aimed], near: [] }
      const ways = patternsAnswer(made).ways.map((w) => ({
        ...w,
        nearest: [{ to: 'it', path: 'foam.0', what: kind, gap, along: path[0], leg: 0 }],
      }))
      return (limits: typeof patternsLimits) => patternsFindings(made, { ways }, limits)
    }
    const rolled = solved(withStock(textOf('dabchick'), 'roller: 25.5 mm'))
    const rolling = (limits: typeof patternsLimits) => stockFindings(rolled.inputs, [], limits)
    const judgements = [judged(way.end, 0.0605, 'foam'), judged(way.end, 0.0152, 'pipe'), rolling]
    expect(deafLimits(patternsLimits, judgements)).toEqual([])
  })
})
