import fc from 'fast-check'
import { expect, test } from 'vitest'
import { findUnit, fromSi, spellings, stepFromSi, toSi, unitNames } from './convert.ts'
import { formatQuantity } from './format.ts'
import { type Kind, kinds, type Unit } from './kinds.ts'
import { isQuantityProblem, type ParsedQuantity, parseQuantity, writtenSources } from './parse.ts'

const numberKinds = (Object.keys(kinds) as Kind[]).filter((k) => k !== 'choice')

function read(text: string, kind: Kind): ParsedQuantity {
  const q = parseQuantity(text, kind)
  if (isQuantityProblem(q)) throw new Error(`${text}: ${q.problem}`)
  return q
}

function problem(text: string, kind: Kind, unit?: string): string {
  const q = parseQuantity(text, kind, unit)
  if (!isQuantityProblem(q)) throw new Error(`${text} was read as ${q.value}`)
  return `${q.problem}; expected ${q.expected}`
}

const exact = { inch: 0.0254, pound: 0.45359237 }

test.each([
  ['1.2 kg/min', 'massFlow', 0.02, undefined, undefined],
  ['47.0 mm ±0.05 (measured)', 'length', 0.047, 5e-5, 'measured'],
  ['47.0 ±0.05 mm (measured)', 'length', 0.047, 5e-5, 'measured'],
  ['47 mm +- 0.05', 'length', 0.047, 5e-5, undefined],
  ['47 mm +/- 0.05 mm', 'length', 0.047, 5e-5, undefined],
  ['47 mm ± 0.002 in', 'length', 0.047, 0.002 * exact.inch, undefined],
  ['1 1/4 in', 'length', 1.25 * exact.inch, undefined, undefined],
  ['1-1/4 in', 'length', 1.25 * exact.inch, undefined, undefined],
  ['1¼ in', 'length', 1.25 * exact.inch, undefined, undefined],
  ['3/8"', 'length', 0.375 * exact.inch, undefined, undefined],
  ['5 ft 9 in', 'length', 69 * exact.inch, undefined, undefined],
  [`5' 9"`, 'length', 69 * exact.inch, undefined, undefined],
  ['5 ft 9 1/2 in (guess)', 'length', 69.5 * exact.inch, undefined, 'guess'],
  ['12 lb 4 oz ±1 oz', 'mass', 12.25 * exact.pound, exact.pound / 16, undefined],
  ['-2 ft 6 in', 'length', -30 * exact.inch, undefined, undefined],
  ['−3 mm', 'length', -0.003, undefined, undefined],
  ['47mm', 'length', 0.047, undefined, undefined],
  ['.5 m', 'length', 0.5, undefined, undefined],
  ['1.2e5 Pa', 'pressure', 1.2e5, undefined, undefined],
  ['0.8 bar', 'pressure', 8e4, undefined, undefined],
  ['10 N·m ± 5 %', 'torque', 10, 0.5, undefined],
  ['10 N m', 'torque', 10, undefined, undefined],
  ['10 N*m', 'torque', 10, undefined, undefined],
  ['7500 rpm (maker)', 'rotation', 125, undefined, 'maker'],
  ['7500 1/min', 'rotation', 125, undefined, undefined],
  ['16 °C ±2 (measured)', 'temperature', 289.15, 2, 'measured'],
  ['68 °F ± 9', 'temperature', 293.15, 5, undefined],
  ['1.25 (measured)', 'ratio', 1.25, undefined, 'measured'],
  ['1.25 ± 2 %', 'ratio', 1.25, 0.025, undefined],
  ['8 %', 'ratio', 0.08, undefined, undefined],
  ['96 % ± 1', 'ratio', 0.96, 0.01, undefined],
  ['96 % ± 1 %', 'ratio', 0.96, 0.01, undefined],
  ['3', 'count', 3, undefined, undefined],
  ['2 US gal', 'volume', 2 * 231 * exact.inch ** 3, undefined, undefined],
  ['12\u202F000 rpm', 'rotation', 200, undefined, undefined],
  ['70 dB(A) (measured)', 'level', 70, undefined, 'measured'],
  ['0.2 W/(m·K)', 'conductivity', 0.2, undefined, undefined],
] as const)('"%s" as %s is %d with ± %s and source %s', (text, kind, value, spread, source) => {
  const q = read(text, kind)
  expect(q.value).toBeCloseTo(value, 12)
  if (spread === undefined) expect(q.uncertainty).toBeUndefined()
  else expect(q.uncertainty).toBeCloseTo(spread, 12)
  expect(q.source).toBe(source)
})

