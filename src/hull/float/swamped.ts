/**
 * The swamped craft, by lost buoyancy: the water has the run of the hull, and only what is solid or sealed still displaces.
 * Source: E. V. Lewis (ed.), Principles of Naval Architecture vol. I (1988), ch. III (lost-buoyancy method); permeabilities there are by
 * convention 0.95 for an empty space and about 0.85 for machinery.
 */
import { solidProperties } from '../../solid/integrals.ts'
import type { Mesh, Vec3 } from '../../solid/mesh.ts'
import { boxMesh } from '../../solid/primitives.ts'
import { sliceBetween, sliceBox } from '../../solid/slice.ts'
import type { Hull } from '../shape/hull.ts'
import type { BuoyantBody } from './load.ts'
import { type Tank, tankMeshes } from './tanks.ts'
import type { Weight } from './weights.ts'

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

export interface FoamVolume {
  block: FoamBlock
  /** m³ inside the hull */
  volume: number
  centre: [number, number, number]
  /** kg it lifts under water beyond its own weight */
  lift: number
}

/** Foam blocks as they lie in the hull. Blocks wholly outside have volume 0. */
export function foamVolumes(hull: Hull, blocks: readonly FoamBlock[], water: number): FoamVolume[] {
  return blocks.map((block) => {
    const mesh = sliceBox(hull.mesh, block.low, block.high)
    const p = mesh === undefined ? undefined : solidProperties(mesh)
    const volume = p === undefined || !(p.volume > 1e-12) ? 0 : p.volume
    const middle = [0, 1, 2].map((k) => (block.low[k]! + block.high[k]!) / 2) as [number, number, number]
    const lift = volume * (water * (1 - block.soaked) - block.density)
    return { block, volume, centre: volume > 0 ? p!.centroid : middle, lift }
  })
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
  const s = w.size
  if (sealed && s?.every((v) => v > 0))
    return boxMesh(
      [w.at[0] - s[0] / 2, w.at[1] - s[1] / 2, w.at[2] - s[2] / 2],
      [w.at[0] + s[0] / 2, w.at[1] + s[1] / 2, w.at[2] + s[2] / 2],
    )
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
 * Everything that still displaces water when swamped: sealed compartments, foam outside them, and the weights' own material
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
  for (const [from, to] of unsealedRuns(hull, compartments))
    for (const b of foam) {
      const low: Vec3 = [Math.max(from, b.low[0]), b.low[1], b.low[2]]
      const high: Vec3 = [Math.min(to, b.high[0]), b.high[1], b.high[2]]
      if (!(high[0] > low[0] + 1e-9)) continue
      const mesh = sliceBox(hull.mesh, low, high)
      if (mesh !== undefined && solidProperties(mesh).volume > 1e-9)
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
