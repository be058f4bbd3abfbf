/** Figures of foam beside a hot part: cut across to scale with what is between them, and the foam's temperature over the distance. */
import { inCelsius, inMm } from '../../base/answers/amounts.ts'
import { printedAmount } from '../../base/answers/sentence.ts'
import { fromSi } from '../../base/units/convert.ts'
import { type DisplaySystem, displayUnit } from '../../base/units/format.ts'
import { lineChart } from '../../drawing/chart.ts'
import type { ChartSeries } from '../../drawing/chartSpec.ts'
import { dimension } from '../../drawing/dimension.ts'
import { hatch } from '../../drawing/hatching.ts'
import { circle, line, polygon, text } from '../../drawing/marks.ts'
import { ink, okabeIto, quiet } from '../../drawing/palette.ts'
import type { Mark, Sheet } from '../../drawing/sheet.ts'
import { wrapText } from '../../drawing/textWidth.ts'
import { faceAt, foamLimit, type Guard, guarded, guardWord, type HotPart, wrapping } from './guards.ts'

/** temperatures and lengths in words, as they read in a drawing */
const wordsIn = (system: DisplaySystem) => ({
  heat: (T: number) => printedAmount(inCelsius(T), system).replace(' ', '\u00a0'),
  length: (v: number) => printedAmount(inMm(v), system),
})

/** The part, its guard and the foam cut across, to scale, with distances and temperatures. */
export function heatSketch(part: HotPart, width = 120, system: DisplaySystem = 'metric'): Sheet {
  const { heat, length } = wordsIn(system)
  const { radius, distance } = part.spot
  const deep = Math.min(part.spot.depth, 0.8 * distance)
  const pad = 8
  const scale = Math.min((width - 2 * pad) / (radius + distance + deep), 46 / (2 * radius))
  const half = Math.max(1.35 * radius, 0.45 * distance) * scale
  const own = guarded(part, part.guard)
  const limit = foamLimit(part)
  const cool = own.face <= limit
  const notes = wrapText(
    `${part.name} ${heat(part.spot.pipe)}, ${guardWord[part.guard]}: foam face ${heat(own.face)} of the ${heat(limit)} it may have.`,
    3,
    width - 2 * pad,
  )
  const foot = 6 + 4.4 * notes.length
  const height = foot + 2 * half + 20
  const middle = foot + 6 + half
  const left = (width - (radius + distance + deep) * scale) / 2
  const cx = left + radius * scale
  const face = cx + distance * scale
  const end = face + deep * scale
  const box = [face, middle - half, end, middle - half, end, middle + half, face, middle + half]
  const r = radius * scale
  const marks: Mark[] = [
    text(4, height - 5, 'Cut across, to scale', { size: 3.4, bold: true }),
    ...hatch([box], 2.4, Math.PI / 4, { stroke: okabeIto.blue, width: 0.18 }),
    polygon(box, { stroke: okabeIto.blue, width: 0.3 }, 'data', 'foam'),
    line(
      face,
      middle - half,
      face,
      middle + half,
      { stroke: cool ? okabeIto.green : okabeIto.vermillion, width: 1 },
      'data',
    ),
    text((face + end) / 2, middle - 1, part.foam.id, { size: 2.8, anchor: 'middle', halo: true }),
    ...guardMarks(part, cx, middle, r, face, half, system),
    circle(cx, middle, r, { stroke: okabeIto.vermillion, width: 0.7, fill: '#ffffff' }, 'data'),
    text(cx, middle - 1, heat(part.spot.pipe), { size: Math.min(2.8, r / 2.4), anchor: 'middle' }),
    ...dimension(cx, middle + half, face, middle + half, 4, length(distance)),
    ...notes.map((row, i) => text(4, 3 + 4.4 * (notes.length - 1 - i), row, { size: 3, colour: quiet })),
  ]
  return {
    width,
    height,
    title: `${part.name} beside foam, cut across`,
    says: `${part.name} ${guardWord[part.guard]}, ${length(distance)} from its middle to the foam, whose face reaches ${heat(own.face)}; to scale.`,
    marks,
  }
}

