/**
 * Integrals over the part of closed meshes below a plane, without building the cut face.
 *
 * In the water frame (p forward, q to port, s up, s = 0 on the water) every integral is a flux of a field along s
 * through the clipped hull faces only. On the missing lid s = 0, so the fields s, ps, qs and s²/2, whose divergences are
 * 1, p, q and s, pass nothing through it: their fluxes are the submerged volume and its moments. The fields 1, p, q, p², pq
 * and q² have no divergence, so what leaves through the hull faces enters through the lid: their fluxes, with the sign
 * turned, are the waterplane's area and moments. Derived from Gauss's theorem; checked against finite differences.
 * Faces lying in the plane are dropped: a deck exactly awash would otherwise cancel the waterplane.
 */
import { solidProperties } from './integrals.ts'
import { boundsOf, type Mesh, sizeOf, type Vec3 } from './mesh.ts'
import type { WaterFrame } from './waterFrame.ts'

/** Where each sum stands in the array that `addBelow` fills. */
export const AREA = 0
export const AREA_P = 1
export const AREA_Q = 2
export const AREA_PP = 3
export const AREA_PQ = 4
export const AREA_QQ = 5
export const VOLUME = 6
export const VOLUME_P = 7
export const VOLUME_Q = 8
export const VOLUME_S = 9
export const SUMS = 10

/** A mesh made ready for clipping: its own scratch, and the share of its volume that counts. */
export interface ClipBody {
  mesh: Mesh
  /** 1 for a sealed body, 1 − permeability for a flooded one, negative to take a hollow away */
  share: number
  /** distances smaller than this count as on the water, m */
  snap: number
  /** middle of the box round it, and half its sides, m */
  middle: Vec3
  half: Vec3
  /** all of it, once it was wholly under */
  whole?: { volume: number; centroid: Vec3 }
  p: Float64Array
  q: Float64Array
  s: Float64Array
}

/** Scratch for a mesh, allocated once. */
export function clipBody(mesh: Mesh, share = 1): ClipBody {
  const n = mesh.points.length / 3
  const { low, high } = boundsOf(mesh)
  return {
    middle: [(low[0] + high[0]) / 2, (low[1] + high[1]) / 2, (low[2] + high[2]) / 2],
    half: [(high[0] - low[0]) / 2, (high[1] - low[1]) / 2, (high[2] - low[2]) / 2],
    mesh,
    share,
    snap: 1e-10 * sizeOf(mesh),
    p: new Float64Array(n),
    q: new Float64Array(n),
    s: new Float64Array(n),
  }
}

const part = new Float64Array(SUMS)

/** Adds the body's integrals below the plane s = h to `sums` (areas m², volumes m³ …), times its share. Allocates nothing. */
export function addBelow(body: ClipBody, frame: WaterFrame, h: number, sums: Float64Array): void {
  const { middle: m, half: l } = body
  const { nx, ny, nz } = frame
  const up = nx * m[0] + ny * m[1] + nz * m[2] - h
  const reach = Math.abs(nx) * l[0] + Math.abs(ny) * l[1] + Math.abs(nz) * l[2]
  // wholly above it gives nothing; wholly under it gives all it has, whatever the attitude
  if (up - reach > body.snap) return
  if (up + reach < -body.snap) {
    addWhole(body, frame, h, sums)
    return
  }
  toWaterFrame(body, frame, h)
  sumBelow(body)
  for (let i = 0; i < SUMS; i++) sums[i]! += body.share * part[i]!
}

function addWhole(body: ClipBody, f: WaterFrame, h: number, sums: Float64Array): void {
  body.whole ??= solidProperties(body.mesh)
  const [x, y, z] = body.whole.centroid
  const volume = body.share * body.whole.volume
  sums[VOLUME]! += volume
  sums[VOLUME_P]! += volume * (f.e1x * x + f.e1y * y + f.e1z * z)
  sums[VOLUME_Q]! += volume * (f.e2y * y + f.e2z * z)
  sums[VOLUME_S]! += volume * (f.nx * x + f.ny * y + f.nz * z - h)
}

function toWaterFrame(body: ClipBody, f: WaterFrame, h: number): void {
  const { p, q, s, snap } = body
  const points = body.mesh.points
  const { nx, ny, nz, e1x, e1y, e1z, e2y, e2z } = f
  for (let i = 0, k = 0; k < points.length; i++, k += 3) {
    const x = points[k]!
    const y = points[k + 1]!
    const z = points[k + 2]!
    const up = nx * x + ny * y + nz * z - h
    s[i] = up < snap && up > -snap ? 0 : up
    p[i] = e1x * x + e1y * y + e1z * z
    q[i] = e2y * y + e2z * z
  }
}

