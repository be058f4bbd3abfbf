/** The craft file to its hull: one closed mesh, from the file it names, else its stations, else the few numbers. */
import { inMetres } from '../../base/answers/amounts.ts'
import { say } from '../../base/answers/sentence.ts'
import { type Flag, flagOf } from '../../base/answers/solved.ts'
import type { Craft } from '../../craft/schema/craftSchema.ts'
import type { Mesh } from '../../physics/solid/mesh.ts'
import { type Hull, hullFromFew, hullFromMesh, hullFromStations } from '../lines/hullBody.ts'
import { measuresOf } from '../lines/measures.ts'
import { type LoftDensity, stationFromPoints } from '../lines/stations.ts'
import { lightOf, meshNotUsed, namedMesh } from './namedMesh.ts'

/**
 * How finely measures are lofted, for everything that is asked of a hull: volume within 2 parts in a thousand of what four times the
 * triangles give, GM and heights within half a millimetre (see hullFromCraft.test.ts).
 */
const density: LoftDensity = { along: 24, bottom: 4, side: 3, deck: 4 }

/** hulls made lately, by the hull section they were made from: a search that moves other values shares it */
const made = new WeakMap<Craft['hull'], Hull>()

/**
 * The hull of a craft. `mesh` in body axes stands before everything; a file that is named and cannot be used is said in the flags.
 * A file's mesh of many triangles is taken in its lighter form. RangeError where the measures make no hull.
 */
export function hullMeshFromCraft(craft: Craft, mesh?: Mesh): Hull {
  if (mesh !== undefined) return hullFromMesh(mesh, `the mesh ${craft.hull.mesh ?? 'given'}`)
  const named = namedMesh(craft)
  if (named && 'hull' in named) {
    const hull = lightOf(named.hull)
    const apart = measuresApart(craft, hull)
    return apart.length === 0 ? hull : { ...hull, flags: [...hull.flags, ...apart] }
  }
  const hull = fromMeasures(craft)
  if (!named) return hull
  return { ...hull, flags: [...hull.flags, meshNotUsed(craft, named.trouble)] }
}

/** Measures of the file that its mesh does not have: one of the two is wrong, or the unit of the mesh is. */
function measuresApart(craft: Craft, hull: Hull): Flag[] {
  const { mesh, length, beam } = craft.hull
  return (
    [
      ['length', length, hull.length],
      ['beam', beam, hull.beam],
    ] as const
  ).flatMap(([name, q, got]) =>
    Math.abs(q.value - got) > Math.max(0.05 * got, q.high - q.value)
      ? [
          flagOf(
            'mesh and measures',
            say`The file gives the hull a ${name} of ${inMetres(q.value)}, ${String(mesh)} is ${inMetres(got)}. The mesh is used; which is right?`,
            `hull.${name}`,
          ),
        ]
      : [],
  )
}

function fromMeasures(craft: Craft): Hull {
  let hull = made.get(craft.hull)
  if (!hull) {
    hull = lofted(craft.hull)
    made.set(craft.hull, hull)
  }
  return hull
}

function lofted(h: Craft['hull']): Hull {
  if (h.stations && h.stations.length >= 3) {
    const stations = h.stations.map((s) =>
      stationFromPoints(
        s.at.value,
        s.points.map(([out, up]) => [out.value, up.value] as const),
      ),
    )
    return hullFromStations(stations, { ...density, along: 2 })
  }
  return hullFromFew({ ...measuresOf(h), deckCamber: h.deckCamber.value }, density)
}
