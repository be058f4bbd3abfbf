import { type Kind, kinds, type Unit } from './kinds.ts'

const tables = new Map<Kind, Map<string, Unit>>()

function tableOf(kind: Kind): Map<string, Unit> {
  let table = tables.get(kind)
  if (!table) {
    table = new Map()
    for (const unit of kinds[kind] as readonly Unit[]) {
      table.set(unit.name, unit)
      for (const other of unit.also ?? []) table.set(other, unit)
    }
    tables.set(kind, table)
  }
  return table
}

/** The unit of `kind` written as `name` (any accepted spelling, spaces loosely), or undefined. */
export function findUnit(kind: Kind, name: string): Unit | undefined {
  const table = tableOf(kind)
  const tidy = name.trim().replace(/\s+/g, ' ')
  return table.get(tidy) ?? table.get(tidy.replace(/ ?([·*/^]) ?/g, '$1'))
}

/** Every accepted spelling of the units of a kind. */
export function spellings(kind: Kind): string[] {
  return [...tableOf(kind).keys()].filter((s) => s !== '')
}

/** Names of the units of a kind, as shown; the SI unit first. */
export function unitNames(kind: Kind): string[] {
  return (kinds[kind] as readonly Unit[]).map((u) => u.name)
}

/** The kinds that know this unit, for messages such as "kW is a unit of power". */
export function kindsKnowing(name: string): Kind[] {
  return (Object.keys(kinds) as Kind[]).filter((k) => k !== 'choice' && findUnit(k, name) !== undefined)
}

/** A kind's name in words: kinematicViscosity -> kinematic viscosity. */
export function kindInWords(kind: Kind): string {
  return kind.replace(/[A-Z]/g, (c) => ` ${c.toLowerCase()}`)
}

function must(kind: Kind, unit: string): Unit {
  const found = findUnit(kind, unit)
  if (!found)
    throw new RangeError(`unit "${unit}" is none of the units of ${kind}: ${unitNames(kind).join(', ')}`)
  return found
}

/**
 * value × factor, by division where the factor is one over a whole number: 118 / 1000 is 0.118 to the last
 * bit, 118 × 0.001 is not.
 */
export function scaled(value: number, factor: number): number {
  const inverse = 1 / factor
  return factor < 1 && Number.isInteger(inverse) ? value / inverse : value * factor
}

/** Written value in `unit` -> SI. Throws RangeError for a unit that is not of the kind. */
export function toSi(value: number, kind: Kind, unit: string): number {
  const u = must(kind, unit)
  return scaled(value, u.factor) + (u.offset ?? 0)
}

/** SI value -> value in `unit`. Throws RangeError for a unit that is not of the kind. */
export function fromSi(value: number, kind: Kind, unit: string): number {
  const u = must(kind, unit)
  return (value - (u.offset ?? 0)) / u.factor
}

/** A difference in `unit` -> SI: like toSi without the offset, so 2 °C is a step of 2 K. */
export function stepToSi(step: number, kind: Kind, unit: string): number {
  return scaled(step, must(kind, unit).factor)
}

/** A difference in SI -> `unit`. */
export function stepFromSi(step: number, kind: Kind, unit: string): number {
  return step / must(kind, unit).factor
}
