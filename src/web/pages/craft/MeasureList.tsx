import { useState } from 'react'
import { Button } from 'react-aria-components/Button'
import type { MeasureNext } from '../../../answers/finding.ts'
import { fieldAt, type Quantity } from '../../../craft/index.ts'
import { stepFromSi } from '../../../units/convert.ts'
import { InputLink } from '../../parts/InputLink.tsx'
import { type Craft, labelOf, shownUnit } from '../../state/craftFile.ts'
import { useApp } from '../../state/hooks.ts'
import { shownNumber, tidyNumber } from '../../state/shown.ts'
import type { UnitSystem } from '../../state/store.ts'
import { worthMeasuring } from './summary.ts'

/** items shown before the rest is asked for */
const few = 5

/** What is worth measuring next: what the findings ask for first, then the numbers in most doubt. */
export function MeasureList({ craft }: { craft: Craft }) {
  const findings = useApp((s) => s.findings)
  const units = useApp((s) => s.units)
  const [all, setAll] = useState(false)
  const asked = new Map<string, MeasureNext>()
  for (const found of Object.values(findings))
    for (const { measureNext } of found ?? [])
      if (measureNext) asked.set(measureNext.path ?? measureNext.what, measureNext)
  const doubtful = worthMeasuring(craft).filter(({ quantity }) => !asked.has(quantity.path))
  const shown = all ? doubtful : doubtful.slice(0, Math.max(0, few - asked.size))
  if (asked.size === 0 && doubtful.length === 0) return null
  return (
    <section className="panel measures">
      <h2>Worth measuring next</h2>
      <ol>
        {[...asked].map(([key, m]) => (
          <li key={key}>
            <InputLink link={m.path}>{m.path ? labelOf(m.path) : m.what}</InputLink>
            <p className="quiet">
              {m.path && `${m.what}. `}With {m.with}, {minutes(m.minutes)}. A finding turns on it.
            </p>
          </li>
        ))}
        {shown.map(({ quantity, measure, half, more }) => (
          <li key={quantity.path}>
            <InputLink link={quantity.path}>{labelOf(quantity.path)}</InputLink>{' '}
            <span className="quiet">
              {quantity.source === 'guess' ? 'guessed' : quantity.source} {amountOf(quantity, half, units)}
              {more > 0 && `, and ${more} more like it`}
            </span>
            <p className="quiet">
              {measure.what}. With {measure.with}, {minutes(measure.minutes)}.
            </p>
          </li>
        ))}
      </ol>
      {doubtful.length > shown.length && (
        <Button className="plain" onPress={() => setAll(true)}>
          All {doubtful.length + asked.size}
        </Button>
      )}
    </section>
  )
}

/** "27 deg ±3" */
function amountOf({ value, kind, path }: Quantity, half: number, units: UnitSystem): string {
  const field = fieldAt(path)
  const unit = shownUnit(kind, units, field?.type === 'quantity' ? field.unit : '')
  return `${shownNumber(value, kind, unit)} ${unit} ±${tidyNumber(stepFromSi(half, kind, unit), 2)}`.replace(
    '  ',
    ' ',
  )
}

const minutes = (n: number) => (n === 1 ? '1 minute' : `${n} minutes`)
