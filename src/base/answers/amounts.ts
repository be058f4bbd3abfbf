/**
 * Makers of the numbers in sentences: one place says in which unit a builder reads a thing and how finely it is worth reading.
 * All take SI. `inMm(0.108)` reads "108 mm", or "4.25 in" for a reader of inches.
 */
import { fromSi } from '../units/convert.ts'
import type { Kind } from '../units/kinds.ts'
import type { Amount } from './sentence.ts'
import type { Range } from './solved.ts'

/** Makes an amount of one kind; `step` is the least difference worth showing, in the maker's unit. */
export type AmountMaker = (value: number, step?: number) => Amount

const maker =
  (kind: Kind, unit: string, usual: number, digits?: number): AmountMaker =>
  (value, step = usual) => ({ value, kind, unit, step, ...(digits === undefined ? {} : { digits }) })

export const inMm = maker('length', 'mm', 1)
export const inCm = maker('length', 'cm', 1)
export const inMetres = maker('length', 'm', 0.01)
export const inMicrons = maker('length', 'µm', 1)
export const inCm2 = maker('area', 'cm²', 1)
export const inMm2 = maker('area', 'mm²', 1)
export const inCm4 = maker('areaMoment', 'cm⁴', 0.01)
export const inLitres = maker('volume', 'L', 0.1, 3)
export const inCm3 = maker('volume', 'cm³', 1)
export const inKg = maker('mass', 'kg', 0.1, 3)
export const inGrams = maker('mass', 'g', 1, 3)
export const inSeconds = maker('time', 's', 0.1)
export const inMinutes = maker('time', 'min', 1)
export const inHours = maker('time', 'h', 0.5, 2)
export const inDegrees = maker('angle', 'deg', 0.1)
/** rev/s, read as revolutions a minute to the nearest ten */
export const inRpm = maker('rotation', 'rpm', 10)
export const inHertz = maker('frequency', 'Hz', 1)
/** m/s, read as km/h everywhere: one fact, one unit */
export const inSpeed = maker('speed', 'km/h', 0.1, 3)
/** speeds of gas or water inside the works, which nobody rides at */
export const inFlowSpeed = maker('speed', 'm/s', 0.1, 3)
export const inNewtons = maker('force', 'N', 1, 3)
/** a force as the luggage scale shows it */
export const inScaleKg = maker('force', 'kgf', 1)
export const inTorque = maker('torque', 'N·m', 0.1)
export const inKw = maker('power', 'kW', 0.1)
export const inMpa = maker('pressure', 'MPa', 1)
export const inKpa = maker('pressure', 'kPa', 1)
export const inBar = maker('pressure', 'bar', 0.01)
export const inCelsius = maker('temperature', '°C', 1)
export const inKelvinStep = maker('temperatureStep', 'K', 0.1)
export const inLitresPerSecond = maker('volumeFlow', 'L/s', 0.1, 3)
export const inGramsPerKwh = maker('specificConsumption', 'g/kWh', 1)
export const inKgPerM2 = maker('massPerArea', 'kg/m²', 0.1)
export const inKgPerM3 = maker('density', 'kg/m³', 1)
export const inDb = maker('level', 'dB', 1)
export const inDbA = maker('level', 'dB(A)', 1)
export const inNewtonsPerMm = maker('lineLoad', 'N/mm', 1)
export const inPercent = maker('ratio', '%', 1)
/** a plain number: "2.06 times" */
export const inTimes = maker('ratio', '1', 0.01)
export const inCount = maker('count', '1', 1)

/** The same number with the ends of its likely range; ends that are no numbers are left out. */
export function withEnds(amount: Amount, { low, high }: Pick<Range, 'low' | 'high'>): Amount {
  return Number.isFinite(low) && Number.isFinite(high) ? { ...amount, low, high } : amount
}

/** A range as one amount: `ranged(inNewtons, pull)` reads "584 N (446 to 721 N)". */
export function ranged(make: AmountMaker, range: Range, step?: number): Amount {
  return withEnds(make(range.value, step), range)
}

/** A difference, shown with its sign: "+38 N". */
export function asChange(amount: Amount): Amount {
  return { ...amount, change: true }
}

const spelled: Readonly<Record<string, AmountMaker>> = {
  length: inMm,
  speed: inSpeed,
  rotation: inRpm,
  power: inKw,
  force: inNewtons,
  mass: inKg,
  angle: inDegrees,
  temperature: inCelsius,
}

/** A value of the craft file in its field's own unit, to three figures. */
export function inField(value: number, kind: Kind, unit: string): Amount {
  const known = spelled[kind]?.(value)
  if (known && known.unit === unit) return { ...known, step: stepOf(fromSi(value, kind, unit), known.step) }
  // nought needs no digits behind it
  return { value, kind, unit, step: value === 0 ? 1 : 1e-9, digits: 3 }

  /** The usual step, or a finer one where three figures need it: a caliper's 1.65 mm of sheet is not 2 mm, and 98 mm stays 98 mm. */
  function stepOf(shown: number, usual: number): number {
    const three = Number(shown.toPrecision(3))
    let step = usual
    while (step > 1e-6 && Math.abs(three / step - Math.round(three / step)) > 1e-6) step /= 10
    return step
  }
}
