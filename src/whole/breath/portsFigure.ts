/** Time-areas of the ports against their guidance: which port holds the engine back at a speed. */
import { alongAxis, axisName, letterSize, smallSize, ticksOf } from '../../drawing/axes.ts'
import { line, pointSign, rectangle, text } from '../../drawing/marks.ts'
import { faint, ink, okabeIto, quiet } from '../../drawing/palette.ts'
import type { Mark, PlotAxis, Sheet } from '../../drawing/sheet.ts'
import type { PortFigure } from '../../trades/engine/portFigures.ts'
import { type Look, plain, saysRpm } from '../push/shown.ts'

/** 10⁻² s/m, as tables of time-areas have it */
const shown = (v: number) => v * 100
const row = 14.5

/** Bars of time-area at one speed (rev/min), the guidance as a tinted stretch; tried values as hollow marks. */
export function portsFigure(
  ports: readonly PortFigure[],
  tried: readonly PortFigure[] | undefined,
  rpm: number,
  look: Look,
): Sheet {
  const height = 12 + row * ports.length + 6
  const most = Math.max(
    ...ports.flatMap((p) => [p.timeArea, p.high]),
    ...(tried ?? []).map((p) => p.timeArea),
  )
  const axis: PlotAxis = { label: 'time-area', unit: '0.01 s/m', min: 0, max: shown(most) * 1.12 }
  const at = alongAxis(axis, 3, look.width - 4)
  const bottom = 11.2
  const top = height - 5
  const marks: Mark[] = []
  const ticks = ticksOf(axis, look.width - 7, 20)
  ticks.at.forEach((v, i) => {
    marks.push(line(at(v), bottom, at(v), top, { stroke: faint, width: 0.15 }, 'grid'))
    marks.push(text(at(v), bottom - 3.6, ticks.names[i]!, { anchor: 'middle', colour: quiet }))
  })
  marks.push(text(look.width - 4, bottom - 8, axisName(axis), { anchor: 'end', size: letterSize }))
  ports.forEach((p, i) => {
    const foot = top - row * (i + 1)
    const mid = foot + 3.4
    marks.push(
      rectangle(
        at(shown(p.low)),
        foot + 0.4,
        at(shown(p.high)) - at(shown(p.low)),
        6,
        { fill: okabeIto.green, opacity: 0.25 },
        'fill',
      ),
      rectangle(at(0), mid - 1.7, at(shown(p.timeArea)) - at(0), 3.4, { fill: okabeIto.blue }, 'data'),
    )
    const other = tried?.find((o) => o.port === p.port)
    if (other && Math.abs(other.timeArea - p.timeArea) > 1e-3 * p.timeArea)
      marks.push(pointSign('diamond', at(shown(other.timeArea)), mid, 1.5, okabeIto.black, true))
    marks.push(
      text(at(0) + 1, foot + 8, portWords(p, rpm), { size: smallSize + 0.1, halo: true, colour: ink }),
    )
  })
  marks.push(line(at(0), bottom - 1, at(0), top, { stroke: ink, width: 0.35 }, 'axis'))
  return {
    width: look.width,
    height,
    title: `Time-areas of the ports at ${saysRpm(rpm / 60)}`,
    says: `${ports.map((p) => portWords(p, rpm)).join('; ')}. The tinted stretch is the guidance.`,
    marks,
  }
}

function portWords(p: PortFigure, rpm: number): string {
  const verdict = p.timeArea < p.low ? 'short' : p.timeArea > p.high ? 'ample' : 'right'
  return `${p.port}: ${plain(shown(p.timeArea), 2)}, ${verdict} for ${saysRpm(rpm / 60)}; suits ${saysRpm(p.suitsFrom / 60)} to ${saysRpm(p.suitsTo / 60)}`
}
