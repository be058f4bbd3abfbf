/** Numbers on a drawing, each at its place with a fine line to it where it had to stand aside. */
import { circle, line, text } from './marks.ts'
import { ink, paper, quiet } from './palette.ts'
import type { Mark, Spot } from './sheet.ts'

/** radius of a number's disc, mm: as large as a fingertip needs on a phone with the ring round it */
export const numberRadius = 2.5

/** A number and the place it belongs to, mm on the sheet. */
export interface NumberedPoint {
  n: number
  x: number
  y: number
}

/** room between two discs, mm */
const gap = 0.8

/** Discs of the numbers, none over another, each as near to its place as there is room. */
export function placeNumbers(points: readonly NumberedPoint[]): Spot[] {
  const placed: Spot[] = []
  const r = numberRadius
  for (const { n, x, y } of points) {
    const free = (px: number, py: number) =>
      placed.every((s) => Math.hypot(s.x - px, s.y - py) >= 2 * r + gap - 1e-9)
    let best = { x, y }
    search: for (let ring = 0; ring < 12; ring++) {
      const count = ring === 0 ? 1 : 8 * ring
      for (let k = 0; k < count; k++) {
        // upwards first, where the sky is, then in turns to both sides
        const turn = ((k % 2 === 0 ? 1 : -1) * Math.ceil(k / 2) * 2 * Math.PI) / count
        const far = ring * (r + gap)
        const at = { x: x + far * Math.sin(turn), y: y + far * Math.cos(turn) }
        if (free(at.x, at.y)) {
          best = at
          break search
        }
      }
    }
    placed.push({ n, x: best.x, y: best.y, r, to: [x, y] })
  }
  return placed
}

/** Discs with their numbers, and lines to the places of those that stand aside. */
export function numberMarks(spots: readonly Spot[]): Mark[] {
  const lines = spots.flatMap(({ x, y, r, to }) => {
    const far = Math.hypot(x - to[0], y - to[1])
    if (far <= r) return []
    return [
      line(x, y, to[0], to[1], { stroke: ink, width: 0.25 }, 'dimension'),
      circle(to[0], to[1], 0.5, { stroke: quiet, width: 0.1, fill: ink }, 'dimension'),
    ]
  })
  const discs = spots.flatMap(({ n, x, y, r }) => [
    circle(x, y, r, { stroke: paper, width: 0.4, fill: ink }, 'dimension'),
    text(x, y - 1.05, String(n), {
      size: 3,
      anchor: 'middle',
      bold: true,
      colour: paper,
      layer: 'dimension',
    }),
  ])
  return [...lines, ...discs]
}

/** Spots moved by dx, dy mm. */
export const movedSpots = (spots: readonly Spot[], dx: number, dy: number): Spot[] =>
  spots.map((s) => ({ ...s, x: s.x + dx, y: s.y + dy, to: [s.to[0] + dx, s.to[1] + dy] }))
