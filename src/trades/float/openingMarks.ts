/** Openings in the views of the craft in the water: numbered signs, and their names and heights spelled out below. */
import { inCm } from '../../base/answers/amounts.ts'
import { printed, say } from '../../base/answers/sentence.ts'
import type { DisplaySystem } from '../../base/units/format.ts'
import { pointSign, text } from '../../drawing/marks.ts'
import { inkOf, okabeIto, quiet } from '../../drawing/palette.ts'
import type { Mark } from '../../drawing/sheet.ts'
import { textWidth } from '../../drawing/textWidth.ts'
import type { Attitude } from '../../hull/afloat/settle.ts'
import type { Vec3 } from '../../physics/solid/mesh.ts'
import type { ViewInput } from './floatViews.ts'
import { heightOver, type Opening } from './openingHeights.ts'
import type { View } from './outline.ts'

/** Openings as numbered signs: hollow triangles above water, red crosses under it. */
export function openingMarks(
  input: ViewInput,
  view: View,
  at: (p: Vec3) => [number, number],
  sx: (v: number) => number,
  sy: (v: number) => number,
): Mark[] {
  return (input.openings ?? []).flatMap((o, i): Mark[] => {
    const wet = isWet(o, input.attitude)
    const [u, v] = at(o.at)
    const [x, y] = [sx(u), sy(v)]
    const colour = wet ? okabeIto.vermillion : okabeIto.green
    const sign = pointSign(wet ? 'cross' : 'triangle', x, y, 1.3, colour, !wet)
    if (view !== 'side') return [sign]
    return [sign, text(x + 1.9, y - 0.2, `${i + 1}`, { size: 2.5, bold: true, halo: true })]
  })
}

const isWet = (o: Opening, a: Attitude) => heightOver(a, o.at) < 0 && o.kind !== 'shaft seal'

const size = 2.6

interface KeyRow {
  words: string
  wet: boolean
}

/** Rows of the key; how high it stands now beside what is tried, but for a drag that began without. */
function keyRows({ openings, attitude, before, steady, system = 'metric' }: ViewInput): KeyRow[] {
  const was = steady && !steady.rest.before ? undefined : before
  return (openings ?? []).map((o, i) => ({
    words: `${i + 1} ${o.name} ${above(heightOver(attitude, o.at), system)}${was ? `, now ${above(heightOver(was.attitude, o.at), system)}` : ''}`,
    wet: isWet(o, attitude),
  }))
}

const widest = (rows: readonly KeyRow[]) => Math.max(...rows.map((r) => textWidth(r.words, size, true)))

const columnsOf = (rows: readonly KeyRow[], width: number) =>
  Math.max(1, Math.min(rows.length, Math.floor((width - 8) / (widest(rows) + 5))))

/** The numbers of the openings spelled out below the picture, in as many columns as fit; a drag keeps those it began with. */
export function openingKey(input: ViewInput, width: number): { marks: Mark[]; height: number } {
  const rows = keyRows(input)
  if (rows.length === 0) return { marks: [], height: 0 }
  const columns = columnsOf(input.steady ? keyRows(input.steady.rest) : rows, width)
  const tall = Math.ceil(rows.length / columns)
  const wide = (width - 8) / columns
  // longer words in columns that stay are set smaller
  const fitted = Math.min(size, (size * (wide - 1)) / widest(rows))
  const marks = rows.map(({ words, wet }, i) =>
    text(4 + Math.floor(i / tall) * wide, 2.4 + 4 * (tall - 1 - (i % tall)), words, {
      size: fitted,
      bold: wet,
      colour: wet ? inkOf(okabeIto.vermillion) : quiet,
    }),
  )
  return { marks, height: 4 * tall + 2 }
}

const above = (height: number, system: DisplaySystem) =>
  printed(height < 0 ? say`${inCm(-height, 0.1)} under` : say`${inCm(height, 0.1)}`, system)
