import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { bendAllowance, bendDeduction, neutralLayer, neutralMeasured } from './bends.ts'
import { developBracket } from './bracket.ts'
import { developCone } from './cone.ts'
import { capBlank, endCap, shapedCap } from './endCap.ts'
import { flangePlate, gasketOf } from './flangePlate.ts'
import { areaOf, distanceTo, isInside } from './outlines.ts'
import { netArea } from './plate.ts'
import { developBox, developOval, developProfile, wrapLength } from './profile.ts'
import { proveFold } from './refold.ts'
import { developSaddle, plateHole, saddleHole } from './saddle.ts'
import { tight } from './seam.ts'
import { rimLength, spaceRim } from './strip.ts'

const sheeting = { id: 's', title: 'Sheet part', thickness: 1e-3, seam: tight }
const between = (min: number, max: number) => fc.double({ min, max, noNaN: true })
const runs = { numRuns: 40 }

describe('a saddle', () => {
  const saddle = fc
    .record({
      branchRadius: between(0.005, 0.03),
      wider: between(1.02, 3),
      angle: between(0.6, 2.5),
      off: between(-0.9, 0.9),
    })
    .map(({ branchRadius, wider, angle, off }) => ({
      branchRadius,
      headerRadius: branchRadius * wider,
      angle,
      offset: off * branchRadius * (wider - 1),
      length: 12 * branchRadius * wider,
    }))
  test('rolls up, its seam closes, and its rim lies on the header and in the header’s hole', () => {
    fc.assert(
      fc.property(saddle, (s) => {
        const [strip] = developSaddle(s, sheeting).strips
        const { edge, seam } = proveFold(strip!)
        expect(edge).toBeLessThan(1e-4)
        expect(seam).toBeLessThan(1e-4)
        const hole = saddleHole(s, s.headerRadius, 720)
        for (const [k, [x, y, z]] of spaceRim(strip!, 'far').entries()) {
          expect(Math.hypot(x, z)).toBeCloseTo(s.headerRadius, 9)
          if (k % 20 === 0)
            expect(distanceTo([s.headerRadius * Math.atan2(x, z), y], hole)).toBeLessThan(2e-5)
        }
      }),
      runs,
    )
  })
  test('of a branch wider than its header, or too short to leave it, is named', () => {
    const s = { branchRadius: 0.02, headerRadius: 0.03, angle: 1, offset: 0, length: 0.2 }
    expect(() => developSaddle({ ...s, branchRadius: 0.031 }, sheeting)).toThrow(/branchRadius.*wider/)
    expect(() => developSaddle({ ...s, offset: 0.011 }, sheeting)).toThrow(/branchRadius/)
    expect(() => developSaddle({ ...s, length: 0.03 }, sheeting)).toThrow(/length.*inside the header/)
    expect(() => developSaddle({ ...s, angle: 0 }, sheeting)).toThrow(/angle/)
  })
  test('through a plate square to it is round, leaning it is longer', () => {
    expect(plateHole(0.02, 0, 0)).toEqual({ minor: 0.02, major: 0.02 })
    expect(plateHole(0.02, Math.PI / 3, 0).major).toBeCloseTo(0.04, 12)
  })
})

