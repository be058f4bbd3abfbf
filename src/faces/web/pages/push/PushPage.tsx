import { useCallback, useEffect, useMemo } from 'react'
import { worstStanding } from '../../../../base/answers/finding.ts'
import { printed } from '../../../../base/answers/sentence.ts'
import type { Balance } from '../../../../whole/push/balanceTypes.ts'
import { matchingFigure } from '../../../../whole/push/matchingFigure.ts'
import { pushAnswer } from '../../../../whole/push/pushAnswer.ts'
import { forcesFigure, runFigure } from '../../../../whole/push/pushFigures.ts'
import { leversFor } from '../../../../whole/push/pushLevers.ts'
import { type Look, says, saysRpm } from '../../../../whole/push/shown.ts'
import { AnswerHeader } from '../../parts/AnswerHeader.tsx'
import { Cautions } from '../../parts/Cautions.tsx'
import { lookOf } from '../../parts/displayLook.ts'
import { EmptyState } from '../../parts/EmptyState.tsx'
import { Figure } from '../../parts/Figure.tsx'
import { FindingsList } from '../../parts/FindingsList.tsx'
import { InputLink } from '../../parts/InputLink.tsx'
import { InputsPanel } from '../../parts/InputsPanel.tsx'
import { SourcesFoot } from '../../parts/SourcesFoot.tsx'
import { app } from '../../state/app.ts'
import type { Craft } from '../../state/craftFile.ts'
import { useApp } from '../../state/hooks.ts'
import { useBalances } from './balances.ts'
import { Changes } from './Changes.tsx'
import { Numbers } from './PushNumbers.tsx'
import { cautions, how } from './pushWords.ts'
import './push.css'

const asks = 'How will it go?'

/** How will it go? Engines, jet and hull solved together, now and with what is tried. */
export function PushPage() {
  const balances = useBalances()
  const findings = useApp((s) => s.findings.push)
  if (!balances) return null
  const { craft, now, triedCraft, tried, waiting } = balances
  if (!now.balance)
    return (
      <>
        <EmptyState title="How it will go cannot be worked out yet" says={`${now.says}.`}>
          {now.path && (
            <p>
              <InputLink link={now.path}>Fill it in on the Craft page</InputLink>
            </p>
          )}
        </EmptyState>
        <FindingsList findings={findings ?? []} title="What is known already" />
        <Cautions says={cautions} />
      </>
    )
  return (
    <Answered
      craft={craft}
      now={now.balance}
      triedCraft={triedCraft}
      tried={tried?.balance}
      fault={tried && !tried.balance ? tried.says : undefined}
      waiting={waiting}
    />
  )
}

interface Props {
  craft: Craft
  now: Balance
  triedCraft: Craft | undefined
  tried: Balance | undefined
  /** why the tried values give no answer */
  fault: string | undefined
  waiting: boolean
}

function Answered({ craft, now, triedCraft, tried, fault, waiting }: Props) {
  const units = useApp((s) => s.units)
  const findings = useApp((s) => s.findings.push)
  const triedFindings = useApp((s) => s.triedFindings.push)
  const look = useMemo(() => lookOf(units, 180), [units])
  const answer = useMemo(() => pushAnswer(craft, now, look), [craft, now, look])
  const saysTried = triedCraft && tried ? pushAnswer(triedCraft, tried, look).says : fault
  const levers = useMemo(() => leversFor(craft, now, look), [craft, now, look])
  const matching = useCallback(
    (w: number) => matchingFigure(now, tried, lookOf(units, w)),
    [now, tried, units],
  )
  const forces = useCallback((w: number) => forcesFigure(now, tried, lookOf(units, w)), [now, tried, units])
  const run = useCallback((w: number) => runFigure(now, tried, lookOf(units, w)), [now, tried, units])
  const expected = tried ? expects(now, tried, look) : ''
  useEffect(() => app.expect(expected), [expected])
  const shown = triedFindings ?? findings ?? []

  return (
    <>
      <AnswerHeader
        asks={asks}
        says={answer.says}
        saysTried={saysTried}
        range={answer.range}
        confidence={answer.confidence}
        standing={findings ? worstStanding(findings) : undefined}
      />
      <p className="quiet waiting" role="status">
        {waiting ? 'Ranges and changes are being worked out…' : ''}
      </p>
      <div className="beside">
        <div className="pictures">
          <Figure
            draw={matching}
            caption="Where the two lines meet, engines and impeller run."
            name="engines and impeller"
          />
          <Figure draw={forces} caption={printed(now.limitedBy.says, units)} name="thrust and drag" />
          <Figure
            draw={run}
            caption="Full throttle from rest, the rider always in the best place."
            name="run up to speed"
          />
        </div>
        <InputsPanel inputs={levers} />
      </div>
      <FindingsList
        findings={shown}
        title={triedFindings ? 'What we found, with what is tried' : 'What we found'}
      />
      <Changes craft={craft} now={now} tried={tried?.ranged ? tried : undefined} look={look} />
      <Cautions says={cautions} />
      <Numbers now={now} tried={tried} look={look} />
      <SourcesFoot how={how} sources={shown.flatMap((f) => f.sources)} />
    </>
  )
}

/** What the tried values should do, for the log. */
function expects(now: Balance, tried: Balance, look: Look): string {
  const step = (name: string, from: string, to: string) => (from === to ? '' : `${name} ${to}, was ${from}`)
  return [
    step('tied up', saysRpm(now.tiedUp.rotation), saysRpm(tried.tiedUp.rotation)),
    step('pull', says(now.pull.value, 'force', look), says(tried.pull.value, 'force', look)),
    step('top speed', says(now.topSpeed.value, 'speed', look), says(tried.topSpeed.value, 'speed', look)),
  ]
    .filter((s) => s !== '')
    .join('; ')
}
