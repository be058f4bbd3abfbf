import { useCallback, useMemo } from 'react'
import type { CraftLog } from '../../../../../whole/log/craftLog.ts'
import { seasonFigure, seasonOf } from '../../../../../whole/log/season.ts'
import { seasonTable } from '../../../../../whole/log/seasonTable.ts'
import { lookOf } from '../../../parts/displayLook.ts'
import { Figure } from '../../../parts/Figure.tsx'
import { NumbersTable } from '../../../parts/NumbersTable.tsx'
import { Says } from '../../../parts/Says.tsx'
import { useApp } from '../../../state/hooks.ts'
import { shownTable } from '../tables.ts'

/** The season: the runs over the versions of the craft, drawn and as a table. */
export function SeasonFold({ log }: { log: CraftLog }) {
  const units = useApp((s) => s.units)
  const season = useMemo(() => seasonOf(log), [log])
  const drawable = useMemo(() => seasonFigure(season) !== undefined, [season])
  const draw = useCallback((width: number) => seasonFigure(season, lookOf(units, width))!, [season, units])
  return (
    <section>
      <p>
        <Says says={season.says} />
      </p>
      {drawable && (
        <Figure
          draw={draw}
          name="season"
          caption="Each point is a run; a new colour begins after a change."
        />
      )}
      <NumbersTable {...shownTable(seasonTable(season), units)} />
    </section>
  )
}
