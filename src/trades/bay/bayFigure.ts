/** Pictures of the bay: cut along with its air paths and temperatures, and its air over the minutes from cold and after a stop. */
import { inCelsius, inLitresPerSecond } from '../../base/answers/amounts.ts'
import { printedAmount } from '../../base/answers/sentence.ts'
import { fromSi } from '../../base/units/convert.ts'
import { displayUnit } from '../../base/units/format.ts'
import { lineChart } from '../../drawing/chart.ts'
import type { ChartSeries } from '../../drawing/chartSpec.ts'
import { hatch } from '../../drawing/hatching.ts'
import { circle, line, polygon, polyline, rectangle, text } from '../../drawing/marks.ts'
import { ink, okabeIto, quiet } from '../../drawing/palette.ts'
import type { Mark, Sheet } from '../../drawing/sheet.ts'
import type { FigureLook, Solved } from '../trade.ts'
import type { BayAnswer, SteadyState } from './bayAnswer.ts'
import type { BayInputs, BaySpec } from './bayFromCraft.ts'
import { bayLimits } from './bayLimits.ts'

type BaySolved = Solved<BayInputs, BayAnswer>

/** An arrow of air from (x, y) along dx; its head filled. */
function arrow(x: number, y: number, dx: number, dy: number, colour: string, width: number): Mark[] {
  const length = Math.hypot(dx, dy)
  const [c, s] = [dx / length, dy / length]
  const [tx, ty] = [x + dx, y + dy]
  const head = 2.2
  return [
    line(x, y, tx - head * c, ty - head * s, { stroke: colour, width }, 'data'),
    polygon(
      [
        tx,
        ty,
        tx - head * c - 0.9 * s,
        ty - head * s + 0.9 * c,
        tx - head * c + 0.9 * s,
        ty - head * s - 0.9 * c,
      ],
      { fill: colour },
      'data',
    ),
  ]
}

/** The bay cut along, to scale in height, with what passes through each opening. */
export function baySection(now: BaySolved, look: FigureLook): Sheet {
  const { bay, hottest } = now.answer
  if (!bay || !hottest) return emptyBay(now, look)
  const { width, system } = look
  const long = 2 * Math.sqrt(bay.plan / 2)
  const pad = 34
  const scale = Math.min((width - 2 * pad) / long, 60 / bay.depth)
  const [w, h] = [long * scale, bay.depth * scale]
  const left = (width - w) / 2
  const foot = 22
  const top = foot + h
  const height = top + 26
  const says = (amount: ReturnType<typeof inCelsius>) => printedAmount(amount, system)
  const air = says(inCelsius(hottest.air.value))
  const marks: Mark[] = [
    text(4, height - 5, `The bay ${hottest.state.name}`, { size: 3.4, bold: true }),
    rectangle(left, foot, w, h, { fill: '#f4f1ea', stroke: ink, width: 0.6 }, 'data'),
    ...hatch([[left - 3, foot - 4, left + w + 3, foot - 4, left + w + 3, foot, left - 3, foot]], 1.8, 0.4, {
      stroke: okabeIto.skyBlue,
      width: 0.2,
    }),
    text(left + w / 2, foot - 9, `floor on water of ${says(inCelsius(now.inputs.water.value))}`, {
      size: 2.8,
      anchor: 'middle',
      colour: quiet,
    }),
    ...machines(bay, hottest, left, foot, w, h, says),
    ...paths(bay, hottest, { left, foot, w, h, scale }, system),
    text(left + w / 2, foot + 0.82 * h, air, { size: 5, anchor: 'middle', bold: true, halo: true }),
    text(
      left + w / 2,
      top + 3,
      `lid ${says(inCelsius(hottest.now.walls))}, air outside ${says(inCelsius(now.inputs.air.value))}`,
      {
        size: 2.8,
        anchor: 'middle',
        colour: quiet,
      },
    ),
  ]
  return {
    width,
    height,
    title: 'The engine bay, its air and its heat',
    says: `${hottest.state.name}: air in the bay ${air}; ${bay.openings.length} openings; height to scale.`,
    marks,
  }
}

type Frame = { left: number; foot: number; w: number; h: number; scale: number }

function machines(
  bay: BaySpec,
  hottest: SteadyState,
  left: number,
  foot: number,
  w: number,
  h: number,
  says: (a: ReturnType<typeof inCelsius>) => string,
): Mark[] {
  const count = hottest.state.engines.filter((e) => e.power > 0).length
  const size = 0.4 * h
  const out: Mark[] = []
  for (let i = 0; i < count; i++) {
    const x = left + w * (0.25 + (0.5 * (i + 0.5)) / count) - size / 2
    out.push(
      rectangle(
        x,
        foot + 1.5,
        size,
        size,
        { fill: '#ffffff', stroke: okabeIto.vermillion, width: 0.5 },
        'data',
      ),
    )
    for (let k = 1; k < 4; k++)
      out.push(
        line(
          x - 1,
          foot + 1.5 + size * (0.45 + 0.14 * k),
          x + size + 1,
          foot + 1.5 + size * (0.45 + 0.14 * k),
          { stroke: okabeIto.vermillion, width: 0.3 },
          'data',
        ),
      )
  }
  if (bay.pipe !== 'outside') {
    const y = foot + 0.62 * h
    const style = { stroke: okabeIto.vermillion, width: bay.pipe === 'bare' ? 1.2 : 0.8 }
    out.push(
      polyline(
        [left + 0.2 * w, foot + 0.35 * h, left + 0.12 * w, y, left + 0.08 * w, foot + 0.3 * h],
        style,
        'data',
        'pipe',
      ),
    )
    out.push(text(left + 0.13 * w, y + 1, `pipe ${bay.pipe}`, { size: 2.5, colour: quiet, halo: true }))
  }
  if (bay.cooling === 'water')
    out.push(
      text(left + w / 2, foot + 0.5 * h, `cooled by water`, {
        size: 2.6,
        anchor: 'middle',
        colour: okabeIto.blue,
        halo: true,
      }),
    )
  const soft = says(inCelsius(bayLimits.foam.value))
  return [
    ...out,
    text(left + w - 1, foot + h - 4, `foam to ${soft}`, { size: 2.4, anchor: 'end', colour: quiet }),
  ]
}

