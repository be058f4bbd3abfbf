/** Openings in the views of the craft in the water: numbered signs, and their names and heights spelled out below. */
import { pointSign, text } from '../../drawing/marks.ts'
import { inkOf, okabeIto, quiet } from '../../drawing/palette.ts'
import type { Mark } from '../../drawing/sheet.ts'
import { textWidth } from '../../drawing/textWidth.ts'
import type { Vec3 } from '../../solid/mesh.ts'
import type { ViewInput } from './figures.ts'
import { heightOver, type Opening } from './openings.ts'
import type { View } from './outline.ts'
import type { Attitude } from './settle.ts'

const cm = (x: number) => `${(100 * x).toFixed(1)} cm`

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

/** The numbers of the openings spelled out below the picture, in as many columns as fit. */
export function openingKey(input: ViewInput, width: number): { marks: Mark[]; height: number } {
  const size = 2.6
  const rows = (input.openings ?? []).map((o, i) => {
    const over = heightOver(input.attitude, o.at)
    const was = input.before ? `, now ${above(heightOver(input.before.attitude, o.at))}` : ''
    return { words: `${i + 1} ${o.name} ${above(over)}${was}`, wet: isWet(o, input.attitude) }
  })
  if (rows.length === 0) return { marks: [], height: 0 }
  const cell = Math.max(...rows.map((r) => textWidth(r.words, size, true))) + 5
  const columns = Math.max(1, Math.min(rows.length, Math.floor((width - 8) / cell)))
  const tall = Math.ceil(rows.length / columns)
  const wide = (width - 8) / columns
  const marks = rows.map(({ words, wet }, i) =>
    text(4 + Math.floor(i / tall) * wide, 2.4 + 4 * (tall - 1 - (i % tall)), words, {
      size,
      bold: wet,
      colour: wet ? inkOf(okabeIto.vermillion) : quiet,
    }),
  )
  return { marks, height: 4 * tall + 2 }
}

const above = (height: number) => (height < 0 ? `${cm(-height)} under` : cm(height))
