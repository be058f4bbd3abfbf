import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { alloyOf, aluminium, strengthOf } from './alloys.ts'
import { beamMiddleLoad, flatBar, hatSection, withSkin } from './beams.ts'
import { oilCanStep, oilCanStepRectangle, panelBuckling } from './buckling.ts'
import { type DeckBay, deckBay, deckMassPerArea } from './deckBay.ts'
import { foamAllowable, foamOf, foams } from './foams.ts'
import { hatchNeeds } from './hatchHole.ts'
import { distanceFor, foamFace, pipeFlux, shieldedFoamFace, wrapSurface } from './hotFoam.ts'
import { lightestDeck } from './lightest.ts'
import { dropFactor } from './loads.ts'
import { pitchFor, rivetAllowable, rivetOf } from './rivets.ts'
import { sharedByFrame } from './sheetSpread.ts'

describe('foams', () => {
  test('what a foam may carry never passes its crush strength and never falls below nothing, at any heat', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...foams),
        fc.constantFrom('parked', 'foot', 'jump'),
        fc.double({ min: 250, max: 400, noNaN: true }),
        (f, l, T) => {
          const p = foamAllowable(f, l as 'foot', T)
          expect(p).toBeLessThanOrEqual(f.crush)
          expect(p).toBeGreaterThanOrEqual(0)
        },
      ),
    )
    expect(foamAllowable(foamOf('EPS 22'), 'foot', 348.15)).toBeGreaterThan(0)
  })
  test('feet are held to the 1 % strength where it is published', () => {
    expect(foamAllowable(foamOf('EPS 22'), 'foot')).toBe(50e3)
  })
  test('an unknown foam or alloy is answered with the list', () => {
    expect(() => foamOf('cork')).toThrow(/EPS 22/)
    expect(() => alloyOf('7075')).toThrow(/5052-H32/)
  })
})

