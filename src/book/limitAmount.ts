/** A limit as an amount: its SI unit tells how a builder reads it. */
import {
  type AmountMaker,
  inCelsius,
  inDb,
  inDegrees,
  inKg,
  inKpa,
  inMm,
  inNewtons,
  inRpm,
  inSeconds,
  inSpeed,
  inTimes,
} from '../base/answers/amounts.ts'
import type { Limit } from '../base/answers/limit.ts'
import type { Amount } from '../base/answers/sentence.ts'

const makers: Readonly<Record<string, AmountMaker>> = {
  '1': inTimes,
  m: inMm,
  kg: inKg,
  s: inSeconds,
  N: inNewtons,
  Pa: inKpa,
  K: inCelsius,
  rad: inDegrees,
  dB: inDb,
  'm/s': inSpeed,
  'rev/s': inRpm,
}

/** As finely as the limit needs: 2.5 mm is not 3 mm. Another unit than those of limits so far is shown as it is. */
export function limitAmount({ value, unit }: Limit): Amount {
  const make = makers[unit]
  if (!make) return { value, kind: 'ratio', unit: '1', step: 1e-9, digits: 3 }
  const usual = make(value)
  return { ...usual, step: usual.step / 1000, digits: 3 }
}
