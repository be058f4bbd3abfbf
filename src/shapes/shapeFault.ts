import { type AmountMaker, inCount, inMm } from '../base/answers/amounts.ts'
import { printed, type Sentence, say } from '../base/answers/sentence.ts'

/** What cannot be made or is better not made so: the value, where it ends, and what to do about it. SI. */
export class ShapeFault extends RangeError {
  /** the input's name */
  readonly field: string
  readonly value: number
  readonly limit: number
  readonly says: Sentence
  readonly act: Sentence
  constructor(field: string, value: number, limit: number, says: Sentence, act: Sentence) {
    super(`${field}: ${printed(says)}`)
    this.name = 'ShapeFault'
    this.field = field
    this.value = value
    this.limit = limit
    this.says = says
    this.act = act
  }
}

/** Throws ShapeFault where a value is no number or lies outside [low, high]; both in SI, spoken in what `spoken` makes. */
export function mustLie(
  field: string,
  value: number,
  low: number,
  high: number,
  spoken: AmountMaker = inMm,
): void {
  if (value >= low && value <= high) return
  const near = value > high ? high : low
  // counts are whole; lengths below a centimetre are told finer
  const fine = (v: number) => (spoken === inCount ? spoken(v) : spoken(v, Math.abs(v) < 0.01 ? 0.01 : 0.1))
  throw new ShapeFault(
    field,
    value,
    near,
    Number.isFinite(value)
      ? say`${field} is ${fine(value)}, and must lie between ${fine(low)} and ${fine(high)}.`
      : say`${field} is not a number.`,
    say`Give ${field} a value between ${fine(low)} and ${fine(high)}.`,
  )
}

/** least and largest length of anything that is drawn, and of sheet thickness, m */
export const extremes = { least: 1e-4, most: 20, thinnest: 1e-5, thickest: 0.02 } as const
