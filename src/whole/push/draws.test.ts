import fc from 'fast-check'
import { expect, test } from 'vitest'
import { type Craft, whatIf } from '../../craft/index.ts'
import { jetDoubts } from '../../trades/jet/jetFromCraft.ts'
import { MapStore, modelFromCraft } from './craftModel.ts'
import { demoCraft } from './demo.testkit.ts'
import { doubtsOf, drawsOf, leantBy } from './draws.ts'

const heron = demoCraft('heron')
const teal = demoCraft('teal')

test('every drawn value lies between its own bounds, and a low and a high draw reach them', () => {
  const { doubts, draw } = drawsOf(teal)
  const inside = (u: ArrayLike<number>) => {
    const { craft, leeway } = leantBy(teal, doubts, u)
    for (const d of doubts) {
      const got =
        d.path === 'rider.mass'
          ? craft.rider.mass.value
          : d.path === 'engines.1.power' && craft.engines[1]?.kind === 'peak'
            ? craft.engines[1].power.value
            : d.path === 'engines.1.curve trust'
              ? leeway.engines?.[1]?.torque
              : d.path === 'model.jet.turning'
                ? leeway.jet?.['model.jet.turning']
                : undefined
      if (got === undefined) continue
      expect(got).toBeGreaterThanOrEqual(d.low - 1e-9 * Math.abs(d.low))
      expect(got).toBeLessThanOrEqual(d.high + 1e-9 * Math.abs(d.high))
    }
  }
  fc.assert(fc.property(fc.nat(2 ** 20 - 1), (i) => inside(draw(i))))
  const high = leantBy(
    teal,
    doubts,
    doubts.map(() => 1),
  )
  expect(high.craft.rider.mass.value).toBeCloseTo(teal.rider.mass.high, 9)
  expect(high.leeway.jet?.[jetDoubts.turning.path]).toBe(jetDoubts.turning.high)
})

test('each of two engines has doubts of its own', () => {
  const paths = doubtsOf(teal).map((d) => d.path)
  expect(paths).toContain('engines.0.curve trust')
  expect(paths).toContain('engines.1.curve trust')
  expect(new Set(paths).size).toBe(paths.length)
})

test('what ends in a simulated torque curve is not drawn beside it, the place of its peak is', () => {
  const dabchick = demoCraft('dabchick')
  const curve = modelFromCraft(heron, new MapStore()).units[0]!.shaft.engines[0]!.curve
  const paths = doubtsOf(dabchick, new Map([[0, curve]])).map((d) => d.path)
  expect(paths.filter((p) => /exhaust|ports|inlet/.test(p))).toEqual([])
  expect(paths).toContain('engines.0.curve speed')
  const stretched = modelFromCraft(
    dabchick,
    new MapStore(),
    { engines: [{ torque: 1, rotation: 1.04 }] },
    new Map([[0, curve]]),
  )
  const engine = stretched.units[0]!.shaft.engines[0]!.curve
  expect(engine.powerPeak.rotation).toBeCloseTo(1.04 * curve.powerPeak.rotation, 9)
  expect(engine.powerPeak.power).toBeCloseTo(1.04 * curve.powerPeak.power, 6)
})

test('a draw left at its values is the craft as written, and a change moves the bounds along with it', () => {
  const doubts = doubtsOf(heron)
  const nothing = doubts.map(() => Number.NaN)
  const maps = new MapStore()
  const drawn = (craft: Craft, u: number[]) => {
    const leant = leantBy(craft, doubts, u)
    return modelFromCraft(leant.craft, maps, leant.leeway).units[0]!.spec
  }
  expect(drawn(heron, nothing)).toEqual(modelFromCraft(heron, maps).units[0]!.spec)
  const steeper = whatIf(heron, { 'jet.rotor.pitch': 0.12 })
  const least = drawn(
    steeper,
    doubts.map(() => 0),
  ).rotor
  const { pitch } = steeper.jet.rotor
  expect(least.pitchLeading).toBeCloseTo(pitch.low, 12)
  expect(pitch.low).toBeCloseTo(0.117, 9)
})
