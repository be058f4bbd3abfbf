import type { HeardEngine } from '../../../../trades/sound/heardAnswer.ts'
import type { Hearing } from '../../../../trades/sound/hearingTypes.ts'
import { enginesTable, speedTable } from '../../../../trades/sound/runNumbers.ts'
import { NumbersTable } from '../../parts/NumbersTable.tsx'
import { useApp } from '../../state/hooks.ts'
import { shownTable } from './tables.ts'

/** Each engine's numbers, how evenly it fired, and its speed over time to be copied. */
export function Numbers({ hearing, heard }: { hearing: Hearing; heard: readonly HeardEngine[] }) {
  const units = useApp((s) => s.units)
  if (heard.length === 0) return null
  return (
    <>
      <NumbersTable {...shownTable(enginesTable(hearing, heard), units)} />
      <details>
        <summary>Speed over time, as a table</summary>
        <NumbersTable {...shownTable(speedTable(hearing, heard), units)} />
      </details>
    </>
  )
}
