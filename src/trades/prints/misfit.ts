/** A value outside what a thread or a ring can be, with its numbers as amounts, so that a reader of inches reads inches. */
import { inMm } from '../../base/answers/amounts.ts'
import { type Amount, printed, type Sentence, say } from '../../base/answers/sentence.ts'

export class Misfit extends RangeError {
  readonly says: Sentence
  constructor(field: string, value: Sentence, limit: Sentence) {
    const says = say`${field}: ${value} is outside ${limit}`
    super(printed(says))
    this.says = says
  }
}

/** a length in an error, to a thousandth of a millimetre at most */
export const lengthOf = (x: number): readonly [Amount] => [inMm(x, stepOf(x))]

/** the coarsest step that shows it to a thousandth of a millimetre */
function stepOf(x: number): number {
  const thousandths = Math.round(x * 1e6)
  let step = 1
  while (step > 1e-3 && thousandths % Math.round(step * 1e3) !== 0) step /= 10
  return Math.max(step, 1e-3)
}

/** What a thing that would not do says of itself; anything but a RangeError is thrown on. */
export function misfitOf(error: unknown): Sentence {
  if (error instanceof Misfit) return error.says
  if (error instanceof RangeError) return error.message
  throw error
}
