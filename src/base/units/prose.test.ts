import fc from 'fast-check'
import { expect, test } from 'vitest'
import { proseIn } from './prose.ts'

test.each([
  ['a hose of about 5 mm', 'a hose of about 0.2 in'],
  ['A hole of 3 to 4 mm at the high point', 'A hole of 0.12 to 0.16 in at the high point'],
  ['standard (ISO 1585, 99 kPa dry and 25 °C)', 'standard (ISO 1585, 14 psi dry and 77 °F)'],
  ['1.5 mm 5052-H32 sheet on 180 mm of XPS 25', '0.059 in 5052-H32 sheet on 7.1 in of XPS 25'],
  ['softens at 74 to 75 °C', 'softens at 165 to 167 °F'],
  ['cylinders of 50 to 150 cm³', 'cylinders of 3.1 to 9.2 in³'],
  ['runs 20 K to 30 K above the air', 'runs 36 °F to 54 °F above the air'],
  ['GM −22 cm', 'GM −8.7 in'],
])('“%s” reads “%s” in inches', (metric, inch) => {
  expect(proseIn(metric, 'inch')).toBe(inch)
  expect(proseIn(metric, 'metric')).toBe(metric)
})

test('words without a metric figure stay as they are', () => {
  for (const words of [
    'EPS 22 foam',
    'an M6 bolt',
    '12 blades',
    '4.3 in',
    '3 minutes',
    'grade 5 N2',
    '1 of 2 Nm',
  ])
    expect(proseIn(words, 'inch')).toBe(words)
})

test('what was turned has nothing left to turn', () => {
  const value = fc.double({ min: 0.1, max: 9000, noNaN: true }).map((v) => String(Number(v.toPrecision(3))))
  const unit = fc.constantFrom(
    'mm',
    'cm',
    'm',
    'kg',
    'N',
    'kPa',
    '°C',
    'L',
    'km/h',
    'm/s',
    'kg/m³',
    'cm²',
    'K',
    'kW',
  )
  fc.assert(
    fc.property(value, unit, (v, u) => {
      const once = proseIn(`about ${v} ${u}, so`, 'inch')
      expect(once).not.toContain(` ${u},`)
      expect(proseIn(once, 'inch')).toBe(once)
      expect(once).not.toContain('NaN')
    }),
  )
})
