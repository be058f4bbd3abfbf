/**
 * Foam and compartments of the craft file.
 * Source: water taken up by foam, ASTM C578 (limits of water absorption by type), the loosest of each.
 */
import type { Place } from '../../craft/craftTypes.ts'
import type { Craft } from '../../craft/schema/craftSchema.ts'
import type { Vec3 } from '../../physics/solid/mesh.ts'

export interface FoamBlock {
  name: string
  /** corners of a box, m; what of it lies inside the hull is foam */
  low: Vec3
  high: Vec3
  /** kg/m³ */
  density: number
  /** fraction of its volume that takes up water */
  soaked: number
}

export interface Compartment {
  name: string
  /** m forward of the transom */
  from: number
  to: number
  /** stays dry when the craft is swamped */
  sealed: boolean
  /** fraction of its volume that water can fill */
  permeability: number
}

type Foam = Craft['foam'][number]

/** False for a box that begins and ends at the same place one way or another. */
export const hasRoom = (f: Pick<Foam, 'from' | 'to'>): boolean =>
  [0, 1, 2].every((k) => f.from[k]!.value !== f.to[k]!.value)

const corner = (f: Foam, pick: (...ends: number[]) => number): Vec3 => {
  const at = (k: 0 | 1 | 2, of: Place) => of[k].value
  const end = (k: 0 | 1 | 2) => pick(at(k, f.from), at(k, f.to))
  return [end(0), end(1), end(2)]
}

function soakedBy(kind: string | undefined, density: number): number {
  if (kind === 'XPS') return 0.003
  if (kind === 'PU') return 0.05
  return density < 17 ? 0.04 : density < 25 ? 0.03 : 0.02
}

/** Foam boxes that have any room, low corner first. */
export function foamBlocksOf(craft: Pick<Craft, 'foam'>): FoamBlock[] {
  return craft.foam.filter(hasRoom).map((f) => {
    const [kind, per] = f.foam.split(' ')
    const density = Number(per)
    return {
      name: f.name,
      low: corner(f, Math.min),
      high: corner(f, Math.max),
      density,
      soaked: soakedBy(kind, density),
    }
  })
}

/** Compartments that have any length, after end first. */
export function compartmentsOf(craft: Pick<Craft, 'compartments'>): Compartment[] {
  return craft.compartments
    .filter((c) => c.from.value !== c.to.value)
    .map((c) => ({
      name: c.name,
      from: Math.min(c.from.value, c.to.value),
      to: Math.max(c.from.value, c.to.value),
      sealed: c.sealed,
      permeability: c.permeability.value,
    }))
}
