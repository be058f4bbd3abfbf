/** How the balance's numbers are shown: a unit for each kind, and rounding that fits what is known. */
import { fromSi, stepFromSi } from '../../base/units/convert.ts'
import type { DisplaySystem } from '../../base/units/format.ts'

export interface Look {
  /** figure width, mm */
  width: number
  speed: 'km/h' | 'mph' | 'm/s'
  force: 'N' | 'lbf'
  torque: 'N·m' | 'lbf·ft'
  length: 'mm' | 'in'
  power: 'kW' | 'hp'
  pressure: 'kPa' | 'psi'
  temperature: '°C' | '°F'
}

export const metricLook: Look = {
  width: 180,
  speed: 'km/h',
  force: 'N',
  torque: 'N·m',
  length: 'mm',
  power: 'kW',
  pressure: 'kPa',
  temperature: '°C',
}
export const inchLook: Look = {
  width: 180,
  speed: 'mph',
  force: 'lbf',
  torque: 'lbf·ft',
  length: 'in',
  power: 'hp',
  pressure: 'psi',
  temperature: '°F',
}

/** The reader's system, for sentences that carry their numbers. */
export const systemOf = (look: Pick<Look, 'speed'>): DisplaySystem =>
  look.speed === 'mph' ? 'inch' : 'metric'

type Shown = 'speed' | 'force' | 'torque' | 'length' | 'power' | 'pressure' | 'temperature'

/** SI value as a number in the look's unit. */
export const inLook = (value: number, kind: Shown, look: Look): number => fromSi(value, kind, look[kind])

/** A number with so many places, a true minus, and a dash for none. */
export function plain(value: number, places: number): string {
  if (!Number.isFinite(value)) return '–'
  const text = Math.abs(value).toFixed(places)
  return `${value < 0 && Number(text) !== 0 ? '−' : ''}${text}`
}

const placesOf = (kind: Shown, look: Look): number =>
  kind === 'force' || look[kind] === 'mm' ? 0 : look[kind] === 'in' ? 2 : 1

/** SI value in words: "31.4 km/h". */
export function says(value: number, kind: Shown, look: Look): string {
  const v = inLook(value, kind, look)
  // forces to three figures, as no luggage scale reads closer
  const rounded = kind === 'force' && Math.abs(v) >= 1000 ? Math.round(v / 10) * 10 : v
  return `${plain(rounded, placesOf(kind, look))} ${look[kind]}`
}

/** A difference with its sign: "+1.2 km/h". */
export function saysStep(value: number, kind: Shown, look: Look): string {
  const v = stepFromSi(value, kind, look[kind])
  const text = plain(v, placesOf(kind, look))
  return `${v > 0 && Number(text) !== 0 ? '+' : ''}${text} ${look[kind]}`
}

/** rev/s as rounded rev/min, "7350 rpm". */
export function saysRpm(rotation: number): string {
  return Number.isFinite(rotation) ? `${Math.round((rotation * 60) / 10) * 10} rpm` : '–'
}

/** Masses in the look's system. */
export const massUnit = (look: Look): 'kg' | 'lb' => (systemOf(look) === 'inch' ? 'lb' : 'kg')
export const massIn = (mass: number, look: Look, places: number): string =>
  plain(fromSi(mass, 'mass', massUnit(look)), places)