describe('beams, buckling, rivets, hatch', () => {
  test('skin on a bar is stiffer than the bar, and a deeper bar stiffer still', () => {
    const bar = flatBar(0.03, 3e-3)
    expect(withSkin(bar, 1.5e-3, 0.045).inertia).toBeGreaterThan(bar.inertia)
    expect(withSkin(flatBar(0.04, 3e-3), 1.5e-3, 0.045).inertia).toBeGreaterThan(
      withSkin(bar, 1.5e-3, 0.045).inertia,
    )
    expect(hatSection(0.03, 0.03, 1.5e-3).area).toBeCloseTo(2 * 0.03 * 1.5e-3 + 0.027 * 1.5e-3, 12)
  })
  test('built-in ends halve the moment and quarter the deflection of a middle load', () => {
    const s = withSkin(flatBar(0.03, 3e-3), 1.5e-3, 0.045)
    const free = beamMiddleLoad(s, 0.5, 900, aluminium.modulus, 0)
    const fixed = beamMiddleLoad(s, 0.5, 900, aluminium.modulus, 1)
    expect(fixed.moment / free.moment).toBeCloseTo(0.5, 12)
    expect(fixed.deflection / free.deflection).toBeCloseTo(0.25, 12)
  })
  test('a stiff frame shares a load evenly, a limp one leaves it on one stringer, and forces add up between', () => {
    const base = { load: 1000, stringer: 200, span: 0.5, spacing: 0.1, count: 5 }
    expect(sharedByFrame({ ...base, frame: 1e9 }).share).toBeCloseTo(1 / 5, 12)
    expect(sharedByFrame({ ...base, frame: 1e-6 }).share).toBe(1)
    // a closely spaced row of springs under the endless beam carries the whole load
    const spacing = 0.005
    const spring = (48 * 200) / 0.125
    const lambda = (spring / spacing / (4 * 50)) ** 0.25
    let sum = 0
    for (let i = -2000; i <= 2000; i++) {
      const x = Math.abs(i) * spacing
      sum +=
        spring *
        ((1000 * lambda) / (2 * (spring / spacing))) *
        Math.exp(-lambda * x) *
        (Math.cos(lambda * x) + Math.sin(lambda * x))
    }
    expect(sum).toBeCloseTo(1000, 0)
    expect(sharedByFrame({ ...base, frame: 50, spacing, count: 1000 }).share).toBeCloseTo(
      (lambda * spacing) / 2,
      12,
    )
    expect(() => sharedByFrame({ ...base, frame: 0 })).toThrow(/frame: 0/)
  })
  test('a square panel pops at the same step by both formulas, a thicker one later', () => {
    expect(oilCanStepRectangle(1.5e-3, 0.2, 0.2)).toBeCloseTo(oilCanStep(1.5e-3, 0.2), 12)
    expect(oilCanStep(3e-3, 0.2)).toBeCloseTo(4 * oilCanStep(1.5e-3, 0.2), 9)
    expect(panelBuckling(3e-3, 0.2)).toBeCloseTo(4 * panelBuckling(1.5e-3, 0.2), 3)
  })
  test('rivets in a pulled deck: the pitch that carries 70 N/mm', () => {
    const r = rivetOf(4.8e-3)
    expect(rivetAllowable(r, 215e6, 2e-3)).toBeCloseTo(575, 9)
    expect(pitchFor(70e3, r, 215e6, 2e-3)).toBeCloseTo(575 / 70e3, 9)
    expect(() => rivetOf(6e-3)).toThrow(/3.2, 4.0 or 4.8 mm/)
  })
  test('a hatch asks for its cut section back, and round corners', () => {
    const h = hatchNeeds({
      length: 0.4,
      width: 0.3,
      t: 2e-3,
      cornerRadius: 0.0375,
      cut: 2,
      stringerInertia: 1e-8,
    })
    expect(h.doubler * 2).toBeCloseTo(0.3 * 2e-3, 12)
    expect(h.concentration).toBeCloseTo(1.6, 12)
    expect(
      hatchNeeds({ length: 0.4, width: 0.3, t: 2e-3, cornerRadius: 0, cut: 0, stringerInertia: 0 })
        .concentration,
    ).toBe(3)
    expect(() =>
      hatchNeeds({ length: 0, width: 1, t: 1, cornerRadius: 0, cut: 0, stringerInertia: 0 }),
    ).toThrow(RangeError)
  })
  test('a load put on at once counts double, one dropped more', () => {
    expect(dropFactor(0, 20e3, 883)).toBe(2)
    expect(dropFactor(0.2, 20e3, 883)).toBeGreaterThan(3)
  })
  test('welding takes strength away, never adds', () => {
    for (const id of ['5052-H32', '5083-O/H111', '6061-T6']) {
      const a = alloyOf(id)
      expect(strengthOf(a, true).yield).toBeLessThanOrEqual(strengthOf(a, false).yield)
    }
  })
})

describe('heat', () => {
  const spot = {
    radius: 0.04,
    distance: 0.12,
    pipe: 673,
    air: 303,
    emissivity: 0.8,
    film: 8,
    conductivity: 0.035,
    depth: 0.1,
    cool: 293,
  }
  test('the steady face takes in what it gives away', () => {
    const f = foamFace(spot)
    expect(f.converged).toBe(true)
    expect(f.residual).toBeLessThan(1e-6)
    expect(pipeFlux(spot, f.value)).toBeGreaterThan(0)
  })
  test('farther is cooler, a shield is cooler still', () => {
    expect(foamFace({ ...spot, distance: 0.2 }).value).toBeLessThan(foamFace(spot).value)
    const s = shieldedFoamFace(spot, { emissivity: 0.1, film: 8 })
    expect(s.converged).toBe(true)
    expect(s.value.foam).toBeLessThan(foamFace(spot).value - 50)
    expect(s.value.shield).toBeGreaterThan(s.value.foam)
  })
  test('at the distance asked for, the face is at its limit', () => {
    const d = distanceFor(spot, 338.15)
    expect(d.converged).toBe(true)
    expect(foamFace({ ...spot, distance: d.value }).value).toBeCloseTo(338.15, 3)
  })
  test('a thicker wrap is cooler outside', () => {
    expect(wrapSurface(673, 303, 0.02, 0.04, 0.08, 10).value).toBeLessThan(
      wrapSurface(673, 303, 0.02, 0.026, 0.08, 10).value,
    )
  })
})

