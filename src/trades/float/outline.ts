/** The lines of a mesh as seen from one side: sharp edges and the silhouette, for true views. */
import type { Mesh } from '../../physics/solid/mesh.ts'
import type { WaterFrame } from '../../physics/solid/waterFrame.ts'

/** From where: 'side' from starboard (bow to the right), 'end' from astern (starboard to the right), 'top' from above (bow to the right). */
export type View = 'side' | 'end' | 'top'

/** Screen position of a body point in a view, m: right and up, the water at 0 (the craft's own origin at 0 in 'top'). */
export function project(
  view: View,
  f: WaterFrame,
  h: number,
  x: number,
  y: number,
  z: number,
): [number, number] {
  const p = f.e1x * x + f.e1y * y + f.e1z * z
  const q = f.e2y * y + f.e2z * z
  const s = f.nx * x + f.ny * y + f.nz * z - h
  return view === 'side' ? [p, s] : view === 'end' ? [-q, s] : [p, q]
}

/** Pieces x0, y0, x1, y1 … of the edges worth drawing, hidden ones left out. */
export function outline(mesh: Mesh, view: View, f: WaterFrame, h: number, sharp = 0.35): Float64Array {
  const { points, triangles } = mesh
  const n = points.length / 3
  const sx = new Float64Array(n)
  const sy = new Float64Array(n)
  for (let i = 0; i < n; i++) {
    const [a, b] = project(view, f, h, points[3 * i]!, points[3 * i + 1]!, points[3 * i + 2]!)
    sx[i] = a
    sy[i] = b
  }
  // a face looks at the eye when it is anticlockwise on the screen
  const faces = triangles.length / 3
  const towards = new Uint8Array(faces)
  for (let t = 0; t < faces; t++) {
    const a = triangles[3 * t]!
    const b = triangles[3 * t + 1]!
    const c = triangles[3 * t + 2]!
    const area = (sx[b]! - sx[a]!) * (sy[c]! - sy[a]!) - (sx[c]! - sx[a]!) * (sy[b]! - sy[a]!)
    towards[t] = area > 0 ? 1 : 0
  }
  const { ends, sides, dots } = edgesOf(mesh)
  const out: number[] = []
  const cosSharp = Math.cos(sharp)
  for (let e = 0; e < dots.length; e++) {
    const one = towards[sides[2 * e]!]!
    const other = towards[sides[2 * e + 1]!]!
    // a silhouette, or a crease with a face that is seen
    if (one !== other || (one + other > 0 && dots[e]! < cosSharp)) {
      const a = ends[2 * e]!
      const b = ends[2 * e + 1]!
      out.push(sx[a]!, sy[a]!, sx[b]!, sy[b]!)
    }
  }
  return Float64Array.from(out)
}

interface Edges {
  /** the two points of each edge, its two faces, and the product of their normals */
  ends: Int32Array
  sides: Int32Array
  dots: Float64Array
}

/** edges of a mesh, found once: a view is drawn again for every frame of a drag */
const known = new WeakMap<Mesh, Edges>()

function edgesOf(mesh: Mesh): Edges {
  const before = known.get(mesh)
  if (before) return before
  const { points, triangles } = mesh
  const n = points.length / 3
  const normals = faceNormals(mesh)
  const open = new Map<number, number>()
  const ends: number[] = []
  const sides: number[] = []
  const dots: number[] = []
  for (let t = 0; t < triangles.length / 3; t++)
    for (let k = 0; k < 3; k++) {
      const a = triangles[3 * t + k]!
      const b = triangles[3 * t + ((k + 1) % 3)]!
      const other = open.get(b * n + a)
      if (other === undefined) {
        open.set(a * n + b, t)
        continue
      }
      ends.push(a, b)
      sides.push(t, other)
      dots.push(
        normals[3 * t]! * normals[3 * other]! +
          normals[3 * t + 1]! * normals[3 * other + 1]! +
          normals[3 * t + 2]! * normals[3 * other + 2]!,
      )
    }
  const made = { ends: Int32Array.from(ends), sides: Int32Array.from(sides), dots: Float64Array.from(dots) }
  known.set(mesh, made)
  return made
}

function faceNormals(mesh: Mesh): Float64Array {
  const { points: p, triangles: t } = mesh
  const out = new Float64Array(t.length)
  for (let i = 0; i < t.length; i += 3) {
    const a = 3 * t[i]!
    const b = 3 * t[i + 1]!
    const c = 3 * t[i + 2]!
    const ux = p[b]! - p[a]!
    const uy = p[b + 1]! - p[a + 1]!
    const uz = p[b + 2]! - p[a + 2]!
    const wx = p[c]! - p[a]!
    const wy = p[c + 1]! - p[a + 1]!
    const wz = p[c + 2]! - p[a + 2]!
    const nx = uy * wz - uz * wy
    const ny = uz * wx - ux * wz
    const nz = ux * wy - uy * wx
    const l = Math.hypot(nx, ny, nz) || 1
    out[i] = nx / l
    out[i + 1] = ny / l
    out[i + 2] = nz / l
  }
  return out
}

/** a point of the screen to a micrometre as one whole number; views are some metres wide */
const place = (x: number, y: number): number => Math.round(x * 1e6) * 2 ** 26 + Math.round(y * 1e6)

/** Pieces joined into runs, so that a drawing has few marks. */
export function joinedRuns(pieces: Float64Array): Float64Array[] {
  const count = pieces.length / 4
  // the two ends of each piece as numbers of points, and the pieces that meet at each point
  const ends = new Int32Array(2 * count)
  const numbers = new Map<number, number>()
  const meeting: number[][] = []
  for (let e = 0; e < 2 * count; e++) {
    const key = place(pieces[2 * e]!, pieces[2 * e + 1]!)
    let n = numbers.get(key)
    if (n === undefined) {
      n = meeting.length
      numbers.set(key, n)
      meeting.push([])
    }
    ends[e] = n
    const there = meeting[n]!
    if (there.at(-1) !== e >> 1) there.push(e >> 1)
  }
  const used = new Uint8Array(count)
  const runs: Float64Array[] = []
  const follow = (run: number[], from: number): void => {
    let at = from
    for (;;) {
      const next = meeting[at]!.find((i) => used[i] === 0)
      if (next === undefined) return
      used[next] = 1
      const far = 2 * next + (ends[2 * next] === at ? 1 : 0)
      run.push(pieces[2 * far]!, pieces[2 * far + 1]!)
      at = ends[far]!
    }
  }
  for (let i = 0; i < count; i++) {
    if (used[i] === 1) continue
    used[i] = 1
    const ahead = Array.from(pieces.subarray(4 * i, 4 * i + 4))
    follow(ahead, ends[2 * i + 1]!)
    const back: number[] = []
    follow(back, ends[2 * i]!)
    const lead: number[] = []
    for (let k = back.length - 2; k >= 0; k -= 2) lead.push(back[k]!, back[k + 1]!)
    runs.push(Float64Array.from([...lead, ...ahead]))
  }
  return runs
}
