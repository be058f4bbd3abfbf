/**
 * The swamped craft, by lost buoyancy: the water has the run of the hull, and only what is solid or sealed still displaces.
 * Source: E. V. Lewis (ed.), Principles of Naval Architecture vol. I (1988), ch. III (lost-buoyancy method); permeabilities there are by
 * convention 0.95 for an empty space and about 0.85 for machinery.
 */

import { type Box, boxOf, freeOf } from '../../hull/aboard/boxes.ts'
import type { Compartment, FoamBlock } from '../../hull/aboard/foamBlocks.ts'
import { type Tank, tankBox, tankMeshes } from '../../hull/aboard/liquids.ts'
import type { Weight } from '../../hull/aboard/masses.ts'
import type { BuoyantBody } from '../../hull/afloat/load.ts'
import type { Hull } from '../../hull/lines/hullBody.ts'
import { solidProperties } from '../../physics/solid/integrals.ts'
import type { Mesh, Vec3 } from '../../physics/solid/mesh.ts'
import { boxMesh } from '../../physics/solid/primitives.ts'
import { sliceBetween, sliceBox } from '../../physics/solid/slice.ts'

export interface FoamVolume {
  block: FoamBlock
  /** m³ inside the hull */
  volume: number
  centre: [number, number, number]
  /** kg it lifts under water beyond its own weight */
  lift: number
}

/**
 * Foam blocks as they lie in the hull, each without what an earlier block or `taken` has already. Blocks wholly outside have volume 0.
 */
export function foamVolumes(
  hull: Hull,
  blocks: readonly FoamBlock[],
  water: number,
  taken: readonly Box[] = [],
): FoamVolume[] {
  return blocks.map((block, i) => {
    let volume = 0
    const moment: [number, number, number] = [0, 0, 0]
    for (const mesh of piecesOf(hull, block, [...taken, ...blocks.slice(0, i)])) {
      const p = solidProperties(mesh)
      volume += p.volume
      for (let k = 0; k < 3; k++) moment[k] = moment[k]! + p.volume * p.centroid[k]!
    }
    const lift = volume * (water * (1 - block.soaked) - block.density)
    const centre = [0, 1, 2].map((k) =>
      volume > 0 ? moment[k]! / volume : (block.low[k]! + block.high[k]!) / 2,
    ) as [number, number, number]
    return { block, volume, centre, lift }
  })
}

/** What of a box lies inside the hull and outside all of `holes`, as closed meshes. */
function piecesOf(hull: Hull, box: Box, holes: readonly Box[]): Mesh[] {
  return freeOf(box, holes).flatMap(({ low, high }) => {
    const mesh = sliceBox(hull.mesh, low, high)
    return mesh !== undefined && solidProperties(mesh).volume > 1e-9 ? [mesh] : []
  })
}

/** Boxes that something other than foam has to itself: sealed boxes of the weights, and tanks. */
export function heldBoxes(input: Pick<SwampedInput, 'weights' | 'tanks'>): Box[] {
  const sealed = input.weights.flatMap((w) =>
    w.sealed && w.size?.every((v) => v > 0) ? [boxOf(w.at, w.size)] : [],
  )
  return [...sealed, ...(input.tanks ?? []).map(tankBox)]
}

/** Sealed compartments as boxes: they float by their air already. */
export function sealedSpaces({ hull, compartments }: Pick<SwampedInput, 'hull' | 'compartments'>): Box[] {
  const wide = hull.beam
  return compartments.flatMap((c) =>
    c.sealed ? [{ low: [c.from, -wide, -1], high: [c.to, wide, hull.depth + 1] }] : [],
  )
}

