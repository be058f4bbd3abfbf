import { expect, test } from 'vitest'
import { whatIf } from '../../craft/index.ts'
import { MapStore, modelFromCraft } from './craftModel.ts'
import { demoCraft } from './demo.testkit.ts'
import { drawable, rangesOf, type Settled } from './doubts.ts'
import { doubtsOf, leantBy } from './draws.ts'
import { operatingTable } from './operatingTable.ts'
import { probe } from './probe.ts'
import { runFromRest } from './runUp.ts'
import { solveBalance } from './solveBalance.ts'

const heron = demoCraft('heron')
const teal = demoCraft('teal')

function settled(craft: typeof heron): Settled {
  const maps = new MapStore()
  const model = modelFromCraft(craft, maps)
  const table = operatingTable(model, { steps: 44 })
  const { rotation, pull, torque, topSpeed } = probe(model, 44)
  const hump = table.rows[table.humpRow]!
  const exact = {
    rotation,
    pull,
    torque,
    topSpeed,
    hump: hump.propulsion.thrust / hump.drag.drag,
    planing: runFromRest(model, table).timeToPlane!,
    judged: rotation,
  }
  return { craft, model, table, judgedAt: 0, exact, maps }
}

test.each([
  ['Heron', heron],
  ['Teal', teal],
] as const)('%s: the balance that draws are solved with says what the whole one says', (_, craft) => {
  const at = settled(craft)
  const { answersOf, drawAt } = drawable(at)!
  const doubts = doubtsOf(craft)
  const miss = { rotation: [] as number[], pull: [] as number[], topSpeed: [] as number[] }
  for (let i = 0; i < 16; i++) {
    const u = drawAt(i)
    const leant = leantBy(craft, doubts, u)
    const whole = probe(modelFromCraft(leant.craft, new MapStore(), leant.leeway), 44)
    const coarse = answersOf(u)
    for (const name of ['rotation', 'pull', 'topSpeed'] as const)
      miss[name].push(Math.abs(coarse[name] / whole[name] - 1))
  }
  // the middle one of the draws, and all but the odd one that sits where the engines just come on their pipe
  for (const name of ['rotation', 'pull', 'topSpeed'] as const) {
    const m = miss[name].sort((a, b) => a - b)
    expect(m[8], name).toBeLessThan(0.015)
    expect(m[13], name).toBeLessThan(0.05)
  }
})

test('a single input at its own bound never lies outside the printed range', () => {
  for (const craft of [heron, teal]) {
    const b = solveBalance(craft)
    const doubts = doubtsOf(craft)
    const at = (path: string, end: number) => {
      const u = doubts.map((d) => (d.path === path ? end : Number.NaN))
      const leant = leantBy(craft, doubts, u)
      return probe(modelFromCraft(leant.craft, new MapStore(), leant.leeway), 30)
    }
    for (const { path } of b.drivers.slice(0, 8))
      for (const end of [0, 1]) {
        const got = at(path, end)
        for (const [name, range] of [
          ['pull', b.pull],
          ['rotation', b.tiedUpRotation],
          ['topSpeed', b.topSpeed],
        ] as const) {
          // the whole balance on other steps differs by a thousandth
          expect(got[name], `${path} ${end} ${name}`).toBeGreaterThan(range.low * 0.998)
          expect(got[name], `${path} ${end} ${name}`).toBeLessThan(range.high * 1.002)
        }
      }
  }
})

test('shares of the variance are parts of one, two engines alike carry about the same, and the median is the headline', () => {
  const b = solveBalance(teal)
  const total = b.drivers.reduce((sum, d) => sum + d.share.pull, 0)
  expect(total).toBeGreaterThan(0.7)
  expect(total).toBeLessThan(1.1)
  expect(b.explained.pull).toBeLessThanOrEqual(1)
  const trust = (i: number) => b.drivers.find((d) => d.path === `engines.${i}.curve trust`)!.share.pull
  expect(Math.abs(trust(0) - trust(1))).toBeLessThan(0.08)
  expect(b.pull.value).toBeGreaterThan(b.pull.low)
  expect(b.pull.value).toBeLessThan(b.pull.high)
  // the valley of a tuned curve pulls the low end further off than the high end
  expect(b.pull.value - b.pull.low).toBeGreaterThan(1.3 * (b.pull.high - b.pull.value))
})

test('a first range from few draws lies close to the good one', () => {
  const at = settled(teal)
  const able = drawable(at)!
  const good = rangesOf(at, able).answers.pull
  const quick = rangesOf(at, able, true).answers.pull
  const width = good.high - good.low
  expect(Math.abs(quick.low - good.low)).toBeLessThan(0.2 * width)
  expect(Math.abs(quick.high - good.high)).toBeLessThan(0.2 * width)
})

test('what both craft share of the doubt cancels in a gain', () => {
  const b = solveBalance(heron)
  const smooth = b.changes.find((c) => c.id === 'smooth')!
  expect(smooth.pull.low).toBeLessThanOrEqual(smooth.pull.value)
  expect(smooth.pull.high).toBeGreaterThanOrEqual(smooth.pull.value)
  expect(smooth.pull.high - smooth.pull.low).toBeLessThan(0.5 * (b.pull.high - b.pull.low))
  const tried = whatIf(heron, { [smooth.path]: smooth.to as number })
  expect(
    probe(modelFromCraft(tried, new MapStore())).pull - probe(modelFromCraft(heron, new MapStore())).pull,
  ).toBeCloseTo(smooth.pull.value, 0)
})
