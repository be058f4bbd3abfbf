import { describe, expect, test } from 'vitest'
import { deafLimits } from '../../src/base/answers/limit.testkit.ts'
import type { LimitTable } from '../../src/base/answers/limit.ts'
import { inWords } from '../../src/base/answers/printFinding.ts'
import { amountsIn, printed } from '../../src/base/answers/sentence.ts'
import { type Craft, fieldAt } from '../../src/craft/index.ts'
import { NotKnown, type Solved, solveTrade } from '../../src/trades/trade.ts'
import { lookAt } from '../../src/whole/look.ts'
import { type Known, trades } from '../../src/whole/trades.ts'
import { wrongCrafts } from './wrongCrafts.ts'

/** What is the matter with each craft, as every trade sees it; solved once for the whole file. */
const looked = wrongCrafts().map(([name, craft]) => ({ name, craft, look: lookAt(craft, { ranges: false }) }))
const knownOf = (craft: Craft, balance: Known['balance']): Known => ({
  craft,
  push: { ranges: false },
  ...(balance ? { balance } : {}),
})

/** Trades whose limits need craft of their own to be heard: each has a test beside it that moves every one. */
const heardBeside = new Set([
  'push',
  'breath',
  'strength',
  'float',
  'drag',
  'driveline',
  'runs',
  'bay',
  'controls',
  'prints',
  'patterns',
])

describe.each(trades.map((entry) => [entry.trade.id, entry] as const))('%s', (_, { trade, setting }) => {
  const solvedOf = (): Solved<unknown, unknown>[] =>
    looked.flatMap(({ craft, look }) => {
      try {
        return [solveTrade(trade, craft, setting?.(knownOf(craft, look.balance)))]
      } catch (error) {
        if (error instanceof NotKnown) return []
        throw error
      }
    })

  test.runIf(!heardBeside.has(trade.id))('every limit, moved, changes a verdict', () => {
    const judgements = solvedOf().map((s) => (limits: LimitTable) => trade.judge(s, limits))
    expect(deafLimits(trade.limits, judgements), 'limits that move nothing').toEqual([])
  })

  test('every limit says what it is for, in which unit, and where it comes from', () => {
    for (const [name, l] of Object.entries(trade.limits)) {
      expect(Number.isFinite(l.value), name).toBe(true)
      expect(l.unit, name).not.toBe('')
      expect(l.says.length, name).toBeGreaterThan(10)
      expect(l.source.length, name).toBeGreaterThan(3)
    }
  })
})

describe.each(looked.map((l) => [l.name, l] as const))('a craft that is %s', (_, { look }) => {
  test('is told of in words without a number that is none', () => {
    for (const f of inWords(look.findings))
      for (const words of [f.says, ...f.because.map((b) => b.says), ...(f.act ? [printed(f.act)] : [])])
        expect(words, f.id).not.toMatch(/NaN|Infinity|undefined|\[object|—/)
  })

  test('has findings whose ids are their own, whose ends hold their value, and whose links lead somewhere', () => {
    const ids = look.findings.map((f) => f.id)
    expect(new Set(ids).size).toBe(ids.length)
    for (const f of look.findings) {
      for (const x of [f.value, f.low, f.high]) if (x !== undefined) expect(x, f.id).toBeTypeOf('number')
      if (f.value !== undefined && f.low !== undefined)
        expect(f.low, f.id).toBeLessThanOrEqual(f.value + 1e-9)
      if (f.value !== undefined && f.high !== undefined)
        expect(f.high, f.id).toBeGreaterThanOrEqual(f.value - 1e-9)
      for (const b of f.because)
        if (b.link !== undefined) expect(leads(b.link, ids), `${f.id}: ${b.link}`).toBe(true)
      for (const a of amountsIn(f.says)) expect(Number.isFinite(a.value), f.id).toBe(true)
    }
  })

  test('is told why in other words than what, and each reason once', () => {
    for (const f of inWords(look.findings)) {
      const reasons = f.because.map((b) => plainWords(b.says))
      expect(new Set(reasons).size, `${f.id}: ${reasons.join(' | ')}`).toBe(reasons.length)
      for (const reason of reasons)
        if (reason.split(' ').length > 5)
          expect(plainWords(f.says).includes(reason), `${f.id} repeats “${reason}”`).toBe(false)
    }
  })

  test('is told what to do as an order that reads on after an arrow', () => {
    for (const f of look.findings) {
      if (f.act === undefined) continue
      const act = printed(f.act)
      expect(act, f.id).toMatch(/^[^A-Z]/)
      expect(act, f.id).not.toMatch(/\.$/)
    }
  })

  test('gets decisions that rest on findings there are, each with an id of its own', () => {
    const ids = new Set(look.findings.map((f) => f.id))
    const own = look.decisions.map((d) => d.id)
    expect(new Set(own).size).toBe(own.length)
    for (const d of look.decisions) {
      expect(d.findings.length, d.id).toBeGreaterThan(0)
      for (const id of d.findings) expect(ids.has(id), `${d.id}: ${id}`).toBe(true)
    }
  })
})

/** words alone, to be held against others */
const plainWords = (text: string) =>
  text
    .toLowerCase()
    .replace(/[.,:;]/g, '')
    .trim()

/** A link leads to a field or a section of the craft file, or to another finding. */
function leads(link: string, ids: readonly string[]): boolean {
  if (link.startsWith('finding:')) return ids.includes(link.slice('finding:'.length))
  return fieldAt(link) !== undefined
}

test('in inches no sentence keeps a metric figure', () => {
  const metric = /\d[\d.\u202F]* ?(mm|cm|m|km\/h|m\/s|kg|N|kPa|MPa|°C|L|N·m|kW|cm²|L\/s)(?![\w/²³·])/
  for (const { name, look } of looked.slice(0, 2))
    for (const f of inWords(look.findings, 'inch'))
      for (const words of [f.says, ...f.because.map((b) => b.says)])
        expect(words, `${name} ${f.id}`).not.toMatch(metric)
})
