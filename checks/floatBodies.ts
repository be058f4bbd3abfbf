/** Bodies whose float line, stability and righting are known: boxes, logs, cylinders and the Wigley hull. */
import { floaterOf, type SlackLiquid } from '../src/hull/afloat/load.ts'
import { metacentricHeight, settle } from '../src/hull/afloat/settle.ts'
import { lofted } from '../src/hull/lines/loft.ts'
import type { HalfSection, Point2 } from '../src/hull/lines/stations.ts'
import { hullFormOf } from '../src/hull/mesh/meshForm.ts'
import { solidProperties } from '../src/physics/solid/integrals.ts'
import { type Mesh, moved, type Vec3 } from '../src/physics/solid/mesh.ts'
import { boxMesh, cylinderMesh, sphereMesh } from '../src/physics/solid/primitives.ts'
import { rightingCurve, wallSidedArm } from '../src/trades/float/righting.ts'
import { near, type Row, row } from './row.ts'

const deg = Math.PI / 180
export const masters = 'D. R. Derrett, Ship Stability for Masters and Mates, '
export const box = boxMesh([0, -0.35, 0], [2.4, 0.35, 0.3])

export function afloat(mesh: Mesh, mass: number, centre: Vec3, density = 1000, liquids: SlackLiquid[] = []) {
  return floaterOf({ bodies: [{ name: 'hull', mesh, share: 1 }], mass, centre, density, liquids })
}

/** Wigley's hull: half-breadth (B/2)(1 − 4x²/L²)(1 − z²/T²), wall-sided above the water. */
export function wigleyHull(L: number, B: number, T: number, along: number, down: number): Mesh {
  const sections = Array.from({ length: along + 1 }, (_, i): HalfSection => {
    const s = (2 * i) / along - 1
    const half = (B / 2) * (1 - s * s)
    const points = Array.from({ length: down + 1 }, (_, k): Point2 => {
      const u = k / down - 1
      return [half * (1 - u * u), T * u]
    })
    return { x: (L / 2) * s, points: [...points, [half, 0.3 * T], [0, 0.3 * T]] }
  })
  return lofted(sections)
}

export function boxBarge(): Row[] {
  const barge = boxMesh([0, -6, 0], [65, 6, 8])
  const f = afloat(barge, 3198, [32.5, 0, 4], 1.025)
  const form = hullFormOf(barge, { h: 4 })!
  const up = settle(f, undefined, { freeHeel: false })
  const gm = metacentricHeight(up.state)
  const arm = rightingCurve(f, undefined, { to: 25 * deg, step: 5 * deg }).arm
  const source = `${masters}wall-sided example, box 65 × 12 × 8 m at 4 m draft, KG 4 m`
  return [
    row('C-11a', 'displacement of a box barge', 't', 3198, 1.025 * form.volume, 1e-9, 'published', source),
    row('C-11b', 'centre of buoyancy above keel', 'm', 2, form.kb, 1e-9, 'published', source),
    row('C-11c', 'metacentric radius', 'm', 3, form.bmTransverse, 1e-9, 'published', source),
    row('C-11d', 'metacentric height', 'm', 1, gm, 1e-9, 'published', source),
    row(
      'C-11e',
      'righting moment at 5°, by GM',
      't·m',
      278.9,
      3198 * gm * Math.sin(5 * deg),
      1e-3,
      'published',
      source,
    ),
    row(
      'C-11f',
      'righting moment at 25°, settled',
      't·m',
      1792.4,
      3198 * arm[5]!,
      1e-4,
      'exact',
      'wall-sided formula for the same box; the deck stays dry to 33.7°',
    ),
    row(
      'C-12a',
      'wall-sided arm at 25°, KB 3, KM 6, KG 5.5',
      'm',
      0.35,
      wallSidedArm(0.5, 3, 25 * deg),
      5e-3,
      'published',
      `${masters}wall-sided example`,
    ),
    row(
      'C-12b',
      'righting moment, 6000 t',
      't·m',
      2100,
      6000 * wallSidedArm(0.5, 3, 25 * deg),
      5e-3,
      'published',
      `${masters}wall-sided example`,
    ),
  ]
}

