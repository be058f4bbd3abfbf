/** The balance drawn: what a page, the book and the command line show. Now solid, tried dashed. */

import type { Craft } from '../craft/index.ts'
import { barChart } from '../drawing/bars.ts'
import {
  type ChartMarker,
  type ChartSeries,
  type ChartSpec,
  type ChartZone,
  lineChart,
} from '../drawing/chart.ts'
import { okabeIto, quiet } from '../drawing/palette.ts'
import { valueAt } from '../drawing/readOut.ts'
import type { Sheet } from '../drawing/sheet.ts'
import { driverName } from './answer.ts'
import { inLook, type Look, plain, says, saysRpm, saysStep } from './shown.ts'
import type { Balance, Change, Driver, Matching, Root } from './types.ts'

const colours = {
  engine: okabeIto.blue,
  impeller: okabeIto.vermillion,
  best: okabeIto.green,
  drag: okabeIto.vermillion,
  thrust: okabeIto.blue,
} as const
const tried = okabeIto.black

const rpm = (rotation: readonly number[]) => rotation.map((n) => n * 60)

/** The same numbers: a tried line that lies on the line now is not drawn again. */
function same(a: readonly number[], b: readonly number[]): boolean {
  const scale = Math.max(...b.filter(Number.isFinite).map(Math.abs), 1e-12)
  return (
    a.length === b.length &&
    a.every((v, i) => Math.abs(v - b[i]!) < 1e-3 * scale || (Number.isNaN(v) && Number.isNaN(b[i]!)))
  )
}

const heightFor = (look: Look, share: number) => Math.min(112, Math.max(74, look.width * share))

/** Engine torque against what the impeller takes, at the engine shaft. */
export function matchingFigure(now: Balance, other: Balance | undefined, look: Look): Sheet {
  const m = now.matching
  const torque = (values: readonly number[]) => values.map((t) => inLook(t, 'torque', look))
  const pair = (
    name: string,
    pick: (m: Matching) => readonly number[],
    more: Partial<ChartSeries>,
    short = name,
  ): ChartSeries[] => {
    const series: ChartSeries[] = []
    if (pick(m).length > 0)
      series.push({ name, label: short, x: rpm(m.rotation), y: torque(pick(m)), ...more })
    const o = other?.matching
    if (o && pick(o).length > 0 && !same(pick(o), pick(m)))
      series.push({
        name: `${name}, tried`,
        label: `${short}, tried`,
        x: rpm(o.rotation),
        y: torque(pick(o)),
        ...more,
        low: undefined as never,
        high: undefined as never,
        tried: series.length > 0,
      })
    return series
  }
  const narrow = look.width < 125
  const best = now.verdict.bestPitch.value
  const series = [
    ...pair('engines give', (v) => v.engineTorque.map((t) => (t > 0 ? t : Number.NaN)), {
      colour: colours.engine,
      low: torque(m.engineLow),
      high: torque(m.engineHigh),
    }),
    ...pair(
      'impeller takes, tied up',
      (v) => v.impellerTiedUp,
      { colour: colours.impeller },
      narrow ? 'tied up' : 'impeller, tied up',
    ),
    ...(m.impellerAtTop.length > 0
      ? [
          {
            name: 'impeller takes, at top speed',
            label: narrow ? 'at top speed' : 'impeller, at top speed',
            x: rpm(m.rotation),
            y: torque(m.impellerAtTop),
            colour: okabeIto.purple,
            width: 0.4,
          },
        ]
      : []),
    ...(m.impellerAtBestPitch.length > 0 && now.verdict.code !== 'right'
      ? [
          {
            name: `at ${says(best, 'length', look)} of pitch`,
            x: rpm(m.rotation),
            y: torque(m.impellerAtBestPitch),
            colour: colours.best,
            width: 0.4,
            dash: [0.6, 0.8],
            signs: false,
          },
        ]
      : []),
  ]
  const most = Math.max(
    ...[...m.engineHigh, ...(other?.matching.engineHigh ?? [])].filter(Number.isFinite),
    0,
  )
  const peak = m.powerPeakRotation * 60
  const spec: ChartSpec = {
    title: 'Engines against impeller',
    says: `${now.verdict.says} ${rootsInWords(now)}`,
    width: look.width,
    height: heightFor(look, 0.44),
    x: { label: 'engine speed', unit: 'rpm', max: lastPull(now, other) * 60 },
    y: { label: 'torque at the engine', unit: look.torque, min: 0, max: inLook(most * 1.18, 'torque', look) },
    series,
    zones: [
      { axis: 'x', from: peak * 1.01, to: peak * 1.05, label: 'aim: 1–5 % over', colour: okabeIto.green },
    ],
    lines: [{ axis: 'x', at: peak, label: 'most power' }],
    markers: [
      ...bogMarker(m, look),
      ...now.tiedUpRoots.map((r) => rootMarker(r, m, look, okabeIto.black, '')),
      ...(other && saysRpm(other.tiedUp.rotation) !== saysRpm(now.tiedUp.rotation)
        ? other.tiedUpRoots
            .filter((r) => r.stable && r.reachable)
            .map((r) => ({
              ...rootMarker(r, other.matching, look, tried, 'tried: '),
              shape: 'diamond' as const,
              hollow: true,
            }))
        : []),
    ],
    empty: 'No torque curve yet: give the engines a curve, or their most power and the speed it comes at.',
  }
  return lineChart(spec)
}

