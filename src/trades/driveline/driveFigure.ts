/** The chain drawn to scale from the first engine to the impeller, with what each part bears over its peaks. */
import { inMm, inTimes } from '../../base/answers/amounts.ts'
import { joined, printed, printedAmount, say } from '../../base/answers/sentence.ts'
import { centreLine, dimension } from '../../drawing/dimension.ts'
import { hatch } from '../../drawing/hatching.ts'
import { circle, line, polygon, rectangle, text } from '../../drawing/marks.ts'
import { faint, ink, inkOf, okabeIto, quiet } from '../../drawing/palette.ts'
import type { Mark, Sheet } from '../../drawing/sheet.ts'
import type { FigureLook, Solved } from '../trade.ts'
import type { DriveAnswer, DriveInputs, Part } from './driveAnswer.ts'
import type { Between, DriveChain, EngineMass, Joint, Turning } from './driveLinks.ts'

type Now = Solved<DriveInputs, DriveAnswer | undefined>

/** What is drawn, in order: its length along the shaft and half its height, m. */
interface Piece {
  length: number
  half: number
  kind: 'engine' | 'impeller' | Between['kind']
  of: EngineMass | Between | undefined
  /** places, from the left end of the piece as a part of its length, and letters of the parts that sit there */
  parts: { at: number; part: Part }[]
}

const engineLength = (e: EngineMass): number => 2.6 * Math.cbrt(Math.max(e.displacement, 40e-6))

function piecesOf(chain: DriveChain, answer: DriveAnswer | undefined): Piece[] {
  const partOf = (of: Between, at: number) =>
    (answer?.inOrder ?? []).filter((p) => p.of === of).map((part) => ({ at, part }))
  const pieces: Piece[] = []
  chain.engines.forEach((e, place) => {
    const long = engineLength(e)
    pieces.push({ length: long, half: 0.55 * long, kind: 'engine', of: e, parts: [] })
    for (const of of chain.between[place] ?? []) {
      // a hub is drawn where the thing it holds begins or ends: labels alone
      if (of.kind === 'hold') {
        const last = pieces.at(-1)
        if (last?.kind === 'shaft') last.parts.push(...partOf(of, 1))
        else pieces.push({ length: 0, half: 0, kind: 'hold', of, parts: partOf(of, 0) })
      } else pieces.push(pieceOf(of, partOf(of, 0.5)))
    }
  })
  const { bore } = chain.impeller
  pieces.push({ length: 0.5 * bore, half: bore / 2, kind: 'impeller', of: undefined, parts: [] })
  return pieces
}

function pieceOf(of: Exclude<Between, { kind: 'hold' }>, parts: Piece['parts']): Piece {
  switch (of.kind) {
    case 'coupling':
      return {
        length: of.thickness.value + 2.2 * of.bolt.d,
        half: of.radius.value + 0.8 * of.bolt.washer,
        kind: 'coupling',
        of,
        parts,
      }
    case 'belt':
      return { length: 0.03, half: of.pulley.value / 2, kind: 'belt', of, parts }
    case 'shaft':
      return { length: of.length.value, half: of.diameter.value / 2, kind: 'shaft', of, parts }
  }
}

const edge = 12
const rows = 3

/** Draws what is, with the margins of what is tried beside it. */
export function driveFigure(now: Now, tried: Now | undefined, look: FigureLook): Sheet {
  const { chain } = now.inputs
  const { width, system } = look
  const title = 'Shaft and joints'
  if (!chain)
    return {
      width,
      height: 14,
      title,
      says: 'The file names no shaft.',
      marks: [text(edge, 6, 'No shaft in the file.', { size: 3 })],
    }
  const pieces = piecesOf(chain, now.answer)
  const long = pieces.reduce((sum, p) => sum + p.length, 0)
  const tall = Math.max(...pieces.map((p) => p.half))
  const scale = Math.min((width - 2 * edge) / long, 28 / tall)
  const left = (width - scale * long) / 2
  const middle = 16 + scale * tall
  const marks: Mark[] = [centreLine(left, middle, left + scale * long, middle)]
  const labels: { x: number; y: number; part: Part }[] = []
  let x = left
  for (const p of pieces) {
    const w = scale * p.length
    marks.push(...drawn(p, x, middle, w, scale * p.half))
    for (const { at, part } of p.parts) labels.push({ x: x + at * w, y: middle + scale * p.half, part })
    x += w
  }
  marks.push(
    ...dimension(
      left,
      middle - scale * tall,
      left + scale * long,
      middle - scale * tall,
      -8,
      printedAmount(inMm(long, 10), system),
    ),
  )
  const top = middle + scale * tall + 6
  // leaders first, so that no line runs over a number
  labels.forEach(({ x: at, y }, i) => {
    marks.push(line(at, y + 0.5, at, top + 5 * (i % rows) - 0.6, { stroke: quiet, width: 0.15 }, 'mark'))
  })
  labels.forEach(({ x: at, part }, i) => {
    marks.push(
      ...labelOf(at, top + 5 * (i % rows), part, tried?.answer?.inOrder[part.index], at > 0.75 * width),
    )
  })
  return {
    width,
    height: top + 5 * rows + 4,
    title,
    says: printed(saysOf(now.answer), system),
    marks,
  }
}

