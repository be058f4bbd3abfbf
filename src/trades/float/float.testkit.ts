/** Bodies and shorthand for the float tests. */

import { type Floater, floaterOf, type SlackLiquid } from '../../hull/afloat/load.ts'
import { type Hull, hullFromFew } from '../../hull/lines/hullBody.ts'
import type { Mesh, Vec3 } from '../../physics/solid/mesh.ts'
import { boxMesh } from '../../physics/solid/primitives.ts'

export const deg = Math.PI / 180

/** A plain board: 2.4 m by 0.7 m by 0.3 m. */
export const board: Mesh = boxMesh([0, -0.35, 0], [2.4, 0.35, 0.3])

/** A small sled with deadrise and rocker. */
export const sled: Hull = hullFromFew({
  length: 2.4,
  beam: 0.8,
  chineBeam: 0.7,
  depth: 0.24,
  deadrise: 6 * deg,
  noseDeadrise: 24 * deg,
  noseRocker: 0.16,
  noseRockerStart: 1.55,
  widestAt: 1.1,
})

/** A mesh afloat with one weight. */
export function afloat(
  mesh: Mesh,
  mass: number,
  centre: Vec3,
  more: { density?: number; liquids?: SlackLiquid[] } = {},
): Floater {
  return floaterOf({
    bodies: [{ name: 'hull', mesh, share: 1 }],
    mass,
    centre,
    density: more.density ?? 1000,
    ...(more.liquids ? { liquids: more.liquids } : {}),
  })
}
