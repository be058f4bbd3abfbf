import { expect, test } from 'vitest'
import { printed } from '../../base/answers/sentence.ts'
import { madeUpBalance } from './balance.testkit.ts'
import { demoCraft } from './demo.testkit.ts'
import { driverName } from './pushAnswer.ts'
import { pushFindings } from './pushFindings.ts'
import { pushHeadline } from './pushHeadline.ts'

const craft = demoCraft('heron')

const says = (b: ReturnType<typeof madeUpBalance>, system: 'metric' | 'inch' = 'metric') =>
  printed(pushHeadline(craft, b).says, system)

test('the headline says speed, pull and rotation with their ranges, in the units asked for', () => {
  expect(says(madeUpBalance())).toMatch(
    /^It should reach 35\.6 km\/h \([\d.]+ to [\d.]+ km\/h\) and pull 420 N \(386 to 454 N\), 43 kg on a luggage scale, tied up at 6840 rpm\.$/,
  )
  expect(says(madeUpBalance(), 'inch')).toContain('22.1 mph')
})

test('a craft that stays below the hump, has no top speed or cannot turn its impeller says so', () => {
  const stuck = madeUpBalance()
  stuck.run.stuck = true
  expect(says(stuck)).toContain('below the hump')
  const fast = madeUpBalance()
  delete fast.top
  expect(says(fast)).toContain('beyond what the model covers')
  const held = madeUpBalance()
  delete held.top
  held.limitedBy = { code: 'cavitation', says: 'The jet does not move it: 3 N tied up.' }
  expect(says(held)).toBe('It will hardly move. The jet does not move it: 3 N tied up.')
  const dead = madeUpBalance()
  dead.tiedUp.rotation = Number.NaN
  dead.verdict.code = 'unknown'
  expect(says(dead)).toBe('It will not go: the engines cannot turn this impeller.')
  expect(pushHeadline(craft, dead).standing).toBe('stop')
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
  expect(printed(pushHeadline(craft, b).because[0]!.says)).toBe(
    '66 % of the doubt comes from the drag of the hull and the drive’s efficiency',
  )
})

test('the pull is one to watch only where there is no steady state; stall and vapour are judged with the jet', () => {
  const pull = (code?: string) => {
    const b = madeUpBalance()
    b.tiedUp.flags = code ? [{ code, text: 'what it is' }] : []
    return pushFindings(craft, b).find((f) => f.id === 'push.pull')!.standing
  }
  expect(pull()).toBe('good')
  expect(pull('cavitation')).toBe('good')
  expect(pull('not settled')).toBe('watch')
  expect(pull('not converged')).toBe('watch')
})
