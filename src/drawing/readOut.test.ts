import { expect, test } from 'vitest'
import { lineChart } from './chart.ts'
import { readAt, valueAt } from './readOut.ts'

test('valueAt(series, at) is exact at the points, straight between them, NaN in a gap and outside', () => {
  const s = { x: [0, 1, 2, 3, 4], y: [0, 10, Number.NaN, 30, 20] }
  expect([0, 0.25, 1, 3, 3.5, 4].map((v) => valueAt(s, v))).toEqual([0, 2.5, 10, 30, 25, 20])
  for (const v of [-0.1, 1.5, 2, 2.5, 4.1, Number.NaN]) expect(valueAt(s, v)).toBeNaN()
  expect(valueAt({ x: [3, 1], y: [0, 20] }, 2)).toBe(10)
  expect(valueAt({ x: [], y: [] }, 0)).toBeNaN()
})

test('readAt names each line with its unit and puts the point on the drawn line', () => {
  const chart = lineChart({
    title: '',
    says: '',
    x: { label: 'speed', unit: 'm/s' },
    y: { label: 'force', unit: 'N' },
    series: [
      { name: 'drag', x: [0, 10], y: [0, 200] },
      { name: 'thrust', x: [0, 4], y: [300, 280] },
    ],
  })
  const plot = chart.plots![0]!
  const [drag, none] = readAt(plot, 5)
  expect(none).toBe(undefined)
  expect(drag!.says).toBe('drag 100 N')
  expect(drag!.x).toBeCloseTo((plot.left + plot.right) / 2, 9)
  expect(drag!.y).toBeCloseTo(
    plot.bottom + (plot.top - plot.bottom) * ((100 - plot.y.min) / (plot.y.max - plot.y.min)),
    9,
  )
  expect(readAt(plot, 2).map((r) => r.says)).toEqual(['drag 40 N', 'thrust 290 N'])
})
