import { lazy, Suspense, useEffect, useMemo } from 'react'
import { inCm } from '../../../../base/answers/amounts.ts'
import { type Finding, worstStanding } from '../../../../base/answers/finding.ts'
import { printed, type Sentence, say, whole } from '../../../../base/answers/sentence.ts'
import { liveHeadline } from '../../../../trades/float/floatHeadline.ts'
import { floatLimits } from '../../../../trades/float/floatLimits.ts'
import { floatTrade } from '../../../../trades/float/floatTrade.ts'
import { AnswerHeader } from '../../parts/AnswerHeader.tsx'
import { Cautions } from '../../parts/Cautions.tsx'
import { lookOf } from '../../parts/displayLook.ts'
import { EmptyState } from '../../parts/EmptyState.tsx'
import { FindingsList } from '../../parts/FindingsList.tsx'
import { InputLink } from '../../parts/InputLink.tsx'
import { InputsPanel } from '../../parts/InputsPanel.tsx'
import { JobProgress } from '../../parts/JobProgress.tsx'
import { SourcesFoot } from '../../parts/SourcesFoot.tsx'
import { app } from '../../state/app.ts'
import { useApp } from '../../state/hooks.ts'
import { FoamAndFlood } from './FoamAndFlood.tsx'
import { floatLevers } from './floatLevers.ts'
import { HullFile } from './HullFile.tsx'
import { Loads } from './Loads.tsx'
import { RiderStage } from './RiderStage.tsx'
import { resumeReport, stopReport } from './reports.ts'
import { Stability } from './Stability.tsx'
import { type Side, useFloat } from './useFloat.ts'
import { Weights } from './Weights.tsx'
import './float.css'

const ThreeD = lazy(async () => ({ default: (await import('./ThreeD.tsx')).ThreeD }))

/** How does it sit? The craft at rest in still water, intact and swamped, now and with what is tried. */
export function FloatPage() {
  const float = useFloat()
  const findings = useApp((s) => s.findings.float)
  if (!float) return null
  const { now, fault, tried, triedFault } = float
  if (!now)
    return (
      <>
        <EmptyState title="How it sits cannot be worked out yet" says={`${fault}.`}>
          <p>
            <InputLink link="hull">Look at the hull’s measures on the Craft page</InputLink>
          </p>
        </EmptyState>
        <FindingsList findings={findings ?? []} title="What is known already" />
        <HullFile />
        <Cautions says={cautions} />
      </>
    )
  return <Answered now={now} tried={tried} triedFault={triedFault} />
}

const cautions = floatTrade.cautions ?? []
const how = floatTrade.method ?? []

/** The whole answer once it is there, until then the live one. */
function answerOf({ input, live, state, weightsAssumed }: Side): Finding {
  const { x, y } = input.rider
  return state.report?.headline ?? liveHeadline(input, live(x, y), weightsAssumed, floatLimits)
}

function rangeOf({ low, high }: Finding): Sentence | undefined {
  return low === undefined || high === undefined ? undefined : say`${inCm(low)} to ${inCm(high)} deep`
}

interface Props {
  now: Side
  tried: Side | undefined
  triedFault: string | undefined
}

function Answered({ now, tried, triedFault }: Props) {
  const units = useApp((s) => s.units)
  const look = useMemo(() => lookOf(units, 180), [units])
  const shown = tried ?? now
  const answer = answerOf(now)
  const triedSays = tried ? answerOf(tried).says : triedFault
  const range = rangeOf(answer)
  const expected = triedSays ? `${printed(triedSays)} Was: ${printed(answer.says)}` : ''
  useEffect(() => app.expect(expected), [expected])
  const levers = useMemo(() => floatLevers(shown, look), [shown, look])
  const findings = shown.state.report?.findings ?? now.state.report?.findings ?? []
  const report = now.state.report
  const triedReport = tried?.state.report
  return (
    <div className="float">
      <AnswerHeader
        asks="How does it sit?"
        says={answer.says}
        saysTried={triedSays}
        range={range && printed(range, units)}
        confidence={answer.because.slice(0, 1).map((b) => printed(whole(b.says), units))[0]}
        standing={report ? worstStanding(report.findings) : undefined}
      />
      <div className="beside">
        <div className="pictures">
          <RiderStage key={shown.key} side={shown} now={now}>
            <Suspense fallback={<p className="quiet">Fetching the picture in space…</p>}>
              <ThreeD side={shown} />
            </Suspense>
          </RiderStage>
        </div>
        <InputsPanel inputs={levers} />
      </div>
      <Work side={now} />
      {tried && <Work side={tried} />}
      <FindingsList
        findings={findings}
        title={triedReport ? 'What we found, with what is tried' : 'What we found'}
      />
      <Cautions says={cautions} />
      {report && <Loads now={now} report={report} tried={tried} triedReport={triedReport} look={look} />}
      {report && <Stability report={report} triedReport={triedReport} look={look} />}
      {report && (
        <FoamAndFlood now={now} report={report} tried={tried} triedReport={triedReport} look={look} />
      )}
      <Weights side={now} tried={tried} look={look} />
      <HullFile />
      <SourcesFoot how={how} sources={findings.flatMap((f) => f.sources)} />
    </div>
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
