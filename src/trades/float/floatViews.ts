/** True views of the craft in the water, to scale, from the side and from astern: as it lies, and dashed as it lay before. */
import { inCm, inDegrees } from '../../base/answers/amounts.ts'
import { printedAmount } from '../../base/answers/sentence.ts'
import type { DisplaySystem } from '../../base/units/format.ts'
import { dimension } from '../../drawing/dimension.ts'
import { circle, line, polygon, polyline, rectangle, text } from '../../drawing/marks.ts'
import { ink, okabeIto, quiet } from '../../drawing/palette.ts'
import { riderFigure } from '../../drawing/riderFigure.ts'
import type { Mark, Sheet, Style } from '../../drawing/sheet.ts'
import { textWidth } from '../../drawing/textWidth.ts'
import type { Stance } from '../../hull/aboard/riderBody.ts'
import type { Attitude } from '../../hull/afloat/settle.ts'
import type { Hull } from '../../hull/lines/hullBody.ts'
import type { Vec3 } from '../../physics/solid/mesh.ts'
import { makeFrame } from '../../physics/solid/waterFrame.ts'
import { type Frames, type Framing, framing, keptFrame } from './framing.ts'
import { heightOver, type Opening } from './openingHeights.ts'
import { openingKey, openingMarks } from './openingMarks.ts'
import { joinedRuns, outline, project, type View } from './outline.ts'

export interface ViewInput {
  hull: Hull
  attitude: Attitude
  /** common centre of gravity, m */
  centre?: Vec3
  openings?: readonly Opening[]
  rider?: { x: number; y: number; deck: number; stature: number; stance: Stance }
  /** as it lies now, when something else is being tried: drawn dashed on the same water */
  before?: { hull: Hull; attitude: Attitude; centre?: Vec3 }
  /** mm; 180 when left out */
  width?: number
  title?: string
  /** the reader's units; metric when left out */
  system?: DisplaySystem
  /** keeps the height of the picture, and its scale where the craft does not outgrow it, while a drag goes on */
  steady?: Steady
}

/** What a drag keeps from the pictures it began with. */
export interface Steady {
  /** the craft at rest, as it was drawn before the drag */
  rest: ViewInput
  /** filled as views are drawn */
  frames: Frames
}

/** height as it stands on a dimension */
const tall = (x: number, system: DisplaySystem) => printedAmount(inCm(x, 0.1), system)
const degrees = (a: number) => printedAmount(inDegrees(Math.abs(a)))

/** Side view from starboard with drafts, freeboard, trim and openings. */
export function sideView(input: ViewInput): Sheet {
  return trueView(input, 'side')
}

/** View from astern with heel and freeboards. */
export function endView(input: ViewInput): Sheet {
  return trueView(input, 'end')
}

/** mm left free at each side of a view for its dimensions */
export const viewPad = 17

function trueView(input: ViewInput, view: View): Sheet {
  const { hull, attitude, before, system = 'metric' } = input
  const width = input.width ?? (view === 'side' ? 180 : 110)
  const frame = makeFrame(attitude.trim, attitude.heel)
  const pieces = outline(hull.mesh, view, frame, attitude.h)
  const at = (p: Vec3) => project(view, frame, attitude.h, ...p)
  const lay = before && placed(before, view)
  const needed = framing(input, view, pieces, lay?.pieces)
  const { x0, x1, top, bottom } = input.steady ? steadied(input.steady, view, needed) : needed
  const scale = (width - 2 * viewPad) / (x1 - x0)
  const key = view === 'side' ? openingKey(input, width) : { marks: [], height: 0 }
  const foot = key.height
  const title = input.title ?? (view === 'side' ? 'From the side' : 'From astern')
  const words = `${before ? 'tried ' : ''}${attitudeWords(view, attitude)}`
  // beside the title where there is room, else below it; the picture is as tall as the longest words ask, whatever they are now
  const below = (says: string) => (textWidth(title, 3.4, true) + textWidth(says, 3) + 12 > width ? 4.4 : 0)
  const down = below(words)
  const height = foot + (top - bottom) * scale + 18 + below(longest[view])
  const sx = (x: number) => viewPad + (x - x0) * scale
  const sy = (y: number) => foot + 7 + (y - bottom) * scale
  const marks: Mark[] = [...waterMarks(width, foot, sy(0)), ...key.marks]
  if (lay) {
    marks.push(...hullRuns(lay.runs, sx, sy, { stroke: quiet, width: 0.3, dash: [1.6, 1.1] }))
    if (before.centre) marks.push(...plusSign(...screen(lay.at(before.centre), sx, sy)))
  }
  marks.push(...hullRuns(joinedRuns(pieces), sx, sy, { stroke: ink, width: 0.35 }))
  if (input.rider) {
    const r = input.rider
    const [rx, ry] = at([r.x, r.y, r.deck])
    if (view === 'side')
      marks.push(...riderFigure(r.stance, sx(rx), sy(ry), r.stature * scale, { stroke: quiet, width: 0.5 }))
    else marks.push(...fromBehind(sx(rx), sy(ry), r, scale))
  }
  if (input.centre) marks.push(...centreSign(...screen(at(input.centre), sx, sy)))
  marks.push(...openingMarks(input, view, at, sx, sy))
  const dimensions = view === 'side' ? draftMarks : endMarks
  marks.push(...dimensions(hull, attitude, at, sx, sy, 0, system))
  if (lay) marks.push(...dimensions(before.hull, before.attitude, lay.at, sx, sy, 1, system))
  marks.push(text(4, height - 5, title, { size: 3.4, bold: true }))
  const right = { size: 3, anchor: 'end' } as const
  marks.push(text(width - 4, height - 5 - down, words, right))
  const was = before && attitudeWords(view, before.attitude)
  if (was) marks.push(text(width - 4, height - 9.4 - down, `now ${was}`, { ...right, colour: quiet }))
  return {
    width,
    height,
    title,
    says: `${title}: ${was ? `${words}, now ${was} (dashed)` : words}; drawn to scale in the water.`,
    marks,
  }
}

