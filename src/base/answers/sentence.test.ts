import fc from 'fast-check'
import { expect, test } from 'vitest'
import {
  asChange,
  inCelsius,
  inField,
  inKw,
  inMm,
  inNewtons,
  inPercent,
  inRpm,
  inScaleKg,
  inSpeed,
  inTimes,
  ranged,
} from './amounts.ts'
import { type Amount, amountsIn, joined, printed, printedAmount, say, whole } from './sentence.ts'

test.each([
  [inMm(0.108), '108 mm', '4.25 in'],
  [inNewtons(584.4), '584 N', '131 lbf'],
  [inNewtons(1234), '1230 N', '277 lbf'],
  [inSpeed(12.08), '43.5 km/h', '27.0 mph'],
  [inRpm(107.63), '6460 rpm', '6460 rpm'],
  [inKw(5400), '5.4 kW', '7.2 hp'],
  [inCelsius(334.15), '61 °C', '142 °F'],
  [inPercent(0.66), '66 %', '66 %'],
  [inTimes(2.063), '2.06', '2.06'],
  [inScaleKg(584.4), '60 kg', '131 lb'],
  [asChange(inNewtons(38.2)), '+38 N', '+8.6 lbf'],
  [asChange(inSpeed(-0.083)), '−0.3 km/h', '−0.2 mph'],
  [asChange(inNewtons(0.1)), '0 N', '0.0 lbf'],
  [inNewtons(Number.NaN), '—', '—'],
  [
    ranged(inNewtons, { value: 584, low: 446, high: 721 }),
    '584 N (446 to 721 N)',
    '131 lbf (100 to 162 lbf)',
  ],
  [ranged(inNewtons, { value: 584, low: Number.NaN, high: 721 }), '584 N', '131 lbf'],
] as const)('%o reads "%s", and "%s" in inches', (amount: Amount, metric, inch) => {
  expect(printedAmount(amount)).toBe(metric)
  expect(printedAmount(amount, 'inch')).toBe(inch)
})

test('a sentence keeps its numbers, takes in others, and is text alone where it has none', () => {
  const inner = say`at ${inRpm(100)}`
  const s = say`It pulls ${inNewtons(500)} ${inner}.`
  expect(printed(s)).toBe('It pulls 500 N at 6000 rpm.')
  expect(amountsIn(s).map((a) => a.value)).toEqual([500, 100])
  expect(say`none ${'here'}`).toBe('none here')
  expect(printed(joined([say`a ${inMm(0.001)}`, 'b'], '; '))).toBe('a 1 mm; b')
  expect(printed(whole(say`it gives ${inMm(0.003)}`))).toBe('It gives 3 mm.')
  expect(printed(whole('done!'))).toBe('Done!')
})

test('a sentence is plain data', () => {
  const s = say`It pulls ${inNewtons(500)}.`
  expect(structuredClone(s)).toEqual(s)
  expect(printed(JSON.parse(JSON.stringify(s)))).toBe(printed(s))
})

test('a field of the craft file reads in its own unit', () => {
  expect(printedAmount(inField(12e-6, 'length', 'µm'))).toBe('12 µm')
  expect(printedAmount(inField(0.108, 'length', 'mm'))).toBe('108 mm')
  expect(printedAmount(inField(0.098, 'length', 'mm'))).toBe('98 mm')
  expect(printedAmount(inField(0.00165, 'length', 'mm'))).toBe('1.65 mm')
  expect(printedAmount(inField(0, 'length', 'mm'))).toBe('0 mm')
})

test('no number prints as NaN, Infinity or an exponent, whatever it is', () => {
  const makers = [inMm, inNewtons, inSpeed, inRpm, inPercent, inTimes]
  fc.assert(
    fc.property(
      fc.double({ min: -1e15, max: 1e15 }),
      fc.constantFrom(...makers),
      fc.constantFrom('metric', 'inch'),
      (v, make, system) => {
        const text = printedAmount(make(v), system as 'metric')
        expect(text).not.toMatch(/NaN|Infinity|e[+-]/)
      },
    ),
  )
})
