import { useCallback } from 'react'
import { Button } from 'react-aria-components/Button'
import { printed } from '../../../../base/answers/sentence.ts'
import type { ChoiceLine } from '../../../../whole/push/designChoice.ts'
import { choiceFigure, pitchFigure } from '../../../../whole/push/designFigures.ts'
import type { DesignAnswer } from '../../../../whole/push/designTypes.ts'
import { lookOf } from '../../parts/displayLook.ts'
import { Figure } from '../../parts/Figure.tsx'
import { Says } from '../../parts/Says.tsx'
import { SearchState } from '../../parts/SearchState.tsx'
import { tryChanges } from '../../parts/tryChanges.ts'
import { useApp } from '../../state/hooks.ts'
import type { Choosing } from './useChoice.ts'

/** Which impeller and nozzle: searched, compared with what is fitted, tried. */
export function Choose({ search, answer, choice, start, cancel }: Choosing) {
  const done = answer?.final === true
  return (
    <section className="search choose">
      <SearchState search={search} onCancel={cancel}>
        {!done && (
          <div className="row">
            <Button className="main" onPress={start}>
              {answer ? 'Search on' : 'Search'}
            </Button>
            <span className="quiet">
              Over pitch, blades and nozzle, whatever engines and hull turn out to be. First answer in a
              second, the last in about ten.
            </span>
          </div>
        )}
      </SearchState>
      {choice && answer && (
        <>
          <p className="says" role="status">
            {done ? '' : 'So far: '}
            <Says says={choice.says} />
          </p>
          {choice.regret.map((says, i) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: at most two, always in this order
            <p key={i}>
              <Says says={says} />
            </p>
          ))}
          <Options lines={choice.lines} />
          <Pictures answer={answer} />
        </>
      )}
    </section>
  )
}

/** Everything that was compared, each with what it buys and a press that tries it. */
function Options({ lines }: { lines: readonly ChoiceLine[] }) {
  const units = useApp((s) => s.units)
  const readOnly = useApp((s) => s.role === 'follower')
  return (
    <ul className="plainlist trylist">
      {lines.map((line) => {
        const what = printed(line.says, units)
        return (
          <li key={`${line.id} ${what}`} data-offered={line.offered}>
            <Button
              aria-label={`Try ${what}`}
              isDisabled={readOnly}
              onPress={() => tryChanges(line.changes, `try ${what}`)}
            >
              Try
            </Button>
            <span>
              <Says says={line.says} />: <Says says={line.buys} />
              {!line.offered && <span className="quiet"> (not better)</span>}
            </span>
          </li>
        )
      })}
    </ul>
  )
}

function Pictures({ answer }: { answer: DesignAnswer }) {
  const units = useApp((s) => s.units)
  const choice = useCallback((w: number) => choiceFigure(answer, lookOf(units, w)), [answer, units])
  const pull = useCallback((w: number) => pitchFigure(answer, 'pull', lookOf(units, w)), [answer, units])
  const speed = useCallback((w: number) => pitchFigure(answer, 'topSpeed', lookOf(units, w)), [answer, units])
  return (
    <>
      <Figure
        draw={choice}
        caption="Up is more pull, right is more speed; the arms are the likely ranges."
        name="pull against speed"
      />
      <div className="pair">
        <Figure draw={pull} caption="With the nozzle that is fitted." name="pull over pitch" />
        <Figure draw={speed} caption="With the nozzle that is fitted." name="speed over pitch" />
      </div>
    </>
  )
}