describe('bent sheet', () => {
  test('a bend measured back gives the neutral layer it was made with', () => {
    fc.assert(
      fc.property(
        between(0.1, 2.5),
        between(0, 0.02),
        between(5e-4, 3e-3),
        between(0.3, 0.5),
        (angle, inside, thickness, k) => {
          const bend = { angle, inside, thickness, k }
          const legs = 0.1
          expect(neutralMeasured(legs - bendDeduction(bend), legs, bend)).toBeCloseTo(k, 9)
        },
      ),
      runs,
    )
  })
  test('the neutral layer of the standard rises with the radius to the middle of the sheet', () => {
    expect(neutralLayer(5e-3, 1e-3)).toBe(0.5)
    expect(neutralLayer(4.99e-3, 1e-3)).toBeCloseTo(0.5, 3)
    expect(neutralLayer(1e-3, 1e-3)).toBeLessThan(neutralLayer(2e-3, 1e-3))
  })
  test('a box and an oval close, roll up, and are as long as their bends and straights', () => {
    fc.assert(
      fc.property(
        between(0.05, 0.3),
        between(0.05, 0.3),
        between(1e-3, 0.02),
        between(0.3, 0.5),
        (a, b, inside, k) => {
          const made = developBox({ a, b, width: 0.2, inside, k }, sheeting)
          expect(rimLength(made.strips[0]!, 'near')).toBeCloseTo(wrapLength(a, b, inside, 1e-3, k), 9)
          expect(proveFold(made.strips[0]!).seam).toBeLessThan(1e-4)
          const oval = developOval({ straight: a, radius: b / 2, width: 0.2 }, sheeting)
          expect(rimLength(oval.strips[0]!, 'near')).toBeCloseTo(2 * a + Math.PI * b, 9)
          expect(proveFold(oval.strips[0]!).edge).toBeLessThan(1e-4)
        },
      ),
      runs,
    )
  })
  test('a profile that does not close, and bends that do not go in, are named', () => {
    const legs = [{ straight: 0.1, angle: 1 }, { straight: 0.1 }]
    expect(() => developProfile({ legs, width: 0.1, k: 0.4, closed: true }, sheeting)).toThrow(/legs.*apart/)
    expect(() => developProfile({ legs: [], width: 0.1, k: 0.4, closed: false }, sheeting)).toThrow(/legs/)
    expect(() => developProfile({ legs, width: 0.1, k: 0.9, closed: false }, sheeting)).toThrow(/k is/)
    expect(() => wrapLength(0.02, 0.1, 0.02, 1e-3, 0.4)).toThrow(/inside/)
  })
  test('a bracket keeps its holes’ distances from both free ends', () => {
    const b = { legs: [0.04, 0.03] as const, angle: Math.PI / 2, inside: 2e-3, width: 0.025, k: 0.4 }
    const holes = ([0, 1] as const).map((leg) => ({ leg, along: 0.02, across: 0.0125, diameter: 5e-3 }))
    const { piece, area } = developBracket({ ...b, holes }, sheeting)
    const long = area / b.width
    expect(long).toBeCloseTo(0.07 - bendDeduction({ ...b, thickness: 1e-3 }), 9)
    expect(bendAllowance({ ...b, thickness: 1e-3 })).toBeLessThan(long)
    const middles = piece.lines
      .filter((l) => l.use === 'hole')
      .map((l) => (Math.max(...l.points.map((p) => p[0])) + Math.min(...l.points.map((p) => p[0]))) / 2)
    expect(middles[0]).toBeCloseTo(0.02, 9)
    expect(middles[1]).toBeCloseTo(long - 0.01, 9)
    expect(() => developBracket({ ...b, legs: [0.04, 0.002], holes: [] }, sheeting)).toThrow(/legs\.1/)
    expect(() =>
      developBracket({ ...b, holes: [{ leg: 0, along: 2e-3, across: 0.01, diameter: 5e-3 }] }, sheeting),
    ).toThrow(/holes\.0/)
  })
})

describe('a seam', () => {
  const cone = { startRadius: 0.05, endRadius: 0.03, height: 0.1 }
  const cut = (seam: Parameters<typeof developCone>[1]['seam']) =>
    areaOf(developCone(cone, { ...sheeting, seam }).piece.lines[0]!.points)
  test('a gap takes half of itself off each edge, a lap adds its width, a little more for lying outside', () => {
    const slant = Math.hypot(0.1, 0.02)
    expect(cut({ kind: 'butt', gap: 1e-3 })).toBeCloseTo(cut(tight) - 1e-3 * slant, 6)
    const lap = cut({ kind: 'lap', width: 0.01 }) - cut(tight)
    const wide = 0.01 * (1 + 1e-3 / 0.05)
    expect(lap).toBeCloseTo(wide * slant - wide * wide, 6)
  })
  test('wider than the part is named', () => {
    expect(() => cut({ kind: 'butt', gap: 0.5 })).toThrow(/seam\.gap/)
    expect(() => cut({ kind: 'lap', width: 0.5 })).toThrow(/seam\.width/)
    expect(() => cut({ kind: 'lap', width: Number.NaN })).toThrow(/seam\.width/)
  })
})