/** the plate half way in the gap, or the wrap round the part */
function guardMarks(
  part: HotPart,
  cx: number,
  cy: number,
  r: number,
  face: number,
  half: number,
  system: DisplaySystem,
): Mark[] {
  if (part.guard === 'shield') {
    const x = (cx + r + face) / 2
    const tall = 0.92 * half
    return [
      line(x, cy - tall, x, cy + tall, { stroke: ink, width: 0.8 }, 'data'),
      text(x, cy - half - 4, 'bright plate, air on both sides', { size: 2.6, anchor: 'middle', halo: true }),
    ]
  }
  if (part.guard === 'wrap') {
    const outside = r * (1 + wrapping.thickness / part.spot.radius)
    return [
      circle(cx, cy, outside, { stroke: quiet, width: 0.4, fill: '#e9e4d8' }, 'data'),
      text(cx, cy - half - 4, `${wordsIn(system).length(wrapping.thickness)} of glass wrap`, {
        size: 2.6,
        anchor: 'middle',
        halo: true,
      }),
    ]
  }
  return []
}

const colours: Record<Guard, string> = {
  bare: okabeIto.vermillion,
  shield: okabeIto.green,
  wrap: okabeIto.purple,
}
const names: Record<Guard, string> = { bare: 'bare', shield: 'shielded', wrap: 'wrapped' }

/** Temperature of the foam's face against distance, bare, shielded and wrapped, with where the file puts it and what the foam takes. °C. */
export function heatFigure(part: HotPart, width = 180, system: DisplaySystem = 'metric'): Sheet {
  const { length } = wordsIn(system)
  const far = displayUnit('length', system, 'mm')
  const hot = displayUnit('temperature', system, '°C')
  const across = (v: number) => fromSi(v, 'length', far)
  const degrees = (T: number) => fromSi(T, 'temperature', hot)
  const limit = foamLimit(part)
  const { radius } = part.spot
  const all = (['bare', 'shield', 'wrap'] as const).map((guard) => guarded(part, guard))
  const clear = all[0]!.clear
  const end = Math.max(1.6 * part.spot.distance, Number.isFinite(clear) ? 1.3 * clear : 0, 4 * radius)
  const count = 40
  const start = Math.max(1.05 * radius, radius + wrapping.thickness + 0.002)
  const xs = Float64Array.from({ length: count }, (_, i) => start + ((end - start) * i) / (count - 1))
  const curve = (guard: Guard, pipe: number) =>
    Float64Array.from(xs, (distance) => degrees(faceAt({ ...part.spot, pipe, distance }, guard)))
  const says = all
    .map(({ guard, clear: c }) =>
      Number.isFinite(c)
        ? `${names[guard]} it wants ${length(c)} from its middle to the foam`
        : `${names[guard]}, no distance inside a hull is enough`,
    )
    .join('; ')
  return lineChart({
    title: `${part.name}: how hot the foam beside it gets`,
    says: `${part.name}, ${says}; the file puts it at ${length(part.spot.distance)}, ${names[part.guard]}.`,
    width,
    height: 78,
    x: { label: 'from its middle to the foam', unit: far },
    y: { label: 'foam face', unit: hot },
    series: all.map(
      ({ guard }): ChartSeries => ({
        name: names[guard],
        x: xs.map(across),
        y: curve(guard, part.spot.pipe),
        // the doubt of its temperature is drawn for the guard it has
        ...(guard === part.guard ? { low: curve(guard, part.low), high: curve(guard, part.high) } : {}),
        colour: colours[guard],
      }),
    ),
    lines: [
      {
        axis: 'y',
        at: degrees(limit),
        label: `${part.foam.id} wants at most`,
        colour: okabeIto.blue,
        dash: [2, 1],
      },
      { axis: 'x', at: across(part.spot.distance), label: 'in the file', colour: quiet, dash: [1, 1] },
    ],
  })
}