export function board(): Row[] {
  const f = afloat(box, 190, [1.2, 0, 0.5])
  const up = settle(f, undefined, { freeHeel: false })
  const arm = rightingCurve(f, undefined, { to: 30 * deg, step: 10 * deg }).arm
  const source =
    'derived: box 2.4 × 0.7 × 0.3 m, 190 kg, KG 0.5 m, by an independent calculation; exact at 10° by the wall-sided formula'
  const metre = (id: string, what: string, expected: number, got: number, within = 1e-5): Row =>
    near(id, what, 'm', expected, got, within, 'derived', source)
  return [
    metre('C-14a', 'GM of a board with a stiff standing rider', -0.0824, metacentricHeight(up.state), 6e-5),
    metre('C-14b', 'righting arm at 10°', -0.013334, arm[1]!),
    metre('C-14c', 'righting arm at 20°, deck dipped', -0.021343, arm[2]!),
    metre('C-14d', 'righting arm at 30°, deck dipped', -0.047692, arm[3]!),
  ]
}

export function floatingLog(): Row[] {
  const log = boxMesh([0, -0.5, -0.5], [5, 0.5, 0.5])
  const heel = (gravity: number) =>
    settle(afloat(log, 5000 * gravity, [2.5, 0, 0]), { h: gravity - 0.5, trim: 0, heel: 0.1 }).value.heel /
    deg
  const source =
    'exact: equilibrium heel of a floating square log (the problem of Archimedes and Bouguer), solved in closed form'
  return [
    {
      id: 'C-15a',
      quantity: 'heel of a square log, relative density 0.25',
      unit: 'deg',
      expected: Math.atan(0.5) / deg,
      got: heel(0.25),
      within: 1e-4,
      origin: 'exact',
      source,
    },
    {
      id: 'C-15b',
      quantity: 'the same, 0.22',
      unit: 'deg',
      expected: 13.67495,
      got: heel(0.22),
      within: 1e-4,
      origin: 'exact',
      source,
    },
    {
      id: 'C-15c',
      quantity: 'the same, 0.5',
      unit: 'deg',
      expected: 45,
      got: heel(0.5),
      within: 1e-4,
      origin: 'exact',
      source,
    },
  ]
}

/** Metacentre of round bodies is their centre at every draft: with G half a radius below it, GM is half a radius. */
export function roundBodies(): Row[] {
  const source = 'exact: every section of buoyancy of a round body pushes through its centre'
  const gm = (mesh: Mesh, part: number) => {
    const f = afloat(mesh, part * 1000 * solidProperties(mesh).volume, [0.5, 0, -0.5])
    return metacentricHeight(settle(f, undefined, { freeHeel: false, freeTrim: false }).state)
  }
  const cylinder = cylinderMesh(1, 0, 1, 1440)
  const ball = moved(sphereMesh(1, 220), [0.5, 0, 0])
  return [0.2, 0.5, 0.8].flatMap((part): Row[] => [
    {
      id: `C-18 cylinder ${part}`,
      quantity: `GM over radius of a lying cylinder, ${part} under water`,
      unit: '1',
      expected: 0.5,
      got: gm(cylinder, part),
      within: 1e-4,
      origin: 'exact',
      source,
    },
    {
      id: `C-18 sphere ${part}`,
      quantity: `GM over radius of a sphere, ${part} under water`,
      unit: '1',
      expected: 0.5,
      got: gm(ball, part),
      within: 2e-4,
      origin: 'exact',
      source,
    },
  ])
}

export function wigley(): Row[] {
  const [L, B, T] = [10, 1, 0.625]
  const f = hullFormOf(wigleyHull(L, B, T, 240, 80), { h: 0 })!
  const source = 'exact integrals of the Wigley hull, L/B 10, L/T 16; mesh of 240 × 80 faces a side'
  return [
    row(
      'C-19a',
      'block coefficient of the Wigley hull',
      '1',
      4 / 9,
      f.volume / (L * B * T),
      1e-4,
      'exact',
      source,
    ),
    row('C-19b', 'wetted surface over L²', '1', 0.14879, f.wettedSurface / L ** 2, 1e-4, 'exact', source),
    row(
      'C-19c',
      'wetted surface over L(2T + B)',
      '1',
      0.6613,
      f.wettedSurface / (L * (2 * T + B)),
      1e-4,
      'exact',
      source,
    ),
    row('C-19d', 'centre of buoyancy above keel over draft', '1', 0.625, f.kb / T, 1e-4, 'exact', source),
    row(
      'C-19e',
      'transverse metacentric radius × T/B²',
      '1',
      3 / 35,
      (f.bmTransverse * T) / B ** 2,
      2e-4,
      'exact',
      source,
    ),
    row(
      'C-19f',
      'longitudinal metacentric radius × T/L²',
      '1',
      3 / 40,
      (f.bmLongitudinal * T) / L ** 2,
      2e-4,
      'exact',
      source,
    ),
  ]
}
