import { printed } from '../../base/answers/sentence.ts'
import { systemOf } from './shown.ts'
/** The balance drawn: what a page, the book and the command line show. Now solid, tried dashed. */

import { lineChart } from '../../drawing/chart.ts'
import type { ChartMarker, ChartSeries, ChartZone } from '../../drawing/chartSpec.ts'
import { okabeIto } from '../../drawing/palette.ts'
import { valueAt } from '../../drawing/readOut.ts'
import type { Sheet } from '../../drawing/sheet.ts'
import type { Balance } from './balanceTypes.ts'
import { colours, heightFor, same, tried } from './figureLook.ts'
import { inLook, type Look, plain, says } from './shown.ts'

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
      label: crossingLabel(now, look),
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
    says: `${printed(now.limitedBy.says, systemOf(look))} At the hump, ${says(now.hump.speed, 'speed', look)}, thrust is ${plain(margin, 2)} times the drag.`,
    width: look.width,
    height: heightFor(look, 0.42),
    x: { label: 'boat speed', unit: look.speed, min: 0 },
    y: { label: 'force', unit: look.force, min: 0 },
    series,
    markers,
    zones: [...likelyZone(now, look), ...cavitatingZones(now, look)],
    lines: [
      ...(Number.isFinite(margin)
        ? [
            {
              axis: 'x' as const,
              at: inLook(now.hump.speed, 'speed', look),
              label: `hump, ${plain(margin, 2)} × the drag`,
            },
          ]
        : []),
      ...answerLine(now, look),
    ],
    empty: 'No thrust or drag to draw yet: the craft needs its hull, its weights and its jet.',
  })
}

const isRanged = ({ topSpeed }: Balance) => Number.isFinite(topSpeed.low) && Number.isFinite(topSpeed.high)

/** The lines cross where the file's own values put it; the answer is the middle of all that they may be, and is marked as such. */
function crossingLabel(b: Balance, look: Look): string {
  const at = says(b.top?.speed ?? Number.NaN, 'speed', look)
  if (isRanged(b) && at !== says(b.topSpeed.value, 'speed', look)) return `${at} by the file’s values`
  return `${b.run.stuck ? 'stays at' : 'top speed'} ${at}`
}

/** The answer, with the speeds that are likely round it. */
function answerLine(b: Balance, look: Look): { axis: 'x'; at: number; label: string; colour: string }[] {
  if (!b.top || !isRanged(b)) return []
  const at = says(b.topSpeed.value, 'speed', look)
  if (at === says(b.top.speed, 'speed', look)) return []
  const label = `${b.run.stuck ? 'stays at' : 'top speed'} ${at}`
  return [{ axis: 'x', at: inLook(b.topSpeed.value, 'speed', look), label, colour: okabeIto.black }]
}

function likelyZone(b: Balance, look: Look): ChartZone[] {
  if (!b.top || !isRanged(b)) return []
  const [from, to] = [b.topSpeed.low, b.topSpeed.high].map((v) => inLook(v, 'speed', look)) as [
    number,
    number,
  ]
  return [{ axis: 'x', from, to, label: 'likely', colour: okabeIto.skyBlue }]
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
