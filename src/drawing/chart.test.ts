import fc from 'fast-check'
import { expect, test } from 'vitest'
import { alongAxis, partAlong, ticksOf, tickText, valueAlong } from './axes.ts'
import { lineChart } from './chart.ts'
import type { ChartSpec } from './chartSpec.ts'
import { expectGolden } from './golden.testkit.ts'
import { contrast, inkOf, okabeIto, paper, seriesColours } from './palette.ts'
import type { Mark, Sheet } from './sheet.ts'
import { textWidth } from './textWidth.ts'

const speed = Array.from({ length: 61 }, (_, i) => i * 0.2)
/** invented numbers with a hump, only to look at */
const drag = (factor: number) =>
  speed.map((v) => factor * (120 * Math.exp(-(((v - 4) / 1.6) ** 2)) + 2.1 * v * v))

const full: ChartSpec = {
  title: 'Thrust against drag',
  says: 'Drag has a hump near 4 m/s; thrust stays above it.',
  x: { label: 'speed', unit: 'm/s' },
  y: { label: 'force', unit: 'N', min: 0 },
  series: [
    { name: 'drag', x: speed, y: drag(1), low: drag(0.85), high: drag(1.15) },
    { name: 'drag, tried', tried: true, x: speed, y: drag(0.9) },
    { name: 'thrust', x: speed, y: speed.map((v) => (v > 11 ? Number.NaN : 310 - 9 * v)) },
  ],
  lines: [
    { axis: 'x', at: 4, label: 'hump' },
    { axis: 'y', at: 250, label: 'a limit' },
  ],
  zones: [{ axis: 'x', from: 3, to: 5, label: 'getting over', colour: okabeIto.orange }],
  markers: [{ x: 10, y: 217, shape: 'circle', colour: okabeIto.black, label: 'top speed 10 m/s' }],
}

const textsOf = (s: Sheet) => s.marks.filter((m): m is Extract<Mark, { kind: 'text' }> => m.kind === 'text')
const dataOf = (s: Sheet) =>
  s.marks.filter(
    (m): m is Extract<Mark, { kind: 'polyline' }> => m.kind === 'polyline' && m.layer === 'data' && !!m.name,
  )

test('the chart with everything on it, wide and narrow, looks as it did', () => {
  expectGolden(lineChart(full), import.meta.dirname, 'chart-wide')
  expectGolden(lineChart({ ...full, width: 94, height: 78 }), import.meta.dirname, 'chart-narrow')
})

test('a chart without a finite point says what to do instead of drawing axes', () => {
  const none = lineChart({ ...full, series: [], markers: [], empty: 'Weigh the craft first.' })
  expect(textsOf(none).map((t) => t.text)).toEqual(['Weigh the craft first.'])
  const nan = lineChart({
    ...full,
    series: [{ name: 'a', x: [1, 2], y: [Number.NaN, Number.NaN] }],
    markers: [],
  })
  expect(nan.plots).toBe(undefined)
  expectGolden(none, import.meta.dirname, 'chart-empty')
})

test('NaN leaves a gap and no coordinate on the sheet is ever NaN', () => {
  const x = [0, 1, 2, 3, 4]
  const chart = lineChart({
    ...full,
    lines: [],
    zones: [],
    markers: [],
    series: [{ name: 'a', x, y: [1, 2, Number.NaN, 4, 5] }],
  })
  expect(dataOf(chart).length).toBe(2)
  fc.assert(
    fc.property(
      fc.array(fc.oneof(fc.double({ min: -1e6, max: 1e6 }), fc.constant(Number.POSITIVE_INFINITY)), {
        maxLength: 40,
      }),
      fc.integer({ min: 60, max: 300 }),
      (ys, width) => {
        const s = lineChart({
          ...full,
          width,
          y: { label: 'y', unit: '' },
          series: [{ name: 'a', x: ys.map((_, i) => i), y: ys }],
        })
        for (const m of s.marks) {
          if (m.kind === 'polyline' || m.kind === 'polygon')
            expect(m.points.every(Number.isFinite)).toBe(true)
          if (m.kind === 'text') expect(Number.isFinite(m.x + m.y)).toBe(true)
        }
      },
    ),
    { numRuns: 100 },
  )
})

test('ticks lie on the axis, at equal steps, and name their values', () => {
  fc.assert(
    fc.property(
      fc.double({ min: -1e5, max: 1e5, noNaN: true }),
      fc.double({ min: 1e-3, max: 1e5, noNaN: true }),
      fc.double({ min: 30, max: 280, noNaN: true }),
      (min, span, length) => {
        const ticks = ticksOf({ label: '', unit: '', min, max: min + span }, length, 15)
        ticks.at.forEach((v, i) => {
          expect(v).toBeGreaterThanOrEqual(min - span * 1e-9)
          expect(v).toBeLessThanOrEqual(min + span * (1 + 1e-9))
          const read = Number(ticks.names[i]!.replaceAll('\u202f', '').replace('−', '-'))
          expect(Math.abs(read - v)).toBeLessThanOrEqual(1e-6 * Math.max(span, Math.abs(v)))
        })
        expect(new Set(ticks.names).size).toBe(ticks.names.length)
      },
    ),
  )
})

