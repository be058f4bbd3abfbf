import type { CheckRow } from '../src/base/answers/check.ts'
import { toSi } from '../src/base/units/convert.ts'
import { type Kind, siUnit } from '../src/base/units/kinds.ts'

const nist = 'NIST SP 811 (2008), Guide for the Use of the International System of Units, appendix B.8'

/** unit, kind, SI value of one of it as tabulated to seven figures, name in the table */
const table: readonly (readonly [unit: string, kind: Kind, expected: number, name: string])[] = [
  ['in', 'length', 2.54e-2, 'inch'],
  ['ft', 'length', 3.048e-1, 'foot'],
  ['thou', 'length', 2.54e-5, 'mil (0.001 in)'],
  ['in²', 'area', 6.4516e-4, 'square inch'],
  ['US gal', 'volume', 3.785412e-3, 'gallon (U.S.)'],
  ['in³', 'volume', 1.638706e-5, 'cubic inch'],
  ['lb', 'mass', 4.535924e-1, 'pound (avoirdupois)'],
  ['oz', 'mass', 2.834952e-2, 'ounce (avoirdupois)'],
  ['mph', 'speed', 4.4704e-1, 'mile per hour'],
  ['kn', 'speed', 5.144444e-1, 'knot'],
  ['lbf', 'force', 4.448222, 'pound-force'],
  ['kgf', 'force', 9.80665, 'kilogram-force'],
  ['lbf·ft', 'torque', 1.355818, 'pound-force foot'],
  ['lbf·in', 'torque', 1.129848e-1, 'pound-force inch'],
  ['hp', 'power', 7.456999e2, 'horsepower (550 ft·lbf/s)'],
  ['PS', 'power', 7.354988e2, 'horsepower (metric)'],
  ['psi', 'pressure', 6.894757e3, 'pound-force per square inch'],
  ['atm', 'pressure', 1.01325e5, 'atmosphere, standard'],
  ['mmH₂O', 'pressure', 9.80665, 'millimetre of water, conventional'],
  ['lb/ft³', 'density', 1.601846e1, 'pound per cubic foot'],
  ['US gal/min', 'volumeFlow', 6.30902e-5, 'gallon (U.S.) per minute'],
]

/** Units of craft files against the published conversion factors. */
export function unitsChecks(): CheckRow[] {
  const factors = table.map(
    ([unit, kind, expected, name]): CheckRow => ({
      id: `units-${kind}-${unit.replaceAll(/[^A-Za-z]+/g, '') || unit}${unit.includes('²') ? '2' : unit.includes('³') ? '3' : ''}`,
      group: 'units',
      quantity: `one ${name}`,
      unit: siUnit(kind),
      expected,
      got: toSi(1, kind, unit),
      // seven figures are tabulated: half of the last is up to 5e-7 of the value
      withinPart: 5e-7,
      origin: 'published',
      source: nist,
    }),
  )
  const temperature = (id: string, unit: string, at: number, expected: number): CheckRow => ({
    id,
    group: 'units',
    quantity: `${at} ${unit}`,
    unit: 'K',
    expected,
    got: toSi(at, 'temperature', unit),
    within: 1e-9,
    origin: 'exact',
    source: `${nist}: T/K = t/°C + 273.15 = (t/°F + 459.67)/1.8`,
  })
  return [
    ...factors,
    temperature('units-freezing-F', '°F', 32, 273.15),
    temperature('units-boiling-C', '°C', 100, 373.15),
  ]
}
