import { Button } from 'react-aria-components/Button'
import type { Decision } from '../../../../base/answers/decision.ts'
import { printed, whole } from '../../../../base/answers/sentence.ts'
import { gainSays } from '../../../../whole/decisions.ts'
import { Says } from '../../parts/Says.tsx'
import { trialsOf, tryChanges } from '../../parts/tryChanges.ts'
import { useApp } from '../../state/hooks.ts'

/** The one thing to do next, large. */
export function NextCard({ next }: { next: Decision | undefined }) {
  if (!next)
    return (
      <section className="nextcard">
        <h2>Next</h2>
        <p className="do">Nothing that was looked at asks for a change.</p>
      </section>
    )
  return (
    <section className="nextcard">
      <h2>Next{next.harm && `: ${next.harm}`}</h2>
      <p className="do">
        <Says says={whole(next.act ?? next.says)} />
      </p>
      {next.act && (
        <p>
          <Says says={next.says} />
        </p>
      )}
      <Trial decision={next} />
    </section>
  )
}

/** What to do, worst first, each with its number; `from` is the first one's place in the whole list. */
export function Todo({ decisions, from = 1 }: { decisions: readonly Decision[]; from?: number }) {
  return (
    <div className="todo">
      <ol>
        {decisions.map((d, i) => (
          <li key={d.id} value={from + i}>
            <span className="count">{from + i}</span>
            <div>
              <p>
                <Says says={d.says} />
              </p>
              {d.act && (
                <p>
                  <strong>
                    <Says says={whole(d.act)} />
                  </strong>
                </p>
              )}
              {d.harm && <p className="harm">{d.harm}</p>}
              <Trial decision={d} />
            </div>
          </li>
        ))}
      </ol>
    </div>
  )
}

/** What a decision would change, as a trial, and what that buys. */
function Trial({ decision }: { decision: Decision }) {
  const readOnly = useApp((s) => s.role === 'follower')
  const { changes = [], gain, says, act } = decision
  if (trialsOf(changes, 'metric').length === 0) return null
  const what = printed(act ?? says)
  return (
    <p className="row">
      <Button aria-label={`Try: ${what}`} isDisabled={readOnly} onPress={() => tryChanges(changes, what)}>
        Try
      </Button>
      {gain && (
        <span className="quiet">
          <Says says={gainSays(gain)} />
        </span>
      )}
    </p>
  )
}
