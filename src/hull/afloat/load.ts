/**
 * What floats and what it carries, ready for the solver: buoyant bodies, weights, slack liquids.
 * Energies and forces are divided by g throughout (kg and kg·m): it cancels.
 */
import { type ClipBody, clipBody } from '../../physics/solid/below.ts'
import { solidProperties } from '../../physics/solid/integrals.ts'
import { type Mesh, sizeOf, type Vec3 } from '../../physics/solid/mesh.ts'

/** A closed mesh that displaces water; `share` is the part of its volume that does. */
export interface BuoyantBody {
  name: string
  mesh: Mesh
  /** 1 sealed, 1 − permeability flooded, negative for a hollow taken away */
  share: number
}

/** A liquid with a free surface in a container. */
export interface SlackLiquid {
  name: string
  /** inside of the container, closed */
  mesh: Mesh
  /** m³ of liquid */
  volume: number
  /** kg/m³ */
  density: number
}

export interface FloatingLoad {
  bodies: readonly BuoyantBody[]
  /** kg, without the slack liquids */
  mass: number
  /** m, without the slack liquids */
  centre: Vec3
  liquids?: readonly SlackLiquid[]
  /** kg/m³ of the water outside */
  density: number
}

/** A liquid with its scratch; `level` is the surface along the water's normal, kept as the next guess. */
export interface TankState {
  body: ClipBody
  volume: number
  capacity: number
  density: number
  level: number
}

/** A load with scratch space: make once, solve many times. */
export interface Floater {
  bodies: ClipBody[]
  tanks: TankState[]
  /** solids only */
  mass: number
  centre: Vec3
  density: number
  /** all that can be displaced, kg of water */
  mostLift: number
  /** longest side of the bodies together, m */
  size: number
}

/** Scratch for a load. RangeError when the mass or a liquid is out of range. */
export function floaterOf(load: FloatingLoad): Floater {
  if (!(load.mass >= 0) || !Number.isFinite(load.mass))
    throw new RangeError(`load.mass: ${load.mass} kg, expected 0 or more`)
  if (!(load.density > 0)) throw new RangeError(`load.density: ${load.density} kg/m³, expected above 0`)
  const tanks = (load.liquids ?? []).map((l, i) => tankState(l, `load.liquids[${i}]`))
  return {
    bodies: load.bodies.map((b) => clipBody(b.mesh, b.share)),
    tanks,
    mass: load.mass,
    centre: load.centre,
    density: load.density,
    mostLift: load.density * load.bodies.reduce((v, b) => v + b.share * solidProperties(b.mesh).volume, 0),
    size: load.bodies.reduce((s, b) => Math.max(s, sizeOf(b.mesh)), 0),
  }
}

/** The same floater with more bodies on it, scratch and all. */
export function withBodies(f: Floater, more: readonly BuoyantBody[]): Floater {
  return {
    ...f,
    bodies: [...f.bodies, ...more.map((b) => clipBody(b.mesh, b.share))],
    mostLift: f.mostLift + f.density * more.reduce((v, b) => v + b.share * solidProperties(b.mesh).volume, 0),
    size: more.reduce((s, b) => Math.max(s, sizeOf(b.mesh)), f.size),
  }
}

/** Scratch for one liquid. RangeError when the container does not hold it; `called` is its name there. */
export function tankState(l: SlackLiquid, called = l.name): TankState {
  const capacity = solidProperties(l.mesh).volume
  if (!(l.volume >= 0) || l.volume > capacity * (1 + 1e-9))
    throw new RangeError(`${called}.volume: ${l.volume} m³, expected 0 to ${capacity} m³`)
  return {
    body: clipBody(l.mesh),
    volume: Math.min(l.volume, capacity),
    capacity,
    density: l.density,
    level: Number.NaN,
  }
}

/** Mass with the liquids, kg. */
export function wholeMass(f: Floater): number {
  return f.tanks.reduce((m, t) => m + t.density * t.volume, f.mass)
}

/** The same scratch with other weights: for dragging a rider about without new arrays. */
export function reloaded(f: Floater, mass: number, centre: Vec3): Floater {
  return { ...f, mass, centre }
}
