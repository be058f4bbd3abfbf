/** Words and sources that several sentences of the fuel share. */
import { inLitres, inMinutes } from '../../base/answers/amounts.ts'
import type { Amount } from '../../base/answers/sentence.ts'
import { formatQuantity } from '../../base/units/format.ts'

/** Litres to the tenth, below one to the hundredth. */
export const inTankLitres = (v: number): Amount => inLitres(v, Math.abs(v) < 1e-3 ? 0.01 : 0.1)

/** A time of use, s: minutes. */
export const inUse = (s: number): Amount => inMinutes(s, s < 600 ? 0.1 : 1)

/** What an order says has to hold when it is done: rounded to the step that is read, the way that is enough. */
export const enough = (value: number, step: number): number => Math.ceil(value / step - 1e-9) * step
export const atMost = (value: number, step: number): number => Math.floor(value / step + 1e-9) * step

/** A length as one types it into the file, mm to the whole. */
export const typedMm = (v: number): string => formatQuantity(v, 'length', 'mm', 3)

export const names = (list: readonly string[]): string =>
  list.length < 2 ? (list[0] ?? '') : `${list.slice(0, -1).join(', ')} and ${list.at(-1)}`

export const ownTank = 'The tank’s own mesh below a level plane, this project'
export const hagen = 'Hagen and Poiseuille; Colebrook (1939); loss factors from memory'
export const orifice = 'Orifice flow; discharge of jets from memory'
export const circle =
  'Area of a circle less a strip; torque over mixture from memory of Taylor (1968) and Heywood (1988)'
export const vapour =
  'Clausius and Clapeyron from the Reid vapour pressure, EN 228; heat of vaporisation from memory'
export const cfr = '33 CFR 183 subpart J (published rules for inboard petrol boats, to compare with)'
export const practice = 'Common practice, no source'
