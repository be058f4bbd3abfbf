/**
 * A blade lofted through sections on cylinders round the z axis, closed by construction. Each section is given flat, unrolled: along the way round
 * (x) and along the axis (y). Fillets are grown into the sections near the hub, not cut after. Lengths m, angles rad.
 * Thickness: a round nose, a smooth rise to the thickest place, a parabola down to a blunt trailing edge; derived.
 */
import type { SolidMesh } from '../../base/answers/madePart.ts'

/** The mean line of a blade at one radius, the share of it walked from 0 to 1: how far round and how far along. */
export interface MeanLine {
  angle(share: number): number
  along(share: number): number
}

export interface Section {
  radius: number
  line: MeanLine
  /** thickest, radius of the nose, thickness of the trailing edge; m */
  thickest: number
  nose: number
  trailing: number
  /** added to each side all along, m: a fillet's share */
  more: number
}

/** where along the chord it is thickest */
const thickestAt = 0.4

/** Half thickness at a way `s` from the nose of a chord `c`; m. */
export function halfThickness(
  s: number,
  c: number,
  o: Pick<Section, 'thickest' | 'nose' | 'trailing'>,
): number {
  const h = Math.max(o.thickest, o.trailing) / 2
  const nose = Math.min(o.nose, h, thickestAt * c)
  const top = thickestAt * c
  if (s < nose) return Math.sqrt(Math.max(0, nose * nose - (nose - s) ** 2))
  if (s < top) {
    const u = (s - nose) / (top - nose)
    return nose + (h - nose) * u * u * (3 - 2 * u)
  }
  const u = Math.min(1, (s - top) / (c - top))
  return h - (h - o.trailing / 2) * u * u
}

/** Extra half thickness of a fillet of radius `f` at a way `d` above the hub; 0 from `f` on. */
export const filletGrowth = (d: number, f: number): number => {
  const left = Math.min(f, Math.max(0, f - d))
  return f - Math.sqrt(f * f - left * left)
}

/**
 * The blade: `sections` from the root out, `points` along each face. Right-hand blades go round with rising share; `hand` −1 mirrors. RangeErrors name
 * the field.
 */
export function bladeLoft(sections: readonly Section[], points: number, hand: 1 | -1 = 1): SolidMesh {
  if (sections.length < 2) throw new RangeError(`sections: ${sections.length}, expected at least 2`)
  const rim = 2 * points + 1
  const corners = new Float64Array(3 * rim * sections.length)
  const share = Float64Array.from(
    { length: points + 1 },
    (_, i) => (1 - Math.cos((Math.PI * i) / points)) / 2,
  )
  sections.forEach((section, j) => {
    outline(section, share, corners.subarray(3 * rim * j, 3 * rim * (j + 1)), hand)
  })
  return { corners, triangles: skin(sections.length, rim, points, hand) }
}

/** Round one section: the nose once, then both faces in pairs back to the trailing edge. */
function outline(section: Section, share: Float64Array, out: Float64Array, hand: number): void {
  const { radius, line, more } = section
  const last = share.length - 1
  // length walked, by the same steps as the corners
  let chord = 0
  for (let i = 1; i <= last; i++)
    chord += Math.hypot(
      radius * (line.angle(share[i]!) - line.angle(share[i - 1]!)),
      line.along(share[i]!) - line.along(share[i - 1]!),
    )
  let walked = 0
  const put = (k: number, x: number, y: number) => {
    const angle = (hand * x) / radius
    out[3 * k] = radius * Math.cos(angle)
    out[3 * k + 1] = radius * Math.sin(angle)
    out[3 * k + 2] = y
  }
  const e = 1e-4
  for (let i = 0; i <= last; i++) {
    const u = share[i]!
    const x = radius * line.angle(u)
    const y = line.along(u)
    if (i > 0)
      walked += Math.hypot(
        radius * (line.angle(u) - line.angle(share[i - 1]!)),
        y - line.along(share[i - 1]!),
      )
    const [lo, hi] = [Math.max(0, u - e), Math.min(1, u + e)]
    const tx = radius * (line.angle(hi) - line.angle(lo))
    const ty = line.along(hi) - line.along(lo)
    const t = Math.hypot(tx, ty)
    if (i === 0) {
      put(0, x - (more * tx) / t, y - (more * ty) / t)
      continue
    }
    const half = halfThickness(walked, chord, section) + more
    const back = i === last ? more : 0
    put(2 * i - 1, x + (half * -ty + back * tx) / t, y + (half * tx + back * ty) / t)
    put(2 * i, x - (half * -ty - back * tx) / t, y - (half * tx - back * ty) / t)
  }
}

function skin(count: number, rim: number, points: number, hand: number): Uint32Array {
  const out: number[] = []
  const face = (a: number, b: number, c: number) => (hand > 0 ? out.push(a, b, c) : out.push(a, c, b))
  // the way round the rim: nose, left face to its end, right face back
  const order: number[] = [0]
  for (let i = 1; i <= points; i++) order.push(2 * i - 1)
  for (let i = points; i >= 1; i--) order.push(2 * i)
  for (let j = 0; j < count - 1; j++) {
    const [a, b] = [rim * j, rim * (j + 1)]
    for (let k = 0; k < rim; k++) {
      const p = order[k]!
      const q = order[(k + 1) % rim]!
      face(a + p, b + q, a + q)
      face(a + p, b + p, b + q)
    }
  }
  for (const [j, out] of [
    [0, false],
    [count - 1, true],
  ] as const) {
    const at = rim * j
    const cap = (p: number, q: number, r: number) =>
      out ? face(at + p, at + r, at + q) : face(at + p, at + q, at + r)
    cap(0, 1, 2)
    for (let i = 1; i < points; i++) {
      cap(2 * i - 1, 2 * i + 1, 2 * i + 2)
      cap(2 * i - 1, 2 * i + 2, 2 * i)
    }
  }
  return Uint32Array.from(out)
}
