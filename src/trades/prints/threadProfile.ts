/**
 * The axial section of one turn of a thread, as a mesh is swept from: the form of the thread moved away from its partner by a clearance,
 * crests and roots no narrower than a printer can make them. Geometry alone; lengths m.
 */
import { say } from '../../base/answers/sentence.ts'
import { lengthOf } from './misfit.ts'
import { type Thread, threadError, toothWidth } from './threadForms.ts'

/** `external`: on a plug or a neck's outside; `internal`: in a cap or a nut. */
export type ThreadSide = 'external' | 'internal'

export interface ProfileOptions {
  /** how far the whole profile is moved away from the partner, on the radius, m */
  clearance: number
  /** least width of a crest and of a root, m; the form's own where it is wider */
  crestFlat?: number
  rootFlat?: number
}

/**
 * One turn: four corners along the axis, in order, `z` in [0, pitch) and the radius at each; straight lines between, and from the last
 * to the first of the next turn. z = 0 is the middle of the outside thread's crest on both sides, so that a pair made with the same
 * phase meshes.
 */
export interface TurnProfile {
  side: ThreadSide
  pitch: number
  z: Float64Array
  r: Float64Array
  /** radii of the crest and of the root, m */
  crest: number
  root: number
  /** radius on which tooth and gap are equally wide, m */
  mid: number
  half: number
}

/** The section of one turn of a thread; RangeError where the flats asked for leave no flank. */
export function threadProfile(thread: Thread, side: ThreadSide, options: ProfileOptions): TurnProfile {
  const { clearance, crestFlat = 0, rootFlat = 0 } = options
  if (!(Number.isFinite(clearance) && Math.abs(clearance) < thread.pitch))
    throw threadError('clearance', lengthOf(clearance), say`less than a pitch, ${lengthOf(thread.pitch)}`)
  const tan = Math.tan(thread.half)
  const { pitch } = thread
  const outward = side === 'external' ? -clearance : clearance
  const mid = thread.d2 / 2 + outward
  const [outer, inner] = [thread.d / 2, thread.d1 / 2]
  // width of tooth (or of the partner's tooth) at the basic crest and root decides the flats of the form
  const outerFlat = toothWidth(thread, outer)
  const innerFlat = pitch - toothWidth(thread, inner)
  const [crestOf, rootOf] = side === 'external' ? [outerFlat, innerFlat] : [innerFlat, outerFlat]
  const crestWide = Math.max(crestOf, crestFlat)
  const rootWide = Math.max(rootOf, rootFlat)
  // each flat lies where tooth or gap has come down to that width
  const reach = (flat: number) => (pitch / 2 - flat) / (2 * tan)
  const sign = side === 'external' ? 1 : -1
  const crest = mid + sign * reach(crestWide)
  const root = mid - sign * reach(rootWide)
  if (!(sign * (crest - root) > 0.05 * pitch))
    throw threadError(
      'pitch',
      lengthOf(pitch),
      say`what leaves a flank between a crest of ${lengthOf(crestWide)} and a root of ${lengthOf(rootWide)}`,
    )
  const flank = Math.abs(crest - root) * tan
  const half = (side === 'external' ? crestWide : rootWide) / 2
  const [high, low] = side === 'external' ? [crest, root] : [root, crest]
  return {
    side,
    pitch,
    z: Float64Array.of(half, half + flank, pitch - half - flank, pitch - half),
    r: Float64Array.of(high, low, low, high),
    crest,
    root,
    mid,
    half: thread.half,
  }
}

/** Radius of a turn's section at a place along the axis, m; any z, it repeats with the pitch. */
export function radiusAt(p: TurnProfile, z: number): number {
  const u = z - p.pitch * Math.floor(z / p.pitch)
  const [z0, z1, z2, z3] = p.z as unknown as [number, number, number, number]
  const [r0, r1] = p.r as unknown as [number, number]
  if (u <= z0 || u >= z3) return r0
  if (u < z1) return r0 + ((r1 - r0) * (u - z0)) / (z1 - z0)
  return u <= z2 ? r1 : r1 + ((r0 - r1) * (u - z2)) / (z3 - z2)
}
