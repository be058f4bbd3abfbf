import fc from 'fast-check'
import { expect, test } from 'vitest'
import { writtenSources } from '../base/units/parse.ts'
import { craftOf, full, heron, least, problemsOf, teal, twoStroke } from './craft.testkit.ts'
import { listFields, quantitiesOf } from './paths.ts'
import { readCraft } from './read.ts'
import { usualSpread } from './valueSpread.ts'

test('the demo crafts read without any problem', () => {
  expect(problemsOf(heron)).toEqual([])
  expect(problemsOf(teal)).toEqual([])
})

test('a written value carries its SI number, range, source, text and path', () => {
  const { rotor } = craftOf(full).jet
  expect(rotor.bore).toEqual({
    value: 0.12,
    low: expect.closeTo(0.1199, 12),
    high: expect.closeTo(0.1201, 12),
    source: 'measured',
    text: '120.0 mm ±0.1 (measured)',
    kind: 'length',
    path: 'jet.rotor.bore',
  })
  expect(rotor.trailingEdge.path).toBe('jet.rotor.trailing edge')
})

test('a value left out is assumed, with its reason and a range', () => {
  const craft = craftOf(least)
  expect(craft.jet.rotor.gap).toMatchObject({ value: 4e-4, source: 'assumed', kind: 'length' })
  expect(craft.jet.rotor.gap.why).toContain('printed')
  expect(craft.jet.rotor.gap.low).toBeLessThan(craft.jet.rotor.gap.value)
  expect(craft.jet.rotor.gap.high).toBeGreaterThan(craft.jet.rotor.gap.value)
})

test('a default that follows another value is that value times its factor, and says so', () => {
  const { rotor, intake } = craftOf(least).jet
  expect(rotor.hub.value).toBeCloseTo(0.42 * 0.105, 12)
  expect(rotor.hub.why).toContain('0.42 × bore')
  expect(rotor.hubOut.value).toBeCloseTo(rotor.hub.value, 12)
  expect(intake.front.value).toBeCloseTo(0.26 * 2.6, 12)
})

test('a default that depends on a word takes that word’s value', () => {
  const sport = craftOf(twoStroke).engines[0]!
  const utility = craftOf(twoStroke.replace('tune: sport', 'tune: utility')).engines[0]!
  if (sport.kind !== 'two-stroke' || utility.kind !== 'two-stroke') throw new Error('wrong kind')
  expect(sport.carburettor.bore.value).toBeCloseTo(0.45 * 0.054, 12)
  expect(utility.carburettor.bore.value).toBeCloseTo(0.3 * 0.054, 12)
  expect(sport.rod.value).toBeCloseTo(1.93 * 0.0545, 12)
  expect(sport.exhaust?.pipe[1]?.wall.value).toBe(0.001)
  expect(sport.exhaust?.outlet?.flap).toBe(true)
  expect(sport.ports.exhaust.height).toBeUndefined()
})

test('the widest ranges of assumed values stay within the limits, and low ≤ value ≤ high everywhere', () => {
  for (const text of [heron, teal, least, twoStroke])
    for (const q of quantitiesOf(craftOf(text))) {
      expect(q.low, q.path).toBeLessThanOrEqual(q.value)
      expect(q.high, q.path).toBeGreaterThanOrEqual(q.value)
      expect(Number.isFinite(q.low) && Number.isFinite(q.high), q.path).toBe(true)
    }
})

test('a value without ± takes the usual range of its kind and source; a table entry takes none', () => {
  const craft = craftOf(full)
  expect(craft.jet.rotor.hub.high - craft.jet.rotor.hub.value).toBeCloseTo(1e-4, 12)
  expect(craft.place.depth.high).toBeCloseTo(1.8 * 1.1, 12)
  const engine = craft.engines[0]!
  if (engine.kind !== 'curve') throw new Error('wrong kind')
  expect(engine.curve[3]!.torque).toMatchObject({ value: 9.6, low: 9.6, high: 9.6 })
})

test('where a thing stands is known to a fixed distance, three times that for a guess', () => {
  const { nozzle } = craftOf(full).jet
  expect(nozzle.height.high - nozzle.height.value).toBeCloseTo(0.005, 12)
  const guessed = craftOf(full.replace('height: 50 mm (measured)', 'height: 0 mm (guess)')).jet.nozzle.height
  expect([guessed.low, guessed.high]).toEqual([-0.015, 0.015])
  const [forward, port] = craftOf(full).weights[0]!.at
  expect(forward.high - forward.value).toBeCloseTo(0.06, 12)
  expect(port.high - port.low).toBeCloseTo(0.12, 12)
})

