/** Figures of the Float page beside the true views: righting arm, loads side by side, a leak over time, foam there and foam wanted. */

import { inCm, inDegrees, inMinutes, inMm } from '../../base/answers/amounts.ts'
import { printed, printedAmount, type Sentence, say } from '../../base/answers/sentence.ts'
import { fromSi } from '../../base/units/convert.ts'
import { type DisplaySystem, displayUnit } from '../../base/units/format.ts'
import type { Kind } from '../../base/units/kinds.ts'
import { lineChart } from '../../drawing/chart.ts'
import type { ChartMarker, ChartSeries } from '../../drawing/chartSpec.ts'
import { hatch } from '../../drawing/hatching.ts'
import { polygon, polyline, text } from '../../drawing/marks.ts'
import { ink, okabeIto, quiet } from '../../drawing/palette.ts'
import type { Mark, Sheet } from '../../drawing/sheet.ts'
import { wrapText } from '../../drawing/textWidth.ts'
import type { FoamBlock } from '../../hull/aboard/foamBlocks.ts'
import type { Hull } from '../../hull/lines/hullBody.ts'
import { makeFrame } from '../../physics/solid/waterFrame.ts'
import { litres } from './floatSay.ts'
import type { LeakCase } from './leakCase.ts'
import { joinedRuns, outline } from './outline.ts'
import type { RightingCurve } from './righting.ts'

const degreesOf = (a: number) => (a * 180) / Math.PI
const heels = (c: RightingCurve) => Float64Array.from(c.heel, degreesOf)
/** a whole number of degrees, in words */
const turn = (a: number) => printedAmount(inDegrees(a, 1))

/** Numbers of a kind as an axis shows them in the reader's units. */
function axis(kind: Kind, metric: string, system: DisplaySystem) {
  const unit = displayUnit(kind, system, metric)
  return { unit, of: (v: number) => fromSi(v, kind, unit) }
}

export interface RightingSet {
  rider: RightingCurve
  stiff: RightingCurve
  nobody: RightingCurve
}

/** Righting arm over heel for a rider who balances, one held stiff, and nobody aboard; while something is tried, as it is now thin and grey behind. Arm in cm. */
export function rightingFigure(
  now: RightingSet,
  tried: RightingSet | undefined,
  width = 180,
  system: DisplaySystem = 'metric',
): Sheet {
  const arm = axis('length', 'cm', system)
  const rows: [keyof RightingSet, string, string][] = [
    ['rider', 'rider balancing', okabeIto.blue],
    ['stiff', 'rider held stiff', okabeIto.vermillion],
    ['nobody', 'nobody aboard', okabeIto.green],
  ]
  const shown = tried ?? now
  const line = (set: RightingSet, key: keyof RightingSet) => ({
    x: heels(set[key]),
    y: Float64Array.from(set[key].arm, arm.of),
  })
  const before = rows.flatMap(([key, name]): ChartSeries[] =>
    tried && now[key].arm.length > 0 && differs(now[key], tried[key])
      ? [
          {
            ...line(now, key),
            name: `${name}, now`,
            colour: quiet,
            width: 0.35,
            dash: [1.4, 1.1],
            signs: false,
            label: false,
          },
        ]
      : [],
  )
  const series = rows.flatMap(([key, name, colour]): ChartSeries[] =>
    shown[key].arm.length === 0 ? [] : [{ ...line(shown, key), name, colour }],
  )
  const c = shown.rider
  return lineChart({
    title: 'Righting arm over heel',
    says: printed(
      tried ? say`Tried: ${rightingWords(tried)} Now: ${rightingWords(now)}` : rightingWords(now),
      system,
    ),
    width,
    height: width < 120 ? 90 : 100,
    x: { label: 'heel', unit: '°', min: 0, max: 180 },
    y: { label: 'righting arm', unit: arm.unit, include: [0] },
    series: [...before, ...series],
    markers: [
      ...(c.arm.length === 0 ? [] : rightingMarks(c, width < 120, arm.of, system)),
      ...(before.length > 0 && now.rider.vanishing !== undefined && now.rider.vanishing !== c.vanishing
        ? [
            {
              x: degreesOf(now.rider.vanishing),
              y: 0,
              shape: 'square' as const,
              colour: quiet,
              hollow: true,
              label: `now past ${turn(now.rider.vanishing)}`,
            },
          ]
        : []),
    ],
    lines: [{ axis: 'y', at: 0, colour: ink }],
    empty: 'It sinks with its rider: there is no righting arm.',
  })
}