/** Engine rotation a little past where the engines give nothing more, rev/s. */
function lastPull(now: Balance, other: Balance | undefined): number {
  const end = (m: Matching) => m.rotation.findLast((_, i) => m.engineTorque[i]! > 0) ?? m.rotation.at(-1) ?? 1
  return 1.03 * Math.max(end(now.matching), other ? end(other.matching) : 0)
}

function rootMarker(r: Root, m: Matching, look: Look, colour: string, before: string): ChartMarker {
  const y = valueAt({ x: m.rotation, y: m.engineTorque }, r.rotation)
  const words = !r.stable
    ? 'cannot stay here'
    : r.reachable
      ? `${before}runs at ${saysRpm(r.rotation)}`
      : 'holds only if brought here'
  return {
    x: r.rotation * 60,
    y: inLook(y, 'torque', look),
    shape: r.stable ? 'circle' : 'cross',
    colour,
    hollow: r.stable && !r.reachable,
    label: words,
  }
}

function bogMarker(m: Matching, look: Look): ChartMarker[] {
  if (m.comesOnPipe || !Number.isFinite(m.bogRotation)) return []
  const y = valueAt({ x: m.rotation, y: m.engineTorque }, m.bogRotation)
  return [
    {
      x: m.bogRotation * 60,
      y: inLook(y, 'torque', look),
      shape: 'triangle',
      colour: okabeIto.vermillion,
      label: 'bogs here',
    },
  ]
}

function rootsInWords(b: Balance): string {
  const stable = b.tiedUpRoots.filter((r) => r.stable)
  const runs = stable.find((r) => r.reachable)
  if (!runs) return 'Tied up, there is no speed at which engines and impeller agree.'
  const others = stable.length > 1 ? ` There are ${stable.length} speeds it could hold.` : ''
  return `Tied up, the two lines meet at ${saysRpm(runs.rotation)}.${others}`
}

/** Thrust against drag over boat speed. */
export function forcesFigure(now: Balance, other: Balance | undefined, look: Look): Sheet {
  const force = (values: readonly number[]) => values.map((f) => inLook(f, 'force', look))
  const speed = (values: readonly number[]) => values.map((v) => inLook(v, 'speed', look))
  const c = now.curve
  const o = other?.curve
  const differ = (pick: 'thrust' | 'drag') => {
    if (!o) return false
    // the tables may stand at other speeds
    return o.speed.some((v, i) => {
      const was = valueAt({ x: c.speed, y: c[pick] }, v)
      return Math.abs(o[pick][i]! - was) > 4e-3 * Math.max(now.hump.drag, 1)
    })
  }
  const series: ChartSeries[] = [
    { name: 'thrust', x: speed(c.speed), y: force(c.thrust), colour: colours.thrust },
    ...(o && differ('thrust')
      ? [{ name: 'thrust, tried', tried: true, x: speed(o.speed), y: force(o.thrust) }]
      : []),
    {
      name: 'drag',
      x: speed(c.speed),
      y: force(c.drag),
      low: force(c.dragLow),
      high: force(c.dragHigh),
      colour: colours.drag,
    },
    ...(o && differ('drag')
      ? [{ name: 'drag, tried', tried: true, x: speed(o.speed), y: force(o.drag) }]
      : []),
    ...stillRider(other ?? now, look),
  ]
  const markers: ChartMarker[] = []
  if (now.top)
    markers.push({
      x: inLook(now.top.speed, 'speed', look),
      y: inLook(now.top.thrust, 'force', look),
      shape: 'circle',
      colour: okabeIto.black,
      label: `${now.run.stuck ? 'stays at' : 'top speed'} ${says(now.top.speed, 'speed', look)}`,
    })
  if (other?.top && says(other.top.speed, 'speed', look) !== (now.top && says(now.top.speed, 'speed', look)))
    markers.push({
      x: inLook(other.top.speed, 'speed', look),
      y: inLook(other.top.thrust, 'force', look),
      shape: 'diamond',
      hollow: true,
      colour: tried,
      label: `tried: ${says(other.top.speed, 'speed', look)}`,
    })
  const margin = now.hump.margin
  return lineChart({
    title: 'Thrust against drag',
    says: `${now.limitedBy.says} At the hump, ${says(now.hump.speed, 'speed', look)}, thrust is ${plain(margin, 2)} times the drag.`,
    width: look.width,
    height: heightFor(look, 0.42),
    x: { label: 'boat speed', unit: look.speed, min: 0 },
    y: { label: 'force', unit: look.force, min: 0 },
    series,
    markers,
    zones: cavitatingZones(now, look),
    lines: Number.isFinite(margin)
      ? [
          {
            axis: 'x',
            at: inLook(now.hump.speed, 'speed', look),
            label: `hump, ${plain(margin, 2)} × the drag`,
          },
        ]
      : [],
    empty: 'No thrust or drag to draw yet: the craft needs its hull, its weights and its jet.',
  })
}

