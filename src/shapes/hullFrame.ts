/**
 * A frame across a hull from its section: a ring of a depth inside the skin, with notches where stringers pass and for water to run through beside
 * the keel. Corners of notches are round so that no crack starts there: common practice, no source.
 */
import { inMm } from '../base/answers/amounts.ts'
import type { FlatPiece, FlatPoint } from '../base/answers/madePart.ts'
import { say } from '../base/answers/sentence.ts'
import { areaOf, distanceTo, inset, isInside } from './outlines.ts'
import { line } from './patternMarks.ts'
import { plate } from './plate.ts'
import { mustLie, ShapeFault } from './shapeFault.ts'

export interface FrameShape {
  id: string
  title: string
  thickness: number
  /** half section from keel (y = 0) round to the deck's middle (y = 0), y half-breadth, z up; m */
  section: readonly FlatPoint[]
  /** from the section to the frame's outer edge: skin, m */
  skin: number
  /** of the ring, m; 0 for a whole bulkhead */
  depth: number
  /** where stringers pass through the outer edge: half-breadths on the bottom, their width and height, m */
  stringers: readonly { y: number; width: number; height: number }[]
  /** width of the half-round water holes beside the keel, m; 0 for none */
  limber: number
}

/** Pattern of a frame. ShapeFault naming section, skin, depth, stringers.k or limber. */
export function hullFrame(f: FrameShape): FlatPiece {
  const half = f.section
  const first = half[0]
  const last = half.at(-1)
  if (half.length < 3 || !first || !last || Math.abs(first[0]) > 1e-6 || Math.abs(last[0]) > 1e-6)
    throw new ShapeFault(
      'section',
      half.length,
      3,
      'A half section runs from the keel round to the middle of the deck, both on the centre line.',
      'Give at least three points, the first and the last with a half-breadth of nought.',
    )
  const whole = [
    ...half,
    ...half
      .slice(1, -1)
      .reverse()
      .map(([y, z]): FlatPoint => [-y, z]),
  ]
  const out = areaOf(whole) > 0 ? whole : whole.reverse()
  const breadth = 2 * Math.max(...half.map((p) => p[0]))
  mustLie('skin', f.skin, 0, breadth / 4)
  mustLie('depth', f.depth, 0, breadth / 4)
  const outer = f.skin > 0 ? inset(out, f.skin) : out
  const holes: FlatPoint[][] = []
  if (f.depth > 0) {
    const inner = inset(outer, f.depth)
    // an inset that folded over itself leaves no ring
    if (
      inner.some((p) => !isInside(p, outer) || distanceTo(p, outer) < 0.5 * f.depth) ||
      !(areaOf(inner) > 0)
    )
      throw new ShapeFault(
        'depth',
        f.depth,
        breadth / 8,
        say`A ring ${inMm(f.depth)} deep does not go into this section.`,
        'Make it shallower, or a whole bulkhead with a depth of nought.',
      )
    holes.push(inner)
  }
  const notches: Notch[] = []
  f.stringers.forEach(({ y, width, height }, k) => {
    mustLie(`stringers.${k}.width`, width, 1e-3, 0.3)
    mustLie(`stringers.${k}.height`, height, 1e-3, f.depth > 0 ? f.depth * 0.75 : 0.3)
    mustLie(`stringers.${k}.y`, y, 0, breadth / 2 - f.skin - width)
    for (const side of y > width / 2 ? [1, -1] : [1])
      notches.push({
        name: `stringers.${k}.y`,
        y: side * y,
        width,
        height,
        round: Math.min(1.5e-3, width / 2),
      })
  })
  if (f.limber > 0) {
    mustLie('limber', f.limber, 2e-3, f.depth > 0 ? f.depth * 0.75 : 0.1)
    const half = f.limber / 2
    for (const side of [1, -1])
      notches.push({ name: 'limber', y: side * 1.5 * half, width: f.limber, height: half, round: half })
  }
  const [low, high] = [lowestAt(outer, 0), Math.max(...outer.map((p) => p[1]))]
  return plate({
    id: f.id,
    title: f.title,
    thickness: f.thickness,
    outline: notched(outer, notches),
    holes,
    lines: [
      line('centre', [
        [0, low],
        [0, high],
      ]),
    ],
    said: [say`${inMm(f.skin, 0.1)} inside the lines`],
  })
}

interface Notch {
  name: string
  y: number
  width: number
  height: number
  /** radius of its inner corners */
  round: number
}

/** An anticlockwise outline with notches in its lower edge. ShapeFault naming the notch that runs into its neighbour. */
function notched(outline: readonly FlatPoint[], notches: readonly Notch[]): FlatPoint[] {
  if (notches.length === 0) return [...outline]
  const xs = outline.map((p) => p[0])
  const start = xs.indexOf(Math.min(...xs))
  const run = [...outline.slice(start), ...outline.slice(0, start)]
  const turn = run.findIndex((p) => p[0] === Math.max(...xs))
  const sorted = [...notches].sort((a, b) => a.y - b.y)
  const cuts = sorted.map((n, k): { from: number; to: number; points: FlatPoint[] } => {
    const [from, to] = [n.y - n.width / 2, n.y + n.width / 2]
    const before = sorted[k - 1]
    if (before && before.y + before.width / 2 >= from - 1e-3)
      throw new ShapeFault(
        n.name,
        n.y,
        before.y + before.width / 2 + n.width / 2,
        say`Its notch runs into the one at ${inMm(Math.abs(before.y))} from the middle.`,
        'Move one of them along the frame, or make the notches narrower.',
      )
    const [left, right] = [lowestAt(outline, from), lowestAt(outline, to)]
    const top = Math.max(left, right) + n.height
    const arc = (cx: number, at: number): FlatPoint[] =>
      Array.from({ length: 9 }, (_, i): FlatPoint => {
        const a = at - (i * Math.PI) / 16
        return [cx + n.round * Math.cos(a), top - n.round + n.round * Math.sin(a)]
      })
    const points: FlatPoint[] = [
      [from, left],
      ...arc(from + n.round, Math.PI),
      ...arc(to - n.round, Math.PI / 2),
      [to, right],
    ]
    return { from, to, points }
  })
  const kept = run.slice(0, turn + 1).filter((p) => !cuts.some((c) => p[0] >= c.from && p[0] <= c.to))
  const lower = [
    ...kept.map((p) => ({ x: p[0], points: [p] })),
    ...cuts.map((c) => ({ x: c.from, points: c.points })),
  ]
  lower.sort((a, b) => a.x - b.x)
  return [...lower.flatMap((l) => l.points), ...run.slice(turn + 1)]
}

/** Height of an outline's lower edge at a half-breadth. */
function lowestAt(outline: readonly FlatPoint[], y: number): number {
  let low = Number.POSITIVE_INFINITY
  for (let i = 0; i < outline.length; i++) {
    const [a, b] = [outline[i]!, outline[(i + 1) % outline.length]!]
    const [from, to] = a[0] < b[0] ? [a, b] : [b, a]
    if (y < from[0] || y > to[0]) continue
    const t = to[0] > from[0] ? (y - from[0]) / (to[0] - from[0]) : 0
    low = Math.min(low, from[1] + t * (to[1] - from[1]))
  }
  return low
}
