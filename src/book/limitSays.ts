/** A limit in words: its unit tells how a builder reads it. */
import { inField, inKelvinStep } from '../base/answers/amounts.ts'
import type { Limit } from '../base/answers/limit.ts'
import { type Sentence, say } from '../base/answers/sentence.ts'
import type { Kind } from '../base/units/kinds.ts'

const readIn: Readonly<Record<string, readonly [Kind, string]>> = {
  '1': ['ratio', '1'],
  m: ['length', 'mm'],
  'm²': ['area', 'cm²'],
  'm³/s': ['volumeFlow', 'L/h'],
  kg: ['mass', 'kg'],
  N: ['force', 'N'],
  N·m: ['torque', 'N·m'],
  Pa: ['pressure', 'kPa'],
  rad: ['angle', 'deg'],
  dB: ['level', 'dB'],
  'm/s': ['speed', 'km/h'],
  'm/s²': ['acceleration', 'm/s²'],
  'rev/s': ['rotation', 'rpm'],
}

/** colder than any thing on board: kelvins below this are a difference of two temperatures */
const coldest = 200
/** seconds from which minutes and hours are read */
const [minutes, hours] = [120, 7200]

/** In the unit it is read in, as finely as it was set; one in a unit of its own with that behind it. */
export function limitSays({ value, unit }: Limit): Sentence {
  if (unit === 'K')
    return say`${Math.abs(value) < coldest ? inKelvinStep(value) : inField(value, 'temperature', '°C')}`
  if (unit === 's')
    return say`${inField(value, 'time', value >= hours ? 'h' : value >= minutes ? 'min' : 's')}`
  const known = readIn[unit]
  return known ? say`${inField(value, ...known)}` : say`${inField(value, 'ratio', '1')} ${unit}`
}
