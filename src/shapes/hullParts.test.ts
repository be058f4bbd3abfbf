import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { deckPanel, doublerOf } from './deckPanel.ts'
import { deckSkin } from './deckSkin.ts'
import { hullFrame } from './hullFrame.ts'
import { areaOf, distanceTo, isInside, lengthOf } from './outlines.ts'
import type { Vec } from './placing.ts'
import { netArea } from './plate.ts'
import { tight } from './seam.ts'

const sheeting = { id: 's', title: 'Skin', thickness: 1e-3, seam: tight }
const between = (min: number, max: number) => fc.double({ min, max, noNaN: true })
const runs = { numRuns: 40 }

describe('a panel', () => {
  const outline: [number, number][] = [
    [0, 0],
    [0.6, 0],
    [0.5, 0.4],
    [0, 0.4],
  ]
  const rivets = { diameter: 4e-3, pitch: 0.03, edge: 0.01 }
  test('carries rivets at their edge distance, no farther apart than the pitch', () => {
    fc.assert(
      fc.property(between(0.012, 0.08), between(4e-3, 0.02), (pitch, edge) => {
        const { lines } = deckPanel({
          id: 'd',
          title: 'Deck',
          thickness: 1e-3,
          outline,
          rivets: { ...rivets, pitch, edge },
        })
        const at = lines
          .filter((l) => l.use === 'hole')
          .map(
            ({ points }) =>
              [
                points.reduce((s, p) => s + p[0], 0) / points.length,
                points.reduce((s, p) => s + p[1], 0) / points.length,
              ] as const,
          )
        at.forEach((p, i) => {
          expect(distanceTo(p, outline)).toBeCloseTo(edge, 6)
          const next = at[(i + 1) % at.length]!
          expect(Math.hypot(p[0] - next[0], p[1] - next[1])).toBeLessThan(pitch + 1e-9)
        })
      }),
      runs,
    )
  })
  test('has its openings cut, and a doubler as wide as asked round them', () => {
    const hatch = { x: 0.25, y: 0.2, length: 0.2, width: 0.15, corner: 0.025 }
    const panel = deckPanel({ id: 'd', title: 'Deck', thickness: 1e-3, outline, hatches: [hatch] })
    const hole = 0.2 * 0.15 - (4 - Math.PI) * 0.025 ** 2
    expect(netArea(panel)).toBeCloseTo(areaOf(outline) - hole, 5)
    const ring = doublerOf(hatch, 0.03, rivets, { id: 'r', title: 'Ring', thickness: 1e-3 })
    expect(lengthOf(ring.lines[0]!.points, true)).toBeCloseTo(
      2 * (0.2 + 0.15) - 8 * 0.025 + 2 * Math.PI * 0.055,
      4,
    )
    expect(() =>
      deckPanel({ id: 'd', title: 'Deck', thickness: 1e-3, outline, hatches: [{ ...hatch, x: 0.55 }] }),
    ).toThrow(/hatches\.0/)
    expect(() => deckPanel({ id: 'd', title: 'Deck', thickness: 1e-3, outline: [] })).toThrow(/outline/)
  })
})

describe('a frame', () => {
  const section: [number, number][] = [
    [0, 0],
    [0.25, 0.05],
    [0.3, 0.2],
    [0, 0.23],
  ]
  const frame = {
    id: 'f',
    title: 'Frame',
    thickness: 3e-3,
    section,
    skin: 2e-3,
    depth: 0.03,
    stringers: [{ y: 0.1, width: 0.02, height: 0.015 }],
    limber: 0.01,
  }
  test('lies inside the lines by the skin, is the same on both sides, and lets stringers and water through', () => {
    const { lines } = hullFrame(frame)
    const whole = [...section, [-0.3, 0.2] as const, [-0.25, 0.05] as const]
    for (const p of lines[0]!.points) {
      expect(isInside(p, whole)).toBe(true)
      expect(distanceTo(p, whole)).toBeGreaterThan(2e-3 - 1e-9)
    }
    expect(lines.filter((l) => l.use === 'hole')).toHaveLength(1)
    // a notch for each stringer on both sides and a half round for water on both sides of the keel
    const bare = hullFrame({ ...frame, stringers: [], limber: 0 }).lines[0]!.points
    const cut = areaOf(bare) - areaOf(lines[0]!.points)
    expect(cut).toBeGreaterThan(2 * (0.02 * 0.015 + Math.PI * 0.005 ** 2 * 0.4))
    expect(cut).toBeLessThan(2 * 0.02 * (0.015 + 0.02 * 0.2) + 2 * 0.01 * (0.005 + 0.01 * 0.2))
    const xs = lines[0]!.points.map((p) => p[0])
    expect(Math.max(...xs)).toBeCloseTo(-Math.min(...xs), 12)
  })
  test('that has no room for its ring, or begins off the centre line, is named', () => {
    expect(() => hullFrame({ ...frame, depth: 0.14 })).toThrow(/depth/)
    expect(() =>
      hullFrame({
        ...frame,
        section: [
          [0.1, 0],
          [0.2, 0.1],
          [0, 0.2],
        ],
      }),
    ).toThrow(/section/)
    expect(() => hullFrame({ ...frame, stringers: [{ y: 0.4, width: 0.02, height: 0.015 }] })).toThrow(
      /stringers\.0\.y/,
    )
  })
})

describe('a deck’s skin', () => {
  const grid = (z: (x: number, y: number) => number): Vec[][] =>
    Array.from({ length: 25 }, (_, i) =>
      Array.from({ length: 13 }, (_, k): Vec => {
        const [x, y] = [i * 0.08, (k * 0.8) / 12 - 0.4]
        return [x, y, z(x, y)]
      }),
    )
  test('bent one way lies flat in one piece, with the radius it is bent to', () => {
    const bent = deckSkin(
      grid((_, y) => Math.sqrt(4 - y * y)),
      1e-3,
      sheeting,
    )
    expect(bent.developable).toBe(true)
    expect(bent.leastRadius).toBeCloseTo(2, 2)
    expect(Math.max(...bent.gaps)).toBeLessThan(1e-9)
    expect(bent.pieces).toHaveLength(1)
    expect(bent.pieces[0]!.area).toBeCloseTo(24 * 0.08 * 2 * 2 * Math.asin(0.2), 3)
  })
  test('bent both ways must be slit, and each of its strips lies flat', () => {
    const dome = deckSkin(
      grid((x, y) => -((x - 1) ** 2) / 8 - y * y),
      1e-3,
      sheeting,
    )
    expect(dome.developable).toBe(false)
    expect(dome.slits.length).toBe(dome.pieces.length - 1)
    expect(dome.pieces.length).toBeGreaterThan(1)
    const coarse = deckSkin(
      grid((x, y) => -((x - 1) ** 2) / 8 - y * y),
      0.02,
      sheeting,
    )
    expect(coarse.pieces.length).toBeLessThan(dome.pieces.length)
  })
  test('of rows that do not match is named', () => {
    expect(() =>
      deckSkin(
        [
          [
            [0, 0, 0],
            [0, 1, 0],
          ],
          [[1, 0, 0]],
        ],
        1e-3,
        sheeting,
      ),
    ).toThrow(/grid/)
    expect(() => deckSkin([], 1e-3, sheeting)).toThrow(/grid/)
    const pointed = [...grid(() => 0).slice(0, 3), Array.from({ length: 13 }, (): Vec => [2, 0, 0])]
    expect(() => deckSkin(pointed, 1e-3, sheeting)).toThrow(/grid\.3.*point/)
  })
})
