/**
 * The boxes of a book that a reading is written into by hand: each has a number, printed beside it and in the list at the end, so that what was
 * written can be typed back. A value of the craft file has one box wherever it is asked for, a number of the next run one of its own.
 */
import { type DisplaySystem, displayUnit } from '../base/units/format.ts'
import { type Craft, fieldAt, labelOf } from '../craft/index.ts'
import { readingKinds } from '../whole/log/readings.ts'

export interface BookBox {
  n: number
  /** a path of the craft file, or `run:` and the name of a reading */
  to: string
  label: string
  /** what a bare number is taken in; '' for words and counts */
  unit: string
}

export interface BoxList {
  /** the box of a value, made when first asked for */
  of(to: string): BookBox
  all(): readonly BookBox[]
}

const run = 'run:'

/** An empty list; the same craft asked in the same order gives the same numbers. */
export function boxList(craft: Craft, units: DisplaySystem): BoxList {
  const known = new Map<string, BookBox>()
  return {
    of(to) {
      let box = known.get(to)
      if (!box) {
        box = { n: known.size + 1, to, ...wordsOf(craft, to, units) }
        known.set(to, box)
      }
      return box
    },
    all: () => [...known.values()],
  }
}

function wordsOf(craft: Craft, to: string, units: DisplaySystem): Pick<BookBox, 'label' | 'unit'> {
  if (to.startsWith(run)) {
    const name = to.slice(run.length)
    const reading = readingKinds.find((r) => r.name === name)
    if (!reading) throw new RangeError(`box: "${to}" is no reading of a run`)
    // a luggage scale shows the unit of a mass
    const unit =
      reading.kind === 'force'
        ? units === 'inch'
          ? 'lb'
          : 'kg'
        : displayUnit(reading.kind, units, reading.unit)
    return { label: `${name.charAt(0).toUpperCase()}${name.slice(1)}`, unit }
  }
  const field = fieldAt(to)
  if (!field) throw new RangeError(`box: "${to}" is no value of a craft file`)
  const unit = field.type === 'quantity' ? displayUnit(field.kind, units, field.unit) : ''
  return { label: labelOf(to, craft), unit: unit === '1' ? '' : unit }
}

/** "box 12: Impeller pitch, mm" */
export const boxWords = ({ n, label, unit }: BookBox): string =>
  `box ${n}: ${label}${unit === '' ? '' : `, ${unit === 'deg' ? '°' : unit}`}`

/** The name of a run's reading, undefined for a value of the craft file. */
export const readingIn = (to: string): string | undefined =>
  to.startsWith(run) ? to.slice(run.length) : undefined

/** Boxes for what a run leaves behind, by how many shafts there are to hear. */
export const runBoxes = (engines: number): readonly string[] =>
  ['pull', ...(engines > 1 ? ['rpm A', 'rpm B'] : ['rpm']), 'top speed', 'time', 'fuel'].map(
    (r) => `${run}${r}`,
  )
