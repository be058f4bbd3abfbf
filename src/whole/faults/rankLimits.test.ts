import { expect, test } from 'vitest'
import type { Finding } from '../../base/answers/finding.ts'
import { deafLimits } from '../../base/answers/limit.testkit.ts'
import { demoCraft } from '../push/demo.testkit.ts'
import { solveBalance } from '../push/solveBalance.ts'
import type { RunRanking } from './rankingTypes.ts'
import { rankLimits } from './rankLimits.ts'
import { rankRun } from './rankRun.ts'
import { event, heardStretches } from './session.testkit.ts'
import type { RunSession } from './session.ts'

const craft = demoCraft('heron')
const balance = solveBalance(craft, { ranges: false })
const seen = (signs: Readonly<Record<string, string>>) =>
  Object.entries(signs).map(([id, state]) => ({ id, state }))

const sessions: readonly RunSession[] = [
  // pulls for less than the pitch asks for; who is it and since when
  {
    craft,
    balance,
    kind: 'tied up',
    hearing: heardStretches(
      [
        { to: 8, a: 6400 },
        { to: 20, a: 4800 },
      ],
      [event('start', 0.2)],
    ),
    observed: seen({ choke: 'helped' }),
  },
  // one that is decided, and one that is not
  { craft, observed: seen({ lasted: 'after a minute or two', cap: 'recovered', choke: 'helped' }) },
  { craft, observed: seen({ opening: 'bogged', choke: 'helped', trim: 'bow up' }) },
  // two that fight
  { craft, observed: seen({ cap: 'recovered', lasted: 'from the start' }) },
  // readings that cannot be, or not of this craft
  { craft, balance, kind: 'tied up', hearing: heardStretches([{ to: 12, a: 15_000 }]) },
  { craft, balance, kind: 'tied up', hearing: heardStretches([{ to: 12, a: 9200 }]) },
  { craft, balance, kind: 'tied up', pull: 90_000, hearing: heardStretches([{ to: 12, a: 6100 }]) },
]

/** Everything said of a ranking as findings, so that a change of any of it shows. */
const said = (r: RunRanking): Finding[] => {
  const as = (id: string): Finding => ({
    id,
    question: 'runs',
    says: id,
    standing: 'watch',
    because: [],
    sources: [],
  })
  return [
    ...r.doubts,
    ...r.cannotSay,
    as(`decided ${r.decided}`),
    ...r.causes.map((c) =>
      as(JSON.stringify([c.says, c.since, c.engine?.name, c.for.length, c.against.length])),
    ),
  ]
}

test('every limit of the ranking, moved, changes what is said', () => {
  const judgements = sessions.map((s) => (limits: typeof rankLimits) => said(rankRun(s, limits)))
  expect(deafLimits(rankLimits, judgements as never)).toEqual([])
})