test('the usual range of a size that must be above nought stays above nought', () => {
  fc.assert(
    fc.property(
      fc.constantFrom(...writtenSources),
      fc.double({ min: 1e-9, max: 1e3, noNaN: true }),
      (source, value) => {
        for (const { spec } of listFields()) {
          if (spec.type !== 'quantity' || spec.min <= 0 || spec.kind === 'temperature' || spec.coarse)
            continue
          const half = usualSpread(spec, source, value)
          expect(half).toBeGreaterThanOrEqual(0)
          expect(half).toBeLessThan(value)
        }
      },
    ),
  )
})

test('an engine that is not running reads as such', () => {
  expect(craftOf(full.replace('kind: curve', 'kind: curve\n    running: no')).engines[0]!.running).toBe(false)
  expect(craftOf(full).engines[0]!.running).toBe(true)
})

test('an electric motor reads from constants or from a torque line, and not from neither', () => {
  const electric = (rest: string) =>
    least.replace(/ {2}- \{ kind: peak.*\n/, `  - { kind: electric, ${rest} }\n`)
  const motor = craftOf(electric('torque per current: 0.12 N·m/A, most current: 150 A, voltage: 48 V'))
    .engines[0]!
  expect(motor.kind === 'electric' && motor.torquePerCurrent?.value).toBe(0.12)
  expect(problemsOf(electric('most torque: 18 N·m, free speed: 4500 rpm'))).toEqual([])
  expect(problemsOf(electric('most torque: 18 N·m'))).toEqual([
    expect.stringContaining('without enough numbers'),
  ])
})

test('hull stations, a mesh and the log are read', () => {
  const stations = [0, 1, 2]
    .map((x) => `    - { at: ${x} m, points: [[0 mm, 0 mm], [30 cm, 1 in], [0 mm, 200 mm]] }\n`)
    .join('')
  const craft = craftOf(
    `${least}  stations:\n${stations}  mesh: hull.stl\nlog:\n  - date: 2026-05-14\n    path: jet.rotor.pitch\n    to: 95 mm\n`,
  )
  expect(craft.hull.stations?.[2]?.points[1]?.map((q) => q.value)).toEqual([0.3, 0.0254])
  expect(craft.hull.mesh).toBe('hull.stl')
  expect(craft.log[0]).toEqual({ date: '2026-05-14', path: 'jet.rotor.pitch', to: '95 mm' })
})

test('words that were left out are listed as assumed', () => {
  expect(readCraft(least).source.assumedWords).toContain('jet.rotor.hand')
  expect(readCraft(full).source.assumedWords).not.toContain('jet.rotor.hand')
})

test('placeOf gives the line and column of a value, or of the group around one that is absent', () => {
  const { source } = readCraft(full)
  const line = full.split('\n').findIndex((l) => l.includes('pitch: 118'))
  expect(source.placeOf('jet.rotor.pitch')).toEqual({ line: line + 1, column: 12 })
  expect(source.placeOf('jet.rotor.tip thickness')).toEqual(source.placeOf('jet.rotor'))
  expect(source.placeOf('nothing at all')).toEqual({ line: 1, column: 1 })
})

test('every field has a label and a sentence that ends with a full stop', () => {
  for (const { path, spec } of listFields()) {
    expect(spec.label, path).toBeTruthy()
    expect(spec.gloss, path).toMatch(/^[A-Z].*\.$/)
  }
})

test('every default lies within its own range and the limits of its field, in every kind of engine', () => {
  for (const { path, spec } of listFields()) {
    if (spec.type !== 'quantity' || !spec.assumed) continue
    const all = 'by' in spec.assumed ? Object.values(spec.assumed.each) : [spec.assumed]
    for (const d of all) {
      const middle = 'value' in d ? d.value : (d.times ?? d.plus ?? 0)
      expect(d.low, path).toBeLessThanOrEqual(middle)
      expect(d.high, path).toBeGreaterThanOrEqual(middle)
      if ('value' in d) {
        expect(d.low, path).toBeGreaterThanOrEqual(spec.min - 1e-12)
        expect(d.high, path).toBeLessThanOrEqual(spec.max + 1e-12)
      }
    }
  }
})