function differs(a: RightingCurve, b: RightingCurve): boolean {
  return a.arm.length !== b.arm.length || a.arm.some((v, i) => Math.abs(v - b.arm[i]!) > 2e-4)
}

/** on a narrow sheet the signs of deck edge and opening stand without words, which the page's table has */
function rightingMarks(
  c: RightingCurve,
  narrow: boolean,
  show: (v: number) => number,
  system: DisplaySystem,
): ChartMarker[] {
  const at = (heel: number) => show(armAt(c, heel))
  const marks: ChartMarker[] = []
  if (Number.isFinite(c.greatest.arm) && c.greatest.arm > 0)
    marks.push({
      x: degreesOf(c.greatest.heel),
      y: show(c.greatest.arm),
      shape: 'circle',
      colour: okabeIto.blue,
      label: printed(say`most ${inCm(c.greatest.arm, 0.1)}`, system),
    })
  if (c.vanishing !== undefined)
    marks.push({
      x: degreesOf(c.vanishing),
      y: 0,
      shape: 'square',
      colour: okabeIto.blue,
      label: `goes over past ${turn(c.vanishing)}`,
    })
  if (c.deckEdge !== undefined)
    marks.push({
      x: degreesOf(c.deckEdge),
      y: at(c.deckEdge),
      shape: 'triangle',
      colour: quiet,
      ...(narrow ? {} : { label: `deck edge under at ${turn(c.deckEdge)}` }),
      hollow: true,
    })
  if (c.flooding)
    marks.push({
      x: degreesOf(c.flooding.heel),
      y: at(c.flooding.heel),
      shape: 'cross',
      colour: okabeIto.vermillion,
      ...(narrow ? {} : { label: `${c.flooding.name} under at ${turn(c.flooding.heel)}` }),
    })
  return marks
}

/** Arm at a heel within the curve, m, straight between its points. */
export function armAt(c: RightingCurve, heel: number): number {
  const i = c.heel.findIndex((v) => v >= heel)
  if (i < 0) return Number.NaN
  if (i === 0) return c.arm[0]!
  const part = (heel - c.heel[i - 1]!) / (c.heel[i]! - c.heel[i - 1]!)
  return c.arm[i - 1]! + part * (c.arm[i]! - c.arm[i - 1]!)
}

function rightingWords({ rider, stiff }: RightingSet): Sentence {
  if (rider.arm.length === 0) return 'It sinks with its rider: there is no righting arm.'
  const over: Sentence =
    rider.vanishing === undefined
      ? 'it comes back from every heel of the curve'
      : say`past ${inDegrees(rider.vanishing, 1)} it goes over`
  const held = stiff.gm < 0 ? ' Held stiff, the rider takes it over from upright.' : ''
  const { arm, heel } = rider.greatest
  return say`With its rider balancing, the greatest righting arm is ${inCm(arm, 0.1)} at ${inDegrees(heel, 1)} of heel; ${over}.${held}`
}

/** The lowest opening and the water aboard while a hole lets water in; the tried run dashed. */
export function leakFigure(
  now: LeakCase | undefined,
  tried: LeakCase | undefined,
  width = 180,
  system: DisplaySystem = 'metric',
): Sheet {
  const height = axis('length', 'cm', system)
  const water = axis('volume', 'L', system)
  const minutes = (r: LeakCase) => r.run.time.map((t) => t / 60)
  const parts = (r: LeakCase, word: string): ChartSeries[] => [
    {
      name: `lowest opening above water, ${height.unit}${word}`,
      colour: okabeIto.blue,
      x: minutes(r),
      y: r.run.lowest.map((v) => (Number.isFinite(v) ? height.of(v) : Number.NaN)),
      tried: word !== '',
    },
    {
      name: `water aboard, ${water.unit}${word}`,
      colour: okabeIto.vermillion,
      x: minutes(r),
      y: r.run.water.map(water.of),
      tried: word !== '',
    },
  ]
  const [own, other] = [now ? parts(now, '') : [], tried ? parts(tried, ', tried') : []]
  const under = now?.run.under
  const hole = printedAmount(inMm((now ?? tried)?.diameter ?? 0.01), system)
  return lineChart({
    title: `A ${hole} hole at the stern, nobody aboard`,
    says: now ? printed(leakWords(now), system) : 'It sinks with nobody aboard.',
    width,
    height: 80,
    x: { label: 'time', unit: 'min', include: [0] },
    y: { label: `height in ${height.unit}, water in ${water.unit}`, unit: '', include: [0] },
    series: own.flatMap((s, i) => (other[i] ? [s, other[i]!] : [s])),
    markers: under
      ? [
          {
            x: under.time / 60,
            y: 0,
            shape: 'cross',
            colour: okabeIto.vermillion,
            label: `${under.name} under`,
          },
        ]
      : [],
    lines: [{ axis: 'y', at: 0, colour: ink }],
    empty: 'No water comes in.',
  })
}

