import { useCallback, useMemo } from 'react'
import { worstStanding } from '../../../../base/answers/finding.ts'
import { givenAnswer } from '../../../../whole/breath/breathAnswer.ts'
import { curveFigure } from '../../../../whole/breath/curveFigures.ts'
import { AnswerHeader } from '../../parts/AnswerHeader.tsx'
import { Cautions } from '../../parts/Cautions.tsx'
import { lookOf } from '../../parts/displayLook.ts'
import { EmptyState } from '../../parts/EmptyState.tsx'
import { Figure } from '../../parts/Figure.tsx'
import { FindingsList } from '../../parts/FindingsList.tsx'
import { InputLink } from '../../parts/InputLink.tsx'
import { SourcesFoot } from '../../parts/SourcesFoot.tsx'
import { useApp } from '../../state/hooks.ts'
import { cautions, toSimulate } from './breathWords.ts'
import type { Side } from './useBreath.ts'

/** An engine that the file knows by a curve or a peak only: what is known, and what to measure to know how it breathes. */
export function Given({ side }: { side: Side }) {
  const units = useApp((s) => s.units)
  const findings = useApp((s) => s.findings.breath) ?? []
  const { view } = side
  const line = view.given
  const answer = useMemo(
    () => line && givenAnswer(line, view.kind, lookOf(units, 180)),
    [line, view.kind, units],
  )
  const draw = (what: 'torque' | 'power') => (w: number) =>
    curveFigure({ what, lines: line ? [line] : [] }, lookOf(units, w))
  // biome-ignore lint/correctness/useExhaustiveDependencies: draw depends on these alone
  const torque = useCallback(draw('torque'), [line, units])
  // biome-ignore lint/correctness/useExhaustiveDependencies: draw depends on these alone
  const power = useCallback(draw('power'), [line, units])
  const kindPath = `engines.${view.index}.kind`
  return (
    <>
      {answer ? (
        <AnswerHeader
          asks="How do the engines breathe?"
          says={answer.says}
          range={answer.range}
          confidence={answer.confidence}
          standing={findings.length > 0 ? worstStanding(findings) : undefined}
        />
      ) : (
        <EmptyState
          title="There is no curve yet"
          says={`${view.name} needs its torque curve or its peak first.`}
        >
          <p>
            <InputLink link={kindPath}>Fill it in on the Craft page</InputLink>
          </p>
        </EmptyState>
      )}
      {line && (
        <div className="two">
          <Figure draw={torque} caption={`Torque of ${view.name}, as the craft file has it.`} name="torque" />
          <Figure draw={power} caption="Power from the same curve." name="power" />
        </div>
      )}
      {view.kind !== 'electric' && (
        <section className="teach">
          <h2>What it takes to see it breathe</h2>
          <p>
            With ports and pipe in the craft file, this page works the torque curve out, shows the waves in
            the pipe, and searches for a better pipe and stinger. It takes about{' '}
            {toSimulate.reduce((sum, m) => sum + m.minutes, 0)} minutes on the bench:
          </p>
          <ul>
            {toSimulate.map((m) => (
              <li key={m.what}>
                <strong>{m.what}</strong>, with {m.with}; about {m.minutes} minutes.
              </li>
            ))}
          </ul>
          <p>
            <InputLink link={kindPath}>Make {view.name} a two-stroke on the Craft page</InputLink>, then give
            what was measured; what is left out is assumed and said so.
          </p>
        </section>
      )}
      <FindingsList findings={findings} />
      <Cautions says={cautions} />
      <SourcesFoot
        how={['The curve is the one given in the craft file, with the trust given there as its range.']}
        sources={findings.flatMap((f) => f.sources)}
      />
    </>
  )
}
