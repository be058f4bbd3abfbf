import { useEffect, useMemo } from 'react'
import { Button } from 'react-aria-components/Button'
import { type Finding, worstStanding } from '../../../../base/answers/finding.ts'
import { simulatedAnswer } from '../../../../whole/breath/breathAnswer.ts'
import { peakOf, powerOf, simulatedLine } from '../../../../whole/breath/curveLines.ts'
import { says, saysRpm } from '../../../../whole/push/shown.ts'
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
import { Numbers } from './BreathNumbers.tsx'
import { leversOf } from './breathLevers.ts'
import { cautions, how } from './breathWords.ts'
import { Curves } from './Curves.tsx'
import { PipeAndBox } from './PipeAndBox.tsx'
import { PipeSearch } from './PipeSearch.tsx'
import { StingerSearch } from './StingerSearch.tsx'
import { resume, type Simulation, stop } from './simulations.ts'
import { Trust } from './Trust.tsx'
import { PortPressure, Waves } from './Turn.tsx'
import type { Side } from './useBreath.ts'
import { useTurn } from './useTurn.ts'

const asks = 'How do the engines breathe?'

/** A two-stroke by its ports and pipe. */
export function Simulated({ now, tried }: { now: Side; tried: Side | undefined }) {
  const units = useApp((s) => s.units)
  const look = useMemo(() => lookOf(units, 180), [units])
  const line = useMemo(() => lineOf(now), [now])
  const triedLine = useMemo(() => tried && lineOf(tried), [tried])
  const answer = useMemo(
    () => line && simulatedAnswer(line, stageOf(now.simulation), look),
    [line, now, look],
  )
  const triedAnswer = triedLine && tried && simulatedAnswer(triedLine, stageOf(tried.simulation), look)
  const findings = useFindings(now, tried)
  const nowFindings = useFindings(now, undefined)
  const expected = line && triedLine ? expects(line, triedLine, look) : ''
  useEffect(() => app.expect(expected), [expected])
  const turn = useTurn(now, tried)
  const searchKey = useMemo(() => {
    const { log: _, ...rest } = now.craft
    return JSON.stringify([now.view.index, rest])
  }, [now.craft, now.view.index])
  const faults = tried?.view.findings ?? []
  if (now.view.findings.length > 0 || now.simulation?.output?.curve === undefined)
    return <NotYet side={now} findings={findings} />
  return (
    <>
      <AnswerHeader
        asks={asks}
        says={answer?.says ?? ''}
        saysTried={triedAnswer?.says ?? faults[0]?.says}
        range={answer?.range}
        confidence={answer?.confidence}
        standing={worstStanding(nowFindings)}
      />
      <Progress side={tried?.simulation?.running ? tried : now} />
      <div className="beside">
        <div className="pictures">
          <Curves now={now} line={line} tried={triedLine} />
          <PortPressure now={now} turn={turn} />
        </div>
        <InputsPanel inputs={leversOf(now, look, units)} />
      </div>
      <PipeAndBox now={now} tried={tried} />
      <Waves now={now} turn={turn} />
      <PipeSearch side={now} searchKey={searchKey} />
      <StingerSearch side={now} searchKey={searchKey} />
      <FindingsList
        findings={findings}
        title={tried ? 'What we found, with what is tried' : 'What we found'}
      />
      <Cautions says={cautions} />
      <Trust side={tried?.simulation?.output ? tried : now} />
      <Numbers now={now} tried={tried} look={look} />
      <SourcesFoot how={how} sources={findings.flatMap((f) => f.sources)} />
    </>
  )
}

function lineOf({ view, simulation }: Side) {
  const out = simulation?.output
  return out?.curve && simulatedLine(view.name, out.curve, view.reading?.cylinders ?? 1, out.band)
}

function stageOf(s: Simulation | undefined) {
  const points = s?.output?.curve?.points ?? []
  return {
    rough: s?.rough ?? true,
    banded: s?.output?.band !== undefined,
    asked: points.length,
    settled: points.filter((p) => p.converged).length,
  }
}

/**
 * What every look at the craft finds of this question, of the tried craft while something is tried; what this page's own
 * curve says, which has the band, stands in its place.
 */
function useFindings(now: Side, tried: Side | undefined): readonly Finding[] {
  const looked = useApp((s) => s.findings.breath)
  const lookedTried = useApp((s) => s.triedFindings.breath)
  const side = tried ?? now
  const of = (s: Side) =>
    s.view.findings.length > 0 ? s.view.findings : (s.simulation?.output?.findings ?? [])
  const own = of(side)
  const others = (tried ? lookedTried : looked) ?? []
  return useMemo(() => {
    const ids = new Set(own.map((f) => f.id))
    return [...own, ...others.filter((f) => !ids.has(f.id))]
  }, [own, others])
}

/** What is being worked out, or a way to go on. */
function Progress({ side }: { side: Side }) {
  const s = side.simulation
  if (s?.running)
    return <JobProgress says={s.running.says} part={s.running.part} onCancel={() => stop(side.key)} />
  if (!s?.stopped && !s?.error) return null
  return (
    <p className="row" role="status">
      {s.error ?? 'Called off.'} <Button onPress={() => resume(side.key)}>Work it out</Button>
    </p>
  )
}

function NotYet({ side, findings }: { side: Side; findings: readonly Finding[] }) {
  const { view } = side
  const at = `engines.${view.index}`
  const busy = view.findings.length === 0
  return (
    <>
      {busy ? (
        <AnswerHeader asks={asks} says={`${view.name} is being worked out from its ports and pipe.`} />
      ) : (
        <EmptyState
          title="How it breathes cannot be worked out yet"
          says={view.findings[0]!.says}
          measures={view.reading?.missing ? pipeMeasures(at) : []}
        >
          <p>
            <InputLink link={view.findings[0]!.because[0]?.link ?? at}>
              Fill it in on the Craft page
            </InputLink>
          </p>
        </EmptyState>
      )}
      <Progress side={side} />
      <FindingsList findings={findings} />
      <Cautions says={cautions} />
    </>
  )
}

const pipeMeasures = (at: string) => [
  {
    what: 'the pipe: length of each cone along the outside and the inside, and round the outside at each joint',
    with: 'string and tape',
    minutes: 20,
    path: `${at}.exhaust`,
  },
  { what: 'stinger bore and length', with: 'caliper and tape', minutes: 3, path: `${at}.exhaust` },
]

type Line = NonNullable<ReturnType<typeof lineOf>>

/** What the tried values should do, for the log. */
function expects(now: Line, tried: Line, look: ReturnType<typeof lookOf>): string {
  const step = (name: string, pick: (l: Line) => string) => {
    const [was, is] = [pick(now), pick(tried)]
    return was === is ? '' : `most ${name} ${is}, was ${was}`
  }
  const at = (values: (l: Line) => readonly number[], kind: 'power' | 'torque') => (l: Line) => {
    const peak = peakOf(l, values(l))
    return peak ? `${says(peak.value, kind, look)} at ${saysRpm(peak.rpm / 60)}` : 'nowhere'
  }
  return [
    step('power', at(powerOf, 'power')),
    step(
      'torque',
      at((l) => l.torque, 'torque'),
    ),
  ]
    .filter((s) => s !== '')
    .join('; ')
}
