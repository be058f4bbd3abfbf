/**
 * A threaded rod swept turn by turn, closed by construction: rows of corners follow the helix, and the last column joins the first one shifted
 * by a turn. Derived; the thread's hollow is the same surface to be cut away. Lengths m, angles rad.
 */
import type { SolidMesh } from '../../base/answers/madePart.ts'

/** One turn along the axis: corners at `z` in [0, pitch), ascending, with the radius at each; straight lines between, over and over. */
export interface TurnSection {
  pitch: number
  z: ArrayLike<number>
  r: ArrayLike<number>
}

export interface ThreadSweep {
  section: TurnSection
  length: number
  /** columns round the axis */
  facets: number
  /** −1 for a left-hand thread */
  hand?: 1 | -1
  /** the thread is made to cut a hollow: facets then leave the room that the section asks for, and its lead-in opens */
  hollow?: boolean
  /** radius that a cone of 45° lets through at the ends: [at z = 0, at z = length]; absent for none */
  lead?: readonly [number | undefined, number | undefined]
  /** the first turn grows from the root over this angle */
  fade?: number
}

/** Radius of the section at a height of its own; repeats with the pitch. */
function radiusIn({ pitch, z, r }: TurnSection, at: number): number {
  const u = at - pitch * Math.floor(at / pitch)
  const last = z.length - 1
  let i = last
  for (let k = 0; k <= last; k++)
    if (z[k]! > u) {
      i = k - 1
      break
    }
  const from = i < 0 ? last : i
  const to = from === last ? 0 : from + 1
  const z0 = i < 0 ? z[last]! - pitch : z[from]!
  const z1 = from === last && i >= 0 ? z[0]! + pitch : z[to]!
  return r[from]! + ((r[to]! - r[from]!) * (u - z0)) / (z1 - z0)
}

/** The swept rod, z from 0 to `length`. RangeErrors name the field. */
export function threadSweep(o: ThreadSweep): SolidMesh {
  const { section, length, facets: n, hand = 1, hollow = false, lead, fade = 0 } = o
  const { pitch, z: knot, r: radii } = section
  if (!(pitch > 0 && length > 0 && length < 200 * pitch))
    throw new RangeError(`length: ${length} m is outside 0 to 200 pitches of ${pitch} m`)
  if (!(Number.isInteger(n) && n >= 12)) throw new RangeError(`facets: ${n}, expected a whole number from 12`)
  const knots = knot.length
  // a tooth fades into its root: the widest part of a hollow, the narrowest of a rod
  let root = radii[0]!
  for (let i = 1; i < knots; i++) root = hollow ? Math.max(root, radii[i]!) : Math.min(root, radii[i]!)
  const wide = hollow ? 1 / Math.cos(Math.PI / n) : 1
  const turns = Math.ceil(length / pitch) + 4
  const rows = turns * knots
  const points: number[] = []
  const id = new Int32Array(n * rows)
  const radius = (angle: number, z: number): number => {
    const along = z - (pitch * angle) / (2 * Math.PI)
    let r = radiusIn(section, along)
    if (fade > 0) {
      // angle walked along the thread since its beginning
      const walked = angle + 2 * Math.PI * Math.floor(along / pitch + 0.5)
      r = root + (r - root) * Math.min(1, Math.max(0, walked / fade))
    }
    const ends = [lead?.[0], lead?.[1]] as const
    const way = [z, length - z] as const
    for (let e = 0; e < 2; e++) {
      const from = ends[e]
      if (from === undefined) continue
      r = hollow ? Math.max(r, from - way[e]!) : Math.min(r, from + way[e]!)
    }
    return r * wide
  }
  for (let i = 0; i < n; i++) {
    const angle = (2 * Math.PI * i) / n
    const c = Math.cos(angle)
    const s = hand * Math.sin(angle)
    let before = Number.NaN
    for (let j = 0; j < rows; j++) {
      const turn = Math.floor(j / knots) - 2
      const raw = pitch * (i / n + turn) + knot[j % knots]!
      const z = Math.min(length, Math.max(0, raw))
      if (z !== before) {
        const r = radius(angle, z)
        points.push(r * c, r * s, z)
        before = z
      }
      id[i * rows + j] = points.length / 3 - 1
    }
  }
  const triangles: number[] = []
  const face = (a: number, b: number, c: number) => {
    if (a === b || b === c || a === c) return
    if (hand > 0) triangles.push(a, b, c)
    else triangles.push(a, c, b)
  }
  const bottom = points.length / 3
  points.push(0, 0, 0, 0, 0, length)
  for (let i = 0; i < n; i++) {
    const wrap = i === n - 1
    const at = (j: number) => id[i * rows + Math.max(0, Math.min(rows - 1, j))]!
    const next = (j: number) =>
      wrap ? id[Math.max(0, Math.min(rows - 1, j + knots))]! : id[(i + 1) * rows + j]!
    for (let j = 0; j < rows - 1; j++) {
      face(at(j), next(j), next(j + 1))
      face(at(j), next(j + 1), at(j + 1))
    }
    face(bottom, next(0), at(0))
    face(bottom + 1, at(rows - 1), next(rows - 1))
  }
  return { corners: Float64Array.from(points), triangles: Uint32Array.from(triangles) }
}
