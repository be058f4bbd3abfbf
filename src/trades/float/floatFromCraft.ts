/** The craft file to what the float side takes: the hull as a mesh, weights, rider, openings, foam. SI. */

import type { Flag } from '../../base/answers/solved.ts'
import { keptBy } from '../../base/numerics/keep.ts'
import { filesOf } from '../../craft/craftFiles.ts'
import type { Craft } from '../../craft/schema/craftSchema.ts'
import { countedTwice } from '../../craft/tankRoom.ts'
import { aboard } from '../../hull/aboard/aboard.ts'
import { hasRoom } from '../../hull/aboard/foamBlocks.ts'
import { hullMeshFromCraft } from '../../hull/mesh/hullFromCraft.ts'
import { siteOf } from '../../hull/site/site.ts'
import type { Mesh } from '../../physics/solid/mesh.ts'
import type { FloatInput } from './input.ts'
import { withOutlets } from './outletOpenings.ts'
import { restDoubts } from './restDoubts.ts'

/** Foam boxes and compartments without any thickness: left out, and asked about. */
function emptyBoxes(craft: Craft): Flag[] {
  const ask = (name: string, path: string): Flag => ({
    code: 'empty box',
    text: `"${name}" begins and ends at the same place, so it is left out. Is that meant?`,
    path,
  })
  return [
    ...craft.foam.flatMap((f, i) => (hasRoom(f) ? [] : [ask(f.name, `foam.${i}`)])),
    ...craft.compartments.flatMap((c, i) =>
      c.from.value === c.to.value ? [ask(c.name, `compartments.${i}`)] : [],
    ),
  ]
}

/** Liquid that the weights list seems to carry as well: asked about. */
function twiceFlags(craft: Craft): Flag[] {
  return countedTwice(craft).map((i) => ({
    code: 'counted twice',
    text: `The weight "${craft.weights[i]!.name}" seems to hold the liquid that the tanks carry already. Is it counted twice? The list should have the empty tank.`,
    path: `weights.${i}.mass`,
  }))
}

export interface FloatFromCraft {
  input: FloatInput
  /** true when the file lists no weights and a usual mass stands in */
  weightsAssumed: boolean
}

/** The parts of a craft that how it floats is read from: a key for what is kept by it. */
export const floatParts = (c: Craft): readonly unknown[] => [
  c.hull,
  filesOf(c),
  c.weights,
  c.tanks,
  c.rider,
  c.openings,
  c.engines,
  c.foam,
  c.compartments,
  c.jet,
  c.place,
]

const read = keptBy(8, floatParts, (craft: Craft) => readWith(craft))

/**
 * Everything `floatAnswer` needs; kept by the identity of the sections it is read from, so that all who float a craft share one input
 * and what is kept by it. `mesh` in body axes stands in for the craft's own hull. RangeError where the measures make no hull.
 */
export function floatFromCraft(craft: Craft, mesh?: Mesh): FloatFromCraft {
  return mesh === undefined ? read(craft) : readWith(craft, mesh)
}

function readWith(craft: Craft, mesh?: Mesh): FloatFromCraft {
  const made = hullMeshFromCraft(craft, mesh)
  const on = aboard(craft)
  const { weights, assumed, tanks, rider, foam, compartments, taken } = on
  return {
    weightsAssumed: assumed,
    input: withOutlets(craft, {
      hull: { ...made, flags: [...made.flags, ...emptyBoxes(craft), ...twiceFlags(craft)] },
      water: siteOf(craft).water.density,
      weights,
      tanks,
      rider,
      openings: craft.openings.map((o, i) => ({
        path: `openings.${i}.at`,
        name: o.name,
        kind: o.kind,
        at: [o.at[0].value, o.at[1].value, o.at[2].value],
        area: o.gap.value,
      })),
      foam,
      compartments,
      taken,
      doubts: restDoubts(craft, made, on),
    }),
  }
}
