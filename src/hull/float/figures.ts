/** True views of the craft in the water, to scale: from the side, from astern, and the rider's room from above. */
import { dimension } from '../../drawing/dimension.ts'
import { circle, line, pointSign, polygon, polyline, rectangle, text } from '../../drawing/marks.ts'
import { faint, ink, okabeIto, quiet } from '../../drawing/palette.ts'
import { riderFigure } from '../../drawing/riderFigure.ts'
import type { Mark, Sheet } from '../../drawing/sheet.ts'
import { textWidth } from '../../drawing/textWidth.ts'
import type { Vec3 } from '../../solid/mesh.ts'
import { makeFrame } from '../../solid/waterFrame.ts'
import type { Hull } from '../shape/hull.ts'
import type { Envelope } from './envelope.ts'
import { heightOver, type Opening } from './openings.ts'
import { joinedRuns, outline, project, type View } from './outline.ts'
import type { Stance } from './rider.ts'
import type { Attitude } from './settle.ts'

export interface ViewInput {
  hull: Hull
  attitude: Attitude
  /** common centre of gravity, m */
  centre?: Vec3
  openings?: readonly Opening[]
  rider?: { x: number; y: number; deck: number; stature: number; stance: Stance }
  /** mm; 180 when left out */
  width?: number
  title?: string
}

const degrees = (a: number) => `${((Math.abs(a) * 180) / Math.PI).toFixed(1)}°`
const cm = (x: number) => `${(100 * x).toFixed(1)} cm`

/** Side view from starboard with drafts, freeboard, trim and openings. */
export function sideView(input: ViewInput): Sheet {
  return trueView(input, 'side')
}

/** View from astern with heel and freeboards. */
export function endView(input: ViewInput): Sheet {
  return trueView(input, 'end')
}

function trueView(input: ViewInput, view: View): Sheet {
  const { hull, attitude } = input
  const width = input.width ?? (view === 'side' ? 180 : 110)
  const frame = makeFrame(attitude.trim, attitude.heel)
  const pieces = outline(hull.mesh, view, frame, attitude.h)
  const at = (p: Vec3) => project(view, frame, attitude.h, ...p)
  const box = boundsOf(pieces)
  const room =
    input.rider && input.rider.stance !== 'prone'
      ? 0.95 * input.rider.stature * (input.rider.stance === 'standing' ? 1 : 0.72)
      : 0.15
  const top =
    Math.max(box.y1, input.rider ? at([input.rider.x, input.rider.y, input.rider.deck])[1] + room : box.y1) +
    0.06
  const bottom = Math.min(box.y0, 0) - 0.1
  const pad = 16
  const scale = (width - 2 * pad) / (box.x1 - box.x0)
  const height = (top - bottom) * scale + 14
  const sx = (x: number) => pad + (x - box.x0) * scale
  const sy = (y: number) => 7 + (y - bottom) * scale
  const marks: Mark[] = [...waterMarks(width, sy(0))]
  for (const run of joinedRuns(pieces)) {
    const points = new Float64Array(run.length)
    for (let i = 0; i < run.length; i += 2) {
      points[i] = sx(run[i]!)
      points[i + 1] = sy(run[i + 1]!)
    }
    marks.push(polyline(points, { stroke: ink, width: 0.35 }, 'data', 'hull'))
  }
  if (input.rider) {
    const r = input.rider
    const [rx, ry] = at([r.x, r.y, r.deck])
    if (view === 'side')
      marks.push(...riderFigure(r.stance, sx(rx), sy(ry), r.stature * scale, { stroke: quiet, width: 0.5 }))
    else marks.push(...fromBehind(sx(rx), sy(ry), r, scale))
  }
  if (input.centre) marks.push(...centreSign(...screen(at(input.centre), sx, sy)))
  marks.push(...openingMarks(input, view, at, sx, sy, width))
  marks.push(...(view === 'side' ? draftMarks(input, at, sx, sy, attitude) : endMarks(input, at, sx, sy)))
  const title = input.title ?? (view === 'side' ? 'From the side' : 'From astern')
  marks.push(text(4, height - 5, title, { size: 3.4, bold: true }))
  marks.push(text(width - 4, height - 5, attitudeWords(view, attitude), { size: 3, anchor: 'end' }))
  return {
    width,
    height,
    title,
    says: `${title}: ${attitudeWords(view, attitude)}; drawn to scale in the water.`,
    marks,
  }
}

