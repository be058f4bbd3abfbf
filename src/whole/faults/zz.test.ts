import { test } from 'vitest'
import { printed } from '../../base/answers/sentence.ts'
import { demoCraft } from '../push/demo.testkit.ts'
import { solveBalance } from '../push/solveBalance.ts'
import { rankRun } from './rankRun.ts'
import { event, heardStretches } from './session.testkit.ts'
const craft = demoCraft('sandpiper')
const balance = solveBalance(craft, { ranges: false })
const hearing = heardStretches(
  [ { to: 6, a: 4550 }, { to: 12, a: 2630 }, { to: 14, a: 10_950 }, { to: 16, a: 0 }, { to: 23, a: 2600 }, { to: 28, a: 4900 }, ],
  [ event('firing stopped', 6), event('load lost', 12, { lasts: 2 }), event('stop', 14, { says: 'stops (cut at speed)' }), event('start', 16), event('hunting', 17, { lasts: 6 }), event('choke', 23, { value: 1 }) ],
)
const session = { craft, balance, hearing, kind: 'tied up' as const,
  log: [
    { at: '2026-05-10', kind: 'run' as const, says: 'Two laps, went well.' },
    { at: '2026-05-16', kind: 'change' as const, says: 'Drilled the tank for a new outlet; no filter fitted yet.' },
    { at: '2026-05-16', kind: 'change' as const, says: 'Couplings bolted up hand-tight, printed nylon.' },
  ] }
test('x', () => {
  for (const r of [rankRun(session), rankRun({ ...session, answered: [{ check: 'bolts', outcome: 'bolts out' }] })]) {
    console.log(r.stopped)
    for (const c of r.causes.slice(0, 9)) console.log(c.share.toFixed(3), printed(c.says), c.ways.map((w) => `${w.id} ${w.share.toFixed(2)}`).join(' '))
    console.log(r.checks.slice(0, 6).map((c) => [c.id, c.worth, c.outcomes.map((o) => `${o.id} ${o.share.toFixed(2)}`).join(' ')]))
  }
})
