import { expect, test } from 'vitest'
import { type BarSpec, barChart } from './bars.ts'
import { expectGolden } from './golden.testkit.ts'

/** invented numbers */
const spec: BarSpec = {
  title: 'What each change buys',
  says: 'A finer pitch buys most.',
  axis: { label: 'top speed, change', unit: 'km/h' },
  baseLabel: 'now 31 km/h',
  rows: [
    { name: 'pitch 95 mm, was 108', value: 2.1, low: 1.2, high: 2.9, note: '+2.1 km/h' },
    { name: 'one blade fewer', value: 0.8, low: -0.3, high: 1.6, note: '+0.8 km/h', tried: 1.1 },
    { name: 'nozzle 62 mm, was 65', value: -0.6, low: -1, high: -0.2, note: '−0.6 km/h' },
    { name: 'no answer', value: Number.NaN },
  ],
}

test('bars to both sides of the base, wide and narrow, look as they did', () => {
  expectGolden(barChart(spec), import.meta.dirname, 'bars-wide')
  expectGolden(barChart({ ...spec, width: 94 }), import.meta.dirname, 'bars-narrow')
})

test('a row without a number is left out, and no rows give words', () => {
  const words = barChart(spec).marks.flatMap((m) => (m.kind === 'text' ? [m.text] : []))
  expect(words).not.toContain('no answer')
  const none = barChart({ ...spec, rows: [], empty: 'Try a change.' })
  expect(none.marks.map((m) => (m.kind === 'text' ? m.text : ''))).toEqual(['Try a change.'])
})

test('a bar is as long as its value: twice the value, twice the length', () => {
  const bars = barChart({
    ...spec,
    rows: [
      { name: 'a', value: 2 },
      { name: 'b', value: 1 },
      { name: 'c', value: -1 },
    ],
  }).marks.filter((m) => m.kind === 'polygon' && m.layer === 'data')
  const wide = bars.map((m) => (m.kind === 'polygon' ? m.points[2]! - m.points[0]! : 0))
  expect(wide[0]).toBeCloseTo(2 * wide[1]!, 9)
  expect(wide[2]).toBeCloseTo(wide[1]!, 9)
})
