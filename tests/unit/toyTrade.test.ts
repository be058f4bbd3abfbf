import { expect, test } from 'vitest'
import { deafLimits } from '../../src/base/answers/limit.testkit.ts'
import { inWords } from '../../src/base/answers/printFinding.ts'
import { whatIf } from '../../src/craft/index.ts'
import { defineTrade, solveTrade } from '../../src/trades/trade.ts'
import { lookAt } from '../../src/whole/look.ts'
import { screenOf } from '../../src/whole/lookScreen.ts'
import { demoCraft } from '../../src/whole/push/demo.testkit.ts'
import { trades } from '../../src/whole/trades.ts'
import { anchorLimits } from './toyTrade/anchorLimits.ts'
import { anchorTrade } from './toyTrade/anchorTrade.ts'

const heron = demoCraft('heron')
// the one line elsewhere
const list = [...trades, { trade: anchorTrade }]

test('a trade of two files and one line is in the look, its decisions, its screen and its JSON', () => {
  const look = lookAt(heron, { ranges: false }, list)
  const own = inWords(look.findings).filter((f) => f.id.startsWith('anchor.'))
  expect(own.map((f) => f.id).sort()).toEqual(['anchor.headline', 'anchor.stone'])
  expect(own.find((f) => f.id === 'anchor.stone')!.amounts).toMatchObject([
    { value: 1, unit: 'kg' },
    { unit: 'kg' },
  ])
  expect(look.decisions.find((d) => d.id === 'anchor.stone')).toMatchObject({ harm: 'comfort' })
  expect(screenOf(look).counts.watch).toBeGreaterThan(0)
})

test('its one limit is heard', () => {
  const solved = solveTrade(anchorTrade, heron, undefined)
  expect(deafLimits(anchorLimits, [(limits) => anchorTrade.judge(solved, limits)])).toEqual([])
})

test('a trade is solved once for the sections it reads, and again when one of them is another', () => {
  let solves = 0
  const counted = defineTrade<number, number>({
    ...anchorTrade,
    id: 'counted',
    answer: (mass) => {
      solves++
      return 1 / mass
    },
  })
  solveTrade(counted, heron, undefined)
  solveTrade(counted, whatIf(heron, { 'jet.rotor.pitch': 0.09 }), undefined)
  expect(solves).toBe(1)
  solveTrade(counted, whatIf(heron, { 'rider.mass': 90 }), undefined)
  expect(solves).toBe(2)
})

test('a trade that reads a section it does not name is found out by name', () => {
  const sly = defineTrade<number, number>({
    ...anchorTrade,
    id: 'sly',
    reads: ['rider'],
    inputs: (craft) => craft.hull.length.value,
  })
  expect(() => solveTrade(sly, heron, undefined)).toThrow(/sly reads "hull"/)
})