const saysOf = (answer: DriveAnswer | undefined) =>
  answer
    ? say`From the first engine to the impeller; what each part bears over its peaks: ${joined(answer.inOrder.map((p) => say`${p.of.name} ${inTimes(p.margin.value)}`))}.`
    : 'From the first engine to the impeller; what the parts bear is not known yet.'

/** a mark of its own shape beside the number: a disc where it holds, a triangle where it does not */
function labelOf(x: number, y: number, part: Part, other: Part | undefined, toLeft: boolean): Mark[] {
  const holds = part.margin.value >= 1
  const colour = holds ? okabeIto.green : okabeIto.vermillion
  const number = printedAmount(inTimes(part.margin.value))
  const then = other ? ` → ${printedAmount(inTimes(other.margin.value))}` : ''
  return [
    holds
      ? circle(x, y + 1, 1, { fill: colour }, 'data')
      : polygon([x - 1.2, y, x + 1.2, y, x, y + 2.1], { fill: colour }, 'data'),
    text(x + (toLeft ? -2 : 2), y + 0.1, `${part.letter}  ${number}${then}`, {
      size: 2.8,
      anchor: toLeft ? 'end' : 'start',
      colour: inkOf(colour),
      halo: true,
    }),
  ]
}

function drawn(p: Piece, x: number, middle: number, w: number, half: number): Mark[] {
  const outline = { stroke: ink, width: 0.35 }
  switch (p.kind) {
    case 'engine': {
      const e = p.of as EngineMass
      return [
        rectangle(x, middle - 0.7 * half, w, 1.7 * half, { ...outline, fill: faint }, 'data'),
        text(x + w / 2, middle - 0.7 * half - 4, e.name, { size: 2.8, anchor: 'middle' }),
      ]
    }
    case 'coupling':
      return couplingMarks(p.of as Joint, x, middle, w, half)
    case 'belt':
      return [
        rectangle(x, middle - half, w, 2 * half, outline, 'data'),
        line(x + 0.3 * w, middle - half, x + 0.3 * w, middle + half, { stroke: quiet, width: 0.2 }, 'data'),
        line(x + 0.7 * w, middle - half, x + 0.7 * w, middle + half, { stroke: quiet, width: 0.2 }, 'data'),
      ]
    case 'shaft':
      return shaftMarks(p.of as Turning, x, middle, w, half)
    case 'impeller':
      return [
        rectangle(x, middle - 0.42 * half, w, 0.84 * half, { ...outline, fill: faint }, 'data'),
        ...[0.05, 0.4, 0.75].map((at) =>
          line(x + at * w, middle - half, x + (at + 0.2) * w, middle + half, outline, 'data'),
        ),
        text(x + w / 2, middle - half - 4, 'impeller', { size: 2.8, anchor: 'middle' }),
      ]
    case 'hold':
      return []
  }
}

/** The shaft, and the bearing its impeller hangs behind. */
function shaftMarks(s: Turning, x: number, middle: number, w: number, half: number): Mark[] {
  const outline = { stroke: ink, width: 0.35 }
  const shaft = rectangle(x, middle - half, w, 2 * half, { ...outline, fill: faint }, 'data')
  if (s.bearings === 0) return [shaft]
  const scale = w / s.length.value
  const at = x + w - scale * Math.min(s.overhang.value, s.length.value)
  const thick = Math.max(1.2, scale * 0.009)
  const high = Math.max(1.2, 0.7 * half)
  return [
    shaft,
    ...[middle + half, middle - half - high].map((y) =>
      rectangle(at - thick / 2, y, thick, high, { ...outline, fill: quiet }, 'data'),
    ),
  ]
}

/** Two halves, plastic hatched, and a bolt above and below as seen from the side. */
function couplingMarks(j: Joint, x: number, middle: number, w: number, half: number): Mark[] {
  const outline = { stroke: ink, width: 0.35 }
  const box = [x, middle - half, x + w, middle - half, x + w, middle + half, x, middle + half]
  const bolt = (half * j.radius.value) / (j.radius.value + 0.8 * j.bolt.washer)
  return [
    ...(j.data.plastic ? hatch([box], 1.4) : []),
    rectangle(x, middle - half, w, 2 * half, outline, 'data'),
    ...[bolt, -bolt].map((y) =>
      line(x - 0.6, middle + y, x + w + 0.6, middle + y, { stroke: ink, width: 0.7 }, 'data'),
    ),
  ]
}