/** Drag with a rider who does not move, where that differs from the best place: what is being tried, if anything is. */
function stillRider(b: Balance, look: Look): ChartSeries[] {
  const c = b.curve
  const worse = c.dragRiderStill.map((d, i) =>
    d > 1.01 * c.drag[i]! ? inLook(d, 'force', look) : Number.NaN,
  )
  if (!worse.some(Number.isFinite)) return []
  return [
    {
      name: 'drag, rider keeps still',
      label: look.width < 125 ? 'rider still' : 'if the rider keeps still',
      x: c.speed.map((v) => inLook(v, 'speed', look)),
      y: worse,
      colour: okabeIto.purple,
      width: 0.4,
      dash: [0.6, 0.8],
      signs: false,
    },
  ]
}

/** Stretches of speed where the impeller cavitates. */
function cavitatingZones(b: Balance, look: Look): ChartZone[] {
  const zones: ChartZone[] = []
  const { speed, cavitating } = b.curve
  let from = -1
  for (let i = 0; i <= speed.length; i++) {
    if (i < speed.length && cavitating[i] && from < 0) from = i
    if (from >= 0 && (i === speed.length || !cavitating[i])) {
      // half a step either side, so that one speed alone shows too
      const a = from > 0 ? (speed[from - 1]! + speed[from]!) / 2 : speed[0]!
      const z = i < speed.length ? (speed[i - 1]! + speed[i]!) / 2 : speed[i - 1]!
      zones.push({
        axis: 'x',
        from: inLook(a, 'speed', look),
        to: inLook(z, 'speed', look),
        label: 'cavitates',
        colour: okabeIto.orange,
      })
      from = -1
    }
  }
  return zones
}

/** Full throttle from rest. */
export function runFigure(now: Balance, other: Balance | undefined, look: Look): Sheet {
  const speed = (values: readonly number[]) => values.map((v) => inLook(v, 'speed', look))
  const { run } = now
  const series: ChartSeries[] = [{ name: 'now', x: run.time, y: speed(run.speed), colour: colours.thrust }]
  if (other && !same(other.run.speed, run.speed))
    series.push({ name: 'tried', tried: true, x: other.run.time, y: speed(other.run.speed) })
  const markers: ChartMarker[] = []
  const mark = (time: number | undefined, words: string, run: Balance['run'], hollow: boolean) => {
    if (time === undefined || !Number.isFinite(time)) return
    markers.push({
      x: time,
      y: inLook(valueAt({ x: run.time, y: run.speed }, time), 'speed', look),
      shape: hollow ? 'diamond' : 'circle',
      hollow,
      colour: okabeIto.black,
      label: `${words} ${plain(time, 1)} s`,
    })
  }
  mark(run.timeToPlane, 'planes after', run, false)
  mark(run.timeTo95, '95 % after', run, false)
  if (other) mark(other.run.timeToPlane, 'tried:', other.run, true)
  return lineChart({
    title: 'From rest, full throttle',
    says: run.stuck
      ? `It does not get over the hump: it stays at ${says(run.stuckAt ?? now.top?.speed ?? Number.NaN, 'speed', look)}.`
      : `It planes after ${plain(run.timeToPlane ?? Number.NaN, 1)} s and is at 95 % of its top speed after ${plain(run.timeTo95 ?? Number.NaN, 1)} s.`,
    width: look.width,
    height: heightFor(look, 0.36),
    x: { label: 'time', unit: 's', min: 0 },
    y: { label: 'speed', unit: look.speed, min: 0 },
    series,
    markers,
    lines: [{ axis: 'y', at: inLook(now.hump.speed, 'speed', look), label: 'hump' }],
    empty: 'No run to draw: the engines cannot turn this impeller.',
  })
}

