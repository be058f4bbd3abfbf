/** The section through a made body, hatched, with its size; millimetres on the sheet. */
import { inMm } from '../../../base/answers/amounts.ts'
import { printed, say } from '../../../base/answers/sentence.ts'
import type { DisplaySystem } from '../../../base/units/format.ts'
import { centreLine, dimension } from '../../../drawing/dimension.ts'
import { hatch } from '../../../drawing/hatching.ts'
import { polygon } from '../../../drawing/marks.ts'
import { ink } from '../../../drawing/palette.ts'
import type { Sheet } from '../../../drawing/sheet.ts'
import type { MadeBody } from './makeSolid.ts'

const margin = 14

/** A body cut by the plane of its axis, drawn as wide as asked for; true to scale within itself. */
export function sectionFigure(
  body: Pick<MadeBody, 'name' | 'section' | 'low' | 'high'>,
  look: { width: number; system: DisplaySystem },
): Sheet {
  const { section, low, high } = body
  const [wide, tall] = [high[0] - low[0], high[2] - low[2]]
  // no picture taller than it is wide
  const scale = (look.width - 2 * margin) / Math.max(wide, tall)
  const [w, h] = [wide * scale, tall * scale]
  const left = (look.width - w) / 2
  const x = (v: number) => left + (v - low[0]) * scale
  const y = (v: number) => margin + (v - low[2]) * scale
  const outlines = section.map((ring) => Float64Array.from(ring.flatMap(([a, b]) => [x(a), y(b)])))
  const size = (v: number) => printed(say`${inMm(v, 0.1)}`, look.system)
  return {
    width: look.width,
    height: h + 2 * margin,
    title: `Section through the ${body.name}`,
    says: `The ${body.name} cut in half along its axis, ${size(wide)} wide and ${size(tall)} high.`,
    marks: [
      ...(outlines.length > 0 ? hatch(outlines, 2) : []),
      ...outlines.map((points) => polygon(points, { stroke: ink, width: 0.35 }, 'cut')),
      ...(low[0] < 0 && high[0] > 0 ? [centreLine(x(0), margin, x(0), margin + h)] : []),
      ...dimension(left, margin, left + w, margin, -7, size(wide)),
      ...dimension(left, margin, left, margin + h, 7, size(tall)),
    ],
  }
}