/** Runs of x outside every sealed compartment. */
function unsealedRuns(hull: Hull, compartments: readonly Compartment[]): [number, number][] {
  let runs: [number, number][] = [[-1, hull.length + 1]]
  for (const c of compartments)
    if (c.sealed)
      runs = runs.flatMap(([a, b]): [number, number][] =>
        c.to <= a || c.from >= b
          ? [[a, b]]
          : ([
              [a, c.from],
              [c.to, b],
            ].filter(([l, h]) => h! > l! + 1e-9) as [number, number][]),
      )
  return runs
}

/** A small closed body for a weight: its own box when sealed, else a cube of the volume its material fills. */
function bodyOf(w: Weight, sealed: boolean): Mesh | undefined {
  if (sealed && w.size?.every((v) => v > 0)) {
    const { low, high } = boxOf(w.at, w.size)
    return boxMesh(low, high)
  }
  const edge = Math.cbrt(w.mass / (w.material ?? 2700)) / 2
  if (!(edge > 1e-6)) return undefined
  return boxMesh(
    [w.at[0] - edge, w.at[1] - edge, w.at[2] - edge],
    [w.at[0] + edge, w.at[1] + edge, w.at[2] + edge],
  )
}

export interface SwampedInput {
  hull: Hull
  tanks?: readonly Tank[]
  weights: readonly (Weight & { sealed?: boolean })[]
  foam: readonly FoamBlock[]
  compartments: readonly Compartment[]
}

/**
 * Everything that still displaces water when swamped: sealed compartments, foam outside them, of tanks, sealed boxes and other foam, and the weights' own material
 * (aluminium, 2700 kg/m³, where none is named). Each counted once; the hull's inside counts for nothing else.
 */
export function swampedBodies(input: SwampedInput): BuoyantBody[] {
  const { hull, foam, compartments } = input
  const bodies: BuoyantBody[] = []
  for (const c of compartments) {
    if (!c.sealed) continue
    const mesh = sliceBetween(hull.mesh, 'x', c.from, c.to)
    if (mesh !== undefined) bodies.push({ name: c.name, mesh, share: 1 })
  }
  const held = heldBoxes(input)
  for (const [from, to] of unsealedRuns(hull, compartments))
    for (const [i, b] of foam.entries()) {
      const low: Vec3 = [Math.max(from, b.low[0]), b.low[1], b.low[2]]
      const high: Vec3 = [Math.min(to, b.high[0]), b.high[1], b.high[2]]
      if (!(high[0] > low[0] + 1e-9)) continue
      for (const mesh of piecesOf(hull, { low, high }, [...held, ...foam.slice(0, i)]))
        bodies.push({ name: b.name, mesh, share: 1 - b.soaked })
    }
  for (const w of input.weights) {
    const mesh = bodyOf(w, w.sealed ?? false)
    if (mesh !== undefined) bodies.push({ name: w.name, mesh, share: 1 })
  }
  return [...bodies, ...(input.tanks ?? []).flatMap((t) => tankBodies(t, input))]
}

/** A tank keeps its whole inside dry when sealed, else at least the place its own liquid takes; nothing where a sealed box of the weights or a sealed compartment has it already. */
function tankBodies(t: Tank, input: SwampedInput): BuoyantBody[] {
  const meshes = tankMeshes(t.shape, t.foot)
  const inside = meshes.reduce((v, m) => v + solidProperties(m).volume, 0)
  const share = t.sealed ? 1 : Math.min(1, t.volume / inside)
  const counted =
    input.compartments.some((c) => c.sealed && c.from <= t.foot[0] && t.foot[0] <= c.to) ||
    input.weights.some(
      (w) => w.sealed && w.size?.every((s, k) => Math.abs(w.at[k]! - t.foot[k]!) <= s / 2 + 0.01),
    )
  return counted || !(share > 0) ? [] : meshes.map((mesh) => ({ name: t.name, mesh, share }))
}

/** kg of water all bodies together displace when wholly under. */
export function wholeLift(bodies: readonly BuoyantBody[], water: number): number {
  return bodies.reduce((m, b) => m + water * b.share * solidProperties(b.mesh).volume, 0)
}
