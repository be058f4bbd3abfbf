import { extent } from 'd3-array'
import { scaleLinear } from 'd3-scale'
import { alongAxis, axisName, letterSize, smallSize, ticksOf } from './axes.ts'
import { line, pointSign, rectangle, text } from './marks.ts'
import { faint, ink, inkOf, okabeIto, quiet } from './palette.ts'
import type { Mark, PlotAxis, Sheet } from './sheet.ts'
import { textWidth, wrapText } from './textWidth.ts'

/** One bar from the base to `value`, with its likely range. */
interface BarRow {
  name: string
  value: number
  low?: number
  high?: number
  /** words after the bar, "+0.6 km/h" */
  note?: string
  /** the same with the tried values; drawn hollow under the bar */
  tried?: number
  colour?: string
}

export interface BarSpec {
  title: string
  says: string
  width?: number
  axis: { label: string; unit: string; include?: readonly number[] }
  /** where bars start; 0 when left out */
  base?: number
  /** words at the base line, "now 31 km/h" */
  baseLabel?: string
  rows: readonly BarRow[]
  empty?: string
}

const rowHeight = 8.6

/** Bars side by side under each other; with bars to both sides of the base it shows what each change buys. */
export function barChart(spec: BarSpec): Sheet {
  const width = spec.width ?? 180
  const rows = spec.rows.filter((r) => Number.isFinite(r.value))
  const base = spec.base ?? 0
  const sheet: Sheet = { width, height: 24, title: spec.title, says: spec.says, marks: [] }
  if (rows.length === 0) {
    const words = wrapText(spec.empty ?? 'Nothing to compare yet.', 3.4, width - 12)
    words.forEach((w, i) => {
      sheet.marks.push(text(width / 2, 13 - i * 5, w, { size: 3.4, anchor: 'middle', colour: quiet }))
    })
    return sheet
  }

  // where the sheet is narrow the names stand above their bars
  const narrow = width < 125
  const notes = rows.map((r) => textWidth(r.note ?? '', smallSize))
  const nameRoom = narrow
    ? 0
    : Math.min(width * 0.36, Math.max(...rows.map((r) => textWidth(r.name, letterSize))) + 3)
  const tall = rows.map((r) =>
    narrow ? rowHeight + 4 : Math.max(rowHeight, 3 + 4 * wrapText(r.name, letterSize, nameRoom).length),
  )
  const height = 12 + (spec.baseLabel ? 6 : 1) + tall.reduce((a, b) => a + b, 0)
  const left = nameRoom + 2
  const right = width - Math.max(...notes, 0) - 4
  const axis = axisOf(spec, rows, base)
  const at = alongAxis(axis, left, right)
  const top = height - (spec.baseLabel ? 6 : 1)
  const bottom = 11.2
  const marks: Mark[] = []

  const ticks = ticksOf(axis, right - left, 20)
  ticks.at.forEach((v, i) => {
    marks.push(line(at(v), bottom, at(v), top, { stroke: faint, width: 0.15 }, 'grid'))
    marks.push(text(at(v), bottom - 3.6, ticks.names[i]!, { anchor: 'middle', colour: quiet }))
  })
  marks.push(text(right, bottom - 8, axisName(axis), { anchor: 'end' }))

  const names: Mark[] = []
  let y = top
  rows.forEach((r, i) => {
    y -= tall[i]!
    const mid = narrow ? y + 3.6 : y + tall[i]! / 2
    names.push(...rowName(r.name, nameRoom, y, mid, narrow))
    marks.push(...bar(r, base, at, mid))
    if (r.note) {
      const end = Math.max(
        at(base),
        ...[r.value, r.high, r.low, r.tried].flatMap((v) => (v === undefined ? [] : [at(v)])),
      )
      marks.push(
        text(end + 1.6, mid - 0.35 * smallSize, r.note, {
          size: smallSize,
          colour: inkOf(r.colour ?? okabeIto.blue),
          halo: true,
        }),
      )
    }
  })
  marks.push(line(at(base), bottom - 1, at(base), top, { stroke: ink, width: 0.35 }, 'axis'))
  marks.push(...names)
  if (spec.baseLabel) {
    const half = textWidth(spec.baseLabel, smallSize) / 2
    const x = Math.min(width - half - 1, Math.max(half + 1, at(base)))
    marks.push(text(x, top + 1.6, spec.baseLabel, { size: smallSize, anchor: 'middle' }))
  }
  return { ...sheet, height, marks }
}

function axisOf(spec: BarSpec, rows: readonly BarRow[], base: number): PlotAxis {
  const all = rows
    .flatMap((r) => [r.value, r.low, r.high, r.tried])
    .filter((v): v is number => Number.isFinite(v))
  const [a, b] = extent([...all, base, ...(spec.axis.include ?? [])]) as [number, number]
  const [min, max] = scaleLinear()
    .domain(a === b ? [a - 1, b + 1] : [a, b])
    .nice(5)
    .domain() as [number, number]
  return { label: spec.axis.label, unit: spec.axis.unit, min, max }
}

function rowName(name: string, room: number, y: number, mid: number, narrow: boolean): Mark[] {
  if (narrow) return [text(1, y + 7.6, name, { size: letterSize, halo: true })]
  const lines = wrapText(name, letterSize, room)
  return lines.map((words, k) =>
    text(room, mid + (lines.length / 2 - k - 0.75) * 4, words, { anchor: 'end' }),
  )
}

function bar(r: BarRow, base: number, at: (v: number) => number, mid: number): Mark[] {
  const colour = r.colour ?? okabeIto.blue
  const x0 = Math.min(at(base), at(r.value))
  const marks = [rectangle(x0, mid - 1.7, Math.abs(at(r.value) - at(base)), 3.4, { fill: colour }, 'data')]
  if (r.low !== undefined && r.high !== undefined && Number.isFinite(r.low + r.high)) {
    const [a, b] = [at(r.low), at(r.high)]
    const whisker = { stroke: ink, width: 0.3 }
    marks.push(line(a, mid, b, mid, whisker, 'data'))
    for (const x of [a, b]) marks.push(line(x, mid - 1, x, mid + 1, whisker, 'data'))
  }
  if (r.tried !== undefined && Number.isFinite(r.tried))
    marks.push(pointSign('diamond', at(r.tried), mid, 1.4, colour, true))
  return marks
}
