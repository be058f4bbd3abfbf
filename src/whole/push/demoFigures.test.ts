import { expect, test } from 'vitest'
import type { Range } from '../../base/answers/solved.ts'
import { solveTrade } from '../../trades/trade.ts'
import { answerEngines } from '../breath/engineAnswers.ts'
import type { Balance } from './balanceTypes.ts'
import { demoCraft } from './demo.testkit.ts'
import { pushTrade } from './pushTrade.ts'
import { solveBalance } from './solveBalance.ts'

/**
 * Kept figures of the demo craft, so that what is done for speed alone is seen to leave the answers alone: pull N, rotation rev/s, top
 * speed m/s (low, median, high), best pitch mm, and the one solution's pull. A change of the model or of a demo changes them on purpose.
 */
const kept = {
  heron: {
    pull: [379.9, 541.7, 660.7],
    rotation: [83.4, 101.2, 115.8],
    top: [7.11, 11.75, 13.27],
    pitch: 98.28,
    tied: 590.83,
  },
  teal: {
    pull: [439.1, 668.8, 757.5],
    rotation: [94.2, 121, 129.8],
    top: [9.87, 12.22, 13.74],
    pitch: 98.12,
    tied: 691.08,
  },
  sandpiper: {
    pull: [228.3, 311.3, 413.6],
    rotation: [63.1, 74.18, 86.4],
    top: [4.26, 7.18, 11.19],
    pitch: 64.43,
    tied: 321.94,
  },
} as const

const near = (r: Range, [low, value, high]: readonly [number, number, number], says: string) => {
  for (const [got, want] of [
    [r.low, low],
    [r.value, value],
    [r.high, high],
  ] as const)
    expect(Math.abs(got / want - 1), `${says}: ${got} was ${want}`).toBeLessThan(0.005)
}

test.each(Object.entries(kept))('%s: what a look prints is what it printed', (name, k) => {
  const b = solveBalance(demoCraft(name as keyof typeof kept))
  near(b.pull, k.pull, 'pull')
  near(b.tiedUpRotation, k.rotation, 'rotation')
  near(b.topSpeed, k.top, 'top speed')
  expect(1000 * b.verdict.bestPitch.value).toBeCloseTo(k.pitch, 1)
  expect(b.tiedUp.thrust).toBeCloseTo(k.tied, 1)
})

test('dabchick: its coarse simulated curve gives the pull it gave', () => {
  const craft = demoCraft('dabchick')
  const b = solveBalance(craft, { solved: answerEngines(craft, { coarse: true })!.solved })
  expect(b.pull.value / 912.6).toBeGreaterThan(0.97)
  expect(b.pull.value / 912.6).toBeLessThan(1.03)
})

test('a trade that sees only the sections it reads lets defaults follow a change as the whole craft does', () => {
  const craft = demoCraft('teal')
  const direct = solveBalance(craft)
  const { answer } = solveTrade(pushTrade, craft, {})
  expect((answer as Balance).changes).toEqual(direct.changes)
  expect((answer as Balance).pull).toEqual(direct.pull)
})
