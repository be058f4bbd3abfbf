/**
 * How a craft leans and speeds up while its tank and carburettors have to work.
 * Heel of 20° either way and a bow 5° down are what Float looks at too; a chop met under way is taken to slope by 8° (a wave 0.2 m high
 * and 4.5 m long at its steepest, π H/L): judgement, no source.
 */
import type { Vec3 } from '../../physics/solid/mesh.ts'
import { makeFrame, type WaterFrame } from '../../physics/solid/waterFrame.ts'
import type { Attitudes, RunAttitudes } from './fuelSetting.ts'

const g = 9.80665

export interface FuelState {
  name: string
  /** as it goes on in a sentence: "over the hump" */
  says: string
  /** rad, bow up and port down are positive */
  trim: number
  heel: number
  /** m/s², forward */
  forward: number
  /** full throttle, so that the fuel flows */
  driven: boolean
  /** it lasts: seconds and more, so that the fuel settles and a pump would draw air */
  lasts: boolean
}

/** Hump and flat out where no balance is known: what planing craft of this size do, judgement. */
const usualRun: RunAttitudes = {
  start: 3,
  hump: { trim: Math.PI / 30, forward: 1.5 },
  top: Math.PI / 60,
  braking: 2,
}

const degrees = (d: number) => (d * Math.PI) / 180

/** The states every tank and circuit is tried in. */
export function fuelStates({ rest, aft, run = usualRun }: Attitudes): FuelState[] {
  const { hump, top } = run
  const state = (
    name: string,
    says: string,
    trim: number,
    forward: number,
    driven: boolean,
    lasts: boolean,
    heel = 0,
  ): FuelState => ({ name, says, trim, heel, forward, driven, lasts })
  return [
    state('at rest', 'at rest', rest, 0, false, true),
    state('rider aft', 'with the rider right aft', aft, 0, false, true),
    state('setting off', 'setting off', rest, run.start, true, true),
    state('hump', 'over the hump', hump.trim, hump.forward, true, true),
    state('flat out', 'flat out', top, 0, true, true),
    state('bow down', 'with the bow 5° down', degrees(-5), 0, true, true),
    state('slowing', 'slowing from flat out', top, -run.braking, false, false),
    state('up a wave', 'up a wave at the hump', hump.trim + degrees(8), hump.forward, true, false),
    state('down a wave', 'down a wave flat out', top - degrees(8), 0, true, false),
    state('to port', 'rolled 20° to port', rest, 0, false, false, degrees(20)),
    state('to starboard', 'rolled 20° to starboard', rest, 0, false, false, degrees(-20)),
  ]
}

/**
 * The frame in which a liquid lies level: the craft's lean with its acceleration, which tips the fuel aft as a greater trim would.
 * `weight` is how heavy the liquid is in it, m/s².
 */
export function liquidFrame(s: FuelState): { frame: WaterFrame; weight: number } {
  const n = makeFrame(s.trim, s.heel)
  const [x, y, z] = [g * n.nx + s.forward, g * n.ny, g * n.nz]
  const weight = Math.hypot(x, y, z)
  return { frame: makeFrame(Math.asin(x / weight), Math.atan2(-y, z)), weight }
}

/** m over still water of a place (m) in a state, the craft turned about the place on the water at rest that is given. */
export function overWater(s: FuelState, [x, y, z]: Vec3, afloat: { x: number; z: number }): number {
  const n = makeFrame(s.trim, s.heel)
  return n.nx * (x - afloat.x) + n.ny * y + n.nz * (z - afloat.z)
}

/** Pa that a place (m) is worth in a state: density times height along the apparent gravity times its strength. */
export function worthOf(s: FuelState, [x, y, z]: Vec3, density: number): number {
  const { frame, weight } = liquidFrame(s)
  return density * weight * (frame.nx * x + frame.ny * y + frame.nz * z)
}
