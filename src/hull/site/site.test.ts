import { expect, test } from 'vitest'
import { craftOf, least } from '../../craft/craft.testkit.ts'
import { seaWaterDensity } from '../../physics/fluid/water.ts'
import { readSite, siteOf } from './site.ts'

const at = (place: string) => siteOf(craftOf(`${least}place: { ${place} }\n`))

test('the air follows the standard atmosphere with altitude, unless the file has a barometer', () => {
  // ISO 2533:1975, table 1: 1.2250 kg/m³ at the sea, 1.1117 at 1000 m and 8.5 °C, 89874 Pa
  expect(at('altitude: 0 m, air temperature: 15 °C').air.density).toBeCloseTo(1.225, 3)
  const high = at('altitude: 1000 m, air temperature: 8.5 °C').air
  expect(high.density).toBeCloseTo(1.1117, 3)
  expect(high.pressure).toBeCloseTo(89874.6, 0)
  const told = at('altitude: 1000 m, air pressure: 1013.25 mbar, air temperature: 15 °C').air
  expect(told.pressure).toBeCloseTo(101325, 6)
  expect(told.density).toBeCloseTo(1.225, 3)
})

test('salt water is heavier, thicker and boils later than fresh water of the same warmth', () => {
  const fresh = at('water: fresh, water temperature: 15 °C').water
  const salt = at('water: salt, water temperature: 15 °C').water
  expect(fresh.density).toBeCloseTo(999.1, 1)
  // UNESCO 1981: 1025.97 kg/m³ at 15 °C and 35 g/kg
  expect(salt.density).toBeCloseTo(1025.97, 1)
  expect(salt.viscosity).toBeGreaterThan(fresh.viscosity)
  expect(salt.vapourPressure).toBeLessThan(fresh.vapourPressure)
  expect(fresh.kinematicViscosity).toBeCloseTo(fresh.viscosity / fresh.density, 15)
})

test('fresh water is held at freezing, sea water below it keeps its own density', () => {
  expect(at('water: fresh, water temperature: -2 °C').water.temperature).toBe(273.15)
  const cold = at('water: salt, water temperature: -2 °C').water
  expect(cold.density).toBe(seaWaterDensity(271.15, 0.035))
  expect(cold.vapourPressure).toBeGreaterThan(0)
})

test('a craft that shares its place shares its site, and values can be drawn in place of those written', () => {
  const craft = craftOf(least)
  expect(siteOf({ place: craft.place })).toBe(siteOf(craft))
  const warm = readSite(craft.place, (q) => (q.path === 'place.water temperature' ? 300 : q.value))
  expect(warm.water.temperature).toBe(300)
  expect(warm.air).toEqual(siteOf(craft).air)
})
