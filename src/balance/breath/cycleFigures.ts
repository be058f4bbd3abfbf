/** One turn of the crank: pressure at the port with the port's timing, and the waves along the pipe. */
import { type ChartMarker, type ChartSeries, type ChartZone, lineChart } from '../../drawing/chart.ts'
import { heatChart } from '../../drawing/heat.ts'
import { line, polygon, text } from '../../drawing/marks.ts'
import { ink, okabeIto, quiet } from '../../drawing/palette.ts'
import type { Mark, Plot, Sheet } from '../../drawing/sheet.ts'
import type { CycleTrace } from '../../engine/trace.ts'
import type { Segment } from '../../gas/mesh.ts'
import { type Look, plain, saysRpm } from '../shown.ts'

const degree = Math.PI / 180
/** bar over the air */
const bar = (p: number, air: number) => (p - air) / 1e5

/** The samples of a trace in the order of 0 to 360 degrees after top dead centre: index of each. */
export function turnOrder(trace: CycleTrace): number[] {
  const n = trace.angle.length
  const turn = (i: number) => (trace.angle[i]! / degree) % 360
  return Array.from({ length: n }, (_, i) => i).sort((a, b) => turn(a) - turn(b))
}

/** Degrees after top dead centre at which ports open and close. */
export function portAngles(trace: CycleTrace) {
  const [ex, tr] = [trace.exhaustOpens / degree, trace.transferOpens / degree]
  return { exhaustOpens: ex, transfersOpen: tr, transfersClose: 360 - tr, exhaustCloses: 360 - ex }
}

function timingZones(trace: CycleTrace): ChartZone[] {
  const a = portAngles(trace)
  return [
    { axis: 'x', from: a.exhaustOpens, to: a.transfersOpen, label: 'blowdown', colour: okabeIto.orange },
    {
      axis: 'x',
      from: a.transfersOpen,
      to: a.transfersClose,
      label: 'transfers open',
      colour: okabeIto.skyBlue,
    },
    { axis: 'x', from: a.transfersClose, to: a.exhaustCloses, label: 'plugging', colour: okabeIto.green },
  ]
}

/** What the pipe does to the port: deepest suction while the transfers are open, highest pressure after they close. */
export function portMoments(trace: CycleTrace) {
  const a = portAngles(trace)
  const best = (from: number, to: number, sign: 1 | -1) => {
    let at = -1
    for (const i of turnOrder(trace)) {
      const d = (trace.angle[i]! / degree) % 360
      if (d < from || d > to) continue
      if (at < 0 || sign * trace.portP[i]! > sign * trace.portP[at]!) at = i
    }
    return at < 0 ? undefined : { angle: (trace.angle[at]! / degree) % 360, pressure: trace.portP[at]! }
  }
  return {
    suction: best(a.transfersOpen, a.transfersClose, -1),
    plug: best(a.transfersClose, a.exhaustCloses, 1),
  }
}

/** Pressure at the exhaust port over a turn, with crankcase and cylinder, now and tried. `air`: Pa outside. */
export function portFigure(
  trace: CycleTrace | undefined,
  tried: CycleTrace | undefined,
  air: number,
  look: Look,
): Sheet {
  const blank = {
    title: 'Pressure at the exhaust port over a turn',
    width: look.width,
    height: Math.min(105, Math.max(78, look.width * 0.42)),
    x: { label: 'crank angle after top dead centre', unit: 'deg', min: 0, max: 360 },
    y: { label: 'pressure over the air', unit: 'bar' },
  }
  if (!trace)
    return lineChart({
      ...blank,
      says: 'Not worked out yet.',
      series: [],
      empty: 'Following the waves of one turn…',
    })
  const turn = (t: CycleTrace, values: Float64Array) => {
    const order = turnOrder(t)
    return {
      x: order.map((i) => (t.angle[i]! / degree) % 360),
      y: order.map((i) => bar(values[i]!, air)),
    }
  }
  const most = Math.max(...Array.from(trace.portP), ...Array.from(tried?.portP ?? []))
  const least = Math.min(...Array.from(trace.portP), ...Array.from(tried?.portP ?? []))
  const top = bar(most, air) * 1.18 + 0.1
  const cylinder = turn(trace, trace.cylinderP)
  const series: ChartSeries[] = [
    {
      name: 'exhaust port',
      ...turn(trace, trace.portP),
      colour: okabeIto.vermillion,
      width: 0.8,
      signs: false,
    },
    ...(tried
      ? [{ name: 'exhaust port, tried', label: 'tried', tried: true, ...turn(tried, tried.portP) }]
      : []),
    { name: 'crankcase', ...turn(trace, trace.caseP), colour: okabeIto.blue, width: 0.45, signs: false },
    {
      name: 'cylinder',
      x: cylinder.x,
      y: cylinder.y.map((p) => (p > top ? Number.NaN : p)),
      colour: okabeIto.black,
      width: 0.35,
      dash: [0.6, 0.8],
      label: false,
      signs: false,
    },
  ]
  const { suction, plug } = portMoments(trace)
  const markers: ChartMarker[] = []
  const mark = (m: typeof suction, shape: 'triangle' | 'square', words: string) =>
    m &&
    markers.push({
      x: m.angle,
      y: bar(m.pressure, air),
      shape,
      colour: okabeIto.vermillion,
      label: `${words} ${signed(bar(m.pressure, air))} bar`,
    })
  mark(suction, 'triangle', 'draws')
  mark(plug, 'square', 'pushes back')
  return lineChart({
    ...blank,
    y: { ...blank.y, min: Math.min(-0.2, bar(least, air) * 1.25), max: top },
    says: inWords(trace, air),
    series,
    markers,
    zones: timingZones(trace),
    lines: [{ axis: 'x', at: 180, label: 'bottom' }],
  })
}

const signed = (v: number) => `${v > 0 ? '+' : ''}${plain(v, 2)}`

function inWords(trace: CycleTrace, air: number): string {
  const { suction, plug } = portMoments(trace)
  const s = suction
    ? `draws ${signed(bar(suction.pressure, air))} bar at ${plain(suction.angle, 0)}°`
    : 'draws nothing'
  const p = plug
    ? `pushes back ${signed(bar(plug.pressure, air))} bar at ${plain(plug.angle, 0)}°`
    : 'does not push back'
  return `At ${saysRpm(trace.rpm / 60)} the pipe ${s} while the transfers are open, and ${p} before the exhaust closes.`
}

/** The pipe's outline over a plot with the distance along the pipe as its x axis: two lines and the ends. */
export function silhouette(segments: readonly Segment[], plot: Plot, middle: number, half: number): Mark[] {
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
