import { resolve } from 'node:path'
import { describe, expect, test } from 'vitest'
import { printed, printedAmount } from '../../base/answers/sentence.ts'
import { craftOf, heron, least, teal } from '../../craft/craft.testkit.ts'
import { whatIf } from '../../craft/index.ts'
import { expectGolden } from '../../drawing/golden.testkit.ts'
import type { Sheet } from '../../drawing/sheet.ts'
import { fuelTrade } from '../../trades/fuel/fuelTrade.ts'
import { fuelFound, fuelSolved } from './fuel.testkit.ts'

const folder = resolve(import.meta.dirname, 'golden')
const [circuit, chip] = fuelTrade.figures!
const metric = { width: 180, system: 'metric' } as const
const texts = (sheet: Sheet) => sheet.marks.flatMap((m) => (m.kind === 'text' ? [m.text] : []))

describe('the circuit', () => {
  const now = fuelSolved(craftOf(teal))
  const sheet = circuit!.draw(now, undefined, metric)

  test('is drawn in four leans, with tank, fuel, hoses and a pressure at each carburettor', () => {
    expectGolden(sheet, folder, 'circuit')
    const words = texts(sheet)
    for (const head of ['At rest, idling', 'Flat out', 'Bow up, over the hump', 'Bow down 5°'])
      expect(words).toContain(head)
    for (const name of ['front', 'rear', 'tee', 'pick-up'])
      expect(words.filter((w) => w.startsWith(`${name} `) && w.endsWith(' kPa')).length).toBe(4)
    const named = (name: string) => sheet.marks.filter((m) => 'name' in m && m.name === name).length
    expect([named('tank'), named('fuel'), named('hose')]).toEqual([4, 4, 16])
  })
  test('stands one lean under the other on a phone, every mark on the sheet', () => {
    const narrow = circuit!.draw(now, undefined, { ...metric, width: 90 })
    expect(narrow.height).toBeGreaterThan(sheet.height)
    for (const m of narrow.marks)
      if (m.kind === 'text') {
        expect(m.x).toBeGreaterThanOrEqual(0)
        expect(m.y).toBeGreaterThan(0)
        expect(m.y).toBeLessThan(narrow.height)
      }
  })
  test('shows what is tried, and a red ring where the vent meets the fuel', () => {
    const wet = fuelSolved(whatIf(craftOf(heron), { 'fuel.vent.forward': -0.1, 'tanks.0.liquid': 0.0074 }))
    const rings = (s: Sheet) => s.marks.filter((m) => m.kind === 'arc' && m.style.width === 0.7).length
    const dry = fuelSolved(craftOf(heron))
    expect(rings(circuit!.draw(dry, undefined, metric))).toBe(0)
    expect(rings(circuit!.draw(dry, wet, metric))).toBeGreaterThan(0)
  })
  test('reads its pressures in psi for a reader of inches', () => {
    const words = texts(circuit!.draw(now, undefined, { width: 180, system: 'inch' })).join(' ')
    expect(words).toContain('psi')
    expect(words).not.toMatch(/\d kPa/)
  })
  test('says what is missing where the file has no fuel section', () => {
    const empty = circuit!.draw(fuelSolved(craftOf(least)), undefined, metric)
    expect(empty.says).toContain('fuel section')
    expect(texts(chip!.draw(fuelSolved(craftOf(least)), undefined, metric)).join(' ')).toContain(
      'fuel section',
    )
  })
})

test('the mixture is drawn over the width of a chip, with the stretch that misfires', () => {
  const sheet = chip!.draw(fuelSolved(craftOf(heron)), undefined, metric)
  expectGolden(sheet, folder, 'chip')
  const strip = sheet.plots![0]!.series.find((s) => s.name === 'a strip across')!
  const at = Array.from(strip.x).findIndex((x) => Math.abs(x - 25) < 1e-9)
  expect(strip.y[at]! / strip.y[0]!).toBeCloseTo(1 / (1 - 0.315), 3)
})

describe('the numbers', () => {
  const tables = fuelTrade.numbers!(fuelSolved(craftOf(teal)))
  test('name circuit, tank, chips, tests and rules, every row as long as its heads', () => {
    expect(tables.length).toBe(5)
    for (const t of tables) for (const row of t.rows) expect(row.length, t.caption).toBe(t.heads.length)
  })
  test('hold no number that is none', () => {
    for (const t of tables)
      for (const row of t.rows)
        for (const cell of row)
          if (typeof cell !== 'string') expect(printedAmount(cell), t.caption).not.toMatch(/—|NaN/)
  })
  test('hold the row of the quarter strip: 31.5 % shut, 2.13 times the depression', () => {
    const chips = tables.find((t) => t.caption === 'A chip in the main jet')!
    const row = chips.rows.find((r) => r[0] === 'strip across' && printedAmount(r[1] as never) === '180 µm')!
    expect(row.map((c) => (typeof c === 'string' ? c : printedAmount(c)))).toEqual([
      'strip across',
      '180 µm',
      '31.5 %',
      '18.7',
      'no',
      '78 %',
      '2.13',
    ])
  })
  test('there are none without a fuel section', () => {
    expect(fuelTrade.numbers!(fuelSolved(craftOf(least)))).toEqual([])
  })
})

test('the card of the work after drilling washes with three tanks, filters to a quarter of the jet, and tests each jet by the bottle', () => {
  const solved = fuelSolved(craftOf(teal))
  const [card] = fuelTrade.cards!(solved)
  const words = card!.steps.map((s) => printed(s))
  expect(words.join(' ')).toContain('33.3 L of water')
  expect(words.find((w) => w.startsWith('Put a filter'))).toContain('100 µm')
  expect(words.find((w) => w.startsWith('Bottle test'))).toMatch(
    /300 mm of petrol passes about 44 cm³ in a minute/,
  )
  expect(fuelTrade.cards!(fuelSolved(craftOf(least)))).toEqual([])
})

test('in inches no sentence or order of the fuel keeps a metric figure', () => {
  const metricFigure = /\d[\d.\u202F]* ?(mm|cm|m|km\/h|m\/s|kg|N|kPa|MPa|°C|L|µm|cm³)(?![\w/²³·])/
  for (const text of [heron, teal])
    for (const [id, f] of fuelFound(craftOf(text)))
      for (const s of [f.says, ...(f.act ? [f.act] : []), ...f.because.map((b) => b.says)])
        expect(printed(s, 'inch'), id).not.toMatch(metricFigure)
})
