import Ajv2020 from 'ajv/dist/2020.js'
import fc from 'fast-check'
import { expect, test } from 'vitest'
import { parse } from 'yaml'
import { formatQuantity } from '../base/units/format.ts'
import { kinds, type Unit } from '../base/units/kinds.ts'
import { isQuantityProblem, parseQuantity } from '../base/units/parse.ts'
import { full, heron, least, problemsOf, rootFile, teal, twoStroke } from './craft.testkit.ts'
import { withReference } from './fieldReference.ts'
import { craftJsonSchema, quantityPattern } from './jsonSchema.ts'
import { listFields } from './paths.ts'
import { readCraft } from './read.ts'

const ajv = new Ajv2020({ strict: true, allowUnionTypes: true })
const valid = ajv.compile(craftJsonSchema())
const accepts = (text: string) => valid(parse(text))

test('the schema in the repository is the one the field tables give; run npm run docs', () => {
  expect(rootFile('schema/craft.schema.json')).toBe(`${JSON.stringify(craftJsonSchema(), null, 2)}\n`)
})

test('the reference in docs/craft-file.md is the one the field tables give; run npm run docs', () => {
  const page = rootFile('docs/craft-file.md')
  expect(withReference(page)).toBe(page)
})

test('the shortest file of docs/craft-file.md reads without problem', () => {
  const block = /```yaml\n([\s\S]*?)```/.exec(rootFile('docs/craft-file.md'))![1]!
  expect(problemsOf(block)).toEqual([])
  expect(accepts(block)).toBe(true)
})

test.each([
  ['full', full],
  ['heron', heron],
  ['teal', teal],
  ['least', least],
  ['two-stroke', twoStroke],
])('reader and schema both accept the %s craft', (_, text) => {
  expect(accepts(text), JSON.stringify(valid.errors?.slice(0, 3))).toBe(true)
  expect(readCraft(text).craft).toBeDefined()
})

test.each([
  ['an unknown key', 'pitch:', 'ptich:'],
  ['an unknown section', 'hull:', 'hul:'],
  ['a missing unit', '105 mm', '105'],
  ['an unknown unit', '105 mm', '105 parsec'],
  ['a unit of another kind', '105 mm', '105 kW'],
  ['a number that is none', '105 mm', 'NaN'],
  ['an unknown source', '105 mm', '105 mm (eyeballed)'],
  ['a missing value', ', pitch: 95 mm', ''],
  ['an unknown word', 'kind: peak', 'kind: steam'],
  ['a value for a group', '{ bore: 58 mm }', '58 mm'],
  ['a group for a value', '105 mm', '{ a: b }'],
  ['a newer version', 'wakewright: 1', 'wakewright: 2'],
  ['no version', 'wakewright: 1\n', ''],
  ['a key of another kind of engine', 'power: 4 kW', 'power: 4 kW, voltage: 48 V'],
  [
    'a place of two lengths',
    'beam: 0.8 m',
    'beam: 0.8 m\nweights: [{ name: a, mass: 1 kg, at: [1 m, 0 m] }]',
  ],
])('reader and schema both refuse %s', (_, from, to) => {
  const text = least.replace(from, to)
  expect(text).not.toBe(least)
  expect(accepts(text)).toBe(false)
  expect(readCraft(text).craft).toBeUndefined()
})

const usedKinds = [
  ...new Set(listFields().flatMap(({ spec }) => (spec.type === 'quantity' ? [spec.kind] : []))),
]

test('whatever the reader takes for a quantity, the schema’s pattern takes too', () => {
  const patterns = new Map(usedKinds.map((kind) => [kind, new RegExp(quantityPattern({ kind }), 'u')]))
  const spread = fc.constantFrom('', ' ±2', ' ± 5 %', '+-0.1', ' +/- 3', ' ± 1/2')
  const source = fc.constantFrom('', ' (measured)', '(guess)', ' ( Maker )')
  const start = fc.constantFrom(
    '47.0',
    '.5',
    '3.',
    '1 1/4',
    '3/8',
    '1¼',
    '-2',
    '1e3',
    '12\u202F000',
    '+4',
    '−7',
  )
  fc.assert(
    fc.property(
      fc.constantFrom(...usedKinds),
      fc.nat(),
      start,
      spread,
      source,
      fc.boolean(),
      (kind, n, a, s, src, gap) => {
        const units = kinds[kind] as readonly Unit[]
        const unit = units[n % units.length]!
        const names = [unit.name, ...(unit.also ?? [])]
        const name = names[n % names.length]!
        const text = `${a}${gap ? ' ' : ''}${name === '1' ? '' : name}${s}${src}`
        if (isQuantityProblem(parseQuantity(text, kind))) return
        expect(patterns.get(kind)!.test(text), `${kind}: ${text}`).toBe(true)
      },
    ),
    { numRuns: 2000 },
  )
  for (const kind of usedKinds) {
    const shown = formatQuantity(12.5, kind, (kinds[kind] as readonly Unit[])[0]!.name)
    expect(patterns.get(kind)!.test(shown), shown).toBe(true)
  }
  expect(patterns.get('length')!.test('5 ft 9 1/2 in (measured)')).toBe(true)
})

test('no pattern searches without end on a text made to make it search', () => {
  for (const kind of usedKinds) {
    const pattern = new RegExp(quantityPattern({ kind }), 'u')
    for (const hard of ['1 '.repeat(100), '1'.repeat(200), `${'1 mm '.repeat(40)}x`, `1${' '.repeat(200)}x`])
      expect(pattern.test(`${hard}!`)).toBe(false)
  }
})
