/** A limit as an amount: its SI unit tells how a builder reads it. */
import { inField, inKelvinStep } from '../base/answers/amounts.ts'
import type { Limit } from '../base/answers/limit.ts'
import type { Amount } from '../base/answers/sentence.ts'
import type { Kind } from '../base/units/kinds.ts'

const readIn: Readonly<Record<string, readonly [Kind, string]>> = {
  '1': ['ratio', '1'],
  m: ['length', 'mm'],
  kg: ['mass', 'kg'],
  N: ['force', 'N'],
  Pa: ['pressure', 'kPa'],
  rad: ['angle', 'deg'],
  dB: ['level', 'dB'],
  'm/s': ['speed', 'km/h'],
  'rev/s': ['rotation', 'rpm'],
}

/** colder than any thing on board: kelvins below this are a difference of two temperatures */
const coldest = 200
/** seconds from which minutes and hours are read */
const [minutes, hours] = [120, 7200]

/** In the unit it is read in, as finely as it was set. */
export function limitAmount({ value, unit }: Limit): Amount {
  if (unit === 'K')
    return Math.abs(value) < coldest ? inKelvinStep(value) : inField(value, 'temperature', '°C')
  if (unit === 's') return inField(value, 'time', value >= hours ? 'h' : value >= minutes ? 'min' : 's')
  const [kind, name] = readIn[unit] ?? ['ratio', '1']
  return inField(value, kind, name)
}
