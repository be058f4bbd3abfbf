import { useMemo } from 'react'
import type { Balance } from '../../../../whole/push/balanceTypes.ts'
import { pushHeadline } from '../../../../whole/push/pushHeadline.ts'
import { leversFor } from '../../../../whole/push/pushLevers.ts'
import { pushTrade } from '../../../../whole/push/pushTrade.ts'
import { type Look, says, saysRpm } from '../../../../whole/push/shown.ts'
import { Cautions } from '../../parts/Cautions.tsx'
import { lookOf } from '../../parts/displayLook.ts'
import { EmptyState } from '../../parts/EmptyState.tsx'
import { FindingsList } from '../../parts/FindingsList.tsx'
import { InputLink } from '../../parts/InputLink.tsx'
import { answerOf } from '../../parts/pageAnswer.ts'
import { QuestionPage } from '../../parts/QuestionPage.tsx'
import { foldsOf, TradeFigureView } from '../../parts/TradeParts.tsx'
import { useFindings } from '../../parts/useFindings.ts'
import { useSteadyOrder } from '../../parts/useSteadyOrder.ts'
import type { Craft } from '../../state/craftFile.ts'
import { useApp } from '../../state/hooks.ts'
import { useBalances } from './balances.ts'
import { Changes, changesSay } from './Changes.tsx'
import { Doubts } from './Doubts.tsx'

const cautions = pushTrade.cautions ?? []

/** How will it go? Engines, jet and hull solved together, now and with what is tried. */
export function PushPage() {
  const balances = useBalances()
  const found = useFindings('push')
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
        <FindingsList findings={found.now} title="What is known already" />
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
  const of = useApp((s) => s.work?.id ?? '')
  const look = useMemo(() => lookOf(units, 180), [units])
  const answer = useMemo(() => answerOf(pushHeadline(craft, now)), [craft, now])
  const triedSays = useMemo(
    () => (triedCraft && tried ? pushHeadline(triedCraft, tried).says : fault),
    [triedCraft, tried, fault],
  )
  const levers = useMemo(() => leversFor(craft, now, look), [craft, now, look])
  const solved = useMemo(() => ({ inputs: { craft }, answer: now }), [craft, now])
  const triedSolved = useMemo(
    () => tried && { inputs: { craft: triedCraft }, answer: tried },
    [tried, triedCraft],
  )
  const ranged = tried?.ranged ? tried : undefined
  return (
    <QuestionPage
      question="push"
      asks="How will it go?"
      answer={answer}
      triedSays={triedSays}
      expects={tried ? expectsOf(now, tried, look) : ''}
      status={waiting && 'Ranges and changes are being worked out…'}
      picture={<TradeFigureView figure={pushTrade.figures![0]!} now={solved} tried={triedSolved} bare />}
      inputs={useSteadyOrder(levers, of)}
      folds={[
        {
          id: 'changes',
          title: 'What each change buys',
          says: changesSay(now),
          children: <Changes craft={craft} now={now} tried={ranged} look={look} />,
        },
        {
          id: 'doubts',
          title: 'Where the doubt comes from',
          says: 'input by input',
          children: <Doubts craft={craft} now={now} tried={ranged} />,
        },
        ...foldsOf(pushTrade, solved, triedSolved),
      ]}
      cautions={cautions}
      method={pushTrade.method ?? []}
    />
  )
}

/** What the tried values should do, for the log. */
function expectsOf(now: Balance, tried: Balance, look: Look): string {
  const step = (name: string, from: string, to: string) => (from === to ? '' : `${name} ${to}, was ${from}`)
  return [
    step('tied up', saysRpm(now.tiedUp.rotation), saysRpm(tried.tiedUp.rotation)),
    step('pull', says(now.pull.value, 'force', look), says(tried.pull.value, 'force', look)),
    step('top speed', says(now.topSpeed.value, 'speed', look), says(tried.topSpeed.value, 'speed', look)),
  ]
    .filter((s) => s !== '')
    .join('; ')
}