const screen = (
  [x, y]: readonly [number, number],
  sx: (v: number) => number,
  sy: (v: number) => number,
): [number, number] => [sx(x), sy(y)]

function attitudeWords(view: View, a: Attitude): string {
  if (view === 'side')
    return Math.abs(a.trim) < 0.0009 ? 'level' : `${degrees(a.trim)} bow ${a.trim > 0 ? 'up' : 'down'}`
  return Math.abs(a.heel) < 0.0009
    ? 'upright'
    : `${degrees(a.heel)} down to ${a.heel > 0 ? 'port' : 'starboard'}`
}

function boundsOf(p: Float64Array): { x0: number; x1: number; y0: number; y1: number } {
  const b = { x0: Infinity, x1: -Infinity, y0: Infinity, y1: -Infinity }
  for (let i = 0; i < p.length; i += 2) {
    b.x0 = Math.min(b.x0, p[i]!)
    b.x1 = Math.max(b.x1, p[i]!)
    b.y0 = Math.min(b.y0, p[i + 1]!)
    b.y1 = Math.max(b.y1, p[i + 1]!)
  }
  return b
}

function waterMarks(width: number, y: number): Mark[] {
  return [
    rectangle(0, 0, width, y, { fill: okabeIto.skyBlue, opacity: 0.16 }, 'water'),
    line(0, y, width, y, { stroke: okabeIto.blue, width: 0.4 }, 'water'),
    // the usual sign of a water level
    polygon([0.8, y + 2.8, 3.6, y + 2.8, 2.2, y + 0.4], { stroke: okabeIto.blue, width: 0.25 }, 'water'),
  ]
}

/** The quartered circle of a centre of gravity. */
function centreSign(x: number, y: number): Mark[] {
  const r = 1.6
  const quarter = (from: number) => {
    const points = [x, y]
    for (let i = 0; i <= 6; i++) {
      const a = from + (Math.PI / 2) * (i / 6)
      points.push(x + r * Math.cos(a), y + r * Math.sin(a))
    }
    return polygon(points, { fill: ink }, 'data')
  }
  return [
    circle(x, y, r, { stroke: ink, width: 0.25, fill: '#ffffff' }, 'data'),
    quarter(0),
    quarter(Math.PI),
  ]
}

/** Head, shoulders and legs of a rider seen from behind. */
function fromBehind(x: number, y: number, r: NonNullable<ViewInput['rider']>, scale: number): Mark[] {
  const tall =
    r.stature *
    scale *
    ({ standing: 1, crouching: 0.72, kneeling: 0.7, sitting: 0.52, prone: 0.14 } as const)[r.stance]
  const wide = 0.13 * r.stature * scale
  const style = { stroke: quiet, width: 0.5 }
  if (r.stance === 'prone') return [circle(x, y + tall / 2, tall / 2, style, 'data')]
  const head = 0.065 * r.stature * scale
  return [
    circle(x, y + tall - head, head, style, 'data'),
    polyline([x - wide, y + tall - 2.4 * head, x + wide, y + tall - 2.4 * head], style, 'data'),
    polyline([x, y + tall - 2 * head, x, y + 0.45 * tall, x - 0.7 * wide, y], style, 'data'),
    polyline([x, y + 0.45 * tall, x + 0.7 * wide, y], style, 'data'),
  ]
}

