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

/** SI value of a kind in `unit`, without the unit. */
export function shownNumber(si: number, kind: Kind, unit: string): string {
  return tidyNumber(fromSi(si, kind, unit))
}

/** The step of an arrow key: about one part in a hundred of the value, as 1, 2 or 5 times a power of ten; one for counts. */
export function stepOf(value: number, kind: Kind): number {
  if (kind === 'count') return 1
  const rough = Math.abs(value) / 100 || 0.01
  const power = 10 ** Math.floor(Math.log10(rough))
  const part = rough / power
  return power * (part < 1.5 ? 1 : part < 3.5 ? 2 : part < 7.5 ? 5 : 10)
}

/** A bare number or fraction with `unit` put behind it; a text with any unit of its own as it is. */
export function withUnit(text: string, unit: string): string {
  return unit !== '' && /^[\s\d.,/+\-−–½¼¾eE]+$/.test(text) ? `${text.trim()} ${unit}` : text
}
