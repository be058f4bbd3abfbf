/**
 * What a shape by name is: the values it is made from, each with a usual value and its range, and how a workbench builds it. Lengths m, angles rad;
 * printed standing on z = 0 as built.
 */
import type { SolidOrder } from '../../../base/answers/madePart.ts'
import type { Solid, Workbench } from '../../../shapes/solid/kernel.ts'

export interface ValueRange {
  label: string
  /** m, rad or a count by its kind */
  kind: 'length' | 'angle' | 'count'
  usual: number
  low: number
  high: number
}

export interface WordChoice {
  label: string
  usual: string
  words: readonly string[]
}

/** One closed body of a part. */
export interface Body {
  name: string
  solid: Solid
}

/** Values by name, checked against their ranges, and words. */
export interface Given<V extends string = string, W extends string = string> {
  n: Readonly<Record<V, number>>
  word: Readonly<Record<W, string>>
}

export interface SolidShape<V extends string = string, W extends string = string> {
  title: string
  values: Readonly<Record<V, ValueRange>>
  words: Readonly<Record<W, WordChoice>>
  /** its bodies; a RangeError names the value that cannot be, and its limit */
  build(bench: Workbench, given: Given<V, W>): readonly Body[]
}

/** Keeps the names of a shape's values. */
export const defineShape = <V extends string, W extends string = never>(
  shape: Omit<SolidShape<V, W>, 'words'> & { words?: SolidShape<V, W>['words'] },
): SolidShape<V, W> => ({ words: {} as SolidShape<V, W>['words'], ...shape })

const mm = 1e-3
/** a length with its range, all in mm */
export const length = (label: string, usual: number, low: number, high: number): ValueRange => ({
  label,
  kind: 'length',
  usual: mm * usual,
  low: mm * low,
  high: mm * high,
})
const degree = Math.PI / 180
/** an angle with its range, all in degrees */
export const angle = (label: string, usual: number, low: number, high: number): ValueRange => ({
  label,
  kind: 'angle',
  usual: degree * usual,
  low: degree * low,
  high: degree * high,
})
export const number = (label: string, usual: number, low: number, high: number): ValueRange => ({
  label,
  kind: 'count',
  usual,
  low,
  high,
})

/** how much wider across a hole is drawn than wanted, what each printer takes back; every shape has it */
export const holeOffset = length('Hole offset', 0.25, -0.5, 1.5)

const shown = (range: ValueRange, x: number) =>
  range.kind === 'length'
    ? `${Math.round(x * 1e6) / 1e3} mm`
    : range.kind === 'angle'
      ? `${Math.round((x / degree) * 100) / 100}°`
      : `${x}`

/** Is a hole wanted? 0 stands for none, and what is finer than any printer is none too. */
export const wanted = (across: number): boolean => across > 0.3e-3

/** A value that does not go with the others. */
export const misfit = (
  shape: SolidShape | undefined,
  name: string,
  value: number,
  says: string,
): RangeError => {
  const range = shape?.values[name]
  const x = range ? shown(range, value) : `${Math.round(value * 1e6) / 1e3} mm`
  return new RangeError(`${name}: ${x}, ${says}`)
}
export const inMillimetres = (x: number): string => `${Math.round(x * 1e6) / 1e3} mm`

/** Values and words of an order with the usual ones filled in. RangeErrors name the value, what it is and its range. */
export function givenOf(shape: SolidShape, { values }: SolidOrder): Given {
  const n: Record<string, number> = {}
  const word: Record<string, string> = {}
  for (const [name, range] of Object.entries(shape.values)) {
    const v = values[name] ?? range.usual
    const slack = 1e-9 * Math.max(Math.abs(range.low), Math.abs(range.high))
    if (typeof v !== 'number' || !(v >= range.low - slack && v <= range.high + slack))
      throw new RangeError(
        `${name}: ${typeof v === 'number' ? shown(range, v) : `"${v}"`} is outside ${shown(range, range.low)} to ${shown(range, range.high)}`,
      )
    if (range.kind === 'count' && !Number.isInteger(v))
      throw new RangeError(`${name}: ${v}, expected a whole number`)
    n[name] = v
  }
  for (const [name, choice] of Object.entries(shape.words)) {
    const w = values[name] ?? choice.usual
    if (typeof w !== 'string' || !choice.words.includes(w))
      throw new RangeError(`${name}: "${w}" is not one of ${choice.words.join(', ')}`)
    word[name] = w
  }
  for (const name of Object.keys(values))
    if (!(name in shape.values || name in shape.words))
      throw new RangeError(`${name}: not a value of "${shape.title}"`)
  return { n, word }
}
