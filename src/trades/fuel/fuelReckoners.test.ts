import { expect, test } from 'vitest'
import { fuelReckoners } from './fuelReckoners.ts'

const ask = (id: string, given: Record<string, number>, words: Record<string, string> = {}) => {
  const r = fuelReckoners.find((x) => x.id === id)!
  const filled = Object.fromEntries(
    r.inputs.filter((p) => p.kind !== 'choice').map((p) => [p.name, given[p.name] ?? p.assumed]),
  )
  return r.reckon(filled as Record<string, number>, words)
}

test('premix: 5 L at 25 to 1 takes 200 mL of oil, and the petrol in the jet is 3.8 % less', () => {
  const r = ask('premix', { petrol: 5e-3, parts: 25 })
  expect(r['oil']! * 1e6).toBeCloseTo(200, 9)
  expect(r['leaner']).toBeCloseTo(1 / 26, 12)
})
test('tank-fill: more than the tank holds is refused by name, a fill that warms over the top spills', () => {
  expect(() => ask('tank-fill', { capacity: 5e-3, filled: 6e-3 })).toThrow(/^filled: .*ullage/)
  const r = ask('tank-fill', { capacity: 0.01, filled: 0.0099 })
  expect(r['spill']!).toBeGreaterThan(0)
  expect(r['most']! * 1e3).toBeCloseTo(9.5, 9)
  expect(r['ullage']! * 1e3).toBeCloseTo(0.1, 9)
})
test('hose-drop: a narrow barb alone can take more than its hose', () => {
  const plain = ask('hose-drop', { flow: 1e-5, bore: 4e-3, length: 0.3 })
  const barb = ask('hose-drop', { flow: 1e-5, bore: 4e-3, length: 0.3, losses: 2, narrowest: 1.5e-3 })
  expect(barb['drop']!).toBeGreaterThan(2 * plain['drop']!)
})
test('petrol-vapour: suction beyond the air is refused; with none the fuel boils where its vapour has the air’s pressure', () => {
  expect(() => ask('petrol-vapour', { suction: 7e4, air: 6e4 })).toThrow(/^suction/)
  expect(ask('petrol-vapour', { suction: 0, reid: 101_325 })['boils']).toBeCloseTo(310.93, 6)
})
test('blocked-vent: a litre of air and a pump of 8 kPa give up after 86 mL', () => {
  expect(ask('blocked-vent', { ullage: 1e-3, drawn: 1e-4, lift: 8e3 })['until']! * 1e6).toBeCloseTo(85.7, 1)
})
test('chip-in-jet: a quarter strip in 0.8 mm makes 19 of 13, one as wide as the jet is refused', () => {
  const r = ask('chip-in-jet', { chip: 0.2e-3 }, { form: 'strip' })
  expect(r['mixture']).toBeCloseTo(18.98, 2)
  expect(r['choke']).toBeCloseTo(2.13, 2)
  expect(r['air']!).toBeLessThan(1)
  expect(() => ask('chip-in-jet', { chip: 0.8e-3 }, { form: 'strip' })).toThrow(/^chip/)
})
test('jet-flow and jet-bottle-test: the jet found for a flow passes it; one that caught half is half shut', () => {
  const r = ask('jet-flow', { bore: 0.8e-3 })
  expect(ask('jet-flow', { bore: r['suits']! })['flow']! * 3.6e6).toBeCloseTo(3.62, 9)
  const clean = ask('jet-bottle-test', { bore: 0.8e-3 })['clean']!
  expect(ask('jet-bottle-test', { bore: 0.8e-3, caught: clean / 2 })['shut']).toBeCloseTo(0.5, 12)
})
test('filter-for-jet: 0.6 mm wants 150 µm', () => {
  expect(ask('filter-for-jet', { hole: 0.6e-3 })['opening']! * 1e6).toBeCloseTo(150, 9)
})
test('vent-flow: 10 L a minute through 6 mm builds 58 Pa of air, 36 kPa of petrol', () => {
  expect(ask('vent-flow', { flow: 0.01 / 60, bore: 6e-3 }, { through: 'air' })['pressure']!).toBeCloseTo(
    58,
    0,
  )
  expect(
    ask('vent-flow', { flow: 0.01 / 60, bore: 6e-3 }, { through: 'petrol' })['pressure']! / 1e3,
  ).toBeCloseTo(36, 1)
})
test('fuel-use: 3 kW for an hour at 450 g/kWh is 1.8 L', () => {
  expect(ask('fuel-use', { power: 3e3 })['volume']! * 1e3).toBeCloseTo(1.812, 3)
})
