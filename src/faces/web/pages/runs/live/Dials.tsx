import { printed, printedAmount, say } from '../../../../../base/answers/sentence.ts'
import type { LivePoint } from '../../../../../trades/sound/listener.ts'
import { atRpm } from '../../../../../trades/sound/saySpeed.ts'
import { engineColour } from '../../../../../trades/sound/soundFigures.ts'

export type Shown = LivePoint & { level: number }

interface DialsProps {
  point: Shown | undefined
  /** most engines that can be running */
  engines: number
  expected: number | undefined
}

/** Each engine's speed as it is, on a scale with the predicted one marked. */
export function Dials({ point, engines: most, expected }: DialsProps) {
  const engines = point?.engines ?? []
  const top = Math.max(9000, ...(expected ? [1.4 * expected] : []), ...engines.map((e) => e.rpm * 1.05))
  return (
    <div className="dials">
      {(['A', 'B'] as const).slice(0, most).map((label) => {
        const engine = engines.find((e) => e.label === label)
        const [figure, unit] = engine ? printedAmount(atRpm(engine.rpm)).split(' ') : []
        return (
          // biome-ignore lint/a11y/useSemanticElements: the browser's own meter cannot hold a large number
          <div
            key={label}
            className="dial"
            role="meter"
            aria-label={`Speed of engine ${label}`}
            aria-valuemin={0}
            aria-valuemax={Math.round(top)}
            aria-valuenow={Math.round(engine?.rpm ?? 0)}
            aria-valuetext={engine ? `${figure} ${unit}` : 'not heard'}
          >
            <span className="quiet">{most > 1 ? `Engine ${label}` : 'Engine'}</span>
            <p>
              <span className="big">{figure ?? '–'}</span>{' '}
              <span className="quiet">{unit ?? 'not heard'}</span>
            </p>
            <svg viewBox="0 0 100 9" preserveAspectRatio="none" aria-hidden="true">
              <rect x={0} y={3} width={100} height={4} fill="#e6e2d6" />
              {engine && (
                <rect x={0} y={3} width={(100 * engine.rpm) / top} height={4} fill={engineColour[label]} />
              )}
              {expected && (
                <rect x={(100 * expected) / top - 0.3} y={0} width={0.6} height={9} fill="#1b1a17" />
              )}
            </svg>
          </div>
        )
      })}
      <p className="quiet">
        {point && point.level < 1e-4 ? 'The microphone gives no sound. ' : ''}
        {expected ? printed(say`The mark is the predicted speed tied up, ${atRpm(expected)}. `) : ''}A sound
        that lasts a second counts as an engine. Readings look back a few seconds and settle in about half a
        second.
      </p>
    </div>
  )
}
