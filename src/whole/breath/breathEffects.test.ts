import { beforeAll, describe, expect, test } from 'vitest'
import { craftWith, sportEngine } from '../../trades/engine/twoStroke.testkit.ts'
import { type Effect, effectsOf, leverPaths } from './breathEffects.ts'

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

describe('effects of a longer diffuser and of more advance', () => {
  const [header, advance] = [`${at}.exhaust.pipe.1.length`, `${at}.ignition.advance`]
  const told: number[] = []
  let found: Effect[]
  beforeAll(() => {
    found = effectsOf(craft, 0, [advance, header, `${at}.no.such`], {
      progress: (part) => told.push(part),
    })!
  })

  test('come with the strongest first, and what makes no engine is left out', () => {
    expect(found.map((e) => e.path)).toEqual([header, advance])
    expect(told).toEqual([0, 1 / 3, 2 / 3])
  })

  test('are steps upwards: a twentieth of a length, a degree of an angle', () => {
    expect(found[0]!.step).toBeCloseTo(0.05 * 0.25, 12)
    expect(found[1]!.step).toBeCloseTo(Math.PI / 180, 12)
  })

  test('a longer pipe brings the peak down, further than a degree of spark moves it', () => {
    expect(found[0]!.rpm).toBeLessThan(0)
    expect(Math.abs(found[1]!.rpm)).toBeLessThan(Math.abs(found[0]!.rpm))
  })
})

test('called off before it begins it simulates nothing and answers nothing', () => {
  let asked = 0
  const cancelled = () => {
    asked++
    return true
  }
  expect(effectsOf(craft, 0, leverPaths(craft, 0), { cancelled })).toBeUndefined()
  // once before the first cycle, once after: a simulation asks at every cycle
  expect(asked).toBeLessThan(5)
})

test('an engine that cannot be simulated is refused by its path', () => {
  const peak = 'engines:\n  - { kind: peak, displacement: 60 cm³, power: 4 kW, power at: 7000 rpm }\n'
  expect(() => effectsOf(craftWith(peak), 0, [])).toThrow(/^engines\.0 /)
})
