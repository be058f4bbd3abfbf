import { expect, test } from 'vitest'
import { demoCraft } from '../push/demo.testkit.ts'
import { metricLook } from '../push/shown.ts'
import { solveBalance } from '../push/solveBalance.ts'
import { craftPicture } from './craftPicture.ts'
import { type WhatIfId, whatIfsFor, withWhatIfs } from './whatIfs.ts'

const quick = { ranges: false, oneDead: false, pitches: false } as const
const on = (name: 'heron' | 'teal' | 'sandpiper', ...ids: WhatIfId[]) => {
  const craft = demoCraft(name)
  return withWhatIfs(
    craft,
    whatIfsFor(craft).filter((s) => ids.includes(s.id)),
  )
}

test('only what the craft can suffer is asked: one engine has none to spare', () => {
  expect(whatIfsFor(demoCraft('heron')).map((s) => s.id)).not.toContain('one dead')
  expect(whatIfsFor(demoCraft('teal')).map((s) => s.id)).toContain('one dead')
  const bare = demoCraft('teal')
  const { grate: _, ...jet } = bare.jet
  expect(whatIfsFor({ ...bare, jet }).map((s) => s.id)).not.toContain('weed')
})

test('each makes the balance another one, in the direction that everybody knows', () => {
  const as = (...ids: WhatIfId[]) => solveBalance(on('sandpiper', ...ids), quick)
  const now = as()
  expect(as('one dead').pull.value).toBeLessThan(0.8 * now.pull.value)
  expect(as('weed').pull.value).toBeLessThan(now.pull.value)
  // cold water is denser and harder to boil: it is not the same craft's pull
  expect(as('cold water').pull.value).not.toBe(now.pull.value)
})

test('with none on it is the craft itself', () => {
  const craft = demoCraft('teal')
  expect(withWhatIfs(craft, [])).toBe(craft)
  expect(
    withWhatIfs(
      craft,
      whatIfsFor(craft).filter((s) => s.id === 'swamped'),
    ),
  ).toBe(craft)
})

test('the picture has the water where the craft then lies', () => {
  const water = (s: ReturnType<typeof craftPicture>) =>
    /drawing [\d.]+ mm|rolls over|sinks|swamped/.exec(s.says)?.[0]
  const heron = demoCraft('heron')
  const plain = craftPicture(heron, metricLook)
  expect(water(craftPicture(on('heron', 'rider aft'), metricLook))).not.toBe(water(plain))
  expect(craftPicture(heron, metricLook, [], true).says).toMatch(/swamped/)
})
