import { fromSi } from '../../../base/units/convert.ts'
import type { Kind } from '../../../base/units/kinds.ts'

/** A number in the way a form shows it: five significant digits, no trailing noughts, never an exponent. */
export function tidyNumber(value: number, digits = 5): string {
  if (value === 0) return '0'
  if (!Number.isFinite(value)) return '–'
  const places = Math.min(12, Math.max(0, digits - 1 - Math.floor(Math.log10(Math.abs(value)))))
  const text = value.toFixed(places)
  return text.includes('.') ? text.replace(/\.?0+$/, '') : text
}

/** places behind the point that a builder reads in a unit of the inch system; a metric value is shown to five figures */
const inchPlaces: Readonly<Record<string, number>> = {
  in: 3,
  ft: 2,
  lb: 1,
  oz: 1,
  lbf: 1,
  mph: 1,
  hp: 2,
  psi: 2,
  '°F': 1,
  lbf·ft: 2,
  'US gal': 2,
  'in³': 2,
  'in²': 2,
}

/** SI value of a kind in `unit`, without the unit, as a field shows it: "4.724" of inches, "172" of pounds. */
export function shownNumber(si: number, kind: Kind, unit: string): string {
  const value = fromSi(si, kind, unit)
  const places = inchPlaces[unit]
  if (places === undefined || !Number.isFinite(value)) return tidyNumber(value)
  return tidyNumber(Math.round(value * 10 ** places) / 10 ** places)
}

/** SI value of a kind as it goes into the file: near enough that nothing is lost, and no more figures than that. */
export function writtenNumber(si: number, kind: Kind, unit: string): string {
  return tidyNumber(fromSi(si, kind, unit), inchPlaces[unit] === undefined ? 5 : 4)
}

/** The step of an arrow key: about one part in a hundred of the value, as 1, 2 or 5 times a power of ten; one for counts. */
export function stepOf(value: number, kind: Kind, unit = ''): number {
  if (kind === 'count') return 1
  // a step that could not be seen is none
  const least = 10 ** -(inchPlaces[unit] ?? 9)
  const rough = Math.max(Math.abs(value) / 100 || 0.01, least)
  const power = 10 ** Math.floor(Math.log10(rough))
  const part = rough / power
  return power * (part < 1.5 ? 1 : part < 3.5 ? 2 : part < 7.5 ? 5 : 10)
}

/** A bare number or fraction with `unit` put behind it; a text with any unit of its own as it is. */
export function withUnit(text: string, unit: string): string {
  return unit !== '' && /^[\s\d.,/+\-−–½¼¾eE]+$/.test(text) ? `${text.trim()} ${unit}` : text
}
