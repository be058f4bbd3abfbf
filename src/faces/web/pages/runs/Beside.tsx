import { useCallback, useMemo } from 'react'
import { inSeconds } from '../../../../base/answers/amounts.ts'
import { printed, say } from '../../../../base/answers/sentence.ts'
import { comparedSpeeds, type Predicted } from '../../../../trades/sound/residuals.ts'
import { besideTable } from '../../../../trades/sound/runNumbers.ts'
import { besidePicture } from '../../../../trades/sound/soundFigures.ts'
import { soundLimits } from '../../../../trades/sound/soundLimits.ts'
import { besideCaption } from '../../../../trades/sound/soundTrade.ts'
import { Figure } from '../../parts/Figure.tsx'
import { NumbersTable } from '../../parts/NumbersTable.tsx'
import { Says } from '../../parts/Says.tsx'
import { useApp } from '../../state/hooks.ts'
import { shownTable } from './tables.ts'

const nothingSteady = say`No stretch of ${inSeconds(soundLimits.steadyLeast.value, 1)} kept steady near the predicted speed, so nothing can be compared.`

/** The heard speed beside the one predicted for full throttle, stretch by stretch. */
export function Beside({ run }: { run: Predicted }) {
  const units = useApp((s) => s.units)
  const draw = useCallback((width: number) => besidePicture(run.hearing, run.prediction, width), [run])
  const list = useMemo(() => comparedSpeeds(run), [run])
  return (
    <>
      <Figure draw={draw} name="heard and predicted" caption={printed(besideCaption, units)} />
      {list.length === 0 ? (
        <p>
          <Says says={nothingSteady} />
        </p>
      ) : (
        <NumbersTable {...shownTable(besideTable(list), units)} />
      )}
    </>
  )
}
