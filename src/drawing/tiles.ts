/**
 * A large drawing at 1:1 on sheets of office paper: overlapping tiles with crosses and diamonds in the drawing's own coordinates, a square of 100 mm
 * to measure on every page, and which edge goes under.
 */

import { inMm, inPercent, inTimes } from '../base/answers/amounts.ts'
import { printed, type Sentence, say } from '../base/answers/sentence.ts'
import type { DisplaySystem } from '../base/units/format.ts'
import { type PaperName, papers } from './papers.ts'
import { type Box, clipLine } from './polylines.ts'
import { type PrintScale, printLimits } from './printScale.ts'
import type { Mark, Sheet } from './sheet.ts'

export interface Tiling {
  paper: PaperName
  /** undoes what the printer does to lengths; none where left out */
  scale?: PrintScale
  system?: DisplaySystem
}

/** what a printer leaves white, and by how much tiles overlap, mm */
export const tileMargin = 10
export const tileOverlap = 10
/** more pages than anybody glues together */
const mostPages = 400

interface Grid {
  page: { width: number; height: number }
  /** of drawing on one page, and from one page to the next, mm */
  window: [number, number]
  step: [number, number]
  cols: number
  rows: number
}

const noScale: PrintScale = { x: 1, y: 1 }

function gridOf(sheet: Sheet, paper: PaperName, scale: PrintScale, turned: boolean): Grid {
  const { width, height } = papers[paper]
  const page = turned ? { width: height, height: width } : { width, height }
  const window: [number, number] = [
    (page.width - 2 * tileMargin) / Math.max(1, scale.x),
    (page.height - 2 * tileMargin) / Math.max(1, scale.y),
  ]
  const step: [number, number] = [window[0] - tileOverlap, window[1] - tileOverlap]
  const count = (size: number, k: 0 | 1) => Math.max(1, Math.ceil((size - tileOverlap) / step[k] - 1e-9))
  return { page, window, step, cols: count(sheet.width, 0), rows: count(sheet.height, 1) }
}

const thin = { stroke: '#5c5c5c', width: 0.13 }

/**
 * Pages of a drawing, upright or lying, whichever takes fewer; row 1 is at the foot. RangeError naming the drawing where it takes more pages
 * than can be joined.
 */
export function tiled(sheet: Sheet, { paper, scale = noScale, system = 'metric' }: Tiling): Sheet[] {
  const [upright, lying] = [false, true].map((turned) => gridOf(sheet, paper, scale, turned)) as [Grid, Grid]
  const grid = lying.cols * lying.rows < upright.cols * upright.rows ? lying : upright
  const pages = grid.cols * grid.rows
  if (!(pages <= mostPages))
    throw new RangeError(`${sheet.title}: ${pages} pages, expected at most ${mostPages}; make it in parts`)
  return Array.from({ length: pages }, (_, i) =>
    pageOf(sheet, grid, scale, system, i % grid.cols, Math.floor(i / grid.cols)),
  )
}

