/** What was written into the boxes of a book, typed back: values of the craft file as measured ones, and the numbers of a run for the log. */
import { isQuantityProblem, parseQuantity } from '../base/units/parse.ts'
import { fieldAt, isQuantitySpec, limitsInWords } from '../craft/index.ts'
import { readingOf } from '../whole/log/readings.ts'
import { type BookBox, readingIn } from './bookBoxes.ts'

export interface ReadBack {
  /** values of the craft file, as one would type them */
  values: readonly { path: string; text: string }[]
  /** numbers of one run, by name */
  readings: Readonly<Record<string, string>>
  /** boxes that could not be read, each with what was found and what was expected */
  faults: readonly { n: number; says: string }[]
}

const bare = /^[+−-]?\s*[\d.,]+$/

/** Typed texts by the number of their box; empty ones are left alone. Nothing is taken of a box that cannot be read. */
export function readBack(boxes: readonly BookBox[], typed: Readonly<Record<number, string>>): ReadBack {
  const values: { path: string; text: string }[] = []
  const readings: Record<string, string> = {}
  const faults: { n: number; says: string }[] = []
  for (const box of boxes) {
    const written = typed[box.n]?.trim().replace('−', '-') ?? ''
    if (written === '') continue
    const text = bare.test(written) && box.unit !== '' ? `${written} ${box.unit}` : written
    const fault = (says: string) => faults.push({ n: box.n, says: `box ${box.n}, ${box.label}: ${says}` })
    const reading = readingIn(box.to)
    if (reading !== undefined) {
      const read = readingOf(reading, text)
      if (typeof read === 'string') fault(read)
      else readings[reading] = text
      continue
    }
    const field = fieldAt(box.to)
    if (!isQuantitySpec(field)) {
      fault('is no number of the craft file')
      continue
    }
    const q = parseQuantity(text, field.kind, field.unit)
    if (isQuantityProblem(q)) fault(`"${written}" ${q.problem}; expected ${q.expected}`)
    else if (!(q.value >= field.min && q.value <= field.max))
      fault(`"${written}" is outside its limits; it takes ${limitsInWords(field)}`)
    else values.push({ path: box.to, text: /\(.*\)\s*$/.test(text) ? text : `${text} (measured)` })
  }
  return { values, readings, faults }
}
