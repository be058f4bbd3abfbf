import { useCallback, useMemo } from 'react'
import { clockText } from '../../../../trades/sound/heardAnswer.ts'
import type { Hearing } from '../../../../trades/sound/hearingTypes.ts'
import { type Prediction, residuals } from '../../../../trades/sound/residuals.ts'
import { besidePicture } from '../../../../trades/sound/soundFigures.ts'
import { plain } from '../../../../whole/push/shown.ts'
import { atFullThrottle, FULL_THROTTLE } from '../../../../whole/runs/heardRun.ts'
import { Figure } from '../../parts/Figure.tsx'
import { NumbersTable } from '../../parts/NumbersTable.tsx'

interface Props {
  hearing: Hearing
  prediction: Prediction
  closing: ((time: number) => number) | undefined
}

const ten = (rpm: number) => Math.round(rpm / 10) * 10
const percent = (part: number) => plain(100 * part, 1)

/** The heard speed beside the one predicted for full throttle, stretch by stretch. */
export function Beside({ hearing, prediction, closing }: Props) {
  const draw = useCallback(
    (width: number) => besidePicture(hearing, prediction, width),
    [hearing, prediction],
  )
  const list = useMemo(
    () => residuals(atFullThrottle(hearing, prediction), prediction, closing),
    [hearing, prediction, closing],
  )
  return (
    <>
      <Figure
        draw={draw}
        name="heard and predicted"
        caption={`Predicted for full throttle; what ran below ${Math.round(100 * FULL_THROTTLE)} % of it is taken for part throttle and not compared.`}
      />
      {list.length === 0 ? (
        <p>No stretch of two seconds kept steady near the predicted speed, so nothing can be compared.</p>
      ) : (
        <NumbersTable
          caption="Heard against predicted"
          columns={[
            { head: 'Engine' },
            { head: 'From' },
            { head: 'To' },
            { head: 'Heard', unit: 'rpm' },
            { head: 'Predicted', unit: 'rpm' },
            { head: 'Off by', unit: '%' },
            { head: 'No surprise from', unit: '%' },
            { head: 'to', unit: '%' },
            { head: 'Reads' },
          ]}
          rows={list.map((r) => [
            r.label,
            clockText(r.from),
            clockText(r.to),
            ten(r.heard),
            ten(r.predicted),
            percent(r.part),
            percent(r.low),
            percent(r.high),
            r.standing === 'within' ? 'as predicted' : r.standing === 'low' ? 'slower' : 'faster',
          ])}
        />
      )}
    </>
  )
}