describe('decks', () => {
  const bay: DeckBay = {
    name: 'b',
    length: 0.4,
    width: 0.35,
    t: 1.5e-3,
    alloy: alloyOf('5052-H32'),
    welded: false,
    held: false,
    support: { kind: 'alone' },
  }
  test('a heavier rider, a thinner sheet or a weld lowers the margin', () => {
    const base = deckBay(bay, 85).margin
    expect(deckBay(bay, 110).margin).toBeLessThan(base)
    expect(deckBay({ ...bay, t: 1e-3 }, 85).margin).toBeLessThan(base)
    expect(deckBay({ ...bay, welded: true }, 85).margin).toBeLessThan(base)
  })
  test('foam under a sheet takes most of its deflection', () => {
    const on = deckBay({ ...bay, support: { kind: 'foam', foam: foamOf('XPS 29'), depth: 0.1 } }, 85)
    expect(on.deflection).toBeLessThan(0.3 * deckBay(bay, 85).deflection)
    expect(on.loads[0]!.foam!.pressure).toBeGreaterThan(0)
  })
  test('hot foam carries less', () => {
    const on: DeckBay = { ...bay, support: { kind: 'foam', foam: foamOf('EPS 22'), depth: 0.1 } }
    expect(deckBay(on, 85, 352).margin).toBeLessThan(deckBay(on, 85).margin)
  })
  test('the lightest of the list holds, nothing lighter that was tried does, and the table has one of each kind', () => {
    const l = lightestDeck({
      length: 0.4,
      width: 0.35,
      rider: 85,
      alloy: alloyOf('5052-H32'),
      welded: false,
      held: false,
      foams,
      foamDepth: 0.15,
    })
    expect(l.holding.length).toBeGreaterThan(0)
    expect(l.holding[0]!.margin).toBeGreaterThanOrEqual(1)
    expect(new Set(l.compared.map((c) => c.bay.support.kind)).size).toBe(4)
    for (const c of l.compared)
      if (c.massPerArea < l.holding[0]!.massPerArea) expect(c.margin).toBeLessThan(1)
    expect(deckMassPerArea(l.holding[0]!.bay)).toBe(l.holding[0]!.massPerArea)
  })
  test('the search tells a true fraction, its first early answer already names the lightest, and it stops when called off', () => {
    const search = {
      length: 0.4,
      width: 0.35,
      rider: 85,
      alloy: alloyOf('5052-H32'),
      welded: false,
      held: false,
      foams: [foamOf('XPS 29')],
      foamDepth: 0.15,
    }
    const seen: number[] = []
    let first: string | undefined
    let total = 0
    const whole = lightestDeck(search, {
      progress: (i, of) => {
        seen.push(i)
        total = of
      },
      early: (a) => (first ??= a.holding[0]?.bay.name),
    })
    expect(seen).toEqual(Array.from({ length: total }, (_, i) => i))
    expect(whole.builds).toBe(total)
    expect(whole.tried).toBeLessThanOrEqual(total)
    expect(first).toBe(whole.holding[0]!.bay.name)
    let asked = 0
    expect(lightestDeck(search, { cancelled: () => ++asked > 5 }).tried).toBe(5)
  })
  test('a foot wider than the bay still gives a finite answer', () => {
    expect(Number.isFinite(deckBay({ ...bay, width: 0.06, length: 0.2 }, 85).margin)).toBe(true)
  })
})
