/** The waves along the pipe over one turn: as colours, and as the frame in which one moment's line moves. */
import { lineChart } from '../../drawing/chart.ts'
import { heatChart } from '../../drawing/heatMap.ts'
import { line, polygon, text } from '../../drawing/marks.ts'
import { ink, okabeIto, quiet } from '../../drawing/palette.ts'
import type { Mark, Plot, Sheet } from '../../drawing/sheet.ts'
import type { Segment } from '../../physics/gas/ductMesh.ts'
import type { CycleTrace } from '../../trades/engine/trace.ts'
import { type Look, plain, saysRpm } from '../push/shown.ts'
import { bar, inWords, portAngles, signed, turnOrder } from './cycleFigures.ts'

/** The pipe's outline over a plot with the distance along the pipe as its x axis: two lines and the ends. */
function silhouette(segments: readonly Segment[], plot: Plot, middle: number, half: number): Mark[] {
  const total = segments.reduce((s, p) => s + p.length, 0)
  const widest = Math.max(...segments.flatMap((p) => [p.d0, p.d1]))
  const xAt = (x: number) =>
    plot.left + ((x - plot.x.min) / (plot.x.max - plot.x.min)) * (plot.right - plot.left)
  const upper: number[] = []
  let at = 0
  for (const s of segments) {
    upper.push(xAt(Math.min(at, plot.x.max)), (s.d0 / widest) * half)
    at += s.length
    upper.push(xAt(Math.min(at, plot.x.max)), (s.d1 / widest) * half)
  }
  const outline: number[] = []
  for (let i = 0; i < upper.length; i += 2) outline.push(upper[i]!, middle + upper[i + 1]!)
  for (let i = upper.length - 2; i >= 0; i -= 2) outline.push(upper[i]!, middle - upper[i + 1]!)
  const left = xAt(0)
  return [
    polygon(outline, { stroke: ink, fill: '#f1eee5', width: 0.35 }, 'data'),
    line(left, middle, xAt(total), middle, { stroke: ink, width: 0.15, dash: [3, 0.8, 0.8, 0.8] }, 'axis'),
  ]
}

/** Room above the wave picture for the pipe's outline, mm. */
const outlineRoom = 20

/** Pressure along the pipe against crank angle as colours, the pipe drawn over it to the same length. */
export function waveFigure(
  trace: CycleTrace | undefined,
  segments: readonly Segment[],
  air: number,
  look: Look,
): Sheet {
  const title = 'Waves in the pipe'
  if (!trace)
    return lineChart({
      title,
      says: 'Not worked out yet.',
      width: look.width,
      height: 80,
      x: { label: 'along the pipe', unit: 'mm' },
      y: { label: 'crank angle', unit: 'deg' },
      series: [],
      empty: 'Following the waves of one turn…',
    })
  const order = turnOrder(trace)
  const cols = trace.x.length
  const rows = order.length
  const values = new Float64Array(cols * rows)
  let most = 0
  order.forEach((i, r) => {
    for (let c = 0; c < cols; c++) {
      const p = bar(trace.pressure[i * cols + c]!, air)
      values[r * cols + c] = p
      most = Math.max(most, Math.abs(p))
    }
  })
  // the blow-down spike would wash out the waves that matter
  const span = Math.max(0.2, Math.min(most, 0.75 * most, 1))
  const unit = look.length
  const shown = (m: number) => (unit === 'mm' ? m * 1000 : m / 0.0254)
  const length = trace.x[cols - 1]! + (trace.x[0] ?? 0)
  const a = portAngles(trace)
  const across = (name: string, at: number, colour: string) => ({
    name,
    x: [0, shown(length)],
    y: [at, at],
    colour,
  })
  const heat = heatChart({
    title,
    says: waveWords(trace, air),
    width: look.width,
    height: Math.min(120, Math.max(92, look.width * 0.5)),
    x: { label: 'along the pipe from the piston', unit, min: 0, max: shown(length) },
    y: { label: 'crank angle after top', unit: 'deg', min: 0, max: 360 },
    level: { label: 'over the air', unit: 'bar', min: -span, max: span },
    values,
    cols,
    rows,
    signed: true,
    over: [
      across('exhaust opens', a.exhaustOpens, ink),
      across('exhaust closes', a.exhaustCloses, ink),
      across('transfers open', a.transfersOpen, okabeIto.blue),
      across('transfers close', a.transfersClose, okabeIto.blue),
    ],
  })
  const plot = heat.plots![0]!
  const yAt = (deg: number) => plot.bottom + (deg / 360) * (plot.top - plot.bottom)
  const label = (words: string, deg: number, colour: string, below: boolean) =>
    text(plot.right - 1.5, yAt(deg) + (below ? -3.3 : 1), words, {
      size: 2.7,
      anchor: 'end',
      colour,
      halo: true,
    })
  return {
    ...heat,
    height: heat.height + outlineRoom,
    marks: [
      ...heat.marks,
      label('exhaust opens', a.exhaustOpens, ink, true),
      label('transfers open', a.transfersOpen, '#005a8e', false),
      label('transfers close', a.transfersClose, '#005a8e', true),
      label('exhaust closes', a.exhaustCloses, ink, false),
      ...silhouette(
        segments.map((s) => ({ ...s, length: shown(s.length) })),
        plot,
        heat.height + outlineRoom / 2,
        outlineRoom / 2 - 2,
      ),
      text(0.5, heat.height + outlineRoom / 2 - 1, 'port', { size: 2.7, colour: quiet }),
    ],
  }
}

