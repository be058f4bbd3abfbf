/** The craft file to what the drag model takes: SI numbers, best values. */
import type { Craft } from '../../craft/schema/craftSchema.ts'
import { type Carried, carriedOn } from '../../hull/aboard/aboard.ts'
import { riderCentre } from '../../hull/aboard/riderBody.ts'
import { meshFloat } from '../../hull/afloat/meshFloat.ts'
import type { Hull } from '../../hull/lines/hullBody.ts'
import { measuresOf } from '../../hull/lines/measures.ts'
import { hullMeshFromCraft } from '../../hull/mesh/hullFromCraft.ts'
import { stationsOfMesh } from '../../hull/mesh/meshLines.ts'
import { namedMesh } from '../../hull/mesh/namedMesh.ts'
import { siteOf } from '../../hull/site/site.ts'
import type { Mesh } from '../../physics/solid/mesh.ts'
import { riderDragArea, stances } from './air.ts'
import type { PrepareOptions } from './drag.ts'
import { floatAtRest } from './dragForm.ts'
import { specFromStations } from './fromStations.ts'
import type { Conditions, HullSpec, Loading } from './hullSpec.ts'

export interface HullInputs {
  spec: HullSpec
  loading: Loading
  conditions: Conditions
  /**
   * Floats the hull by exact integrals over its own mesh; absent for a hull of few numbers, whose strips are the same lines and
   * come out alike within a part in a hundred (see meshFloat.test.ts), at a tenth of the time.
   */
  float?: FloatHull
  /** m forward of the transom, where the file puts the rider */
  riderAt: number
  /** true when the file lists no weights and a usual mass stands in */
  weightsAssumed: boolean
}

/** stations a mesh is read at for the drag methods */
const meshStations = 25
const specs = new WeakMap<Mesh, HullSpec | null>()

/** Lines read off a mesh; undefined where its sections are not one ring each (then the measures give the lines). */
function specFromMesh(mesh: Mesh): HullSpec | undefined {
  let spec = specs.get(mesh)
  if (spec === undefined) {
    const stations = stationsOfMesh(mesh, meshStations)
    spec = stations ? specFromStations(stations) : null
    specs.set(mesh, spec)
  }
  return spec ?? undefined
}

/** True where the craft's hull file can be read as stations. */
export function meshGivesLines(craft: Craft): boolean {
  const named = namedMesh(craft)
  return named !== undefined && 'hull' in named && specFromMesh(named.hull.mesh) !== undefined
}

/** Lines of the hull: read off its mesh where the file names one, else measured stations, else the few numbers. */
export function hullSpecFromCraft(craft: Craft): HullSpec {
  const h = craft.hull
  const intake = {
    front: craft.jet.intake.front.value,
    area: craft.jet.intake.length.value * craft.jet.intake.width.value,
  }
  const named = namedMesh(craft)
  const read = named && 'hull' in named ? specFromMesh(named.hull.mesh) : undefined
  if (read) return { ...read, intake }
  if (h.stations && h.stations.length >= 3)
    return specFromStations(
      h.stations.map((s) => ({
        at: s.at.value,
        points: s.points.map(([out, up]) => [out.value, up.value] as const),
      })),
      { intake },
    )
  return { ...measuresOf(h), intake }
}

type FloatHull = NonNullable<PrepareOptions['float']>
const floats = new WeakMap<Mesh, FloatHull>()

/** The float of a hull that has stations or a mesh, with what it was asked lately kept: a search asks the same again and again. */
function floatOf(craft: Craft): FloatHull | undefined {
  const named = namedMesh(craft)
  const hasMesh = named !== undefined && 'hull' in named
  if (!hasMesh && (craft.hull.stations?.length ?? 0) < 3) return undefined
  const hull = hullOrNone(craft)
  if (!hull) return undefined
  let float = floats.get(hull.mesh)
  if (!float) {
    float = remembered(meshFloat(hull))
    floats.set(hull.mesh, float)
  }
  return float
}

function hullOrNone(craft: Craft): Hull | undefined {
  try {
    return hullMeshFromCraft(craft)
  } catch (error) {
    // stations that make no hull are told on the page Float; the drag then keeps to strips
    if (error instanceof RangeError) return undefined
    throw error
  }
}

function remembered(float: FloatHull): FloatHull {
  const known = new Map<string, ReturnType<FloatHull>>()
  return (...asked) => {
    const key = asked.join()
    let got = known.get(key)
    if (!got) {
      if (known.size > 400) known.clear()
      got = float(...asked)
      known.set(key, got)
    }
    return got
  }
}

/**
 * Everything the drag model needs. A file without weights gets a usual mass, and `weightsAssumed` says so. `carried` when the craft
 * is to be loaded otherwise.
 */
export function hullFromCraft(craft: Craft, carried: Carried = carriedOn(craft)): HullInputs {
  const spec = hullSpecFromCraft(craft)
  const { water, air } = siteOf(craft)
  const conditions: Conditions = {
    density: water.density,
    kinematicViscosity: water.kinematicViscosity,
    depth: water.depth,
    wind: air.wind,
    airDensity: air.density,
  }
  const { whole: weights, assumed: weightsAssumed, rider } = carried
  const stance = stances[rider.stance]
  const riderHeight = spec.depth + riderCentre(rider.stance, rider.stature).height
  const total = weights.mass + rider.mass
  const float = floatOf(craft)
  const rest = (float ?? ((...given) => floatAtRest(spec, ...given)))(
    total,
    (weights.mass * weights.x + rider.mass * rider.x) / total,
    (weights.mass * weights.z + rider.mass * riderHeight) / total,
    conditions.density,
  )
  const loading: Loading = {
    ...weights,
    riderMass: rider.mass,
    // room to move: from clear of the transom to where the nose starts to rise, and wherever the file puts the rider
    riderRange: [
      Math.min(0.15 * spec.length, rider.x),
      Math.max(spec.noseRiseFrom ?? 0.65 * spec.length, rider.x),
    ],
    riderHeight,
    dragArea: riderDragArea(rider.stance, rider.stature, rider.mass),
    dragHeight: spec.depth + stance.drag * rider.stature,
    // the nozzle is measured from still water with the craft loaded
    thrustLine: { height: rest.value.waterAtTransom + craft.jet.nozzle.height.value, angle: 0 },
  }
  return {
    spec,
    loading,
    conditions,
    riderAt: rider.x,
    weightsAssumed,
    ...(float ? { float } : {}),
  }
}
