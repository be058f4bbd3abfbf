/**
 * STL, binary: 3D Systems, StereoLithography Interface Specification (1989): 80 bytes of head, the count, 50 bytes a triangle. The format knows no
 * units; millimetres are what slicers take it for, and the head says so.
 */
import type { SolidMesh } from '../../base/answers/madePart.ts'

/** millimetres a metre */
const mm = 1e3

/** An STL file of a mesh in millimetres; `title` in its head, plain letters only. */
export function writeStl({ corners, triangles }: SolidMesh, title: string): Uint8Array<ArrayBuffer> {
  const count = triangles.length / 3
  const out = new Uint8Array(84 + 50 * count)
  // a head that begins with "solid" would be read as text
  const head = `in mm: ${title}`
  for (let i = 0; i < Math.min(80, head.length); i++) {
    const c = head.charCodeAt(i)
    out[i] = c >= 32 && c < 127 ? c : 63
  }
  const view = new DataView(out.buffer)
  view.setUint32(80, count, true)
  const p = new Float64Array(9)
  for (let t = 0; t < count; t++) {
    for (let k = 0; k < 9; k++) p[k] = mm * corners[3 * triangles[3 * t + Math.floor(k / 3)]! + (k % 3)]!
    const [ux, uy, uz] = [p[3]! - p[0]!, p[4]! - p[1]!, p[5]! - p[2]!]
    const [wx, wy, wz] = [p[6]! - p[0]!, p[7]! - p[1]!, p[8]! - p[2]!]
    const [nx, ny, nz] = [uy * wz - uz * wy, uz * wx - ux * wz, ux * wy - uy * wx]
    const n = Math.hypot(nx, ny, nz) || 1
    const at = 84 + 50 * t
    view.setFloat32(at, nx / n, true)
    view.setFloat32(at + 4, ny / n, true)
    view.setFloat32(at + 8, nz / n, true)
    for (let k = 0; k < 9; k++) view.setFloat32(at + 12 + 4 * k, p[k]!, true)
  }
  return out
}
