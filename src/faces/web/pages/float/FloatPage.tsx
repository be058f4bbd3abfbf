import { useMemo } from 'react'
import { inCm } from '../../../../base/answers/amounts.ts'
import type { Finding } from '../../../../base/answers/finding.ts'
import { type Sentence, say, whole } from '../../../../base/answers/sentence.ts'
import { liveHeadline } from '../../../../trades/float/floatHeadline.ts'
import { floatLimits } from '../../../../trades/float/floatLimits.ts'
import { floatTrade } from '../../../../trades/float/floatTrade.ts'
import { Cautions } from '../../parts/Cautions.tsx'
import { lookOf } from '../../parts/displayLook.ts'
import { EmptyState } from '../../parts/EmptyState.tsx'
import { FindingsList } from '../../parts/FindingsList.tsx'
import { Fold } from '../../parts/Fold.tsx'
import { InputLink } from '../../parts/InputLink.tsx'
import { JobProgress } from '../../parts/JobProgress.tsx'
import { changeOf } from '../../parts/pageAnswer.ts'
import { QuestionPage } from '../../parts/QuestionPage.tsx'
import { useFindings } from '../../parts/useFindings.ts'
import { useApp } from '../../state/hooks.ts'
import { floatFolds, hullFold } from './floatFolds.tsx'
import { floatLevers } from './floatLevers.ts'
import { RiderStage } from './RiderStage.tsx'
import { resumeReport, stopReport } from './reports.ts'
import { type Side, useFloat } from './useFloat.ts'
import './float.css'

const cautions = floatTrade.cautions ?? []

/** How does it sit? The craft at rest in still water, intact and swamped, now and with what is tried. */
export function FloatPage() {
  const float = useFloat()
  const found = useFindings('float')
  if (!float) return null
  const { now, fault, tried, triedFault } = float
  if (now) return <Answered now={now} tried={tried} triedFault={triedFault} />
  return (
    <>
      <EmptyState title="How it sits cannot be worked out yet" says={`${fault}.`}>
        <p>
          <InputLink link="hull">Look at the hull’s measures on the Craft page</InputLink>
        </p>
      </EmptyState>
      <FindingsList findings={found.now} title="What is known already" />
      <Fold {...hullFold} />
      <Cautions says={cautions} />
    </>
  )
}

/** The answer of the look while it is of this craft, else the live one, which is there at once. */
function answerOf({ input, live, weightsAssumed }: Side, looked: Finding | undefined): Finding {
  const { x, y } = input.rider
  return looked ?? liveHeadline(input, live(x, y), weightsAssumed, floatLimits)
}

function rangeOf({ low, high }: Finding): Sentence | undefined {
  return low === undefined || high === undefined
    ? undefined
    : say`${inCm(low, 0.1)} to ${inCm(high, 0.1)} deep`
}

interface Props {
  now: Side
  tried: Side | undefined
  triedFault: string | undefined
}

function Answered({ now, tried, triedFault }: Props) {
  const units = useApp((s) => s.units)
  const look = useMemo(() => lookOf(units, 180), [units])
  const found = useFindings('float')
  const ofNow = useApp((s) => s.looked?.craft === now.craft)
  const ofTried = useApp((s) => tried !== undefined && s.looked?.triedCraft === tried.craft)
  const answer = answerOf(now, ofNow ? found.headline : undefined)
  const triedSays = tried ? answerOf(tried, ofTried ? found.triedHeadline : undefined).says : triedFault
  const shown = tried ?? now
  const levers = useMemo(() => floatLevers(shown), [shown])
  const rests = answer.because[0]?.says
  return (
    <QuestionPage
      question="float"
      asks="How does it sit?"
      answer={{
        says: answer.says,
        range: rangeOf(answer),
        confidence: rests === undefined ? undefined : whole(rests),
      }}
      triedSays={triedSays}
      expects={changeOf(answer.says, triedSays)}
      status={<Work side={tried && now.state.report ? tried : now} />}
      picture={<RiderStage side={shown} now={now} />}
      inputs={levers}
      folds={floatFolds(
        now,
        tried,
        found.now.find((f) => f.id === 'float.guidance'),
        look,
      )}
      cautions={cautions}
      method={floatTrade.method ?? []}
    />
  )
}

/** How far the longer work is; it can be called off and taken up again. */
function Work({ side }: { side: Side }) {
  const { running, stopped, error, report } = side.state
  if (report) return null
  if (error)
    return (
      <p role="alert">
        It could not be worked out: {error}{' '}
        <button type="button" onClick={() => resumeReport(side.key)}>
          Try again
        </button>
      </p>
    )
  if (stopped)
    return (
      <p>
        Called off.{' '}
        <button type="button" onClick={() => resumeReport(side.key)}>
          Work it out
        </button>
      </p>
    )
  return (
    <JobProgress
      says={running?.says ?? 'Settling the loads'}
      part={running?.part}
      onCancel={() => stopReport(side.key)}
    />
  )
}
