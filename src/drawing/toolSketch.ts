/** Small sketches of a measuring tool where it is put, for a question that asks for a reading. Drawn for this project. */
import { circle, line, polygon, polyline, rectangle, text } from './marks.ts'
import { faint, ink, okabeIto, quiet } from './palette.ts'
import type { Mark, Sheet, Style } from './sheet.ts'

export type Tool =
  | 'plate'
  | 'caliper across a hole'
  | 'protractor on a blade'
  | 'tape along'
  | 'tape across'
  | 'luggage scale'
  | 'bathroom scale'
  | 'counting turns'

const [W, H] = [72, 44]
const thing: Style = { stroke: quiet, width: 0.5, fill: faint }
const tool: Style = { stroke: okabeIto.blue, width: 0.7 }
const body: Style = { ...tool, fill: '#ffffff' }
const label = (x: number, y: number, words: string): Mark => text(x, y, words, { size: 3, anchor: 'middle' })

const caliper = (x0: number, x1: number, y: number): Mark[] => [
  rectangle(x0 - 4, y, x1 - x0 + 14, 4, body, 'data'),
  polygon([x0, y, x0 + 2.5, y, x0, y - 12], body, 'data'),
  polygon([x1, y, x1 - 2.5, y, x1, y - 12], body, 'data'),
  rectangle(x1 - 4, y - 0.8, 10, 5.6, body, 'data'),
]

const arcPoints = (cx: number, cy: number, r: number, from: number, to: number): number[] =>
  Array.from({ length: 33 }, (_, i) => from + ((to - from) * i) / 32).flatMap((a) => [
    cx + r * Math.cos(a),
    cy + r * Math.sin(a),
  ])

const pictures: Readonly<Record<Tool, { says: string; marks: () => Mark[] }>> = {
  plate: {
    says: 'The plate on an engine, with size, power and speed',
    marks: () => [
      rectangle(14, 10, 44, 26, thing, 'data'),
      rectangle(22, 14, 28, 18, body, 'data'),
      label(36, 26.5, 'size'),
      label(36, 21.5, 'power at rpm'),
      circle(24.5, 16.5, 0.8, tool, 'data'),
      circle(47.5, 16.5, 0.8, tool, 'data'),
    ],
  },
  'caliper across a hole': {
    says: 'The inside jaws of a caliper across a round hole',
    marks: () => [
      rectangle(8, 3, 56, 30, thing, 'data'),
      circle(36, 17, 11, { stroke: ink, width: 0.5, fill: '#ffffff' }, 'data'),
      ...caliper(25, 47, 26),
    ],
  },
  'protractor on a blade': {
    says: 'A protractor with its base square to the shaft and its arm along the blade',
    marks: () => [
      polyline([6, 12, 66, 12], { stroke: quiet, width: 0.3, dash: [4, 1.5, 0.8, 1.5] }, 'axis'),
      label(59, 7.5, 'round the shaft'),
      polygon([18, 12, 52, 33, 54, 31, 21, 10], thing, 'data'),
      polyline(arcPoints(18, 12, 20, 0, Math.PI * 0.5), tool, 'data'),
      line(18, 12, 38, 12, tool, 'data'),
      line(18, 12, 18, 32, tool, 'data'),
      line(18, 12, 54, 34.2, { ...tool, width: 0.9 }, 'data'),
      text(42, 17, 'angle', { size: 3 }),
    ],
  },
  'tape along': {
    says: 'A tape from the transom to the bow',
    marks: () => [
      polygon([8, 22, 8, 12, 52, 12, 64, 22], thing, 'data'),
      line(8, 31, 64, 31, tool, 'data'),
      rectangle(61, 28, 6, 6, body, 'data'),
      ...Array.from({ length: 15 }, (_, i) =>
        line(8 + 4 * i, 31, 8 + 4 * i, i % 5 ? 29.6 : 28, tool, 'data'),
      ),
      label(36, 36, 'length'),
    ],
  },
  'tape across': {
    says: 'A tape over the widest place of the hull',
    marks: () => [
      polygon([14, 26, 18, 12, 36, 9, 54, 12, 58, 26], thing, 'data'),
      line(14, 31, 58, 31, tool, 'data'),
      rectangle(56, 28, 6, 6, body, 'data'),
      ...Array.from({ length: 12 }, (_, i) =>
        line(14 + 4 * i, 31, 14 + 4 * i, i % 5 ? 29.6 : 28, tool, 'data'),
      ),
      label(36, 37, 'beam'),
    ],
  },
  'luggage scale': {
    says: 'A luggage scale lifting one end of the craft while the other rests',
    marks: () => [
      line(4, 6, 68, 6, { stroke: quiet, width: 0.4 }, 'data'),
      polygon([10, 6, 58, 16, 56, 24, 10, 15], thing, 'data'),
      line(57, 20, 57, 27, tool, 'data'),
      circle(57, 32, 5, body, 'data'),
      label(57, 31, 'kg'),
      line(57, 37, 57, 42, tool, 'data'),
      label(30, 35, 'each end by itself:'),
      label(30, 30.5, 'their sum'),
    ],
  },
  'bathroom scale': {
    says: 'The rider in the gear for the water on a bathroom scale',
    marks: () => [
      rectangle(22, 4, 28, 5, body, 'data'),
      polygon([32, 10, 40, 10, 41, 24, 44, 32, 28, 32, 31, 24], thing, 'data'),
      circle(36, 37, 3.6, thing, 'data'),
      label(60, 6, 'kg'),
    ],
  },
  'counting turns': {
    says: 'A chalk mark on each pulley, to count turns of the engine for one of the impeller',
    marks: () => [
      circle(22, 20, 8, thing, 'data'),
      circle(50, 20, 13, thing, 'data'),
      line(20.6, 27.9, 47.7, 32.8, tool, 'data'),
      line(20.6, 12.1, 47.7, 7.2, tool, 'data'),
      line(22, 20, 22, 28, { ...tool, width: 1 }, 'data'),
      line(50, 20, 50, 33, { ...tool, width: 1 }, 'data'),
      label(22, 39, 'engine'),
      label(50, 39, 'impeller'),
    ],
  },
}

/** The sketch of a tool in its place; mm. */
export function toolSketch(which: Tool): Sheet {
  const { says, marks } = pictures[which]
  return { width: W, height: H, title: which, says, marks: marks() }
}
