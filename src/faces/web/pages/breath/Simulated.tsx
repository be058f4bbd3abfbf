import { type ReactNode, useMemo } from 'react'
import { engineAnswer } from '../../../../whole/breath/breathAnswer.ts'
import { canSimulate } from '../../../../whole/breath/breathView.ts'
import { lookOf } from '../../parts/displayLook.ts'
import { QuestionPage } from '../../parts/QuestionPage.tsx'
import { useSteadyOrder } from '../../parts/useSteadyOrder.ts'
import { useApp } from '../../state/hooks.ts'
import { Numbers } from './BreathNumbers.tsx'
import { leversOf } from './breathLevers.ts'
import { expectsOf, lineOf, ownFindings, stagedAnswer } from './breathLines.ts'
import { cautions, how } from './breathWords.ts'
import { PowerCurve, TorqueCurve } from './Curves.tsx'
import { NotYet } from './NotYet.tsx'
import { partFolds } from './PipeAndBox.tsx'
import { PipeSearch } from './PipeSearch.tsx'
import { Progress } from './Progress.tsx'
import { StingerSearch } from './StingerSearch.tsx'
import { Trust } from './Trust.tsx'
import { turnFolds } from './Turn.tsx'
import type { Side } from './useBreath.ts'
import { useTurn } from './useTurn.ts'

interface Props {
  now: Side
  tried: Side | undefined
  choose: ReactNode
}

/** A two-stroke by its ports and pipe. */
export function Simulated({ now, tried, choose }: Props) {
  const units = useApp((s) => s.units)
  const look = useMemo(() => lookOf(units, 180), [units])
  const line = useMemo(() => lineOf(now), [now])
  const triedLine = useMemo(() => tried && lineOf(tried), [tried])
  const answer = useMemo(() => engineAnswer(now.view, now.simulation?.output), [now])
  const triedAnswer = useMemo(() => tried && engineAnswer(tried.view, tried.simulation?.output), [tried])
  const turn = useTurn(now, tried)
  const searchKey = useMemo(() => {
    const { log: _, ...rest } = now.craft
    return JSON.stringify([now.view.index, rest])
  }, [now.craft, now.view.index])
  const levers = useMemo(() => leversOf(now, look, units), [now, look, units])
  const inputs = useSteadyOrder(levers, now.key)
  const broken = tried !== undefined && !canSimulate(tried.view)
  if (!canSimulate(now.view) || now.simulation?.output?.curve === undefined)
    return <NotYet side={now} choose={choose} />
  return (
    <QuestionPage
      question="breath"
      asks="How do the engines breathe?"
      answer={stagedAnswer(answer, now.simulation)}
      triedSays={triedLine || broken ? triedAnswer?.says : undefined}
      expects={line && triedLine ? expectsOf(line, triedLine, look) : ''}
      status={<Progress side={tried?.simulation?.running ? tried : now} />}
      choose={choose}
      picture={<TorqueCurve now={now} line={line} tried={triedLine} />}
      inputs={inputs}
      own={ownFindings(tried ?? now)}
      folds={[
        {
          id: 'power',
          title: 'Power',
          says: 'torque times engine speed',
          children: <PowerCurve line={line} tried={triedLine} />,
        },
        ...turnFolds(now, turn),
        ...partFolds(now, tried),
        {
          id: 'pipe-search',
          title: 'Find a better pipe',
          says: 'a search of a minute or two',
          children: <PipeSearch side={now} searchKey={searchKey} />,
        },
        {
          id: 'stinger-search',
          title: 'Change only the stinger',
          says: 'the cheapest change of all',
          children: <StingerSearch side={now} searchKey={searchKey} />,
        },
        {
          id: 'numbers',
          title: 'The numbers',
          says: `${now.simulation.output.curve.points.length} engine speeds`,
          children: <Numbers now={now} tried={tried} />,
        },
        {
          id: 'trust',
          title: 'How far the books close',
          says: 'what goes in must come out',
          children: <Trust side={tried?.simulation?.output ? tried : now} />,
        },
      ]}
      cautions={cautions}
      method={how}
    />
  )
}