/** Each opening on the side, flows in and out with their size. */
function paths(bay: BaySpec, { now }: SteadyState, f: Frame, system: FigureLook['system']): Mark[] {
  const out: Mark[] = []
  const flow = (kgPerSecond: number) => printedAmount(inLitresPerSecond(kgPerSecond / 1.2), system)
  bay.openings.forEach((o, i) => {
    const side = i % 2 === 0 ? -1 : 1
    const x = side < 0 ? f.left : f.left + f.w
    const y = f.foot + Math.min(f.h - 1, Math.max(1, o.height.value * f.scale))
    out.push(line(x, y - 2.2, x, y + 2.2, { stroke: '#ffffff', width: 1.4 }, 'data'))
    const { in: into = 0, out: from = 0 } = now.flow.through[i] ?? {}
    const net = into - from
    const colour = net >= 0 ? okabeIto.blue : okabeIto.vermillion
    const inward = net >= 0 ? -side : side
    const start = x + (net >= 0 ? side * 13 : side * 1)
    out.push(...arrow(start, y, inward * 12, 0, colour, 0.8))
    const anchor = side < 0 ? 'end' : 'start'
    out.push(text(x + side * 15, y + 0.6, flow(Math.abs(net)), { size: 2.6, anchor, colour }))
    out.push(text(x + side * 15, y - 3, o.name.slice(0, 18), { size: 2.3, anchor, colour: quiet }))
  })
  const fans = now.flow.fans.reduce((a, b) => a + b, 0)
  if (fans > 0) {
    const x = f.left + 0.5 * f.w
    const up = bay.fan?.blows === 'in' && bay.cooling !== 'ducted' ? -1 : 1
    const from = f.foot + f.h + (up > 0 ? 6 : 16)
    out.push(circle(x, f.foot + f.h, 1.6, { stroke: ink, width: 0.4, fill: '#ffffff' }, 'data'))
    out.push(...arrow(x, from, 0, up * 10, up > 0 ? okabeIto.vermillion : okabeIto.blue, 0.9))
    out.push(text(x + 4, from + up * 6, `fan ${flow(fans)}`, { size: 2.6 }))
  }
  return out
}

function emptyBay({ answer }: BaySolved, { width, system }: FigureLook): Sheet {
  const words = `The file does not describe the bay: ${printedAmount(inCelsius(answer.air.value), system)} are taken.`
  return {
    width,
    height: 20,
    title: 'The engine bay, its air and its heat',
    says: words,
    marks: [text(4, 9, words, { size: 3, colour: quiet })],
  }
}

/** Air over the minutes: from cold at work, and after a stop. */
export function bayMinutes(
  now: BaySolved,
  tried: BaySolved | undefined,
  { width, system }: FigureLook,
): Sheet {
  const unit = displayUnit('temperature', system, '°C')
  const degrees = (T: number) => fromSi(T, 'temperature', unit)
  const seriesOf = ({ answer }: BaySolved, name: string): ChartSeries[] => {
    const { warming, stopped } = answer
    if (!warming || !stopped) return []
    const minutes = (list: readonly number[]) => Float64Array.from(list, (t) => t / 60)
    return [
      {
        name: `at work${name}`,
        x: minutes(warming.time),
        y: Float64Array.from(warming.air, degrees),
        colour: okabeIto.vermillion,
      },
      {
        name: `after a stop${name}`,
        x: minutes(stopped.time),
        y: Float64Array.from(stopped.parts, degrees),
        colour: okabeIto.blue,
      },
    ]
  }
  return lineChart({
    title: 'The bay over the minutes',
    says: 'Air of the bay from cold at work, and what stands in it after a stop out of that.',
    width,
    height: 78,
    x: { label: 'time', unit: 'min' },
    y: { label: 'in the bay', unit },
    series: [
      ...seriesOf(now, ''),
      ...(tried ? seriesOf(tried, ', tried').map((s) => ({ ...s, tried: true })) : []),
    ],
    lines: [
      { axis: 'y', at: degrees(bayLimits.foam.value), label: 'foam', colour: okabeIto.green, dash: [2, 1] },
      {
        axis: 'y',
        at: degrees(bayLimits.fuel.value),
        label: 'petrol',
        colour: okabeIto.purple,
        dash: [2, 1],
      },
    ],
  })
}
