import fc from 'fast-check'
import { expect, test } from 'vitest'
import { craftOf, full, heron, least, teal, twoStroke } from './craft.testkit.ts'
import { setValue } from './edit.ts'
import { fieldAt, isQuantitySpec, listFields, quantitiesOf } from './paths.ts'
import { whatIf } from './whatIf.ts'

test('a tried value is replaced with its range around it, and the craft it came from stays', () => {
  const craft = craftOf(full)
  const tried = whatIf(craft, { 'jet.rotor.pitch': 0.1, 'engines.0.curve.2.torque': 8 })
  expect(tried.jet.rotor.pitch.value).toBe(0.1)
  expect(tried.jet.rotor.pitch.high - 0.1).toBeCloseTo(0.003, 12)
  expect(craft.jet.rotor.pitch.value).toBe(0.118)
  const engine = tried.engines[0]!
  expect(engine.kind === 'curve' && engine.curve[2]!.torque.value).toBe(8)
})

test('what is not touched is shared, not copied', () => {
  const craft = craftOf(full)
  const tried = whatIf(craft, { 'rider.mass': 70 })
  expect(tried.jet).toBe(craft.jet)
  expect(tried.rider).not.toBe(craft.rider)
  expect(whatIf(craft, {}).engines).toBe(craft.engines)
})

test('words and flags can be tried, and defaults that hang on them follow', () => {
  const craft = craftOf(twoStroke)
  expect(whatIf(craft, { 'engines.0.running': false }).engines[0]!.running).toBe(false)
  const race = whatIf(craft, { 'engines.0.tune': 'race' }).engines[0]!
  expect(race.kind === 'two-stroke' && race.carburettor.bore.value).toBeCloseTo(0.55 * 0.054, 12)
})

test('a value that is absent but known can be tried', () => {
  expect(whatIf(craftOf(least), { 'place.air pressure': 1e5 }).place.airPressure?.value).toBe(1e5)
})

test('trying gives the same numbers as editing the file and reading it', () => {
  fc.assert(
    fc.property(
      fc.constantFrom(full, heron, teal, least, twoStroke),
      fc.nat(),
      fc.double({ min: 0.9, max: 1.1, noNaN: true }),
      (text, n, part) => {
        const craft = craftOf(text)
        const all = [...quantitiesOf(craft)].filter((q) => q.kind !== 'count')
        const q = all[n % all.length]!
        const spec = fieldAt(q.path)
        if (!isQuantitySpec(spec) || q.kind === 'temperature') return
        const to = q.value * part
        let edited: ReturnType<typeof craftOf>
        try {
          edited = craftOf(setValue(text, q.path, `${to} ${q.kind === 'ratio' ? '' : siName(q.kind)}`))
        } catch (e) {
          // a limit or a contradiction; whatIf does not check those
          expect(String(e)).toMatch(/expected/)
          return
        }
        const tried = whatIf(craft, { [q.path]: to })
        const values = (c: typeof craft) =>
          [...quantitiesOf(c)].map((x) => [x.path, Number(x.value.toPrecision(12))])
        expect(values(tried).sort()).toEqual(values(edited).sort())
      },
    ),
    { numRuns: 80 },
  )
})
const siName = (kind: string) =>
  ({
    length: 'm',
    mass: 'kg',
    angle: 'rad',
    rotation: 'rev/s',
    torque: 'N·m',
    power: 'W',
    volume: 'm³',
    pressure: 'Pa',
    speed: 'm/s',
    flowResistivity: 'Pa·s/m²',
  })[kind]!

test('a chain of tries carries followers along until one is set by hand', () => {
  const craft = craftOf(least)
  const wide = whatIf(whatIf(craft, { 'jet.rotor.bore': 0.11 }), { 'jet.rotor.bore': 0.12 })
  expect(wide.jet.rotor.hub.value).toBeCloseTo(0.42 * 0.12, 12)
  expect(wide.jet.rotor.hubOut.value).toBeCloseTo(0.42 * 0.12, 12)
  const set = whatIf(whatIf(craft, { 'jet.rotor.hub': 0.04 }), { 'jet.rotor.bore': 0.12 })
  expect(set.jet.rotor.hub.value).toBe(0.04)
  expect(set.jet.rotor.hubOut.value).toBe(0.04)
})

test('a path the craft does not have, a number that is not finite and a word out of the list are RangeErrors', () => {
  const craft = craftOf(full)
  for (const bad of [
    { 'jet.colour': 1 },
    { 'jet.rotor': 1 },
    { 'engines.7.redline': 1 },
    { name: 1 },
    { 'jet.rotor.bore': Number.NaN },
    { 'jet.rotor.hand': 'up' },
    { 'jet.rotor': 'x' },
  ])
    expect(() => whatIf(craft, bad as Record<string, number | string>), JSON.stringify(bad)).toThrow(
      RangeError,
    )
})

test('fieldAt knows every listed field and every number of every craft, in both spellings', () => {
  for (const { path } of listFields()) expect(fieldAt(path), path).toBeDefined()
  for (const text of [full, heron, teal, least, twoStroke])
    for (const q of quantitiesOf(craftOf(text))) {
      const spec = fieldAt(q.path)
      expect(isQuantitySpec(spec) && spec.kind, q.path).toBe(q.kind)
    }
  expect(fieldAt('jet.rotor.trailingEdge')).toBe(fieldAt('jet.rotor.trailing edge'))
  expect(fieldAt('jet.rotor.nothing')).toBeUndefined()
  expect(fieldAt('weights.x.mass')).toBeUndefined()
})