/** The frame of a picture within a drag. */
function steadied({ rest, frames }: Steady, view: View, needed: Framing): Framing {
  if (!frames[view]) {
    const frame = makeFrame(rest.attitude.trim, rest.attitude.heel)
    const pieces = outline(rest.hull.mesh, view, frame, rest.attitude.h)
    frames[view] = framing(rest, view, pieces, rest.before && placed(rest.before, view).pieces)
  }
  frames[view] = keptFrame(frames[view], needed)
  return frames[view]
}

const longest = { side: 'tried 88.8° bow down', end: 'tried 88.8° down to starboard', top: '' } as const

type Before = NonNullable<ViewInput['before']>
interface Placed {
  pieces: Float64Array
  runs: Float64Array[]
  at: (p: Vec3) => [number, number]
}

/** what lies as it lay stays the same while a drag goes on */
const laid = new WeakMap<Before, Map<View, Placed>>()

/** another attitude on the same water */
function placed(b: Before, view: View): Placed {
  const views = laid.get(b) ?? new Map<View, Placed>()
  const known = views.get(view)
  if (known) return known
  const frame = makeFrame(b.attitude.trim, b.attitude.heel)
  const pieces = outline(b.hull.mesh, view, frame, b.attitude.h)
  const at = (p: Vec3) => project(view, frame, b.attitude.h, ...p)
  const made = { pieces, runs: joinedRuns(pieces), at }
  laid.set(b, views.set(view, made))
  return made
}

function hullRuns(
  runs: readonly Float64Array[],
  sx: (v: number) => number,
  sy: (v: number) => number,
  style: Style,
): Mark[] {
  return runs.map((run) =>
    polyline(
      run.map((v, i) => (i % 2 === 0 ? sx(v) : sy(v))),
      style,
      'data',
      'hull',
    ),
  )
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

/** the water from the foot of the picture up to its surface */
function waterMarks(width: number, foot: number, y: number): Mark[] {
  return [
    rectangle(0, foot, width, y - foot, { fill: okabeIto.skyBlue, opacity: 0.16 }, 'water'),
    line(0, y, width, y, { stroke: okabeIto.blue, width: 0.4 }, 'water'),
    // the usual sign of a water level
    polygon([0.8, y + 2.8, 3.6, y + 2.8, 2.2, y + 0.4], { stroke: okabeIto.blue, width: 0.25 }, 'water'),
  ]
}

/** where the common centre of gravity was */
function plusSign(x: number, y: number): Mark[] {
  const style = { stroke: quiet, width: 0.35 }
  return [line(x - 1.6, y, x + 1.6, y, style, 'data'), line(x, y - 1.6, x, y + 1.6, style, 'data')]
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

/** a dimension of the craft as it lies now, in grey behind the tried one */
const greyed = (marks: Mark[]): Mark[] =>
  marks.map((m) =>
    m.kind === 'image'
      ? m
      : {
          ...m,
          style: {
            ...m.style,
            ...(m.style.stroke ? { stroke: quiet } : {}),
            ...(m.style.fill ? { fill: quiet } : {}),
          },
        },
  )

type Dimensions = (
  hull: Hull,
  attitude: Attitude,
  at: (p: Vec3) => [number, number],
  sx: (v: number) => number,
  sy: (v: number) => number,
  /** 0 for the craft as shown, 1 for the row behind it */
  row: 0 | 1,
  system: DisplaySystem,
) => Mark[]

const draftMarks: Dimensions = (hull, attitude, at, sx, sy, row, system) => {
  const foot = at([0, 0, 0])
  const word = row === 1 ? 'now ' : ''
  const marks: Mark[] = []
  if (foot[1] < 0)
    marks.push(
      ...dimension(
        sx(foot[0]),
        sy(foot[1]),
        sx(foot[0]),
        sy(0),
        5.5 + 6 * row,
        `${word}${tall(-foot[1], system)}`,
      ),
    )
  // freeboard at its least, drawn ahead of the bow where nothing else stands
  const lowest = [...hull.edge, ...hull.edge.map(([x, y, z]): Vec3 => [x, -y, z])].reduce((a, b) =>
    heightOver(attitude, b) < heightOver(attitude, a) ? b : a,
  )
  const edge = at(lowest)
  const ahead = sx(at([hull.length, 0, hull.depth])[0]) + 6 + 6 * row
  if (edge[1] > 0) {
    const y = sy(edge[1])
    marks.push(line(sx(edge[0]), y, ahead + 1.5, y, { stroke: quiet, width: 0.12 }, 'dimension'))
    marks.push(...dimension(ahead, sy(0), ahead, y, 0, `${word}${tall(edge[1], system)}`))
  }
  return row === 1 ? greyed(marks) : marks
}

const endMarks: Dimensions = (hull, _attitude, at, sx, sy, row, system) => {
  const widest = hull.edge.reduce((a, b) => (b[1] > a[1] ? b : a))
  const word = row === 1 ? 'now ' : ''
  const marks = [1, -1].flatMap((side): Mark[] => {
    const e = at([widest[0], side * widest[1], widest[2]])
    const off = 5.5 + 6 * row
    return e[1] > 0
      ? dimension(sx(e[0]), sy(0), sx(e[0]), sy(e[1]), side > 0 ? off : -off, `${word}${tall(e[1], system)}`)
      : []
  })
  return row === 1 ? greyed(marks) : marks
}
