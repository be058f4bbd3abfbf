import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { demoCraft } from '../../craft/craft.testkit.ts'
import { centreByTwoScales, heightByTilting, weightSum } from '../../hull/aboard/masses.ts'
import { floaterOf } from '../../hull/afloat/load.ts'
import { metacentricHeight, settle } from '../../hull/afloat/settle.ts'
import { hullFormOf } from '../../hull/mesh/meshForm.ts'
import { boxMesh } from '../../physics/solid/primitives.ts'
import { atRest } from './atRest.ts'
import { riderEnvelope } from './envelope.ts'
import { afloat, board, deg, sled } from './float.testkit.ts'
import { floatAnswer } from './floatAnswer.ts'
import { floatFromCraft } from './floatFromCraft.ts'
import { foamLift, submergedFactor } from './flotation.ts'
import { rightingOf } from './heeled.ts'
import type { FloatInput } from './input.ts'
import { leakRun } from './leak.ts'
import { leakFromInput } from './leakCase.ts'
import { heightOver } from './openingHeights.ts'
import { swampedBodies, wholeLift } from './swamped.ts'
import { holeFlow, inclinedGm } from './tests.ts'

describe('slack liquid', () => {
  const tank = (volume: number) => ({
    name: 't',
    mesh: boxMesh([1, -0.2, 0.05], [1.4, 0.2, 0.25]),
    volume,
    density: 745,
  })
  test('takes ρ·l·b³/12 over the displacement off GM, whatever the amount', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.003, max: 0.029, noNaN: true }), (v) => {
        const slack = settle(afloat(board, 150, [1.2, 0, 0.15], { liquids: [tank(v)] }))
        // the same liquid frozen in place
        const frozenZ = 0.05 + v / 0.16 / 2
        const m = 150 + 745 * v
        const solid = settle(
          afloat(board, m, [(150 * 1.2 + 745 * v * 1.2) / m, 0, (150 * 0.15 + 745 * v * frozenZ) / m]),
        )
        const loss = metacentricHeight(solid.state) - metacentricHeight(slack.state)
        expect(loss).toBeCloseTo((745 * 0.4 * 0.4 ** 3) / 12 / m, 8)
      }),
      { numRuns: 20 },
    )
  })
  test('pressed full or empty takes nothing', () => {
    const full = settle(afloat(board, 150, [1.2, 0, 0.15], { liquids: [tank(0.032)] }))
    const m = 150 + 745 * 0.032
    const solid = settle(afloat(board, m, [1.2, 0, (150 * 0.15 + 745 * 0.032 * 0.15) / m]))
    expect(metacentricHeight(full.state)).toBeCloseTo(metacentricHeight(solid.state), 10)
    const empty = settle(afloat(board, 150, [1.2, 0, 0.15], { liquids: [tank(0)] }))
    expect(metacentricHeight(empty.state)).toBeCloseTo(
      metacentricHeight(settle(afloat(board, 150, [1.2, 0, 0.15])).state),
      12,
    )
  })
  test('more than the tank holds is refused', () => {
    expect(() => afloat(board, 150, [1.2, 0, 0.1], { liquids: [tank(0.033)] })).toThrow(
      /0.033 m³, expected 0 to/,
    )
  })
})

