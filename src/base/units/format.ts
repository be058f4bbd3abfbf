import { findUnit, fromSi } from './convert.ts'
import { type Kind, siUnit } from './kinds.ts'

const plainFormats = new Map<number, Intl.NumberFormat>()
const powerFormats = new Map<number, Intl.NumberFormat>()

function formatFor(size: number, digits: number): Intl.NumberFormat {
  const scientific = size !== 0 && (size < 1e-4 || size >= 1e9)
  const held = scientific ? powerFormats : plainFormats
  let format = held.get(digits)
  if (!format) {
    format = new Intl.NumberFormat('en', {
      maximumSignificantDigits: digits,
      notation: scientific ? 'scientific' : 'standard',
      useGrouping: 'min2',
    })
    held.set(digits, format)
  }
  return format
}

/**
 * A number with at most `digits` significant digits (1 to 17). Thousands are parted by a narrow space
 * from five figures up, as ISO 80000-1 (2022) 7.3.1 has it, never by a comma. Not finite: "—".
 */
export function formatNumber(value: number, digits = 3): string {
  if (!Number.isFinite(value)) return '—'
  const text = formatFor(Math.abs(value), digits).format(value)
  return text.replaceAll(',', '\u202F').replace(/^-/, '−').replace('E', 'e')
}

/** SI value -> "47 mm": in `unit`, or in the kind's SI unit. Ratios and counts carry no unit name. */
export function formatQuantity(value: number, kind: Kind, unit?: string, digits = 3): string {
  if (kind === 'choice') return String(value)
  const name = findUnit(kind, unit ?? siUnit(kind))?.name ?? siUnit(kind)
  const number = formatNumber(fromSi(value, kind, name), digits)
  return name === '1' ? number : name === '%' ? `${number} %` : `${number} ${name}`
}

export type DisplaySystem = 'metric' | 'inch'

/** metric unit and what stands for it in the inch system */
const pairs: Readonly<Partial<Record<Kind, readonly (readonly [string, string])[]>>> = {
  length: [
    ['mm', 'in'],
    ['cm', 'in'],
    ['m', 'ft'],
    ['µm', 'thou'],
  ],
  area: [
    ['mm²', 'in²'],
    ['cm²', 'in²'],
    ['m²', 'in²'],
  ],
  volume: [
    ['cm³', 'in³'],
    ['mm³', 'in³'],
    ['L', 'US gal'],
    ['m³', 'US gal'],
  ],
  mass: [
    ['kg', 'lb'],
    ['g', 'oz'],
  ],
  speed: [
    ['km/h', 'mph'],
    ['m/s', 'ft/s'],
    ['kn', 'kn'],
  ],
  force: [
    ['N', 'lbf'],
    ['kN', 'lbf'],
    ['kgf', 'lbf'],
  ],
  torque: [['N·m', 'lbf·ft']],
  lineLoad: [
    ['N/mm', 'lbf/in'],
    ['N/m', 'lbf/in'],
  ],
  massPerArea: [['kg/m²', 'lb/ft²']],
  massFlow: [
    ['kg/h', 'lb/h'],
    ['g/s', 'lb/h'],
    ['kg/s', 'lb/h'],
  ],
  power: [
    ['kW', 'hp'],
    ['W', 'hp'],
  ],
  pressure: [
    ['kPa', 'psi'],
    ['bar', 'psi'],
    ['mbar', 'psi'],
    ['Pa', 'psi'],
    ['MPa', 'psi'],
    ['GPa', 'psi'],
  ],
  temperature: [
    ['°C', '°F'],
    ['K', '°F'],
  ],
  temperatureStep: [['K', '°F']],
  areaMoment: [
    ['cm⁴', 'in⁴'],
    ['mm⁴', 'in⁴'],
  ],
  density: [
    ['kg/m³', 'lb/ft³'],
    ['g/cm³', 'lb/ft³'],
  ],
  volumeFlow: [
    ['L/min', 'US gal/min'],
    ['L/s', 'US gal/min'],
    ['L/h', 'US gal/min'],
    ['m³/s', 'US gal/min'],
  ],
}

/** units a builder reads, where the SI unit is not the one */
const usual: Readonly<Partial<Record<Kind, string>>> = {
  length: 'mm',
  volume: 'cm³',
  rotation: 'rpm',
  angle: 'deg',
  power: 'kW',
  pressure: 'kPa',
  temperature: '°C',
  speed: 'km/h',
  volumeFlow: 'L/s',
}

/**
 * The unit to show a kind in. `hint` is the unit the field would be written in; the metric system keeps
 * it when it is metric, the inch system gives its counterpart. Kinds without a counterpart keep theirs.
 */
export function displayUnit(kind: Kind, system: DisplaySystem, hint?: string): string {
  const table = pairs[kind]
  const named = hint === undefined ? undefined : findUnit(kind, hint)?.name
  const wanted = named ?? usual[kind] ?? siUnit(kind)
  if (!table) return wanted
  if (system === 'inch') return table.find(([m]) => m === wanted)?.[1] ?? wanted
  if (table.some(([m]) => m === wanted) || !table.some(([, i]) => i === wanted)) return wanted
  return table.find(([, i]) => i === wanted)?.[0] ?? wanted
}
