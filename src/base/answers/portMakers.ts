/** Short forms for the inputs and outputs of reckoners, so that a list of them reads like a table. */
import type { Kind } from '../units/kinds.ts'
import type { Port } from './reckoner.ts'

/** Makes a port: its name, what it is, and for an input the ends it may lie between and what is assumed; all SI. */
export type PortMaker<K extends Kind = Kind> = <const N extends string>(
  name: N,
  says: string,
  min?: number,
  max?: number,
  assumed?: number,
) => Port<N> & { kind: K }

/** The maker of ports of one kind, typed and read in one unit. */
export function portOf<const K extends Kind>(kind: K, unit: string): PortMaker<K> {
  return (name, says, min, max, assumed) => ({
    name,
    says,
    kind,
    unit,
    ...(min === undefined ? {} : { min }),
    ...(max === undefined ? {} : { max }),
    ...(assumed === undefined ? {} : { assumed }),
  })
}

/** An input that is one of a few words. */
export const choice = <const N extends string>(
  name: N,
  says: string,
  choices: readonly string[],
): Port<N> & { kind: 'choice' } => ({
  name,
  says,
  kind: 'choice',
  unit: '',
  choices,
})

export const degrees = portOf('angle', 'deg')
export const mm = portOf('length', 'mm')
export const metres = portOf('length', 'm')
export const cm2 = portOf('area', 'cm²')
export const cm3 = portOf('volume', 'cm³')
export const litres = portOf('volume', 'L')
export const count = portOf('count', '1')
export const ratio = portOf('ratio', '1')
export const percent = portOf('ratio', '%')
export const grams = portOf('mass', 'g')
export const newtons = portOf('force', 'N')
export const newtonMetres = portOf('torque', 'N·m')
export const pascals = portOf('pressure', 'Pa')
export const kPa = portOf('pressure', 'kPa')
export const bar = portOf('pressure', 'bar')
export const megapascals = portOf('pressure', 'MPa')
export const kW = portOf('power', 'kW')
export const joulesPerKg = portOf('specificEnergy', 'J/kg')
export const metresOfWater = portOf('specificEnergy', 'm of water')
export const metresPerSecond = portOf('speed', 'm/s')
export const kmh = portOf('speed', 'km/h')
export const revsPerMinute = portOf('rotation', 'rpm')
export const hertz = portOf('frequency', 'Hz')
export const celsius = portOf('temperature', '°C')
export const kelvins = portOf('temperature', 'K')
export const gramsPerSecond = portOf('massFlow', 'g/s')
export const kgPerSecond = portOf('massFlow', 'kg/s')
export const litresPerSecond = portOf('volumeFlow', 'L/s')
export const dBA = portOf('level', 'dB(A)')
export const centimetres = portOf('length', 'cm')
export const squareMetres = portOf('area', 'm²')
export const plainRatio = portOf('ratio', '')
export const kilograms = portOf('mass', 'kg')
export const seconds = portOf('time', 's')
export const gigapascals = portOf('pressure', 'GPa')
export const kgPerCubicMetre = portOf('density', 'kg/m³')
export const millipascalSeconds = portOf('viscosity', 'mPa·s')
export const squareMillimetresPerSecond = portOf('kinematicViscosity', 'mm²/s')
export const hours = portOf('time', 'h')
export const litresPerHour = portOf('volumeFlow', 'L/h')
export const litresPerMinute = portOf('volumeFlow', 'L/min')
export const perKwh = portOf('specificConsumption', 'g/kWh')
