/** The craft file to what the float side takes: the hull as a mesh, weights, rider, openings, foam. SI. */
import type { Flag } from '../../base/answers/solved.ts'
import type { Place } from '../../craft/craftTypes.ts'
import type { Craft } from '../../craft/schema/craftSchema.ts'
import { countedTwice } from '../../craft/tankRoom.ts'
import { assumedWeights } from '../../hull/aboard/assumedWeights.ts'
import type { Weight } from '../../hull/aboard/masses.ts'
import { takenRoom } from '../../hull/aboard/takenRoom.ts'
import { tanksFromCraft } from '../../hull/aboard/tanksFromCraft.ts'
import type { LoftDensity } from '../../hull/lines/stations.ts'
import { hullMeshFromCraft } from '../../hull/mesh/hullFromCraft.ts'
import { siteOf } from '../../hull/site/site.ts'
import type { Mesh, Vec3 } from '../../physics/solid/mesh.ts'
import type { FloatInput } from './input.ts'
import type { FoamBlock } from './swamped.ts'

const at = (p: Place): Vec3 => [p[0].value, p[1].value, p[2].value]

/** Half of a range read as one standard deviation doubled: the ± of a value. */
const give = (q: { low: number; high: number }): number => (q.high - q.low) / 2

const hasRoom = (f: Craft['foam'][number]): boolean =>
  [0, 1, 2].every((k) => f.from[k]!.value !== f.to[k]!.value)

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

/** Water taken up by foam, a fraction of its volume, by kind and density (ASTM C578, water absorption). */
function soakedBy(foam: string): number {
  const [kind, density] = foam.split(' ')
  if (kind === 'XPS') return 0.003
  if (kind === 'PU') return 0.05
  const d = Number(density)
  return d < 17 ? 0.04 : d < 25 ? 0.03 : 0.02
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

/** Everything `floatAnswer` needs. The mesh is the one the file names, read and set in body axes by the caller. */
export function floatFromCraft(craft: Craft, mesh?: Mesh, density?: LoftDensity): FloatFromCraft {
  const made = hullMeshFromCraft(craft, mesh, density)
  const hull = { ...made, flags: [...made.flags, ...emptyBoxes(craft), ...twiceFlags(craft)] }
  const listed = craft.weights.map((w): Weight & { sealed?: boolean } => ({
    name: w.name,
    mass: w.mass.value,
    at: at(w.at),
    give: give(w.mass),
    giveAt: 0.02,
    sealed: w.sealed,
    ...(w.size ? { size: at(w.size) } : {}),
  }))
  const weightsAssumed = !listed.some((w) => w.mass > 0)
  return {
    weightsAssumed,
    input: {
      hull,
      water: siteOf(craft).water.density,
      weights: weightsAssumed ? assumed(craft) : listed,
      tanks: tanksFromCraft(craft),
      rider: {
        mass: craft.rider.mass.value,
        stature: craft.rider.height.value,
        stance: craft.rider.stance,
        x: craft.rider.position.value,
        y: craft.rider.offCentre.value,
      },
      openings: craft.openings.map((o) => ({ name: o.name, kind: o.kind, at: at(o.at), area: o.gap.value })),
      foam: craft.foam.filter(hasRoom).map(
        (f): FoamBlock => ({
          name: f.name,
          low: [0, 1, 2].map((k) => Math.min(f.from[k]!.value, f.to[k]!.value)) as [number, number, number],
          high: [0, 1, 2].map((k) => Math.max(f.from[k]!.value, f.to[k]!.value)) as [number, number, number],
          density: Number(f.foam.split(' ')[1]),
          soaked: soakedBy(f.foam),
        }),
      ),
      compartments: craft.compartments
        .filter((c) => c.from.value !== c.to.value)
        .map((c) => ({
          name: c.name,
          from: Math.min(c.from.value, c.to.value),
          to: Math.max(c.from.value, c.to.value),
          sealed: c.sealed,
          permeability: c.permeability.value,
        })),
      taken: takenRoom(craft),
    },
  }
}

function assumed(craft: Craft): Weight[] {
  const loading = assumedWeights(craft)
  // a usual weight is that of a craft ready to go: what the tanks hold is part of it
  const liquid = tanksFromCraft(craft).reduce((m, t) => m + t.volume * t.density, 0)
  return [
    {
      name: 'the craft, a usual weight for its size',
      mass: Math.max(0.3 * loading.mass, loading.mass - liquid),
      at: [loading.x, 0, loading.z],
      give: 0.4 * loading.mass,
    },
  ]
}
