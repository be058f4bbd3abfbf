import { expect, test } from 'vitest'
import { craftWith, sportEngine } from '../../engine/twoStroke.testkit.ts'
import { effectsOf, leverPaths } from './effects.ts'

const craft = craftWith(sportEngine)
const at = 'engines.0'

test('the levers of a two-stroke are paths of its file; a plain curve has none', () => {
  const paths = leverPaths(craft, 0)
  expect(paths).toContain(`${at}.exhaust.pipe.4.length`)
  expect(paths).toContain(`${at}.exhaust.stinger.bore`)
  expect(new Set(paths).size).toBe(paths.length)
  expect(
    leverPaths(
      craftWith('engines:\n  - { kind: peak, displacement: 60 cm³, power: 4 kW, power at: 7000 rpm }\n'),
      0,
    ),
  ).toEqual([])
})

test('a longer pipe brings the peak down, an earlier exhaust is not asked for: the step is upwards', () => {
  const [effect] = effectsOf(craft, 0, [`${at}.exhaust.pipe.1.length`])!
  expect(effect!.step).toBeCloseTo(0.05 * 0.25, 12)
  expect(effect!.rpm).toBeLessThan(0)
})

test('effects come with the strongest first, and what makes no engine is left out', () => {
  const found = effectsOf(craft, 0, [
    `${at}.ignition.advance`,
    `${at}.exhaust.pipe.1.length`,
    `${at}.no.such`,
  ])!
  expect(found).toHaveLength(2)
  expect(found[0]!.path).toBe(`${at}.exhaust.pipe.1.length`)
})

test('called off it answers nothing', () => {
  expect(effectsOf(craft, 0, leverPaths(craft, 0), { cancelled: () => true })).toBeUndefined()
})
