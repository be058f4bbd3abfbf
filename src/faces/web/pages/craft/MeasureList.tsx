import { useState } from 'react'
import { Button } from 'react-aria-components/Button'
import { InputLink } from '../../parts/InputLink.tsx'
import type { Craft } from '../../state/craftFile.ts'
import { useApp } from '../../state/hooks.ts'
import { measureItems } from './measureItems.ts'

/** items shown before the rest is asked for */
const few = 5

/** What is worth measuring next: the numbers whose doubt moves the answers most, what findings ask for, then the vaguest. */
export function MeasureList({ craft }: { craft: Craft }) {
  const findings = useApp((s) => s.findings)
  const looked = useApp((s) => s.looked)
  // until the craft has been looked at nobody knows what its doubt moves; the last list stands while a change is worked out
  const drivers = looked?.balance?.drivers
  const units = useApp((s) => s.units)
  const [all, setAll] = useState(false)
  if (!looked) return <p className="quiet">Being worked out…</p>
  const items = measureItems(craft, findings, drivers ?? [], units)
  if (items.length === 0) return null
  return (
    <section className="panel measures">
      <ol>
        {(all ? items : items.slice(0, few)).map((item) => (
          <li key={item.key}>
            <InputLink link={item.path}>{item.label}</InputLink>{' '}
            <span className="quiet together">{item.about}</span>
            <p className="quiet">
              {item.measure}. {item.why}
            </p>
          </li>
        ))}
      </ol>
      {items.length > few && !all && (
        <Button className="plain" onPress={() => setAll(true)}>
          All {items.length}
        </Button>
      )}
    </section>
  )
}
