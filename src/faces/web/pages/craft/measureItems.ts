import type { Finding, MeasureNext, Question } from '../../../../base/answers/finding.ts'
import { stepFromSi } from '../../../../base/units/convert.ts'
import { fieldAt, type Quantity, quantitiesOf } from '../../../../craft/index.ts'
import type { Driver } from '../../../../whole/push/balanceTypes.ts'
import { saysStep } from '../../../../whole/push/shown.ts'
import { lookOf } from '../../parts/displayLook.ts'
import { type Craft, labelOf, shownUnit } from '../../state/craftFile.ts'
import { shownNumber, tidyNumber } from '../../state/shownValues.ts'
import type { UnitSystem } from '../../state/store.ts'
import { worthMeasuring } from './summary.ts'

/** One line of what is worth measuring. */
export interface MeasureItem {
  key: string
  /** craft path the reading goes to */
  path: string | undefined
  label: string
  /** the value now and how well it is known */
  about: string
  /** what to do, with what, in how many minutes */
  measure: string
  /** why it is worth it */
  why: string
}

type Findings = Partial<Record<Question, readonly Finding[]>>

/** What to measure, in order: the numbers whose doubt moves the answers, what findings ask for, the rest by how vague it is. */
export function measureItems(
  craft: Craft,
  findings: Findings,
  drivers: readonly Driver[],
  units: UnitSystem,
): MeasureItem[] {
  const items = new Map<string, MeasureItem>()
  const add = (item: MeasureItem) => items.has(item.key) || items.set(item.key, item)
  const byPath = new Map([...quantitiesOf(craft)].map((quantity) => [quantity.path, quantity]))
  for (const driver of [...drivers].sort((a, b) => Math.abs(b.topSpeed) - Math.abs(a.topSpeed))) {
    const quantity = byPath.get(driver.path)
    const measure = fieldAt(driver.path)?.measure
    if (!quantity || !measure || quantity.source === 'measured') continue
    const moves = saysStep(Math.abs(driver.topSpeed), 'speed', lookOf(units, 0)).replace('+', '')
    // what moves nothing that could be seen is not worth a trip to the shed
    if (!(Number.parseFloat(moves) > 0)) continue
    const why = `Its doubt moves the top speed by ±${moves}.`
    add({ ...ofQuantity(quantity, craft, units), measure: inWords(measure), why })
  }
  for (const found of Object.values(findings))
    for (const { measureNext: next } of found ?? []) {
      if (!next) continue
      const quantity = next.path ? byPath.get(next.path) : undefined
      const named = quantity
        ? ofQuantity(quantity, craft, units)
        : {
            key: next.what,
            path: next.path,
            label: next.path ? labelOf(next.path, craft) : upper(next.what),
            about: '',
          }
      add({ ...named, measure: inWords(next), why: 'A finding turns on it.' })
    }
  for (const { quantity, measure, more } of worthMeasuring(craft))
    add({
      ...ofQuantity(quantity, craft, units),
      measure: inWords(measure),
      why: more > 0 ? `There are ${more} more like it.` : '',
    })
  return [...items.values()]
}

function ofQuantity(
  quantity: Quantity,
  craft: Craft,
  units: UnitSystem,
): Omit<MeasureItem, 'measure' | 'why'> {
  const { value, low, high, kind, path, source } = quantity
  const field = fieldAt(path)
  const unit = shownUnit(kind, units, field?.type === 'quantity' ? field.unit : '')
  const half = tidyNumber(stepFromSi((high - low) / 2, kind, unit), 2)
  const known = source === 'guess' ? 'guessed' : source
  return {
    key: path,
    path,
    label: labelOf(path, craft),
    about: [known, shownNumber(value, kind, unit), unit, `±${half}`].filter((word) => word !== '').join(' '),
  }
}

const inWords = (m: MeasureNext) =>
  `${upper(m.what)}, with ${m.with}, ${m.minutes === 1 ? '1 minute' : `${m.minutes} minutes`}`
const upper = (words: string) => words.charAt(0).toUpperCase() + words.slice(1)
