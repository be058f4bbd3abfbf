import { expect, test } from 'vitest'
import { whatIf } from '../../craft/index.ts'
import { MapStore, modelFromCraft } from './craftModel.ts'
import { demoCraft } from './demo.testkit.ts'
import { humpWanted, meritOf, strengthUse } from './merit.ts'
import { probe } from './probe.ts'
import { dragTableOf, type QuickSums, quickSums } from './quickSums.ts'

const maps = new MapStore(200)

test.each(['sandpiper', 'heron', 'teal'] as const)(
  '%s summed up quickly has the pull and the top speed of the whole balance, over and below the hump',
  (name) => {
    const craft = demoCraft(name)
    for (const share of [0.55, 0.7, 0.9, 1, 1.2, 1.4]) {
      const pitch = share * craft.jet.rotor.pitch.value
      const model = modelFromCraft(whatIf(craft, { 'jet.rotor.pitch': pitch }), maps)
      const quick = quickSums(model, dragTableOf(model))
      const whole = probe(model, 44)
      expect(quick.pull / whole.pull, `${share}`).toBeCloseTo(1, 6)
      expect(quick.topSpeed / whole.topSpeed, `${share}`).toBeCloseTo(1, 2)
      expect(quick.rotation).toBeCloseTo(whole.rotation, 6)
    }
  },
)

test('engines that cannot turn the impeller have no pull and no merit', () => {
  const heron = demoCraft('heron')
  const stuck = modelFromCraft(whatIf(heron, { 'drive.ratio': 0.2, 'jet.rotor.pitch': 0.3 }), maps)
  const sums = quickSums(stuck, dragTableOf(stuck))
  expect(sums.pull).toBeNaN()
  expect(sums.topSpeed).toBeNaN()
  expect(meritOf('both', sums)).toBe(0)
})

const some: QuickSums = {
  pull: 400,
  topSpeed: 10,
  hump: 2,
  rotation: 100,
  topRotation: 105,
  ofRedline: 0.9,
  choked: false,
}

test('merit weighs pull and speed alike unless the craft file wants one, and the hump before both', () => {
  const better = (wants: Parameters<typeof meritOf>[0], more: Partial<QuickSums>) =>
    meritOf(wants, { ...some, ...more }) / meritOf(wants, some)
  expect(better('both', { pull: 800 })).toBeCloseTo(Math.SQRT2, 9)
  expect(better('both', { topSpeed: 20 })).toBeCloseTo(Math.SQRT2, 9)
  expect(better('pull', { topSpeed: 20 })).toBeCloseTo(1, 9)
  expect(better('speed', { pull: 800 })).toBeCloseTo(1, 9)
  expect(better('plane', { hump: 3 })).toBeCloseTo(1.5, 9)
  // more than enough at the hump is worth nothing by itself, too little costs more than it can be worth elsewhere
  expect(better('both', { hump: humpWanted })).toBeCloseTo(1, 9)
  expect(better('both', { hump: humpWanted * 0.9 })).toBeLessThan(0.85)
})

test('engines past their redline, blades past their strength and choked passages lower the merit', () => {
  const at = (more: Partial<QuickSums>, strength?: number) => meritOf('both', { ...some, ...more }, strength)
  expect(at({ ofRedline: 1.05 })).toBeLessThan(0.6 * at({}))
  expect(at({ choked: true })).toBeLessThan(at({}))
  expect(at({}, 0.9)).toBe(at({}))
  expect(at({}, 1.5)).toBeLessThan(at({}))
})

test('thinner roots and weaker prints use more of their strength; metal is not counted', () => {
  const model = modelFromCraft(demoCraft('heron'), maps)
  const sums = quickSums(model, dragTableOf(model))
  const { spec } = model.units[0]!
  const root = (t: number) => ({ ...spec, rotor: { ...spec.rotor, rootThickness: t } })
  expect(strengthUse('PETG', root(0.006), sums)).toBeGreaterThan(strengthUse('PETG', root(0.009), sums))
  expect(strengthUse('ASA', spec, sums)).toBeGreaterThan(strengthUse('PA12-CF', spec, sums))
  expect(strengthUse('bronze', spec, sums)).toBeNaN()
})
