import { Button } from 'react-aria-components/Button'
import type { Decision } from '../../../../base/answers/decision.ts'
import type { Finding } from '../../../../base/answers/finding.ts'
import { printed, whole } from '../../../../base/answers/sentence.ts'
import { gainSays, leadsTo } from '../../../../whole/decisions.ts'
import { Says } from '../../parts/Says.tsx'
import { trialsOf, tryChanges } from '../../parts/tryChanges.ts'
import { useApp } from '../../state/hooks.ts'
import { addressOfDecision } from './decisionAddress.ts'

/** The one thing to do next, large. */
export function NextCard({ next, findings }: { next: Decision | undefined; findings: readonly Finding[] }) {
  if (!next)
    return (
      <section className="nextcard">
        <h2>Next</h2>
        <p className="do">Nothing that was looked at asks for a change.</p>
      </section>
    )
  return (
    <section className="nextcard">
      <h2>
        <Count n={1} decision={next} findings={findings} /> Next{next.harm && `: ${next.harm}`}
      </h2>
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

interface TodoProps {
  decisions: readonly Decision[]
  findings: readonly Finding[]
  from?: number
}

/** A decision's number as on the picture: leads to its page and input. */
function Count({ n, decision, findings }: { n: number; decision: Decision; findings: readonly Finding[] }) {
  const { question } = leadsTo(decision, findings)
  return (
    <a
      className="count"
      href={addressOfDecision(decision, findings)}
      aria-label={`${n}, to the page ${question}`}
    >
      {n}
    </a>
  )
}

/** What to do, worst first, each with its number; `from` is the first one's place in the whole list. */
export function Todo({ decisions, findings, from = 1 }: TodoProps) {
  return (
    <div className="todo">
      <ol>
        {decisions.map((d, i) => (
          <li key={d.id} value={from + i}>
            <Count n={from + i} decision={d} findings={findings} />
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
  const units = useApp((s) => s.units)
  const { changes = [], gain, says, act } = decision
  if (trialsOf(changes, 'metric').length === 0) return null
  const what = printed(act ?? says, units)
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