function leakWords({ run, space, diameter }: LeakCase): Sentence {
  const end = {
    sinks: 'it sinks',
    fills: `${space} is full`,
    'no more comes in': 'no more water comes in',
    'goes over': 'it rolls over',
  }[run.end]
  const under: Sentence = run.under
    ? say`${run.under.name} goes under after ${minutesOf(run.under.time)}; `
    : ''
  return say`Through a ${inMm(diameter)} hole at the stern: ${under}after ${minutesOf(run.endTime)} ${end}, with ${litres(run.water.at(-1) ?? 0)} aboard.`
}

const minutesOf = (t: number) => inMinutes(t, 0.1)

/** Foam there and foam wanted, from above and from astern, to scale. */
export function foamFigure(
  hull: Hull,
  present: readonly FoamBlock[],
  wanted: readonly FoamBlock[],
  width = 180,
): Sheet {
  const pad = 8
  const beside = width >= 150
  const scale = (width - (beside ? 3 : 2) * pad) / (hull.length + (beside ? hull.beam : 0))
  const top = hull.beam * scale
  const endTall = hull.depth * scale
  const key = wrapText(foamKey(present, wanted), 2.8, width - 2 * pad)
  const height = top + (beside ? 0 : endTall + 10) + 14 + 4.4 * key.length
  const middle = height - 11 - top / 2
  const sx = (x: number) => pad + x * scale
  const sy = (y: number) => middle + y * scale
  const marks: Mark[] = [text(4, height - 5, 'Foam, from above and from astern', { size: 3.2, bold: true })]
  const foot = beside ? middle - endTall / 2 : middle - top / 2 - 8 - endTall
  const across = beside ? pad * 2 + (hull.length + hull.beam / 2) * scale : width / 2
  const ex = (y: number) => across - y * scale
  const ez = (z: number) => foot + z * scale
  const block = (b: FoamBlock, colour: string, spacing: number) => {
    for (const [u0, u1, v0, v1] of [
      [sx(b.low[0]), sx(b.high[0]), sy(b.low[1]), sy(b.high[1])],
      [ex(b.high[1]), ex(b.low[1]), ez(b.low[2]), ez(b.high[2])],
    ] as const) {
      const box = [u0, v0, u1, v0, u1, v1, u0, v1]
      marks.push(
        ...hatch([box], spacing, spacing < 2 ? -Math.PI / 4 : Math.PI / 4, { stroke: colour, width: 0.2 }),
      )
      marks.push(polygon(box, { stroke: colour, width: 0.35 }, 'data'))
    }
  }
  for (const b of present) block(b, okabeIto.blue, 2.6)
  for (const b of wanted) block(b, okabeIto.vermillion, 1.6)
  marks.push(...hullFromAbove(hull, sx, sy))
  for (const run of joinedRuns(outline(hull.mesh, 'end', makeFrame(), 0)))
    marks.push(
      polyline(
        Float64Array.from(run, (v, i) => (i % 2 === 0 ? across + v * scale : foot + v * scale)),
        { stroke: ink, width: 0.3 },
        'data',
      ),
    )
  key.forEach((row, i) => {
    marks.push(text(4, 3 + 4.4 * (key.length - 1 - i), row, { size: 2.8, colour: quiet }))
  })
  return { width, height, title: 'Foam, there and wanted', says: foamKey(present, wanted), marks }
}

function foamKey(present: readonly FoamBlock[], wanted: readonly FoamBlock[]): string {
  const list = (blocks: readonly FoamBlock[]) => blocks.map((b) => b.name).join(', ')
  const has =
    present.length > 0 ? `Blue, wide hatch: in the file (${list(present)}).` : 'No foam in the file.'
  return wanted.length > 0
    ? `${has} Red, close hatch: still wanted.`
    : `${has} None still wanted or none fits.`
}

function hullFromAbove(hull: Hull, sx: (x: number) => number, sy: (y: number) => number): Mark[] {
  const port = hull.edge.flatMap(([x, y]) => [sx(x), sy(y)])
  const starboard = [...hull.edge].reverse().flatMap(([x, y]) => [sx(x), sy(-y)])
  return [polygon([...port, ...starboard], { stroke: ink, width: 0.4 }, 'data', 'deck edge')]
}
