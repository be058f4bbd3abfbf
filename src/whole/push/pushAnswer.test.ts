import { expect, test } from 'vitest'
import { madeUpBalance } from './balance.testkit.ts'
import { demoCraft } from './demo.testkit.ts'
import { driverName, pushAnswer } from './pushAnswer.ts'
import { inchLook, metricLook } from './shown.ts'

const craft = demoCraft('heron')

test('the answer says speed, pull, rotation and what to do about the pitch, in the units asked for', () => {
  const answer = pushAnswer(craft, madeUpBalance(), metricLook)
  expect(answer.says).toBe(
    'It should reach 35.6 km/h and pull 420 N tied up at 6840 rpm. The impeller looks too steep: 96 to 112 mm of pitch would do best, it has 118 mm (at 104 mm: +14 N of pull, +1.9 km/h).',
  )
  expect(answer.range).toBe('33 to 38 km/h, 386 to 454 N')
  expect(pushAnswer(craft, madeUpBalance(), inchLook).says).toContain('22.1 mph and pull 94 lbf')
})

test('without ranges the answer claims none', () => {
  const quick = { ...madeUpBalance(), ranged: false }
  expect(Object.keys(pushAnswer(craft, quick, metricLook))).toEqual(['says'])
})

test('a craft that stays below the hump, has no top speed or cannot turn its impeller says so', () => {
  const stuck = madeUpBalance()
  stuck.run.stuck = true
  expect(pushAnswer(craft, stuck, metricLook).says).toContain('below the hump')
  const fast = madeUpBalance()
  delete fast.top
  expect(pushAnswer(craft, fast, metricLook).says).toContain('beyond what the model covers')
  const held = madeUpBalance()
  delete held.top
  held.limitedBy = {
    code: 'cavitation',
    says: 'The jet does not move it: 3 N tied up, less than the drag at any speed.',
  }
  expect(pushAnswer(craft, held, metricLook).says).toMatch(
    /^It will hardly move\. The jet does not move it: 3 N/,
  )
  const dead = madeUpBalance()
  dead.tiedUp.rotation = Number.NaN
  dead.verdict.code = 'unknown'
  expect(pushAnswer(craft, dead, metricLook).says.trim()).toBe(
    'It will not go: the engines cannot turn this impeller.',
  )
})

test('a doubtful input is named by what it is part of', () => {
  const name = (path: string) =>
    driverName(craft, {
      path,
      says: path,
      source: 'guess',
      rotation: 1,
      pull: 1,
      topSpeed: 1,
      share: { rotation: 1, pull: 1, topSpeed: 1 },
    })
  expect(name('jet.rotor.pitch')).toBe('the impeller’s pitch')
  expect(name('drive.efficiency')).toBe('the drive’s efficiency')
  expect(name('weights.0.mass')).toBe(`the ${craft.weights[0]!.name}’s mass`)
  // of two engines each goes by its own name
  const teal = demoCraft('teal')
  const of = (i: number) =>
    driverName(teal, {
      ...madeUpBalance().drivers[0]!,
      path: `engines.${i}.power`,
      says: `engines.${i}.power`,
    })
  expect(of(0)).not.toBe(of(1))
  expect(of(0)).toContain(teal.engines[0]!.name)
})

test('the doubt is shared out by variance, and two inputs alike are named once each', () => {
  const b = madeUpBalance()
  const share = (topSpeed: number) => ({ rotation: 0, pull: 0, topSpeed })
  const d = b.drivers[0]!
  b.drivers = [
    { ...d, path: 'drive.efficiency', says: 'drive.efficiency', share: share(0.2) },
    { ...d, path: 'model.drag', says: 'the drag of the hull', share: share(0.461) },
  ]
  expect(pushAnswer(craft, b, metricLook).confidence).toBe(
    '66 % of the doubt comes from the drag of the hull and the drive’s efficiency.',
  )
})