describe('swamped', () => {
  const weights = [
    { name: 'hull', mass: 34, at: [1.12, 0, 0.12] as const },
    { name: 'engine', mass: 13.5, at: [0.7, 0, 0.2] as const, material: 4500 },
  ]
  const block = {
    name: 'foam',
    low: [0.3, -0.4, 0.1] as const,
    high: [2, 0.4, 0.24] as const,
    density: 30,
    soaked: 0.02,
  }
  const sealed = { name: 'all', from: -1, to: 9, sealed: true, permeability: 0.95 }
  test('a craft that is one sealed compartment floats as if intact', () => {
    const bodies = swampedBodies({ hull: sled, weights: [], foam: [], compartments: [sealed] })
    const a = settle(floaterOf({ bodies, mass: 100, centre: [1, 0, 0.15], density: 1000 }))
    const b = settle(afloat(sled.mesh, 100, [1, 0, 0.15]))
    expect(a.value.h).toBeCloseTo(b.value.h, 10)
    expect(a.value.trim).toBeCloseTo(b.value.trim, 10)
  })
  test('metal alone sinks by its weight under water', () => {
    const bodies = swampedBodies({ hull: sled, weights, foam: [], compartments: [] })
    const r = settle(floaterOf({ bodies, mass: 47.5, centre: [1, 0, 0.14], density: 1000 }))
    const want = 34 * submergedFactor(2700) + 13.5 * submergedFactor(4500)
    expect(r.deficit).toBeCloseTo(want, 8)
  })
  test('more foam never lowers the swamped deck', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.02, max: 0.09, noNaN: true }),
        fc.double({ min: 0.005, max: 0.05, noNaN: true }),
        (low, more) => {
          const height = (bottom: number) => {
            const foam = [{ ...block, low: [0.3, -0.4, bottom] as const }]
            const bodies = swampedBodies({ hull: sled, weights, foam, compartments: [] })
            const r = settle(floaterOf({ bodies, mass: 47.5, centre: [1.1, 0, 0.13], density: 1000 }))
            return heightOver(r.value, [1.1, 0, 0.24])
          }
          expect(height(low)).toBeGreaterThanOrEqual(height(low + more) - 1e-9)
        },
      ),
      { numRuns: 15 },
    )
  })
  test('foam inside a sealed compartment is not counted twice', () => {
    const bodies = swampedBodies({ hull: sled, weights: [], foam: [block], compartments: [sealed] })
    expect(wholeLift(bodies, 1000)).toBeCloseTo(1000 * sled.volume, 6)
  })
  test('the credit for foam stops at 881 kg/m³', () => {
    expect(foamLift(999, 30, 0.03)).toBe(881)
    expect(foamLift(999, 30, 0.2)).toBeCloseTo(999 - 30 - 199.8, 9)
  })
})

describe('openings and leaks', () => {
  test('the time of a leak hardly hangs on its steps, and its end is where no more comes in', () => {
    const { input } = floatFromCraft(demoCraft('heron'))
    const ends = [24, 240].map((steps) => leakFromInput(input, atRest(input).nobody, 0.01, steps).run)
    expect(ends[0]!.endTime / ends[1]!.endTime).toBeCloseTo(1, 2)
    expect(ends[0]!.water.at(-1)! / ends[1]!.water.at(-1)!).toBeCloseTo(1, 2)
    for (const run of ends) expect(run.time).toEqual([...run.time].sort((a, b) => a - b))
  })
  test('a hole lets in 0.6 A √(2gz), and nothing when dry', () => {
    expect(holeFlow(Math.PI * 0.005 ** 2, 0.1)).toBeCloseTo(6.6e-5, 7)
    expect(holeFlow(1e-4, -0.1)).toBe(0)
  })
  test('a board with a hole in its bottom fills, and the intake goes under before it sinks', () => {
    const run = leakRun({
      load: {
        bodies: [{ name: 'b', mesh: board, share: 1 }],
        mass: 250,
        centre: [1.2, 0, 0.1],
        density: 1000,
      },
      space: board,
      permeability: 0.9,
      holes: [{ name: 'hole', at: [0.1, 0, 0], area: 1e-4 }],
      openings: [{ name: 'intake', kind: 'air intake', at: [1.2, 0, 0.4], area: 0 }],
    })
    expect(['sinks', 'goes over']).toContain(run.end)
    for (let i = 1; i < run.time.length; i++) expect(run.time[i]!).toBeGreaterThan(run.time[i - 1]!)
    for (let i = 1; i < run.water.length; i++) expect(run.water[i]!).toBeGreaterThan(run.water[i - 1]!)
  })
  test('a hole above the water lets nothing in', () => {
    const run = leakRun({
      load: {
        bodies: [{ name: 'b', mesh: board, share: 1 }],
        mass: 100,
        centre: [1.2, 0, 0.1],
        density: 1000,
      },
      space: board,
      permeability: 0.9,
      holes: [{ name: 'hole', at: [0.1, 0, 0.25], area: 1e-4 }],
      openings: [],
    })
    expect(run.end).toBe('no more comes in')
    expect(run.endTime).toBe(0)
  })
  test('twice the hole, half the time', () => {
    const time = (area: number) =>
      leakRun({
        load: {
          bodies: [{ name: 'b', mesh: board, share: 1 }],
          mass: 250,
          centre: [1.2, 0, 0.1],
          density: 1000,
        },
        space: board,
        permeability: 0.9,
        holes: [{ name: 'hole', at: [1.2, 0, 0], area }],
        openings: [],
        steps: 40,
      }).endTime
    expect(time(2e-4)).toBeCloseTo(time(1e-4) / 2, 6)
  })
})