function sumBelow(body: ClipBody): void {
  const { p, q, s } = body
  const t = body.mesh.triangles
  part.fill(0)
  // running sums in locals: the whole faces are most of the work
  let a0 = 0
  let ap = 0
  let aq = 0
  let app = 0
  let apq = 0
  let aqq = 0
  let v0 = 0
  let vp = 0
  let vq = 0
  let vs = 0
  for (let i = 0; i < t.length; i += 3) {
    const a = t[i]!
    const b = t[i + 1]!
    const c = t[i + 2]!
    const sa = s[a]!
    const sb = s[b]!
    const sc = s[c]!
    // above, or in the plane: nothing
    if (sa >= 0 && sb >= 0 && sc >= 0) continue
    if (sa > 0 || sb > 0 || sc > 0) {
      cutFace(a, b, c, p, q, s)
      continue
    }
    const pa = p[a]!
    const pb = p[b]!
    const pc = p[c]!
    const qa = q[a]!
    const qb = q[b]!
    const qc = q[c]!
    const area = 0.5 * ((pb - pa) * (qc - qa) - (pc - pa) * (qb - qa))
    const sp = pa + pb + pc
    const sq = qa + qb + qc
    const ss = sa + sb + sc
    const area12 = area / 12
    a0 += area
    ap += area * sp
    aq += area * sq
    app += area12 * (pa * pa + pb * pb + pc * pc + sp * sp)
    apq += area12 * (pa * qa + pb * qb + pc * qc + sp * sq)
    aqq += area12 * (qa * qa + qb * qb + qc * qc + sq * sq)
    v0 += area * ss
    vp += area12 * (pa * sa + pb * sb + pc * sc + sp * ss)
    vq += area12 * (qa * sa + qb * sb + qc * sc + sq * ss)
    vs += area12 * (sa * sa + sb * sb + sc * sc + ss * ss)
  }
  part[AREA]! -= a0
  part[AREA_P]! -= ap / 3
  part[AREA_Q]! -= aq / 3
  part[AREA_PP]! -= app
  part[AREA_PQ]! -= apq
  part[AREA_QQ]! -= aqq
  part[VOLUME]! += v0 / 3
  part[VOLUME_P]! += vp
  part[VOLUME_Q]! += vq
  part[VOLUME_S]! += vs / 2
}

// where the edges of the face in hand cross the plane; module scratch so that nothing is allocated
let cutP = 0
let cutQ = 0

/** The crossing of an edge, always reckoned from its lower-numbered end so that both faces get the same point bit for bit. */
function crossing(i: number, j: number, p: Float64Array, q: Float64Array, s: Float64Array): void {
  const from = Math.min(i, j)
  const to = Math.max(i, j)
  const along = s[from]! / (s[from]! - s[to]!)
  cutP = p[from]! + along * (p[to]! - p[from]!)
  cutQ = q[from]! + along * (q[to]! - q[from]!)
}

function cutFace(i: number, j: number, k: number, p: Float64Array, q: Float64Array, s: Float64Array): void {
  // turn the face so that a stands alone on its side of the plane (points on the plane count as above)
  let a = i
  let b = j
  let c = k
  const below = (s[i]! < 0 ? 1 : 0) + (s[j]! < 0 ? 1 : 0) + (s[k]! < 0 ? 1 : 0)
  const lone = below === 1
  if (s[j]! < 0 === lone && s[i]! < 0 !== lone && s[k]! < 0 !== lone) {
    a = j
    b = k
    c = i
  } else if (s[k]! < 0 === lone && s[i]! < 0 !== lone && s[j]! < 0 !== lone) {
    a = k
    b = i
    c = j
  }
  crossing(a, b, p, q, s)
  const p1 = cutP
  const q1 = cutQ
  crossing(c, a, p, q, s)
  const p2 = cutP
  const q2 = cutQ
  if (lone) addFace(p[a]!, q[a]!, s[a]!, p1, q1, 0, p2, q2, 0)
  else {
    addFace(p1, q1, 0, p[b]!, q[b]!, s[b]!, p[c]!, q[c]!, s[c]!)
    addFace(p1, q1, 0, p[c]!, q[c]!, s[c]!, p2, q2, 0)
  }
}

function addFace(
  pa: number,
  qa: number,
  sa: number,
  pb: number,
  qb: number,
  sb: number,
  pc: number,
  qc: number,
  sc: number,
): void {
  const area = 0.5 * ((pb - pa) * (qc - qa) - (pc - pa) * (qb - qa))
  const sp = pa + pb + pc
  const sq = qa + qb + qc
  const ss = sa + sb + sc
  const area12 = area / 12
  part[AREA]! -= area
  part[AREA_P]! -= (area * sp) / 3
  part[AREA_Q]! -= (area * sq) / 3
  part[AREA_PP]! -= area12 * (pa * pa + pb * pb + pc * pc + sp * sp)
  part[AREA_PQ]! -= area12 * (pa * qa + pb * qb + pc * qc + sp * sq)
  part[AREA_QQ]! -= area12 * (qa * qa + qb * qb + qc * qc + sq * sq)
  part[VOLUME]! += (area * ss) / 3
  part[VOLUME_P]! += area12 * (pa * sa + pb * sb + pc * sc + sp * ss)
  part[VOLUME_Q]! += area12 * (qa * sa + qb * sb + qc * sc + sq * ss)
  part[VOLUME_S]! += (area12 / 2) * (sa * sa + sb * sb + sc * sc + ss * ss)
}
