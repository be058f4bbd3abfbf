/** The pipe of one engine to scale, straightened out, with its inside sizes. */
import { dimension } from '../../drawing/dimension.ts'
import { line, polygon, polyline, rectangle, text } from '../../drawing/marks.ts'
import { ink, okabeIto, quiet } from '../../drawing/palette.ts'
import type { Mark, Sheet } from '../../drawing/sheet.ts'
import type { Segment } from '../../physics/gas/ductMesh.ts'
import { inLook, type Look, plain } from '../push/shown.ts'

export interface DrawnSegment extends Segment {
  name?: string
  /** part of the cylinder, not of the pipe */
  inCylinder?: boolean
}

export interface DrawnPipe {
  /** from the piston face to the end of the stinger, m */
  segments: readonly DrawnSegment[]
  /** the box behind it */
  muffler?: { length: number; width: number }
  /** the tube to the open air */
  outlet?: { length: number; bore: number }
}

const lengthOf = (p: DrawnPipe) => p.segments.reduce((s, q) => s + q.length, 0)
const widestOf = (p: DrawnPipe) => Math.max(...p.segments.flatMap((s) => [s.d0, s.d1]))

/** Piston face to the end of the last narrowing cone, m; undefined for a plain pipe. */
export function tunedEnd(p: DrawnPipe): number | undefined {
  let at = 0
  let end: number | undefined
  for (const s of p.segments) {
    at += s.length
    if (s.d1 < 0.97 * s.d0) end = at
  }
  return end
}

/** The pipe with its dimensions; a second one, being tried or found, as a dashed outline over it. */
export function pipeFigure(
  pipe: DrawnPipe,
  other: { name: string; pipe: DrawnPipe } | undefined,
  look: Look,
): Sheet {
  const whole = (p: DrawnPipe) => lengthOf(p) + (p.muffler?.length ?? 0) + (p.outlet?.length ?? 0)
  const long = Math.max(whole(pipe), other ? whole(other.pipe) : 0)
  const wide = Math.max(widestOf(pipe), other ? widestOf(other.pipe) : 0, pipe.muffler?.width ?? 0)
  const margin = 7
  // on a phone a long pipe would be a thread: the figures then need the room more than the scale does
  const scale = (look.width - 2 * margin) / long
  const half = (wide * scale) / 2
  const rows = crowding(pipe, scale)
  const below = 9 + 6.5 * rows + (tunedEnd(pipe) ? 7 : 0) + 7
  const above = 9 + 4.4 * diameterRows(pipe, scale, look) + (other ? 5 : 0)
  const height = above + 2 * half + below
  const middle = below + half
  const xAt = (m: number) => margin + m * scale
  const marks: Mark[] = []
  marks.push(...outlineMarks(pipe, xAt, middle, scale, {}))
  if (other) {
    marks.push(...dashedOutline(other.pipe, xAt, middle, scale))
    marks.push(
      text(look.width - 2, height - 4, `dashed: ${other.name}`, {
        size: 2.8,
        anchor: 'end',
        colour: '#000000',
        halo: true,
      }),
    )
  }
  marks.push(
    line(xAt(0) - 3, middle, xAt(long) + 3, middle, { stroke: ink, width: 0.18, dash: [5, 1, 1, 1] }, 'mark'),
  )
  marks.push(...lengths(pipe, xAt, middle - half, rows, look))
  marks.push(...diameters(pipe, xAt, middle, scale, half, look))
  return { width: look.width, height, title: 'The pipe, to scale', says: inWords(pipe, look), marks }
}

const size = (m: number, look: Look) => plain(inLook(m, 'length', look), look.length === 'mm' ? 0 : 2)
const diameterText = (m: number, look: Look) =>
  `ø ${plain(inLook(m, 'length', look), look.length === 'mm' ? 1 : 2).replace(/\.0$/, '')}`

/** rows of length figures: short parts stand on a row of their own */
function crowding(pipe: DrawnPipe, scale: number): number {
  return pipe.segments.some((s) => s.length * scale < 14) ? 2 : 1
}

function outlineMarks(
  pipe: DrawnPipe,
  xAt: (m: number) => number,
  middle: number,
  scale: number,
  _: object,
): Mark[] {
  const marks: Mark[] = []
  let at = 0
  for (const s of pipe.segments) {
    const [x0, x1] = [xAt(at), xAt(at + s.length)]
    const [r0, r1] = [(s.d0 * scale) / 2, (s.d1 * scale) / 2]
    marks.push(
      polygon(
        [x0, middle - r0, x1, middle - r1, x1, middle + r1, x0, middle + r0],
        { stroke: ink, width: 0.4, fill: s.inCylinder ? '#e4e0d5' : '#f7f5ef' },
        'data',
      ),
    )
    at += s.length
  }
  if (pipe.muffler) {
    const { length, width } = pipe.muffler
    marks.push(
      rectangle(
        xAt(at),
        middle - (width * scale) / 2,
        length * scale,
        width * scale,
        { stroke: ink, width: 0.4, fill: '#f7f5ef' },
        'data',
      ),
    )
    at += length
  }
  if (pipe.outlet && pipe.outlet.length > 0)
    marks.push(
      rectangle(
        xAt(at),
        middle - (pipe.outlet.bore * scale) / 2,
        pipe.outlet.length * scale,
        pipe.outlet.bore * scale,
        { stroke: ink, width: 0.4, fill: '#f7f5ef' },
        'data',
      ),
    )
  return marks
}

