import { useCallback, useMemo } from 'react'
import { engineAnswer } from '../../../../whole/breath/breathAnswer.ts'
import { curveFigure } from '../../../../whole/breath/curveFigures.ts'
import { Cautions } from '../../parts/Cautions.tsx'
import { lookOf } from '../../parts/displayLook.ts'
import { EmptyState } from '../../parts/EmptyState.tsx'
import { Figure } from '../../parts/Figure.tsx'
import { FindingsList } from '../../parts/FindingsList.tsx'
import { InputLink } from '../../parts/InputLink.tsx'
import { answerOf } from '../../parts/pageAnswer.ts'
import { QuestionPage } from '../../parts/QuestionPage.tsx'
import { Says } from '../../parts/Says.tsx'
import { useFindings } from '../../parts/useFindings.ts'
import { useApp } from '../../state/hooks.ts'
import { cautions, toSimulate } from './breathWords.ts'
import type { Side } from './useBreath.ts'

const method = ['The curve is the one given in the craft file, with the trust given there as its range.']

/** An engine that the file knows by a curve or a peak only: what is known, and what to measure to know how it breathes. */
export function Given({ side, choose }: { side: Side; choose: React.ReactNode }) {
  const units = useApp((s) => s.units)
  const found = useFindings('breath')
  const { view } = side
  const line = view.given
  const answer = useMemo(() => engineAnswer(view), [view])
  const draw = (what: 'torque' | 'power') => (w: number) =>
    curveFigure({ what, lines: line ? [line] : [] }, lookOf(units, w))
  // biome-ignore lint/correctness/useExhaustiveDependencies: draw depends on these alone
  const torque = useCallback(draw('torque'), [line, units])
  // biome-ignore lint/correctness/useExhaustiveDependencies: draw depends on these alone
  const power = useCallback(draw('power'), [line, units])
  const kindPath = `engines.${view.index}.kind`
  if (!line)
    return (
      <>
        {choose}
        <EmptyState
          title="There is no curve yet"
          says={`${view.name} needs its torque curve or its peak first.`}
        >
          <p>
            <InputLink link={kindPath}>Fill it in on the Craft page</InputLink>
          </p>
        </EmptyState>
        <FindingsList findings={found.now} title="What is known already" />
        <Cautions says={cautions} />
      </>
    )
  const minutes = toSimulate.reduce((sum, m) => sum + m.minutes, 0)
  return (
    <QuestionPage
      question="breath"
      asks="How do the engines breathe?"
      answer={answerOf(answer)}
      choose={choose}
      picture={
        <Figure draw={torque} caption={`Torque of ${view.name}, as the craft file has it.`} name="torque" />
      }
      inputs={[]}
      folds={[
        {
          id: 'power',
          title: 'Power',
          says: 'torque times engine speed',
          children: <Figure draw={power} caption="Power from the same curve." name="power" />,
        },
        ...(view.kind === 'electric'
          ? []
          : [
              {
                id: 'teach',
                title: 'What it takes to see it breathe',
                says: `ports and pipe, about ${minutes} minutes on the bench`,
                children: <Teach name={view.name} path={kindPath} />,
              },
            ]),
      ]}
      cautions={cautions}
      method={method}
    />
  )
}

/** What to measure so that the engine can be simulated. */
function Teach({ name, path }: { name: string; path: string }) {
  return (
    <>
      <p>
        With ports and pipe in the craft file, this page works the torque curve out, shows the waves in the
        pipe, and searches for a better pipe and stinger.
      </p>
      <ul>
        {toSimulate.map((m) => (
          <li key={m.what}>
            <strong>{m.what}</strong>, with <Says says={m.with} />; about {m.minutes} minutes.
          </li>
        ))}
      </ul>
      <p>
        <InputLink link={path}>Make {name} a two-stroke on the Craft page</InputLink>, then give what was
        measured; what is left out is assumed and said so.
      </p>
    </>
  )
}