export type Buys = 'topSpeed' | 'pull'

/** What each single change would buy, the largest gain first. */
export function changesFigure(now: Balance, other: Balance | undefined, by: Buys, look: Look): Sheet {
  const kind = by === 'topSpeed' ? 'speed' : 'force'
  const step = (v: number) => inLook(v, kind, look)
  const rows = changesBy(now.changes, by).map((c) => {
    const row = {
      name: c.says,
      value: step(c[by].value),
      colour: c[by].value >= 0 ? okabeIto.blue : quiet,
      note: saysStep(c[by].value, kind, look),
      ...triedValue(other?.changes.find((o) => o.id === c.id)?.[by].value, step),
    }
    return Number.isFinite(c[by].low + c[by].high)
      ? { ...row, low: step(c[by].low), high: step(c[by].high) }
      : row
  })
  const first = rows[0]
  const base = by === 'topSpeed' ? now.topSpeed.value : now.pull.value
  return barChart({
    title: by === 'topSpeed' ? 'What each change does to the top speed' : 'What each change does to the pull',
    says: first ? `Most comes from: ${first.name}, ${first.note}.` : 'No change has been worked out yet.',
    width: look.width,
    axis: { label: by === 'topSpeed' ? 'top speed, change' : 'pull tied up, change', unit: look[kind] },
    baseLabel: `now ${says(base, kind, look)}`,
    rows,
    empty: now.ranged
      ? 'None of the usual changes could be worked out.'
      : 'Working out what each change would do…',
  })
}

/** The same bar with the tried values, where it is known. */
function triedValue(value: number | undefined, shown: (v: number) => number): { tried?: number } {
  return value !== undefined && Number.isFinite(value) ? { tried: shown(value) } : {}
}

const sourceColour: Record<Driver['source'], string> = {
  measured: okabeIto.blue,
  maker: okabeIto.blue,
  guess: okabeIto.orange,
  assumed: okabeIto.orange,
  model: quiet,
}

/** Where the doubt of an answer comes from: how far each input alone may move it either way, eight at most. */
export function doubtsFigure(
  craft: Craft,
  now: Balance,
  other: Balance | undefined,
  by: Buys,
  look: Look,
): Sheet {
  const kind = by === 'topSpeed' ? 'speed' : 'force'
  const drivers = now.drivers
    .filter((d) => d[by] > 0)
    .sort((a, b) => b[by] - a[by])
    .slice(0, 8)
  const rows = drivers.map((d) => ({
    name: `${driverName(craft, d)} (${d.source})`,
    value: inLook(d[by], kind, look),
    note: `± ${says(d[by], kind, look)}`,
    ...triedValue(other?.drivers.find((o) => o.path === d.path)?.[by], (v) => inLook(v, kind, look)),
    colour: sourceColour[d.source],
  }))
  return barChart({
    title:
      by === 'topSpeed'
        ? 'What the doubt of the top speed comes from'
        : 'What the doubt of the pull comes from',
    says: rows[0] ? `Most of it: ${rows[0].name}, ${rows[0].note}.` : 'Not worked out yet.',
    width: look.width,
    axis: { label: by === 'topSpeed' ? 'top speed, either way' : 'pull, either way', unit: look[kind] },
    rows,
    empty: now.ranged ? 'No input carries any doubt.' : 'Working out where the doubt comes from…',
  })
}

/** Changes with a known effect on one answer, the largest gain first, twelve at most. */
export function changesBy(changes: readonly Change[], by: Buys): Change[] {
  return changes
    .filter((c) => Number.isFinite(c[by].value))
    .sort((a, b) => b[by].value - a[by].value)
    .slice(0, 12)
}
