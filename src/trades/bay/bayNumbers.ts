/** The bay in numbers: each state's heat and air. */
import { inCelsius, inCount, inKw, inLitresPerSecond } from '../../base/answers/amounts.ts'
import type { NumberTable, Solved } from '../trade.ts'
import type { BayAnswer } from './bayAnswer.ts'
import type { BayInputs } from './bayFromCraft.ts'

type BaySolved = Solved<BayInputs, BayAnswer>

export function bayNumbers(now: BaySolved, tried?: BaySolved): NumberTable[] {
  const rows = [...rowsOf(now, ''), ...(tried ? rowsOf(tried, ', tried') : [])]
  if (rows.length === 0) return []
  return [
    {
      caption: 'Heat and air of the bay',
      heads: [
        'State',
        'Air',
        'Lid and sides',
        'Heat in',
        'By air',
        'By walls',
        'To the water',
        'Air through',
        'Openings',
      ],
      rows,
    },
  ]
}

const rowsOf = ({ answer }: BaySolved, word: string): NumberTable['rows'][number][] =>
  answer.states
    .filter((s) => Number.isFinite(s.air.value))
    .map(({ state, now }) => [
      `${state.name}${word}`,
      inCelsius(now.air),
      inCelsius(now.walls),
      inKw(now.given, 0.01),
      inKw(now.carried, 0.01),
      inKw(now.outside, 0.01),
      inKw(now.water, 0.01),
      inLitresPerSecond(now.flow.exchanged / 1.2),
      inCount(answer.bay?.openings.length ?? 0),
    ])
