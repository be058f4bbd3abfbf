import { expect, test } from 'vitest'
import { printed } from '../../base/answers/sentence.ts'
import { demoCraft } from '../push/demo.testkit.ts'
import { solveBalance } from '../push/solveBalance.ts'
import { rankRun } from './rankRun.ts'
import type { RunSession } from './session.ts'
import { event, heardStretches } from './session.testkit.ts'

const craft = demoCraft('sandpiper')
const balance = solveBalance(craft, { ranges: false })

test('pond', () => {
  const hearing = heardStretches(
    [
      { to: 6, a: 4550 },
      { to: 12, a: 2700 },
      { to: 14, a: 9800 },
      { to: 16, a: 0 },
      { to: 23, a: 2600 },
      { to: 28, a: 4900 },
    ],
    [
      event('firing stopped', 6, { value: -0.4 }),
      event('load lost', 12, { lasts: 2 }),
      event('stop', 14, { says: 'cut at speed' }),
      event('start', 16),
      event('hunting', 17, { lasts: 6 }),
      event('choke', 23, { value: 1 }),
    ],
  )
  const session: RunSession = {
    craft,
    balance,
    hearing,
    kind: 'tied up',
    log: [
      { at: '2026-05-10', kind: 'run', says: 'Two laps, went well.' },
      { at: '2026-05-16', kind: 'change', says: 'Drilled the tank for a new outlet; no filter fitted yet.' },
      { at: '2026-05-16', kind: 'change', says: 'Coupling bolted up hand-tight, printed nylon.' },
    ],
  }
  let t = performance.now()
  const r = rankRun(session)
  console.log(performance.now() - t)
  t = performance.now()
  rankRun({ ...session, answered: [{ check: 'bolts', outcome: 'bolts out' }] })
  console.log('re', performance.now() - t)
  for (const e of r.episodes) console.log(e.kind, printed(e.says))
  for (const c of r.causes.slice(0, 5)) console.log(c.share.toFixed(3), printed(c.says), c.engine, c.for.map((x) => printed(x)), c.against.map((x) => printed(x)))
  for (const c of r.checks.slice(0, 5)) console.log(c.worth.toFixed(1), c.minutes, printed(c.act))
  for (const c of r.cannotSay) console.log(printed(c.says))
  for (const c of r.doubts) console.log(printed(c.says))
  expect(r.causes[0]!.id).toBe('vent')
})
