/** Engine torque against what the impeller takes, drawn with where they meet. */

import { printed } from '../../base/answers/sentence.ts'
import { lineChart } from '../../drawing/chart.ts'
import type { ChartMarker, ChartSeries, ChartSpec } from '../../drawing/chartSpec.ts'
import { okabeIto } from '../../drawing/palette.ts'
import { valueAt } from '../../drawing/readOut.ts'
import type { Sheet } from '../../drawing/sheet.ts'
import type { Balance, Matching, Root } from './balanceTypes.ts'
import { colours, heightFor, rpm, same, tried } from './figureLook.ts'
import { inLook, type Look, says, saysRpm, systemOf } from './shown.ts'

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
    says: `${printed(now.verdict.says, systemOf(look))} ${rootsInWords(now)}`,
    width: look.width,
    height: heightFor(look, 0.44),
    x: { label: 'engine speed', unit: 'rpm', max: lastPull(now, other) * 60 },
    y: { label: 'torque at the engine', unit: look.torque, min: 0, max: inLook(most * 1.18, 'torque', look) },
    series,
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
      label: m.held ? 'bogs here' : 'may hang here',
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