function waveWords(trace: CycleTrace, air: number): string {
  const cols = trace.x.length
  let [most, at] = [0, 0]
  for (let k = 0; k < trace.pressure.length; k++)
    if (trace.pressure[k]! > most) {
      most = trace.pressure[k]!
      at = k % cols
    }
  return `Pressure along the pipe over one turn at ${saysRpm(trace.rpm / 60)}; the highest, ${signed(bar(most, air))} bar, ${plain((trace.x[at] ?? 0) * 1000, 0)} mm from the piston. ${inWords(trace, air)}`
}

/** Highest and lowest pressure at each place of the pipe over a turn: the frame in which one moment's line moves. */
export function envelopeFigure(
  trace: CycleTrace,
  segments: readonly Segment[],
  air: number,
  look: Look,
): Sheet {
  const cols = trace.x.length
  const x = Array.from(trace.x, (m) => (look.length === 'mm' ? m * 1000 : m / 0.0254))
  const low = new Array<number>(cols).fill(Number.POSITIVE_INFINITY)
  const high = new Array<number>(cols).fill(Number.NEGATIVE_INFINITY)
  const mean = new Array<number>(cols).fill(0)
  const rows = trace.angle.length
  for (let r = 0; r < rows; r++)
    for (let c = 0; c < cols; c++) {
      const p = bar(trace.pressure[r * cols + c]!, air)
      low[c] = Math.min(low[c]!, p)
      high[c] = Math.max(high[c]!, p)
      mean[c] = mean[c]! + p / rows
    }
  const chart = lineChart({
    title: 'The wave moving along the pipe',
    says: waveWords(trace, air),
    width: look.width,
    height: Math.min(84, Math.max(62, look.width * 0.34)),
    x: { label: 'along the pipe from the piston', unit: look.length, min: 0 },
    y: { label: 'pressure over the air', unit: 'bar' },
    series: [{ name: 'mean', x, y: mean, low, high, colour: okabeIto.blue, width: 0.25, signs: false }],
    lines: [{ axis: 'y', at: 0 }],
  })
  const plot = chart.plots![0]!
  const scaled = segments.map((s) => ({
    ...s,
    length: look.length === 'mm' ? s.length * 1000 : s.length / 0.0254,
  }))
  return {
    ...chart,
    height: chart.height + outlineRoom,
    marks: [...chart.marks, ...silhouette(scaled, plot, chart.height + outlineRoom / 2, outlineRoom / 2 - 2)],
  }
}