function openingMarks(
  input: ViewInput,
  view: View,
  at: (p: Vec3) => [number, number],
  sx: (v: number) => number,
  sy: (v: number) => number,
  width: number,
): Mark[] {
  const taken: { x0: number; x1: number; y: number }[] = []
  const size = 2.3
  return (input.openings ?? []).flatMap((o): Mark[] => {
    const height = heightOver(input.attitude, o.at)
    const wet = height < 0 && o.kind !== 'shaft seal'
    const [x, y] = screen(at(o.at), sx, sy)
    const colour = wet ? okabeIto.vermillion : okabeIto.green
    const sign = pointSign(wet ? 'cross' : 'triangle', x, y, 1.3, colour, !wet)
    if (view !== 'side') return [sign]
    const words = height < 0 ? `${o.name}, ${cm(-height)} under` : `${o.name} ${cm(height)}`
    // lifted row by row until it covers no other label
    const half = textWidth(words, size) / 2 + 1
    const middle = Math.min(width - half - 1, Math.max(half + 12, x))
    let row = y + 2.4
    while (taken.some((t) => Math.abs(t.y - row) < 3 && middle - half < t.x1 && middle + half > t.x0))
      row += 3.1
    taken.push({ x0: middle - half, x1: middle + half, y: row })
    const lead =
      row > y + 3 ? [line(x, y + 1.6, middle, row - 0.6, { stroke: quiet, width: 0.12 }, 'dimension')] : []
    return [...lead, sign, text(middle, row, words, { size, anchor: 'middle', halo: true, colour: quiet })]
  })
}

function draftMarks(
  input: ViewInput,
  at: (p: Vec3) => [number, number],
  sx: (v: number) => number,
  sy: (v: number) => number,
  attitude: Attitude,
): Mark[] {
  const foot = at([0, 0, 0])
  const marks: Mark[] = []
  if (foot[1] < 0) marks.push(...dimension(sx(foot[0]), sy(foot[1]), sx(foot[0]), sy(0), 9, cm(-foot[1])))
  // freeboard at its least, drawn ahead of the bow where nothing else stands
  const lowest = [...input.hull.edge, ...input.hull.edge.map(([x, y, z]): Vec3 => [x, -y, z])].reduce(
    (a, b) => (heightOver(attitude, b) < heightOver(attitude, a) ? b : a),
  )
  const edge = at(lowest)
  const ahead = sx(at([input.hull.length, 0, input.hull.depth])[0]) + 7
  if (edge[1] > 0) {
    const y = sy(edge[1])
    marks.push(line(sx(edge[0]), y, ahead + 1.5, y, { stroke: quiet, width: 0.12 }, 'dimension'))
    marks.push(...dimension(ahead, sy(0), ahead, y, 0, cm(edge[1])))
  }
  return marks
}

function endMarks(
  input: ViewInput,
  at: (p: Vec3) => [number, number],
  sx: (v: number) => number,
  sy: (v: number) => number,
): Mark[] {
  const widest = input.hull.edge.reduce((a, b) => (b[1] > a[1] ? b : a))
  return [1, -1].flatMap((side): Mark[] => {
    const e = at([widest[0], side * widest[1], widest[2]])
    return e[1] > 0 ? dimension(sx(e[0]), sy(0), sx(e[0]), sy(e[1]), side > 0 ? 8 : -8, cm(e[1])) : []
  })
}

/** The rider's room seen from above: where heel, trim and openings stay within their limits. */
export function roomFigure(hull: Hull, room: Envelope, rider?: { x: number; y: number }, width = 180): Sheet {
  const pad = 12
  const scale = (width - 2 * pad) / hull.length
  const height = hull.beam * scale + 24
  const sx = (x: number) => pad + x * scale
  const sy = (y: number) => height / 2 - 4 + y * scale
  const marks: Mark[] = []
  const dx = room.x.length > 1 ? room.x[1]! - room.x[0]! : 0.05
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
  const port = hull.edge.flatMap(([x, y]) => [sx(x), sy(y)])
  const starboard = [...hull.edge].reverse().flatMap(([x, y]) => [sx(x), sy(-y)])
  marks.push(polygon([...port, ...starboard], { stroke: ink, width: 0.35 }, 'data', 'deck edge'))
  if (rider) marks.push(pointSign('circle', sx(rider.x), sy(rider.y), 1.8, okabeIto.vermillion))
  const share = `${Math.round(100 * room.share)} % of the deck`
  marks.push(text(4, height - 5, 'Where the rider may be at rest', { size: 3.4, bold: true }))
  marks.push(text(width - 4, height - 5, share, { size: 3, anchor: 'end' }))
  return {
    width,
    height,
    title: 'Where the rider may be at rest',
    says: `Seen from above, bow to the right: ${share} keeps heel, trim and openings within their limits.`,
    marks,
  }
}
