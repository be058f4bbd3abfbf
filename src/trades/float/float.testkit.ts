/** Bodies and shorthand for the float tests. */

import { inWords, type PrintedFinding } from '../../base/answers/printFinding.ts'
import type { DisplaySystem } from '../../base/units/format.ts'
import type { Craft } from '../../craft/index.ts'
import { type Floater, floaterOf, type SlackLiquid } from '../../hull/afloat/load.ts'
import { type Hull, hullFromFew } from '../../hull/lines/hullBody.ts'
import type { Mesh, Vec3 } from '../../physics/solid/mesh.ts'
import { boxMesh } from '../../physics/solid/primitives.ts'
import { NotKnown, solveTrade } from '../trade.ts'
import { type FloatLimits, floatLimits } from './floatLimits.ts'
import { floatTrade } from './floatTrade.ts'

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
  noseRise: 0.16,
  noseRiseFrom: 1.55,
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

/** What float has to say of a craft, in the words of a reader: its headline first, or what makes it not known. */
export function floatSaid(
  craft: Craft,
  { limits = floatLimits, system }: { limits?: FloatLimits; system?: DisplaySystem } = {},
): PrintedFinding[] {
  try {
    const solved = solveTrade(floatTrade, craft, undefined)
    return inWords([floatTrade.headline!(solved, limits), ...floatTrade.judge(solved, limits)], system)
  } catch (error) {
    if (!(error instanceof NotKnown)) throw error
    return [
      {
        id: 'float.not-known',
        question: 'float',
        says: error.message,
        standing: 'unknown',
        because: [{ says: error.message, link: error.path }],
        sources: ['The craft file'],
      },
    ]
  }
}
