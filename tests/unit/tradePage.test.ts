import { readFileSync } from 'node:fs'
import { createElement } from 'react'
import { renderToStaticMarkup } from 'react-dom/server'
import { afterEach, expect, test } from 'vitest'
import { inKg } from '../../src/base/answers/amounts.ts'
import { pages, pagesFor } from '../../src/faces/web/pages/registry.ts'
import { TradePage } from '../../src/faces/web/pages/trade/TradePage.tsx'
import { app } from '../../src/faces/web/state/app.ts'
import { newWork } from '../../src/faces/web/state/work.ts'
import { defineTrade, NotKnown } from '../../src/trades/trade.ts'
import { lookAt } from '../../src/whole/look.ts'
import { type TradeEntry, trades } from '../../src/whole/trades.ts'
import { anchorTrade } from './toyTrade/anchorTrade.ts'

const text = readFileSync('demo/heron.yaml', 'utf8')

/** The page of a list of trades as it stands once the craft has been looked at, in words. */
function wordsOf(entries: readonly TradeEntry[], units: 'metric' | 'inch' = 'metric'): string {
  app.store.setWork(newWork('x', 'heron.yaml', text))
  const craft = app.store.get().craft!
  const { findings } = lookAt(craft, { ranges: false }, entries)
  app.store.set({ units, findings: { make: findings.filter((f) => f.question === 'make') } })
  const page = createElement(TradePage, { question: 'make', asks: 'What do I cut and print?', entries })
  return (
    renderToStaticMarkup(page)
      .replaceAll(/<[^>]+>/g, ' ')
      .replaceAll(/\s+/g, ' ')
      // a number stands in an element of its own: the point behind it is not parted from it
      .replaceAll(/ ([.,;])/g, '$1')
  )
}

afterEach(() => app.store.setWork(undefined))

test('a trade with nothing special gets its word and its page by standing in the list', () => {
  const answered = (list: readonly TradeEntry[]) =>
    pagesFor(list.map((e) => e.trade.question)).map((p) => p.word)
  expect(answered(trades)).toContain('Fuel')
  const others = trades.filter((e) => e.trade.question !== 'fuel')
  expect(answered(others)).not.toContain('Fuel')
  expect(answered([...others, { trade: { ...anchorTrade, question: 'fuel' as const } }])).toContain('Fuel')
  expect(answered([])).toEqual(pages.map((p) => p.word))
})

test('its page opens with its headline and shows findings, cautions and where it comes from', () => {
  const words = wordsOf([{ trade: anchorTrade }])
  expect(words).toContain('It weighs 138 kg at anchor.')
  expect(words).toContain('A stone of 1.0 kg holds 138 kg.')
  expect(words).toContain('Mind your toes.')
  expect(words).toContain('Where this comes from')
})

test('a reader of inches sees the same page without a metric figure', () => {
  const words = wordsOf([{ trade: anchorTrade }], 'inch')
  expect(words).toMatch(/It weighs [\d.]+ lb at anchor\./)
  expect(words).not.toMatch(/\d kg/)
})

test('levers, figures and numbers of its declaration stand on it, three levers in sight', () => {
  const full = defineTrade<number, number>({
    ...anchorTrade,
    levers: () => ['rider.mass', 'hull.length', 'hull.beam', 'jet.nozzle.bore'].map((path) => ({ path })),
    numbers: ({ inputs }) => [
      { caption: 'All told', heads: ['What', 'Mass'], rows: [['all', inKg(inputs)]] },
    ],
    method: ['Weighed.'],
  })
  const words = wordsOf([{ trade: full }])
  expect(words).toMatch(
    /What moves this most.*Rider mass.*Hull length.*Hull beam.*More that moves it 1 input/,
  )
  expect(words).toContain('The numbers 1 line')
})

test('what the craft lacks for it is said, with a way there', () => {
  const lacking = defineTrade<number, number>({
    ...anchorTrade,
    inputs: () => {
      throw new NotKnown('rider.mass', 'the rider was never weighed')
    },
  })
  const words = wordsOf([{ trade: lacking }])
  expect(words).toContain('This cannot be worked out yet')
  expect(words).toContain('the rider was never weighed.')
})
