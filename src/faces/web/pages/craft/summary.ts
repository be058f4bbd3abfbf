import type { Measure } from '../../../../craft/fields.ts'
import { fieldAt, type Quantity, quantitiesOf, type Source } from '../../../../craft/index.ts'
import type { Craft } from '../../state/craftFile.ts'

export type SourceCounts = Record<Source, number>

/** How many of the craft's numbers are measured, from the maker, guessed and assumed. */
export function countSources(craft: Craft): SourceCounts {
  const counts: SourceCounts = { measured: 0, maker: 0, guess: 0, assumed: 0 }
  for (const quantity of quantitiesOf(craft)) counts[quantity.source]++
  return counts
}

const phrases: Record<Source, string> = {
  measured: 'measured',
  maker: 'from the maker',
  guess: 'guessed',
  assumed: 'assumed',
}

/** "34 numbers measured, 5 from the maker, 8 guessed and 21 assumed" */
export function sourcesInWords(counts: SourceCounts): string {
  const parts = (Object.keys(phrases) as Source[])
    .filter((source) => counts[source] > 0)
    .map((source) => `${counts[source]} ${phrases[source]}`)
  if (parts.length === 0) return 'no numbers yet'
  const [first, ...rest] = parts
  const start = first!.replace(' ', ' numbers ')
  return rest.length === 0 ? start : `${[start, ...rest.slice(0, -1)].join(', ')} and ${rest.at(-1)}`
}

export interface WorthMeasuring {
  quantity: Quantity
  measure: Measure
  /** how many more of the same field, in other items of its list, are in doubt too */
  more: number
  /** half the likely range, SI */
  half: number
  /** 0 sure, 1 nothing known: half the range as a part of the value and itself */
  doubt: number
}

/** Numbers not measured yet that a builder can measure, the widest range first. */
export function worthMeasuring(craft: Craft): WorthMeasuring[] {
  const found: WorthMeasuring[] = []
  for (const quantity of quantitiesOf(craft)) {
    if (quantity.source === 'measured') continue
    const field = fieldAt(quantity.path)
    if (!field?.measure) continue
    const half = (quantity.high - quantity.low) / 2
    if (half > 0)
      found.push({
        quantity,
        measure: field.measure,
        more: 0,
        half,
        doubt: half / (Math.abs(quantity.value) + half),
      })
  }
  // one of a list stands for all that are alike, the most doubtful
  const kinds = new Map<string, WorthMeasuring>()
  for (const one of found.sort((a, b) => b.doubt - a.doubt)) {
    const kind = one.quantity.path.replace(/\.\d+(?=\.|$)/g, '.*')
    const first = kinds.get(kind)
    if (first) first.more++
    else kinds.set(kind, one)
  }
  return [...kinds.values()]
}
