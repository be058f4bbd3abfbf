/**
 * Tanks as closed meshes of their inside, and what is in them. The slack liquid itself is worked out in energy.ts: at each heel and
 * trim its surface is level and its volume unchanged, so that a wall, floor or lid in its way is met exactly.
 */
import { solidProperties } from '../../physics/solid/integrals.ts'
import { boundsOf, joined, type Mesh, mapPoints, moved, type Vec3 } from '../../physics/solid/mesh.ts'
import { boxMesh, cylinderMesh } from '../../physics/solid/primitives.ts'
import { makeFrame } from '../../physics/solid/waterFrame.ts'
import { liquidIn } from '../afloat/energy.ts'
import { type SlackLiquid, tankState } from '../afloat/load.ts'
import type { Box } from './boxes.ts'
import type { Weight } from './masses.ts'

/** Inside measures, m; a lying cylinder's axis runs along or across the craft. */
export type TankShape =
  | { kind: 'box'; length: number; width: number; height: number; cells: number }
  | { kind: 'lying cylinder'; diameter: number; length: number; lies: 'along' | 'across' }
  | { kind: 'standing cylinder'; diameter: number; height: number }

export interface Tank {
  name: string
  shape: TankShape
  /** middle of the floor inside, m */
  foot: Vec3
  /** m³, with half its likely range */
  volume: number
  give: number
  /** kg/m³ */
  density: number
  /** keeps water out when the craft is flooded */
  sealed: boolean
}

/** facets of a round tank */
const sides = 48

/** The radius at which a polygon of `sides` corners has the area of the circle: what the tank holds then comes out exactly. */
const evenRadius = (diameter: number): number =>
  (diameter / 2) * Math.sqrt((2 * Math.PI) / (sides * Math.sin((2 * Math.PI) / sides)))

/** Closed meshes of the inside, one a liquid-tight cell, port cell last. */
export function tankMeshes(shape: TankShape, foot: Vec3): Mesh[] {
  if (shape.kind === 'box') {
    const { length, width, height, cells } = shape
    return Array.from({ length: cells }, (_, i) => {
      const y = foot[1] - width / 2 + (width * i) / cells
      return boxMesh(
        [foot[0] - length / 2, y, foot[2]],
        [foot[0] + length / 2, y + width / cells, foot[2] + height],
      )
    })
  }
  const r = evenRadius(shape.diameter)
  if (shape.kind === 'standing cylinder')
    return [
      // the cylinder's own axis along x turned upright; a cyclic turn of the axes keeps the faces outward
      moved(
        mapPoints(cylinderMesh(r, 0, shape.height, sides), (x, y, z) => [y, z, x]),
        foot,
      ),
    ]
  const half = shape.length / 2
  const up: Vec3 = [foot[0], foot[1], foot[2] + shape.diameter / 2]
  const lying = cylinderMesh(r, -half, half, sides)
  return [moved(shape.lies === 'along' ? lying : mapPoints(lying, (x, y, z) => [z, x, y]), up)]
}

/** The box round a tank's inside. */
export function tankBox(tank: Tank): Box {
  return boundsOf(joined(tankMeshes(tank.shape, tank.foot)))
}

/** What is in a tank as slack liquids, shared evenly by its cells; none when it is empty. */
export function liquidsOf(tank: Tank): SlackLiquid[] {
  if (!(tank.volume > 0)) return []
  const meshes = tankMeshes(tank.shape, tank.foot)
  return meshes.map((mesh) => ({
    name: tank.name,
    mesh,
    volume: Math.min(tank.volume / meshes.length, solidProperties(mesh).volume),
    density: tank.density,
  }))
}

/** A liquid as it lies in the level craft: a weight that does not run. */
export function stilled(liquid: SlackLiquid): Weight {
  const { centre } = liquidIn(tankState(liquid), makeFrame())
  return { name: liquid.name, mass: liquid.volume * liquid.density, at: centre, giveAt: 0.02 }
}

/** The whole liquid of a tank as a weight that does not run, its doubt with it; undefined when it is empty. */
export function liquidWeight(tank: Tank): Weight | undefined {
  const parts = liquidsOf(tank).map(stilled)
  const mass = parts.reduce((m, w) => m + w.mass, 0)
  if (!(mass > 0)) return undefined
  const centre = [0, 1, 2].map((k) => parts.reduce((s, w) => s + w.mass * w.at[k]!, 0) / mass)
  return {
    name: `liquid in ${tank.name}`,
    mass,
    at: centre as [number, number, number],
    give: tank.give * tank.density,
    giveAt: 0.02,
  }
}

/** GM that the free surfaces take from a craft of `mass` kg (liquids in it), upright, m: Σ ρ i / m, i about each cell's own middle. */
export function surfaceLoss(liquids: readonly SlackLiquid[], mass: number): number {
  const level = makeFrame()
  return liquids.reduce((s, l) => s + (l.density * liquidIn(tankState(l), level).inertia) / mass, 0)
}
