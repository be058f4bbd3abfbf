import { printedAmount } from '../../../../base/answers/sentence.ts'
import { atRpm } from '../../../../trades/sound/saySpeed.ts'
import type { Shown } from '../runs/live/Dials.tsx'
import type { Highest } from './highest.ts'

interface Props {
  point: Shown | undefined
  highest: Highest
  /** most engines that can be running */
  engines: 1 | 2
}

/** One figure an engine, read from a metre away in the sun. */
export function PondDials({ point, highest, engines }: Props) {
  return (
    <div className="ponddials" data-engines={engines}>
      {(['A', 'B'] as const).slice(0, engines).map((label) => {
        const engine = point?.engines.find((e) => e.label === label)
        const most = highest[label]?.highest
        return (
          <div key={label} className="ponddial">
            <span>{engines > 1 ? `Engine ${label}, rpm` : 'Engine, rpm'}</span>
            <output aria-label={`Speed of engine ${label}`} aria-live="off">
              {engine ? figureOf(engine.rpm) : '–'}
            </output>
            <span>
              highest held for a second: <strong>{most === undefined ? '–' : figureOf(most)}</strong>
            </span>
          </div>
        )
      })}
    </div>
  )
}

/** the unit stands above it once */
const figureOf = (rpm: number): string => printedAmount(atRpm(rpm)).replace(/\s*rpm$/, '')