describe('the rider’s room', () => {
  const room = (riderHeight: number) =>
    riderEnvelope({
      hull: sled,
      craft: {
        bodies: [{ name: 'h', mesh: sled.mesh, share: 1 }],
        mass: 64,
        centre: [1, 0, 0.13],
        density: 1000,
      },
      rider: 75,
      riderHeight,
      grid: 0.1,
    })
  test('shrinks as the weight stands higher, and holds the middle when upright is stable', () => {
    const low = room(0)
    const high = room(0.2)
    expect(low.share).toBeGreaterThan(high.share)
    expect(high.share).toBeGreaterThan(0)
    const i = low.x.findIndex((x) => Math.abs(x - 1.05) < 0.01)
    const j = low.y.findIndex((y) => Math.abs(y) < 1e-9)
    expect(low.inside[i * low.y.length + j]).toBe(1)
  })
  test('is the same on both sides of a symmetric craft', () => {
    const e = room(0.1)
    const n = e.y.length
    for (let i = 0; i < e.x.length; i++)
      for (let j = 0; j < n; j++) expect(e.inside[i * n + j]).toBe(e.inside[i * n + (n - 1 - j)])
  })
  test('nobody fits where upright is not stable', () => {
    expect(room(0.9).share).toBe(0)
  })
})

describe('weights', () => {
  test('total, centre and inertia are sums, and their doubt adds as squares', () => {
    const s = weightSum([
      { name: 'a', mass: 10, at: [0, 0, 0], give: 0.3 },
      { name: 'b', mass: 30, at: [2, 0, 0.4], give: 0.4, size: [1, 0.5, 0.2] },
    ])
    expect(s.mass).toBe(40)
    expect(s.centre).toEqual([1.5, 0, 0.3])
    expect(s.give).toBeCloseTo(0.5, 12)
    expect(s.giveCentre[0]).toBeCloseTo(Math.hypot(0.3 * 1.5, 0.4 * 0.5) / 40, 12)
    expect(s.inertia[1]).toBeCloseTo(
      10 * (1.5 ** 2 + 0.3 ** 2) + 30 * (0.5 ** 2 + 0.1 ** 2) + 2.5 * (1 + 0.04),
      10,
    )
  })
  test('a negative weight is refused with its path', () => {
    expect(() => weightSum([{ name: 'x', mass: -1, at: [0, 0, 0] }])).toThrow(
      /weights\[0\].mass \(x\): -1 kg/,
    )
  })
  test('two scales find the centre, and tilting its height', () => {
    expect(centreByTwoScales(0, 30, 2, 10)).toBeCloseTo(0.5, 12)
    // centre 0.8 m along and 0.25 m above the hooks: tilted by 15° the plumb line meets the craft's length 0.25·tan 15° farther aft
    const tilt = 15 * deg
    expect(heightByTilting(0.8, 0.8 - 0.25 * Math.tan(tilt), tilt)).toBeCloseTo(0.25, 12)
  })
  test('the inclining test gives back the GM that made the heel', () => {
    const f = afloat(board, 150, [1.2, 0, 0.2])
    const gm = metacentricHeight(settle(f).state)
    const heeled = settle(afloat(board, 150, [1.2, (5 * 0.2) / 150, 0.2]))
    expect(inclinedGm(5, 0.2, 150, heeled.value.heel) / gm).toBeCloseTo(1, 2)
  })
})