function pageOf(
  sheet: Sheet,
  grid: Grid,
  scale: PrintScale,
  system: DisplaySystem,
  col: number,
  row: number,
): Sheet {
  const [left, bottom] = [col * grid.step[0], row * grid.step[1]]
  const box = { left, right: left + grid.window[0], bottom, top: bottom + grid.window[1] }
  const x = (v: number) => tileMargin + (v - left) * scale.x
  const y = (v: number) => tileMargin + (v - bottom) * scale.y
  const name = `R${row + 1}C${col + 1}`
  const drawn = [...sheet.marks, ...jointMarks(sheet, grid)].flatMap((m) => onPage(m))
  const marks = [...drawn, ...square(x, y, ...clearOf(sheet, box), system), ...notes()]
  return { ...grid.page, title: `${sheet.title} ${name}`, says: `Page ${name} of ${sheet.title}.`, marks }

  function onPage(m: Mark): Mark[] {
    if (m.kind === 'text') {
      const seen = m.x >= box.left && m.x <= box.right && m.y >= box.bottom && m.y <= box.top
      return seen ? [{ ...m, x: x(m.x), y: y(m.y) }] : []
    }
    if (m.kind !== 'polyline' && m.kind !== 'polygon') return []
    const run = m.kind === 'polygon' ? [...m.points, m.points[0]!, m.points[1]!] : m.points
    return clipLine(run, box).map((part) => ({
      kind: 'polyline',
      points: Float64Array.from(part, (v, i) => (i % 2 === 0 ? x(v) : y(v))),
      style: m.style,
      layer: m.layer,
    }))
  }

  function notes(): Mark[] {
    const word = (px: number, py: number, says: Sentence, size = 3, angle = 0): Mark => ({
      kind: 'text',
      x: px,
      y: py,
      text: printed(says, system),
      size,
      anchor: 'start',
      angle,
      style: { fill: '#5c5c5c' },
      layer: 'mark',
    })
    const [w, h] = [grid.page.width, grid.page.height]
    const whole = say`whole drawing ${inMm(sheet.width / 1e3, 0.1)} × ${inMm(sheet.height / 1e3, 0.1)}`
    const [across, up] = [grid.cols * grid.step[0], grid.rows * grid.step[1]].map((v) => v / 1e3) as [
      number,
      number,
    ]
    const tape = say`joined, the outermost crosses are ${inMm(across, 0.1)} and ${inMm(up, 0.1)} apart, ${inMm(Math.hypot(across, up), 0.1)} corner to corner: check with a tape`
    const corrected: Sentence =
      scale.x === 1 && scale.y === 1
        ? ''
        : say`, drawn × ${inTimes(scale.x, 1e-4)} and ${inTimes(scale.y, 1e-4)} for this printer`
    return [
      word(
        tileMargin,
        h - 7,
        say`${name} of ${String(grid.rows)} × ${String(grid.cols)}: ${sheet.title}; ${whole}`,
      ),
      word(
        tileMargin,
        7,
        say`print at ${inPercent(1)}, no fit to page${corrected}; then measure the square`,
        2.5,
      ),
      ...(grid.cols * grid.rows > 1 ? [word(tileMargin, 3.5, tape, 2.5)] : []),
      ...(col + 1 < grid.cols ? [word(w - 4, h / 2 - 12, 'this edge under', 3, Math.PI / 2)] : []),
      ...(row + 1 < grid.rows ? [word(w - 35, h - 4, 'this edge under')] : []),
    ]
  }
}

/** Where the square stands on a page: beside or above the drawing where there is room, else across it. */
function clearOf(sheet: Sheet, box: Box): [number, number] {
  const need = printLimits.square * 1e3 + 4
  const beside = box.right - need
  const above = box.top - need
  if (beside > sheet.width) return [beside, box.bottom + 12]
  if (above > sheet.height) return [box.left + 12, above]
  return [box.left + 12, box.bottom + 12]
}

/** A square of 100 mm as it comes off the printer, with its diagonal. */
function square(
  x: (v: number) => number,
  y: (v: number) => number,
  left: number,
  bottom: number,
  system: DisplaySystem,
): Mark[] {
  const side = printLimits.square * 1e3
  const ring = [left, bottom, left + side, bottom, left + side, bottom + side, left, bottom + side]
  const put = (run: number[]) => Float64Array.from(run, (v, i) => (i % 2 === 0 ? x(v) : y(v)))
  return [
    { kind: 'polygon', points: put(ring), style: thin, layer: 'dimension' },
    {
      kind: 'polyline',
      points: put([left, bottom, left + side, bottom + side]),
      style: { ...thin, dash: [1, 3] },
      layer: 'dimension',
    },
    {
      kind: 'text',
      x: x(left + 2),
      y: y(bottom + 2),
      text: printed(
        say`${inMm(printLimits.square)} square, diagonal ${inMm(printLimits.square * Math.SQRT2, 0.1)}`,
        system,
      ),
      size: 2.5,
      anchor: 'start',
      style: { fill: '#5c5c5c' },
      layer: 'dimension',
    },
  ]
}

/** Crosses at the corners of tiles and diamonds on their joints, in the drawing's coordinates, so that neighbours carry the same ones. */
function jointMarks(sheet: Sheet, grid: Grid): Mark[] {
  const half = tileOverlap / 2
  const marks: Mark[] = []
  const stroke = (points: number[]) =>
    marks.push({ kind: 'polyline', points: Float64Array.from(points), style: thin, layer: 'mark' })
  for (let c = 0; c <= grid.cols; c++)
    for (let r = 0; r <= grid.rows; r++) {
      const [x, y] = [c * grid.step[0] + half, r * grid.step[1] + half]
      if (x <= sheet.width + grid.window[0] && y <= sheet.height + grid.window[1]) {
        stroke([x - half, y, x + half, y])
        stroke([x, y - half, x, y + half])
      }
      const diamond = (cx: number, cy: number) =>
        stroke([cx - half, cy, cx, cy - half, cx + half, cy, cx, cy + half, cx - half, cy])
      if (c > 0 && c < grid.cols && r < grid.rows) diamond(x, y + grid.step[1] / 2)
      if (r > 0 && r < grid.rows && c < grid.cols) diamond(x + grid.step[0] / 2, y)
    }
  return marks
}
