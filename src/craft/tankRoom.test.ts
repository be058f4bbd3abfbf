import { expect, test } from 'vitest'
import { least } from './craft.testkit.ts'
import { formatProblem } from './problem.ts'
import { readCraft } from './read.ts'
import { tankCapacity, tankLiquid } from './tankRoom.ts'

const box =
  'kind: box, name: fuel tank, foot: [1.4 m, 0 m, 0.08 m], length: 250 mm, width: 200 mm, height: 120 mm'
const read = (tanks: string, more = '') => readCraft(`${least}tanks:\n${tanks}\n${more}`)
const said = (tanks: string, more = '') => read(tanks, more).problems.map(formatProblem).join('\n')

test('a file without tanks reads as before, with none', () => {
  expect(readCraft(least).problems).toEqual([])
  expect(readCraft(least).craft?.tanks).toEqual([])
})

test('a box of 250 × 200 × 120 mm holds 6 L, half of it assumed there, with petrol and oil at its handbook density', () => {
  const t = read(`  - { ${box} }`).craft!.tanks[0]!
  expect(tankCapacity(t)).toBeCloseTo(0.006, 12)
  expect(tankLiquid(t).value).toBeCloseTo(0.003, 12)
  expect(t.filled.source).toBe('assumed')
  expect(t.density.value).toBe(749)
  expect(t.sealed).toBe(false)
})

test('an amount counts before a share, and carries its own range', () => {
  const t = read(`  - { ${box}, liquid: 4.5 L ±0.3 }`).craft!.tanks[0]!
  const got = tankLiquid(t)
  for (const [k, v] of Object.entries({ value: 0.0045, low: 0.0042, high: 0.0048 }))
    expect(got[k as keyof typeof got]).toBeCloseTo(v, 12)
})

test('a round tank, lying or standing, holds π/4 d² times its length', () => {
  const lying =
    '  - { kind: lying cylinder, name: a, foot: [1 m, 0 m, 0.1 m], diameter: 100 mm, length: 400 mm }'
  const standing =
    '  - { kind: standing cylinder, name: b, foot: [1 m, 0 m, 0.1 m], diameter: 200 mm, height: 100 mm }'
  const { craft, problems } = read(`${lying}\n${standing}`)
  expect(problems).toEqual([])
  expect(craft!.tanks.map((t) => tankCapacity(t))).toEqual([
    expect.closeTo(Math.PI * 1e-3, 12),
    expect.closeTo(Math.PI * 1e-3, 12),
  ])
})

test('more liquid than the tank holds is an error that names the field, the value and the limit', () => {
  expect(said(`  - { ${box}, liquid: 7 L }`)).toMatch(
    /tanks\.0\.liquid.*7 L.*no more than the 6 L that fuel tank holds/,
  )
})

test('a share and an amount that disagree are an error; alike they pass', () => {
  expect(said(`  - { ${box}, liquid: 3 L, filled: 80 % }`)).toMatch(/tanks\.0\.filled.*80 %.*3 L fills 50 %/)
  expect(said(`  - { ${box}, liquid: 3 L, filled: 50 % }`)).toBe('')
})

test('another liquid has to say its density', () => {
  expect(said(`  - { ${box}, holds: other }`)).toMatch(/tanks\.0\.density is missing/)
  expect(said(`  - { ${box}, holds: other, density: 1100 kg/m³ }`)).toBe('')
})

test('a weight named after fuel and heavy enough to hold it is asked about; an empty tank, a pump or a spare can is not', () => {
  const weight = (name: string, kg: number) =>
    said(
      `  - { ${box}, liquid: 5 L }`,
      `weights:\n  - { name: ${name}, mass: ${kg} kg, at: [1.4 m, 0 m, 0.1 m] }`,
    )
  expect(weight('tank and fuel', 5.5)).toMatch(
    /weights\.0\.mass.*tank and fuel, 5\.5 kg.*the empty tank only: 3\.7 kg of liquid/,
  )
  for (const name of ['empty fuel tank', 'fuel pump', 'spare fuel can']) expect(weight(name, 5.5)).toBe('')
  expect(weight('tank and fuel', 1)).toBe('')
})

test('a tank far from the hull is an error, as for any weight', () => {
  expect(said(`  - { ${box.replace('1.4 m', '9 m')} }`)).toMatch(/tanks\.0\.foot\.0.*on or near the hull/)
})

test('a neck with a bore as wide as its thread outside is told', () => {
  const neck = (bore: string) =>
    said(`  - { ${box}, neck: { over crests: 28 mm, pitches: 8, span: 12 mm, bore: ${bore} } }`)
  expect(neck('30 mm')).toMatch(/tanks\.0\.neck\.bore.*30 mm.*less than the 28 mm over the crests/)
  expect(neck('20 mm')).toBe('')
})