describe('form data', () => {
  test('wetted surface is not below the waterplane and rises with draft', () => {
    let before = 0
    for (let h = 0.02; h < 0.23; h += 0.02) {
      const f = hullFormOf(sled.mesh, { h })!
      if (h < 0.2) expect(f.wettedSurface).toBeGreaterThanOrEqual(f.waterplaneArea)
      expect(f.wettedSurface).toBeGreaterThan(before)
      before = f.wettedSurface
    }
  })
  test('a box has the form of a box', () => {
    const f = hullFormOf(board, { h: 0.1 })!
    expect(f.volume).toBeCloseTo(0.168, 12)
    expect(f.wettedSurface).toBeCloseTo(2.4 * 0.7 + 2 * 0.1 * (2.4 + 0.7), 10)
    expect(f.transomArea).toBeCloseTo(0.07, 6)
    expect(f.greatestSection).toBeCloseTo(0.07, 6)
    expect(f.waterlineLength).toBeCloseTo(2.4, 10)
    expect(f.waterlineBeam).toBeCloseTo(0.7, 10)
    expect(f.bmTransverse).toBeCloseTo(0.7 ** 2 / 12 / 0.1, 10)
    expect(hullFormOf(board, { h: -0.1 })).toBeUndefined()
  })
})

describe('the whole answer', () => {
  const input: FloatInput = {
    hull: sled,
    water: 999,
    weights: [
      { name: 'hull and deck', mass: 34, at: [1.12, 0, 0.12], give: 1.5 },
      { name: 'engine', mass: 20, at: [0.72, 0, 0.2] },
      { name: 'tank', mass: 8, at: [1.45, 0, 0.16] },
    ],
    rider: { mass: 78, stature: 1.76, stance: 'kneeling', x: 0.95, y: 0 },
    openings: [{ name: 'intake', kind: 'air intake', at: [1.3, 0, 0.45], area: 0 }],
    foam: [{ name: 'bow', low: [1.7, -0.4, 0.05], high: [2.3, 0.4, 0.22], density: 30, soaked: 0.02 }],
    compartments: [],
  }
  const a = floatAnswer(input)
  const find = (name: string) => a.cases.find((c) => c.name === name)!
  test('the higher the stance, the lower GM with a stiff rider; on his feet it is the same', () => {
    expect(find('prone').gmRigid).toBeGreaterThan(find('kneeling').gmRigid)
    expect(find('kneeling').gmRigid).toBeGreaterThan(find('standing').gmRigid)
    expect(find('standing').gmFeet).toBeCloseTo(find('prone').gmFeet, 12)
  })
  test('the foam it asks for keeps the swamped craft up and upright with the rider aboard', () => {
    expect(find('swamped, rider aboard').sinks).toBe(true)
    expect(a.need.fitted).toBeGreaterThanOrEqual(a.need.volume - 1e-6)
    expect(a.need.upright).toBe(true)
    expect(a.need.gm).toBeGreaterThan(0)
    expect(Math.abs(a.need.rest.value.trim)).toBeLessThan(10 * deg)
  })
  test('a weight outside the hull is asked about', () => {
    const odd = floatAnswer({
      ...input,
      weights: [...input.weights, { name: 'anchor', mass: 1, at: [4, 0, 0] }],
    })
    expect(odd.flags.map((f) => f.text).join()).toMatch(/anchor.*outside the hull.*meant/)
  })
  test('a load beyond the hull says it sinks, and the page still has its parts', () => {
    const heavy = floatAnswer({ ...input, weights: [{ name: 'lead', mass: 400, at: [1, 0, 0.1] }] })
    expect(heavy.cases[0]!.sinks).toBe(true)
    expect(heavy.cases[0]!.deficit).toBeGreaterThan(0)
  })
  test('the righting arm is higher with a rider who balances than with a stiff one, and empty when it sinks', () => {
    const free = rightingOf(input, 'rider')
    const stiff = rightingOf(input, 'stiff rider')
    expect(free.converged && stiff.converged).toBe(true)
    expect(free.greatest.arm).toBeGreaterThan(stiff.greatest.arm)
    expect(free.deckEdge).toBeGreaterThan(0)
    expect(
      rightingOf({ ...input, weights: [{ name: 'lead', mass: 400, at: [1, 0, 0.1] }] }, 'nobody').heel.length,
    ).toBe(0)
  })
})
