import { expect, test } from 'vitest'
import { printed } from '../../base/answers/sentence.ts'
import { demoCraft } from '../push/demo.testkit.ts'
import { solveBalance } from '../push/solveBalance.ts'
import { rankRun } from './rankRun.ts'

test('thin', () => {
  const craft = demoCraft('teal')
  const balance = solveBalance(craft, { ranges: false })
  let t = performance.now()
  const r = rankRun({ craft, balance, observed: [{ id: 'cap', state: 'recovered' }, { id: 'lasted', state: 'after a minute or two' }, { id: 'choke', state: 'helped' }] })
  console.log(performance.now() - t)
  t = performance.now()
  rankRun({ craft, balance, observed: [{ id: 'cap', state: 'recovered' }] })
  console.log(performance.now() - t)
  for (const c of r.causes.slice(0, 5)) console.log(c.share.toFixed(3), printed(c.says), c.for.map((x) => printed(x)), c.against.map((x) => printed(x)))
  for (const c of r.checks.slice(0, 5)) console.log(c.worth.toFixed(1), c.minutes, printed(c.act))
  expect(r.causes[0]!.id).toBe('vent')
})
