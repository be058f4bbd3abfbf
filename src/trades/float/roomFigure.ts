/** The rider's room from above: where heel, trim and openings stay within their limits, now and with what is tried. */
import { inPercent } from '../../base/answers/amounts.ts'
import { printedAmount } from '../../base/answers/sentence.ts'
import { line, pointSign, polygon, rectangle, text } from '../../drawing/marks.ts'
import { faint, ink, okabeIto, quiet } from '../../drawing/palette.ts'
import type { Mark, Sheet } from '../../drawing/sheet.ts'
import type { Hull } from '../../hull/lines/hullBody.ts'
import type { Envelope } from './envelope.ts'

/** mm round the deck in the picture */
export const roomPad = 12

/** Height of the picture and where a place of the deck stands in it, mm from left and foot. */
export function roomLayout(hull: Hull, width: number) {
  const scale = (width - 2 * roomPad) / hull.length
  const height = hull.beam * scale + 24
  return {
    scale,
    height,
    sx: (x: number) => roomPad + x * scale,
    sy: (y: number) => height / 2 - 4 + y * scale,
  }
}

const title = 'Where the rider may be at rest'

/** The room of a hull; `before` is the one now, drawn as a dashed outline over the tried one. */
export function roomFigure(
  hull: Hull,
  room: Envelope,
  rider?: { x: number; y: number },
  width = 180,
  before?: { hull: Hull; room: Envelope },
): Sheet {
  const { scale, height, sx, sy } = roomLayout(hull, width)
  const marks: Mark[] = []
  const dx = stepOf(room)
  const n = room.y.length
  for (let i = 0; i < room.x.length; i++)
    for (let j = 0; j < n; j++) {
      const state = room.inside[i * n + j]
      if (state === 2) continue
      const cell = 0.92 * dx * scale
      const fill = state === 1 ? okabeIto.green : faint
      marks.push(
        rectangle(
          sx(room.x[i]!) - cell / 2,
          sy(room.y[j]!) - cell / 2,
          cell,
          cell,
          { fill, opacity: state === 1 ? 0.55 : 0.8 },
          'fill',
        ),
      )
    }
  const dashed = { stroke: ink, width: 0.5, dash: [1.6, 1] }
  if (before) {
    for (const [x0, y0, x1, y1] of roomEdges(before.room))
      marks.push(line(sx(x0), sy(y0), sx(x1), sy(y1), dashed, 'data'))
    if (before.hull !== hull)
      marks.push(edgeOf(before.hull, sx, sy, { ...dashed, stroke: quiet, width: 0.3 }))
  }
  marks.push(edgeOf(hull, sx, sy, { stroke: ink, width: 0.35 }))
  if (rider) marks.push(pointSign('circle', sx(rider.x), sy(rider.y), 1.8, okabeIto.vermillion))
  const part = (e: Envelope) => `${printedAmount(inPercent(e.share))} of the deck`
  const share = before ? `tried ${part(room)}, now ${part(before.room)} (dashed)` : part(room)
  marks.push(text(4, height - 5, title, { size: 3.4, bold: true }))
  const narrow = before !== undefined && width < 130
  marks.push(text(width - 4, narrow ? 2.4 : height - 5, share, { size: 3, anchor: 'end' }))
  return {
    width,
    height,
    title,
    says: `Seen from above, bow to the right: ${share} keeps heel, trim and openings within their limits.`,
    marks,
  }
}

/** The deck alone, laid out as `roomFigure` lays it out, for as long as the rider's room is not known. */
export function deckFromAbove(hull: Hull, width = 180): Sheet {
  const { height, sx, sy } = roomLayout(hull, width)
  return {
    width,
    height,
    title,
    says: 'The deck from above, bow to the right; the rider’s room is being worked out.',
    marks: [
      edgeOf(hull, sx, sy, { stroke: ink, width: 0.4 }),
      text(4, height - 5, title, { size: 3.4, bold: true }),
    ],
  }
}

function edgeOf(
  hull: Hull,
  sx: (x: number) => number,
  sy: (y: number) => number,
  style: Parameters<typeof polygon>[1],
): Mark {
  const port = hull.edge.flatMap(([x, y]) => [sx(x), sy(y)])
  const starboard = [...hull.edge].reverse().flatMap(([x, y]) => [sx(x), sy(-y)])
  return polygon([...port, ...starboard], style, 'data', 'deck edge')
}

const stepOf = (room: Envelope) => (room.x.length > 1 ? room.x[1]! - room.x[0]! : 0.05)

/** Borders between places within the limits and the rest, as x0 y0 x1 y1, m; straight runs along x are joined. */
export function roomEdges(room: Envelope): [number, number, number, number][] {
  const half = stepOf(room) / 2
  const n = room.y.length
  const inside = (i: number, j: number) =>
    i >= 0 && j >= 0 && i < room.x.length && j < n && room.inside[i * n + j] === 1
  const out: [number, number, number, number][] = []
  for (let j = 0; j <= n; j++) {
    const y = j < n ? room.y[j]! - half : room.y[n - 1]! + half
    let from: number | undefined
    for (let i = 0; i <= room.x.length; i++) {
      const border = i < room.x.length && inside(i, j) !== inside(i, j - 1)
      if (border) from ??= room.x[i]! - half
      else if (from !== undefined) {
        out.push([from, y, room.x[i - 1]! + half, y])
        from = undefined
      }
    }
  }
  for (let i = 0; i <= room.x.length; i++) {
    const x = i < room.x.length ? room.x[i]! - half : room.x.at(-1)! + half
    for (let j = 0; j < n; j++)
      if (inside(i, j) !== inside(i - 1, j)) out.push([x, room.y[j]! - half, x, room.y[j]! + half])
  }
  return out
}
