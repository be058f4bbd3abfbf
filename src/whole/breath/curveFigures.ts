/** Torque and power over engine speed, with other pipes or tried values on the same axes. */

import { lineChart } from '../../drawing/chart.ts'
import type { ChartMarker, ChartSeries } from '../../drawing/chartSpec.ts'
import { okabeIto } from '../../drawing/palette.ts'
import type { Sheet } from '../../drawing/sheet.ts'
import { type Peak, peakOf, powerOf, type TorqueLine } from '../../trades/engine/torqueLine.ts'
import { inLook, type Look, says, saysRpm } from '../push/shown.ts'

type What = 'torque' | 'power'

export interface CurveOrder {
  what: What
  /** the first is the engine as it is */
  lines: readonly TorqueLine[]
  /** the line whose values are being tried, drawn dashed */
  tried?: TorqueLine | undefined
  /** speeds the engine is held at on the water, rev/min */
  used?: { from: number; to: number; label: string } | undefined
  /** a rough first answer, said in the words */
  rough?: boolean
}

const colours = [okabeIto.blue, okabeIto.vermillion, okabeIto.green]

/** Torque or power of an engine over its speed; knots are the speeds that were worked out. */
export function curveFigure(order: CurveOrder, look: Look): Sheet {
  const { what, lines, tried, used } = order
  const shown = (line: TorqueLine, values: readonly number[]) =>
    values.map((t, i) => inLook(what === 'torque' ? t : (t * line.rpm[i]! * 2 * Math.PI) / 60, what, look))
  const series: ChartSeries[] = []
  const markers: ChartMarker[] = []
  const mark = (line: TorqueLine, colour: string, hollow: boolean, before: string) => {
    const peak = topOf(line, what)
    if (!peak) return
    markers.push({
      x: peak.rpm,
      y: inLook(peak.value, what, look),
      shape: hollow ? 'diamond' : 'circle',
      hollow,
      colour,
      label: `${before}${says(peak.value, what, look)} at ${saysRpm(peak.rpm / 60)}`,
    })
  }
  lines.forEach((line, i) => {
    const colour = colours[i % colours.length]!
    series.push({
      name: line.name,
      x: line.rpm,
      y: shown(line, line.torque),
      colour,
      signs: false,
      ...(line.low && line.high ? { low: shown(line, line.low), high: shown(line, line.high) } : {}),
    })
    mark(line, colour, i > 0, i > 0 ? `${line.name}: ` : '')
    if (i > 0 || !tried) return
    series.push({ name: tried.name, tried: true, x: tried.rpm, y: shown(tried, tried.torque) })
    mark(tried, okabeIto.black, true, 'tried: ')
  })
  const first = lines[0]
  return lineChart({
    title: what === 'torque' ? 'Torque over engine speed' : 'Power over engine speed',
    says: first ? inWords(order, look) : 'No curve yet.',
    width: look.width,
    height: Math.min(100, Math.max(66, look.width * 0.38)),
    x: { label: 'engine speed', unit: 'rpm' },
    y: {
      label: what === 'torque' ? 'torque at the crank' : 'power at the crank',
      unit: look[what],
      min: 0,
    },
    series,
    markers,
    zones: used
      ? [{ axis: 'x', from: used.from, to: used.to, label: used.label, colour: okabeIto.orange }]
      : [],
    empty: order.rough ? 'Working out the first curve…' : 'No curve could be worked out.',
  })
}

function topOf(line: TorqueLine, what: What): Peak | undefined {
  return peakOf(line, what === 'torque' ? line.torque : powerOf(line))
}

function inWords({ what, lines, tried }: CurveOrder, look: Look): string {
  const one = (line: TorqueLine) => {
    const peak = topOf(line, what)
    return peak ? `${line.name} ${says(peak.value, what, look)} at ${saysRpm(peak.rpm / 60)}` : ''
  }
  const all = [...lines, ...(tried ? [tried] : [])].map(one).filter((w) => w !== '')
  return `Most ${what}: ${all.join('; ')}.`
}