test('tickText groups five figures and more, keeps needed places, has no minus nought', () => {
  expect(tickText(9000, 1000)).toBe('9000')
  expect(tickText(12000, 2000)).toBe('12\u202f000')
  expect(tickText(-0.25, 0.25)).toBe('−0.25')
  expect(tickText(-0, 1)).toBe('0')
})

test('a logarithmic axis has its ticks at 1, 2 and 5 times powers of ten, inside it, and equal ratios at equal distances', () => {
  fc.assert(
    fc.property(
      fc.double({ min: 1e-3, max: 1e3, noNaN: true }),
      fc.double({ min: 12, max: 1e6, noNaN: true }),
      (min, ratio) => {
        const axis = { label: '', unit: '', min, max: min * ratio, log: true }
        const { at } = ticksOf(axis, 120, 18)
        expect(at.length).toBeGreaterThan(0)
        for (const v of at) {
          expect(v).toBeGreaterThanOrEqual(min * (1 - 1e-9))
          expect(v).toBeLessThanOrEqual(min * ratio * (1 + 1e-9))
        }
        const x = alongAxis(axis, 0, 100)
        expect(x(min * Math.sqrt(ratio))).toBeCloseTo(50, 6)
        expect(valueAlong(axis, partAlong(axis, at[0]!))).toBeCloseTo(at[0]!, 6)
      },
    ),
  )
  const chart = lineChart({
    ...full,
    lines: [],
    zones: [],
    markers: [],
    x: { label: 'frequency', unit: 'Hz', log: true },
    y: { label: 'level', unit: 'dB' },
    series: [{ name: 'a', x: [20, 200, 2000, 20000], y: [10, 30, 25, -5] }],
  })
  expectGolden(chart, import.meta.dirname, 'chart-log')
})

test('a line of 200 000 points is drawn with no more than 2000 and keeps its one high point', () => {
  const y = new Float64Array(200_000).map((_, i) => Math.sin(i / 500))
  y[123_456] = 7
  const chart = lineChart({
    ...full,
    width: 290,
    lines: [],
    zones: [],
    markers: [],
    y: { label: 'y', unit: '' },
    series: [{ name: 'a', x: y.map((_, i) => i), y }],
  })
  const lines = dataOf(chart)
  expect(lines.reduce((n, l) => n + l.points.length / 2, 0)).toBeLessThanOrEqual(2000)
  const plot = chart.plots![0]!
  const top = Math.max(...lines.flatMap((l) => [...l.points].filter((_, i) => i % 2 === 1)))
  const want = plot.bottom + ((7 - plot.y.min) / (plot.y.max - plot.y.min)) * (plot.top - plot.bottom)
  expect(top).toBeCloseTo(want, 6)
})

test('names at the right end do not touch each other and stay on the sheet', () => {
  const series = ['one', 'two', 'three', 'four', 'five', 'six'].map((name, k) => ({
    name,
    x: speed,
    y: speed.map((v) => v + k * 0.01),
  }))
  const chart = lineChart({ ...full, series, lines: [], zones: [], markers: [] })
  const names = textsOf(chart).filter((t) => series.some((s) => s.name === t.text))
  expect(names.length).toBe(6)
  const heights = names.map((t) => t.y).sort((a, b) => a - b)
  for (let i = 1; i < 6; i++) expect(heights[i]! - heights[i - 1]!).toBeGreaterThanOrEqual(3)
  for (const t of names) expect(t.x + textWidth(t.text, t.size)).toBeLessThanOrEqual(chart.width)
})

test('a tried line is dashed in the colour of the line before it', () => {
  const [now, tried] = dataOf(lineChart(full)).filter((m) => m.name!.startsWith('drag'))
  expect(now!.style.dash).toBe(undefined)
  expect(tried!.style.dash).toEqual([2.4, 1.2])
  expect(tried!.style.stroke).toBe(now!.style.stroke)
})

test('letters in a series colour read on paper with a contrast of 4.5 or more', () => {
  for (const c of seriesColours) expect(contrast(inkOf(c), paper)).toBeGreaterThanOrEqual(4.5)
  expect(contrast('#000000', '#ffffff')).toBeCloseTo(21, 9)
  expect(() => contrast('red', '#ffffff')).toThrow(RangeError)
})
