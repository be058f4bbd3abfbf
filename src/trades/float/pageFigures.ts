/** Figures of the Float page beside the true views: righting arm, loads side by side, a leak over time, foam there and foam wanted. */

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
import type { LeakCase } from './leakCase.ts'
import { joinedRuns, outline } from './outline.ts'
import type { RightingCurve } from './righting.ts'

const inDegrees = (a: number) => (a * 180) / Math.PI
const arms = (c: RightingCurve) => Float64Array.from(c.arm, (v) => 100 * v)
const heels = (c: RightingCurve) => Float64Array.from(c.heel, inDegrees)

export interface RightingSet {
  rider: RightingCurve
  stiff: RightingCurve
  nobody: RightingCurve
}

/** Righting arm over heel for a rider who balances, one held stiff, and nobody aboard; while something is tried, as it is now thin and grey behind. Arm in cm. */
export function rightingFigure(now: RightingSet, tried: RightingSet | undefined, width = 180): Sheet {
  const rows: [keyof RightingSet, string, string][] = [
    ['rider', 'rider balancing', okabeIto.blue],
    ['stiff', 'rider held stiff', okabeIto.vermillion],
    ['nobody', 'nobody aboard', okabeIto.green],
  ]
  const shown = tried ?? now
  const line = (set: RightingSet, key: keyof RightingSet) => ({ x: heels(set[key]), y: arms(set[key]) })
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
    says: tried ? `Tried: ${rightingWords(tried)} Now: ${rightingWords(now)}` : rightingWords(now),
    width,
    height: width < 120 ? 90 : 100,
    x: { label: 'heel', unit: '°', min: 0, max: 180 },
    y: { label: 'righting arm', unit: 'cm', include: [0] },
    series: [...before, ...series],
    markers: [
      ...(c.arm.length === 0 ? [] : rightingMarks(c, width < 120)),
      ...(before.length > 0 && now.rider.vanishing !== undefined && now.rider.vanishing !== c.vanishing
        ? [
            {
              x: inDegrees(now.rider.vanishing),
              y: 0,
              shape: 'square' as const,
              colour: quiet,
              hollow: true,
              label: `now past ${inDegrees(now.rider.vanishing).toFixed(0)}°`,
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
function rightingMarks(c: RightingCurve, narrow: boolean): ChartMarker[] {
  const at = (heel: number) => armAt(c, heel) * 100
  const marks: ChartMarker[] = []
  if (Number.isFinite(c.greatest.arm) && c.greatest.arm > 0)
    marks.push({
      x: inDegrees(c.greatest.heel),
      y: 100 * c.greatest.arm,
      shape: 'circle',
      colour: okabeIto.blue,
      label: `most ${(100 * c.greatest.arm).toFixed(1)} cm`,
    })
  if (c.vanishing !== undefined)
    marks.push({
      x: inDegrees(c.vanishing),
      y: 0,
      shape: 'square',
      colour: okabeIto.blue,
      label: `goes over past ${inDegrees(c.vanishing).toFixed(0)}°`,
    })
  if (c.deckEdge !== undefined)
    marks.push({
      x: inDegrees(c.deckEdge),
      y: at(c.deckEdge),
      shape: 'triangle',
      colour: quiet,
      ...(narrow ? {} : { label: `deck edge under at ${inDegrees(c.deckEdge).toFixed(0)}°` }),
      hollow: true,
    })
  if (c.flooding)
    marks.push({
      x: inDegrees(c.flooding.heel),
      y: at(c.flooding.heel),
      shape: 'cross',
      colour: okabeIto.vermillion,
      ...(narrow ? {} : { label: `${c.flooding.name} under at ${inDegrees(c.flooding.heel).toFixed(0)}°` }),
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

function rightingWords({ rider, stiff }: RightingSet): string {
  if (rider.arm.length === 0) return 'It sinks with its rider: there is no righting arm.'
  const over =
    rider.vanishing === undefined
      ? 'it comes back from every heel of the curve'
      : `past ${inDegrees(rider.vanishing).toFixed(0)}° it goes over`
  const held = stiff.gm < 0 ? ' Held stiff, the rider takes it over from upright.' : ''
  return `With its rider balancing, the greatest righting arm is ${(100 * rider.greatest.arm).toFixed(1)} cm at ${inDegrees(rider.greatest.heel).toFixed(0)}° of heel; ${over}.${held}`
}

/** The lowest opening and the water aboard while a 10 mm hole lets water in; the tried run dashed. */
export function leakFigure(now: LeakCase, tried: LeakCase | undefined, width = 180): Sheet {
  const minutes = (r: LeakCase) => r.run.time.map((t) => t / 60)
  const parts = (r: LeakCase, word: string): ChartSeries[] => [
    {
      name: `lowest opening above water, cm${word}`,
      colour: okabeIto.blue,
      x: minutes(r),
      y: r.run.lowest.map((v) => (Number.isFinite(v) ? 100 * v : Number.NaN)),
      tried: word !== '',
    },
    {
      name: `water aboard, L${word}`,
      colour: okabeIto.vermillion,
      x: minutes(r),
      y: r.run.water.map((v) => 1000 * v),
      tried: word !== '',
    },
  ]
  const [own, other] = [parts(now, ''), tried ? parts(tried, ', tried') : []]
  const { under } = now.run
  return lineChart({
    title: 'A 10 mm hole at the stern, nobody aboard',
    says: leakWords(now),
    width,
    height: 80,
    x: { label: 'time', unit: 'min', include: [0] },
    y: { label: 'height in cm, water in L', unit: '', include: [0] },
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

function leakWords({ run, space }: LeakCase): string {
  const end = {
    sinks: 'it sinks',
    fills: `${space} is full`,
    'no more comes in': 'no more water comes in',
    'goes over': 'it rolls over',
  }[run.end]
  const under = run.under
    ? `${run.under.name} goes under after ${(run.under.time / 60).toFixed(1)} minutes; `
    : ''
  return `Through a 10 mm hole at the stern: ${under}after ${(run.endTime / 60).toFixed(1)} minutes ${end}, with ${(1000 * (run.water.at(-1) ?? 0)).toFixed(0)} L aboard.`
}

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
