/** Half cross-sections of a closed mesh, keel to deck on the port side: for lines, stations and drawings. */
import { boundsOf, type Mesh } from './mesh.ts'
import { cutLines, cutLoops } from './section.ts'

export type OutlinePoint = readonly [out: number, up: number]

/**
 * The port half of the section at x, from the keel on the centreline out and up to the deck's middle; m. Undefined where the
 * section is not one ring that crosses the centreline twice (two hulls, a hollow, nothing there).
 */
export function halfOutline(mesh: Mesh, x: number): OutlinePoint[] | undefined {
  const loops = cutLoops(cutLines(mesh, [1, 0, 0], x))
  if (loops.length !== 1) return undefined
  const loop = loops[0]!
  const n = loop.length / 3
  const y = (i: number) => loop[3 * (i % n) + 1]!
  const z = (i: number) => loop[3 * (i % n) + 2]!
  let widest = 0
  for (let i = 0; i < n; i++) widest = Math.max(widest, Math.abs(y(i)))
  const port = (i: number) => y(i) > 1e-6 * widest
  // the one run of points to port, and where its two neighbours cross the centreline
  let start = -1
  let runs = 0
  for (let i = 0; i < n; i++)
    if (!port(i) && port(i + 1)) {
      runs++
      start = i
    }
  if (runs !== 1) return undefined
  const on = (a: number, b: number): OutlinePoint => {
    const along = y(a) === y(b) ? 0 : y(a) / (y(a) - y(b))
    return [0, z(a) + Math.min(1, Math.max(0, along)) * (z(b) - z(a))]
  }
  const out: OutlinePoint[] = [on(start, start + 1)]
  let i = start + 1
  for (; port(i); i++) out.push([y(i), z(i)])
  out.push(on(i, i - 1))
  return out[0]![1] <= out.at(-1)![1] ? out : out.reverse()
}

/** Half outlines at places along the mesh from just inside one end to just inside the other; undefined when one of them has none. */
export function halfOutlines(mesh: Mesh, count: number): { x: number; points: OutlinePoint[] }[] | undefined {
  const { low, high } = boundsOf(mesh)
  const length = high[0] - low[0]
  const inset = 1e-3 * length
  const out: { x: number; points: OutlinePoint[] }[] = []
  for (let i = 0; i < count; i++) {
    const x = low[0] + inset + ((length - 2 * inset) * i) / (count - 1)
    const points = halfOutline(mesh, x)
    if (points === undefined) return undefined
    out.push({ x, points })
  }
  return out
}

/**
 * A line with the points left out that lie within `tolerance` (m) of the chord between those kept, ends always kept.
 * Method: D. Douglas and T. Peucker, "Algorithms for the reduction of the number of points required to represent a digitized line", 1973.
 */
export function thinned(line: readonly OutlinePoint[], tolerance: number): OutlinePoint[] {
  const keep = new Uint8Array(line.length)
  keep[0] = 1
  keep[line.length - 1] = 1
  const spans: [number, number][] = [[0, line.length - 1]]
  for (let span = spans.pop(); span !== undefined; span = spans.pop()) {
    const [from, to] = span
    const [ax, ay] = line[from]!
    const dx = line[to]![0] - ax
    const dy = line[to]![1] - ay
    const long = Math.hypot(dx, dy)
    let far = tolerance
    let at = -1
    for (let i = from + 1; i < to; i++) {
      const px = line[i]![0] - ax
      const py = line[i]![1] - ay
      const d = long > 0 ? Math.abs(dx * py - dy * px) / long : Math.hypot(px, py)
      if (d > far) {
        far = d
        at = i
      }
    }
    if (at < 0) continue
    keep[at] = 1
    spans.push([from, at], [at, to])
  }
  return line.filter((_, i) => keep[i] === 1)
}
