import { expect, test } from 'vitest'
import { lineChart } from './chart.ts'
import { polyline, rectangle, text } from './marks.ts'
import type { Sheet } from './sheet.ts'
import { cellHeight, cellWidth, terminalOf, widthFor } from './terminal.ts'

const blank = (columns: number, rows: number, marks: Sheet['marks']): Sheet => ({
  width: columns * cellWidth,
  height: rows * cellHeight,
  title: '',
  says: '',
  marks,
})

test('a level line along the top of a row lights the upper dots of its letters', () => {
  const y = 2 * cellHeight - 0.2
  expect(
    terminalOf(blank(4, 2, [polyline([0.1, y, 3.99 * cellWidth, y], { stroke: '#000000' }, 'data')])),
  ).toEqual(['⠉⠉⠉⠉', ''])
})

test('a dark fill is dotted all over, a tint next to paper only outlined', () => {
  const box = (fill: string) => blank(4, 3, [rectangle(0.2, 0.2, 7, 11, { fill, stroke: '#000000' }, 'mark')])
  expect(terminalOf(box('#0072b2'))[1]).toBe('⣿⣿⣿⣿')
  expect(terminalOf(box('#faf8f2'))[1]).toMatch(/^[⡇⢸] {2}/)
})

test('words stand where they belong and are kept whole at the edge', () => {
  const sheet = blank(10, 1, [text(9 * cellWidth, 1, 'speed', { anchor: 'start' })])
  expect(terminalOf(sheet)).toEqual(['     speed'])
})

test('a chart fits the columns it was laid out for and shows its names and ticks', () => {
  const chart = lineChart({
    title: '',
    says: '',
    width: widthFor(78),
    height: 70,
    x: { label: 'speed', unit: 'm/s' },
    y: { label: 'force', unit: 'N' },
    series: [
      { name: 'drag', x: [0, 5, 10], y: [0, 50, 200] },
      { name: 'thrust', x: [0, 10], y: [300, 200] },
    ],
  })
  const rows = terminalOf(chart)
  const all = rows.join('\n')
  for (const row of rows) expect([...row].length).toBeLessThanOrEqual(78)
  for (const words of ['force, N', 'speed, m/s', 'drag', 'thrust', '300', '10']) expect(all).toContain(words)
  expect(rows.join('\n')).toMatchSnapshot()
  expect(terminalOf(chart, { colour: true }).join('\n')).toContain('\u001b[38;2;')
})