describe('a cap', () => {
  test('has the area of what it becomes', () => {
    fc.assert(
      fc.property(between(0.05, 0.3), between(0, 0.02), between(0, 0.01), (d, f, s) => {
        const area = (Math.PI / 4) * d * d + Math.PI * s * s + Math.PI * d * f
        expect((Math.PI / 4) * capBlank(d, f, s) ** 2).toBeCloseTo(area, 9)
      }),
      runs,
    )
  })
  test('whose pipes reach its wall or each other is named', () => {
    const pipe = { radius: 0.015, x: 0, y: 0, lean: 0, clearance: 2e-4 }
    const cap = { id: 'c', title: 'Cap', thickness: 1e-3, diameter: 0.1, flange: 8e-3, rise: 3e-3 }
    expect(endCap({ ...cap, pipes: [pipe] }).lines.filter((l) => l.use === 'hole')).toHaveLength(1)
    expect(() => endCap({ ...cap, pipes: [{ ...pipe, x: 0.04 }] })).toThrow(/pipes\.0.*wall/)
    expect(() => endCap({ ...cap, pipes: [pipe, { ...pipe, x: 0.02 }] })).toThrow(/pipes\.1.*cuts/)
  })
})

describe('a cap of a box or an oval', () => {
  const cap = {
    id: 'c',
    title: 'Cap',
    thickness: 1e-3,
    length: 0.2,
    width: 0.1,
    corner: 0.05,
    flange: 0.01,
    inside: 2e-3,
    k: 0.4,
    pipes: [],
  }
  test('is as wide as a channel of the same flanges and bends', () => {
    const xs = shapedCap(cap).lines[0]!.points.map((p) => p[1])
    const legs = [
      { straight: 0.01 - 3e-3, angle: Math.PI / 2, inside: 2e-3 },
      { straight: 0.1 - 6e-3, angle: Math.PI / 2, inside: 2e-3 },
      { straight: 0.01 - 3e-3 },
    ]
    const channel = developProfile({ legs, width: 0.1, k: 0.4, closed: false }, sheeting)
    expect(Math.max(...xs) - Math.min(...xs)).toBeCloseTo(channel.area / 0.1, 9)
  })
  test('with corners too sharp to turn, or a pipe in its wall, is named', () => {
    expect(() => shapedCap({ ...cap, corner: 1e-3 })).toThrow(/corner/)
    expect(() =>
      shapedCap({ ...cap, pipes: [{ radius: 0.02, x: 0.09, y: 0, lean: 0, clearance: 0 }] }),
    ).toThrow(/pipes\.0/)
    expect(
      shapedCap({ ...cap, pipes: [{ radius: 0.02, x: 0.05, y: 0, lean: 0.3, clearance: 0 }] }).lines,
    ).toHaveLength(4)
  })
})

describe('a flange', () => {
  const flange = {
    id: 'f',
    title: 'Flange',
    thickness: 4e-3,
    bore: 0.04,
    boltCircle: 0.07,
    bolts: 3,
    bolt: 6e-3,
    play: 5e-4,
    land: 6e-3,
  }
  test('holds all its holes, and they leave metal between them', () => {
    fc.assert(
      fc.property(fc.integer({ min: 2, max: 8 }), between(0.02, 0.06), (bolts, bore) => {
        const f = { ...flange, bolts, bore, boltCircle: bore + 0.04 }
        const { lines } = flangePlate(f)
        const holes = lines.filter((l) => l.use === 'hole')
        expect(holes).toHaveLength(bolts + 1)
        for (const hole of holes)
          for (const p of hole.points) {
            expect(isInside(p, lines[0]!.points)).toBe(true)
            expect(distanceTo(p, lines[0]!.points)).toBeGreaterThan(f.land * 0.9)
          }
      }),
      runs,
    )
  })
  test('with a flap carries its seat and its hinge; its gasket has neither and a wider bore', () => {
    const f = { ...flange, boltCircle: 0.08, flap: { seat: 4e-3, hinge: 0.036, apart: 0.012, screw: 3e-3 } }
    expect(netArea(flangePlate(f))).toBeGreaterThan(0)
    expect(netArea(gasketOf(f, 2e-3, 1e-3))).toBeLessThan(
      netArea(flangePlate({ ...flange, boltCircle: 0.08 })),
    )
    expect(() => flangePlate({ ...f, flap: { ...f.flap, hinge: 0.02 } })).toThrow(/flap\.hinge.*seat/)
  })
  test('whose bolts cut its bore or each other is named with the least circle', () => {
    expect(() => flangePlate({ ...flange, boltCircle: 0.05 })).toThrow(/boltCircle.*land/)
    expect(() => flangePlate({ ...flange, bolts: 24 })).toThrow(/boltCircle.*each other/)
  })
})
