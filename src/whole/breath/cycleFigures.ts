/** One turn of the crank: pressure at the port with the port's timing. */

import { lineChart } from '../../drawing/chart.ts'
import type { ChartMarker, ChartSeries, ChartZone } from '../../drawing/chartSpec.ts'
import { okabeIto } from '../../drawing/palette.ts'
import type { Sheet } from '../../drawing/sheet.ts'
import type { CycleTrace } from '../../trades/engine/trace.ts'
import { type Look, plain, saysRpm } from '../push/shown.ts'

const degree = Math.PI / 180
/** bar over the air */
export const bar = (p: number, air: number) => (p - air) / 1e5

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
    {
      axis: 'x',
      from: a.exhaustOpens,
      to: a.transfersOpen,
      label: 'burnt gas leaves',
      colour: okabeIto.orange,
    },
    {
      axis: 'x',
      from: a.transfersOpen,
      to: a.transfersClose,
      label: 'transfers open',
      colour: okabeIto.skyBlue,
    },
    { axis: 'x', from: a.transfersClose, to: a.exhaustCloses, label: 'pushed back', colour: okabeIto.green },
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

/** gauge bar with its sign */
export const signed = (v: number) => `${v > 0 ? '+' : ''}${plain(v, 2)}`

/** What the pipe does to the port, in a sentence. */
export function inWords(trace: CycleTrace, air: number): string {
  const { suction, plug } = portMoments(trace)
  const s = suction
    ? `draws ${signed(bar(suction.pressure, air))} bar at ${plain(suction.angle, 0)}°`
    : 'draws nothing'
  const p = plug
    ? `pushes back ${signed(bar(plug.pressure, air))} bar at ${plain(plug.angle, 0)}°`
    : 'does not push back'
  return `At ${saysRpm(trace.rpm / 60)} the pipe ${s} while the transfers are open, and ${p} before the exhaust closes.`
}