test.each([
  ['47', 'length', 'has no unit'],
  ['47', 'length', 'mm'],
  ['', 'length', 'is empty'],
  ['mm', 'length', 'does not begin with a number'],
  ['7,500 rpm', 'rotation', 'write 7500 or 7.500'],
  ['7,5 mm', 'length', 'has a comma in its number: write 7.5;'],
  ['1,200,000 Pa', 'pressure', 'write 1200000;'],
  ['1 to 2 m', 'length', 'is a range: write the middle and ±'],
  ['1-2 m', 'length', 'is a range'],
  ['10 mm - 12 mm', 'length', 'is a range'],
  ['~2 m', 'length', 'write the number, its unit and (guess)'],
  ['about 2 m', 'length', '(guess)'],
  ['7 500 rpm', 'rotation', 'space inside'],
  ['NaN', 'length', 'not a number'],
  ['NaN mm', 'length', 'does not begin with a number'],
  ['Infinity', 'length', 'not a number'],
  ['-inf', 'length', 'not a number'],
  ['1e400 mm', 'length', 'too large'],
  ['3 parsecs', 'length', 'not known for length'],
  ['3 nm', 'length', '"mm" may be meant'],
  ['3 MPA', 'pressure', '"MPa" may be meant'],
  ['3 kW', 'length', 'a unit of power'],
  ['3 kg', 'force', 'a unit of mass'],
  ['3 gal', 'volume', 'US gallon is 3.785 L'],
  ['3 gpm', 'volumeFlow', 'US or imperial'],
  ['3 mm ± 0.1 ± 0.2', 'length', 'more than one ±'],
  ['3 mm ± -0.1', 'length', 'negative ±'],
  ['3 mm ± some', 'length', 'after the ±'],
  ['3 mm (measurd)', 'length', '"measured" may be meant'],
  ['3 mm (by eye)', 'length', 'not one of measured, maker, guess'],
  ['20 °C ± 5 %', 'temperature', 'means nothing for a temperature'],
  ['-300 °C', 'temperature', 'absolute zero'],
  ['2.5', 'count', 'whole number'],
  ['5 ft 14 in', 'length', 'not known'],
  ['5 in 1 ft', 'length', 'not known'],
  ['1/0 in', 'length', 'not known'],
  ['3 mm mm', 'length', 'not known'],
  ['0x10 mm', 'length', 'not known'],
  ['x'.repeat(300), 'length', 'too long'],
] as const)('"%s" as %s is refused: %s', (text, kind, says) => {
  expect(problem(text, kind)).toContain(says)
})

test('a refusal lists the units of the kind and uses the unit that fits the field', () => {
  const says = problem('47', 'length', 'mm')
  for (const name of unitNames('length')) expect(says).toContain(name)
  expect(says).toContain('"10 mm"')
})

test('parseQuantity never throws, and what it reads is finite', () => {
  const anyKind = fc.constantFrom(...numberKinds)
  const piece = fc.constantFrom(
    '1',
    '.5',
    ' ',
    'mm',
    'ft',
    '±',
    '+-',
    '(measured)',
    '%',
    '1/2',
    '-',
    'e9',
    '°C',
    '(',
    ')',
    ',',
  )
  const text = fc.oneof(
    fc.string({ maxLength: 40, unit: 'binary' }),
    fc.array(piece, { maxLength: 9 }).map((p) => p.join('')),
  )
  fc.assert(
    fc.property(text, anyKind, (t, kind) => {
      const q = parseQuantity(t, kind)
      if (isQuantityProblem(q)) return q.problem !== '' && q.expected !== ''
      return Number.isFinite(q.value) && (q.uncertainty === undefined || q.uncertainty >= 0)
    }),
    { numRuns: 3000 },
  )
})

const written = fc
  .constantFrom(...numberKinds)
  .chain((kind) =>
    fc.record({ kind: fc.constant(kind), unit: fc.constantFrom(...(kinds[kind] as readonly Unit[])) }),
  )
const size = fc.double({ min: 1e-6, max: 1e7, noNaN: true })

test('a value written in any unit, with ± and source, reads back as written', () => {
  fc.assert(
    fc.property(written, size, size, fc.constantFrom(...writtenSources), ({ kind, unit }, x, d, source) => {
      const value = kind === 'count' ? Math.ceil(x) : x
      const q = read(`${value} ${unit.name === '1' ? '' : unit.name} ± ${d} (${source})`, kind)
      const near = (a: number, b: number) => Math.abs(a - b) <= 1e-12 * Math.max(Math.abs(a), Math.abs(b))
      return (
        near(q.value, value * unit.factor + (unit.offset ?? 0)) &&
        near(q.uncertainty!, d * unit.factor) &&
        q.source === source &&
        q.unit === (unit.name === '1' ? '' : unit.name)
      )
    }),
  )
})

test('formatQuantity and parseQuantity are inverse to the digits shown', () => {
  fc.assert(
    fc.property(written, size, fc.integer({ min: 3, max: 12 }), ({ kind, unit }, x, digits) => {
      const value = toSi(kind === 'count' ? Math.ceil(x) : x, kind, unit.name)
      const back = parseQuantity(formatQuantity(value, kind, unit.name, digits), kind)
      if (isQuantityProblem(back)) return kind === 'count'
      const off = Math.abs(fromSi(back.value, kind, unit.name) - fromSi(value, kind, unit.name))
      return off <= 10 ** (1 - digits) * Math.abs(fromSi(value, kind, unit.name)) * 1.0001
    }),
  )
})

test('every spelling finds one unit, and conversion there and back is exact to 1e-12', () => {
  for (const kind of numberKinds)
    for (const name of spellings(kind)) {
      expect(findUnit(kind, name), `${kind} ${name}`).toBeDefined()
      const there = toSi(12.5, kind, name)
      expect(fromSi(there, kind, name)).toBeCloseTo(12.5, 11)
      expect(read(`12 ${name === '1' ? '' : name}`, kind).value).toBeCloseTo(toSi(12, kind, name), 12)
    }
})

test('a relative ± of a value is the same part of it in every unit without an offset', () => {
  fc.assert(
    fc.property(written, size, fc.double({ min: 0.1, max: 50, noNaN: true }), ({ kind, unit }, x, part) => {
      if (unit.offset !== undefined || unit.name === '%' || kind === 'temperature' || kind === 'count')
        return true
      const q = read(`${x} ${unit.name === '1' ? '' : unit.name} ± ${part} %`, kind)
      return Math.abs(q.uncertainty! / q.value - part / 100) < 1e-12
    }),
  )
})

test('a step of temperature carries no offset: 9 °F are 5 K', () => {
  expect(stepFromSi(5, 'temperature', '°F')).toBeCloseTo(9, 12)
  expect(read('32 °F ±1.8', 'temperature').uncertainty).toBeCloseTo(1, 12)
})
