/**
 * A picture of meshes seen from above and ahead: a z-buffer with even light, so that a part of tens of thousands of triangles stays one image.
 * Parallel projection: lengths along the three axes are true to each other.
 */
import type { SolidMesh } from '../base/answers/madePart.ts'
import { okabeIto, paper, rgbOf, seriesColours } from './palette.ts'
import type { Sheet } from './sheet.ts'

export interface SolidView {
  /** mm */
  width: number
  /** rad: round the upright, and up from level */
  around?: number
  over?: number
  title: string
  says: string
}

/** picture points a millimetre, and the tallest picture over its width */
const FINE = 3
const TALLEST = 0.8
const LIGHT = [0.35, -0.5, 0.79] as const

/** The picture; a sheet without an image where the meshes hold nothing. */
export function solidPicture(
  meshes: readonly SolidMesh[],
  { width, around = -0.6, over = 0.5, title, says }: SolidView,
): Sheet {
  const [ca, sa, co, so] = [Math.cos(around), Math.sin(around), Math.cos(over), Math.sin(over)]
  const eyes = meshes.map(({ corners }) => {
    // right, up and towards the eye
    const out = new Float64Array(corners.length)
    for (let i = 0; i < corners.length; i += 3) {
      const [x, y, z] = [corners[i]!, corners[i + 1]!, corners[i + 2]!]
      const away = ca * y - sa * x
      out[i] = ca * x + sa * y
      out[i + 1] = co * z + so * away
      out[i + 2] = so * z - co * away
    }
    return out
  })
  const box = { left: Infinity, right: -Infinity, low: Infinity, high: -Infinity }
  for (const e of eyes)
    for (let i = 0; i < e.length; i += 3) {
      box.left = Math.min(box.left, e[i]!)
      box.right = Math.max(box.right, e[i]!)
      box.low = Math.min(box.low, e[i + 1]!)
      box.high = Math.max(box.high, e[i + 1]!)
    }
  const [wide, tall] = [box.right - box.left, box.high - box.low]
  if (!(wide > 0 && tall > 0)) return { width, height: 10, title, says, marks: [] }
  const scale = Math.min(width / wide, (TALLEST * width) / tall)
  const height = Math.max(10, tall * scale)
  const [cols, rows] = [Math.round(width * FINE), Math.round(height * FINE)]
  const rgb = new Uint8Array(3 * cols * rows)
  const [r0, g0, b0] = rgbOf(paper)
  for (let i = 0; i < rgb.length; i += 3) rgb.set([r0, g0, b0], i)
  const depth = new Float64Array(cols * rows).fill(-Infinity)
  const k = scale * FINE
  const [dx, dy] = [(cols - wide * k) / 2, 0]
  meshes.forEach((mesh, m) => {
    const base = rgbOf(
      meshes.length > 1 ? (seriesColours[m % seriesColours.length] ?? okabeIto.skyBlue) : okabeIto.skyBlue,
    )
    const e = eyes[m]!
    const t = mesh.triangles
    for (let i = 0; i < t.length; i += 3)
      fill(
        [0, 1, 2].map((j) => {
          const v = t[i + j]!
          return [
            dx + (e[3 * v]! - box.left) * k,
            dy + (box.high - e[3 * v + 1]!) * k,
            e[3 * v + 2]! * k,
          ] as const
        }) as unknown as Corners,
        base,
      )
  })
  return {
    width,
    height,
    title,
    says,
    marks: [{ kind: 'image', x: 0, y: 0, w: width, h: height, rgb, cols, rows, layer: 'fill' }],
  }

  function fill([a, b, c]: Corners, base: readonly number[]): void {
    const nx = (b[1] - a[1]) * (c[2] - a[2]) - (b[2] - a[2]) * (c[1] - a[1])
    const ny = (b[2] - a[2]) * (c[0] - a[0]) - (b[0] - a[0]) * (c[2] - a[2])
    const nz = (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0])
    const size = Math.hypot(nx, ny, nz)
    if (!(size > 0)) return
    // both sides of thin sheet are lit alike
    const lit = 0.45 + 0.55 * Math.abs((nx * LIGHT[0] + ny * LIGHT[1] + nz * LIGHT[2]) / size)
    const area = nz
    if (area === 0) return
    const x0 = Math.max(0, Math.floor(Math.min(a[0], b[0], c[0])))
    const x1 = Math.min(cols - 1, Math.ceil(Math.max(a[0], b[0], c[0])))
    const y0 = Math.max(0, Math.floor(Math.min(a[1], b[1], c[1])))
    const y1 = Math.min(rows - 1, Math.ceil(Math.max(a[1], b[1], c[1])))
    for (let y = y0; y <= y1; y++)
      for (let x = x0; x <= x1; x++) {
        const [px, py] = [x + 0.5, y + 0.5]
        const wa = ((b[0] - px) * (c[1] - py) - (b[1] - py) * (c[0] - px)) / area
        const wb = ((c[0] - px) * (a[1] - py) - (c[1] - py) * (a[0] - px)) / area
        const wc = 1 - wa - wb
        if (wa < 0 || wb < 0 || wc < 0) continue
        const z = wa * a[2] + wb * b[2] + wc * c[2]
        const at = y * cols + x
        if (z <= depth[at]!) continue
        depth[at] = z
        for (let ch = 0; ch < 3; ch++) rgb[3 * at + ch] = lit * base[ch]!
      }
  }
}

type Corners = readonly [Corner, Corner, Corner]
type Corner = readonly [number, number, number]
