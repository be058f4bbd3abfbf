import { tickStep } from 'd3-array'
import { scaleLinear, scaleLog } from 'd3-scale'
import { line, text } from './marks.ts'
import { faint, ink, quiet } from './palette.ts'
import type { Box } from './polylines.ts'
import type { Mark, PlotAxis } from './sheet.ts'
import { textWidth } from './textWidth.ts'

export const letterSize = 3
export const smallSize = 2.7

/** A number as a tick shows it: no grouping below five figures, thin spaces above, a true minus. */
export function tickText(value: number, step: number): string {
  const places = Math.min(8, Math.max(0, -Math.floor(Math.log10(Math.abs(step) || 1) + 1e-9)))
  // a step such as 0.25 needs one place more than its order of size says
  const fits = Math.abs(step * 10 ** places - Math.round(step * 10 ** places)) < 1e-6
  const plain = Math.abs(value).toFixed(fits ? places : places + 1)
  const [whole, part] = plain.split('.') as [string, string?]
  const grouped = whole.length > 4 ? whole.replace(/\B(?=(\d{3})+$)/g, '\u202f') : whole
  const negative = value < 0 && Number(plain) !== 0
  return `${negative ? '−' : ''}${grouped}${part === undefined ? '' : `.${part}`}`
}

export interface Ticks {
  at: number[]
  names: string[]
}

/** Ticks at round numbers inside an axis, about one for every `room` mm of its length. */
export function ticksOf(axis: PlotAxis, length: number, room: number): Ticks {
  const count = Math.max(2, Math.floor(length / room))
  if (axis.log) {
    const at = scaleLog().domain([axis.min, axis.max]).ticks(count)
    const short = at.length > count + 1 ? at.filter((v) => /^[125]/.test(v.toExponential())) : at
    return { at: short, names: short.map((v) => tickText(v, v)) }
  }
  const at = scaleLinear().domain([axis.min, axis.max]).ticks(count)
  const step = tickStep(axis.min, axis.max, count)
  return { at, names: at.map((v) => tickText(v, step)) }
}

/** Maps an axis' numbers to millimetres between `from` and `to`. */
export function alongAxis(axis: PlotAxis, from: number, to: number): (value: number) => number {
  const scale = (axis.log ? scaleLog() : scaleLinear()).domain([axis.min, axis.max]).range([from, to])
  return (value) => scale(value)
}

/** How far along an axis a value stands, 0 to 1 between its ends. */
export function partAlong(axis: PlotAxis, value: number): number {
  return alongAxis(axis, 0, 1)(value)
}

/** The value that stands at a part of an axis, 0 to 1. */
export function valueAlong(axis: PlotAxis, part: number): number {
  return axis.log ? axis.min * (axis.max / axis.min) ** part : axis.min + part * (axis.max - axis.min)
}

/** What an axis measures, with its unit: "thrust, N". */
export function axisName(axis: PlotAxis): string {
  return axis.unit === '' || axis.unit === '1' ? axis.label : `${axis.label}, ${axis.unit}`
}

/** Paper needed left of the frame for the numbers of an upright axis. */
export function roomForNames(names: readonly string[]): number {
  return Math.max(4, ...names.map((n) => textWidth(n, letterSize))) + 2.2
}

/** Frame, grid, ticks and names of a plot. */
export function axisMarks(frame: Box, x: PlotAxis, y: PlotAxis, xTicks: Ticks, yTicks: Ticks): Mark[] {
  const marks: Mark[] = []
  const xAt = alongAxis(x, frame.left, frame.right)
  const yAt = alongAxis(y, frame.bottom, frame.top)
  const grid = { stroke: faint, width: 0.15 }
  const strong = { stroke: ink, width: 0.25 }
  yTicks.at.forEach((v, i) => {
    marks.push(line(frame.left, yAt(v), frame.right, yAt(v), grid, 'grid'))
    marks.push(
      text(frame.left - 1.4, yAt(v) - 0.35 * letterSize, yTicks.names[i]!, { anchor: 'end', colour: quiet }),
    )
  })
  // number names that would touch the one before are left out
  let clear = Number.NEGATIVE_INFINITY
  xTicks.at.forEach((v, i) => {
    const half = textWidth(xTicks.names[i]!, letterSize) / 2
    marks.push(line(xAt(v), frame.bottom, xAt(v), frame.bottom - 1, strong, 'axis'))
    if (xAt(v) - half < clear) return
    clear = xAt(v) + half + 1.5
    marks.push(
      text(xAt(v), frame.bottom - 1.6 - 0.75 * letterSize, xTicks.names[i]!, {
        anchor: 'middle',
        colour: quiet,
      }),
    )
  })
  marks.push(line(frame.left, frame.bottom, frame.right, frame.bottom, strong, 'axis'))
  if (!y.log && y.min < 0 && y.max > 0)
    marks.push(line(frame.left, yAt(0), frame.right, yAt(0), strong, 'axis'))
  marks.push(text(0.5, frame.top + 2.4, axisName(y), { colour: ink }))
  marks.push(
    text(frame.right, frame.bottom - 5.6 - 0.75 * letterSize, axisName(x), { anchor: 'end', colour: ink }),
  )
  return marks
}