function dashedOutline(pipe: DrawnPipe, xAt: (m: number) => number, middle: number, scale: number): Mark[] {
  const side = (sign: 1 | -1) => {
    const points: number[] = []
    let at = 0
    for (const s of pipe.segments) {
      points.push(xAt(at), middle + (sign * s.d0 * scale) / 2)
      at += s.length
      points.push(xAt(at), middle + (sign * s.d1 * scale) / 2)
    }
    return polyline(points, { stroke: okabeIto.vermillion, width: 0.5, dash: [2.4, 1.2] }, 'data')
  }
  return [side(1), side(-1)]
}

function lengths(
  pipe: DrawnPipe,
  xAt: (m: number) => number,
  foot: number,
  rows: number,
  look: Look,
): Mark[] {
  const marks: Mark[] = []
  const put = (from: number, to: number, down: number, words: string) =>
    marks.push(...dimension(xAt(from), foot, xAt(to), foot, -down, words, 2.8))
  let at = 0
  pipe.segments.forEach((s, i) => {
    put(at, at + s.length, 7 + (rows > 1 && i % 2 === 1 ? 6.5 : 0), size(s.length, look))
    at += s.length
  })
  if (pipe.muffler) put(at, at + pipe.muffler.length, 7, size(pipe.muffler.length, look))
  let down = 7 + 6.5 * rows
  const tuned = tunedEnd(pipe)
  if (tuned) {
    put(0, tuned, down, `tuned ${size(tuned, look)}`)
    down += 7
  }
  put(0, lengthOf(pipe), down, `in all ${size(lengthOf(pipe), look)} ${look.length}`)
  return marks
}

interface Joint {
  at: number
  bore: number
}

/** places where the diameter is worth a figure: both ends, and every joint where cones meet */
function joints(pipe: DrawnPipe): Joint[] {
  const list: Joint[] = []
  let at = 0
  for (const s of pipe.segments) {
    const last = list[list.length - 1]
    if (!last || Math.abs(last.bore - s.d0) > 1e-4 || Math.abs(last.at - at) > 1e-6)
      list.push({ at, bore: s.d0 })
    at += s.length
    list.push({ at, bore: s.d1 })
  }
  // a tube has one figure, not two
  return list.filter((j, i) => {
    const before = list[i - 1]
    return !before || Math.abs(before.bore - j.bore) > 1e-4
  })
}

const figureRoom = 13

function levels(pipe: DrawnPipe, scale: number): number[] {
  const free: number[] = []
  return joints(pipe).map(({ at }) => {
    const x = at * scale
    let level = free.findIndex((end) => end <= x)
    if (level < 0) level = free.length
    free[level] = x + figureRoom
    return level
  })
}

function diameterRows(pipe: DrawnPipe, scale: number, _: Look): number {
  return 1 + Math.max(...levels(pipe, scale))
}

function diameters(
  pipe: DrawnPipe,
  xAt: (m: number) => number,
  middle: number,
  scale: number,
  half: number,
  look: Look,
): Mark[] {
  const rows = levels(pipe, scale)
  return joints(pipe).flatMap(({ at, bore }, i) => {
    const x = xAt(at)
    const y = middle + (bore * scale) / 2
    const to = middle + half + 4 + 4.4 * rows[i]!
    return [
      line(x, y + 0.6, x, to + 2.4, { stroke: quiet, width: 0.15 }, 'dimension'),
      text(x + 0.7, to, diameterText(bore, look), { size: 2.7, halo: true, layer: 'dimension' }),
    ]
  })
}

function inWords(pipe: DrawnPipe, look: Look): string {
  const parts = pipe.segments.map((s) => {
    const name =
      s.name ??
      (s.inCylinder
        ? 'duct in the cylinder'
        : s.d1 > 1.01 * s.d0
          ? 'cone'
          : s.d1 < 0.99 * s.d0
            ? 'narrowing cone'
            : 'tube')
    const bend = s.bend ? `, bent by ${plain((s.bend * 180) / Math.PI, 0)}°` : ''
    return `${name} ${size(s.length, look)} long from ${size(s.d0, look)} to ${size(s.d1, look)}${bend}`
  })
  return `Inside sizes in ${look.length}, drawn straight: ${parts.join('; ')}.`
}
