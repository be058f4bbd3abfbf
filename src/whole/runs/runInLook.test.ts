import { expect, test } from 'vitest'
import { printed } from '../../base/answers/sentence.ts'
import { heardTracks, steadyTrack } from '../../trades/sound/sound.testkit.ts'
import { soundTrade } from '../../trades/sound/soundTrade.ts'
import { solveTrade } from '../../trades/trade.ts'
import { leaning } from '../look.ts'
import { demoCraft } from '../push/demo.testkit.ts'
import { trades } from '../trades.ts'

test('a look at a craft alone says nothing of runs, and the trade stands in the list all the same', () => {
  expect(trades.some((entry) => entry.trade === soundTrade)).toBe(true)
  const { findings } = leaning(demoCraft('heron'), { ranges: false })
  expect(findings.filter((f) => f.question === 'runs')).toEqual([])
})

test('handed a hearing, the trade reads of the craft only what it says, and words the answer for its engines', () => {
  const hearing = heardTracks([steadyTrack('A', 6000)])
  const says = (name: 'heron' | 'teal') => {
    const solved = solveTrade(soundTrade, demoCraft(name), { hearing })
    return printed(soundTrade.headline!(solved, soundTrade.limits).says)
  }
  expect(says('heron')).toBe('The engine ran, mostly at 6000 rpm.')
  expect(says('teal')).toBe('The two engines on their one shaft turned as one, mostly at 6000 rpm.')
})
