import { expect, test } from 'vitest'
import { expectGolden } from './golden.testkit.ts'
import { heatChart } from './heatMap.ts'
import { levelColour, signedColour } from './palette.ts'

const [cols, rows] = [24, 10]
const values = Float64Array.from(
  { length: cols * rows },
  (_, i) => Math.sin((i % cols) / 3) * Math.cos(Math.floor(i / cols) / 4),
)
const spec = {
  title: 'Pressure along the pipe',
  says: 'A wave runs to the right and comes back.',
  width: 120,
  height: 60,
  x: { label: 'along the pipe', unit: 'mm', min: 0, max: 240 },
  y: { label: 'crank', unit: 'deg', min: 0, max: 100 },
  level: { label: 'pressure', unit: 'kPa', min: -1, max: 1 },
  values,
  cols,
  rows,
  signed: true,
}

test('a coloured table with its key looks as it did', () => {
  expectGolden(
    heatChart({ ...spec, over: [{ name: 'wave', x: [0, 240], y: [0, 100], colour: '#000000' }] }),
    import.meta.dirname,
    'heat',
  )
})

test('the first row is drawn lowest and NaN stays white', () => {
  const v = new Float64Array(4).fill(Number.NaN)
  v[0] = 1
  const sheet = heatChart({ ...spec, values: v, cols: 2, rows: 2, signed: false })
  const image = sheet.marks.find((m) => m.kind === 'image')!
  if (image.kind !== 'image') throw new Error('no picture')
  expect([...image.rgb.subarray(0, 6)]).toEqual([255, 255, 255, 255, 255, 255])
  expect([...image.rgb.subarray(6, 9)]).toEqual([0, 0, 0])
  expect(() => heatChart({ ...spec, cols: 3 })).toThrow(RangeError)
})

test('levels darken all the way and signed colours are white at nought', () => {
  const light = Array.from({ length: 101 }, (_, i) => {
    const [r, g, b] = levelColour(i / 100)
    return 0.3 * r + 0.59 * g + 0.11 * b
  })
  for (let i = 1; i <= 100; i++) expect(light[i]!).toBeLessThan(light[i - 1]!)
  expect(signedColour(0)).toEqual([255, 255, 255])
  expect(levelColour(Number.NaN)).toEqual([255, 255, 255])
})
