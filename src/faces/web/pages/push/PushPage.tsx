import { useMemo } from 'react'
import type { Balance } from '../../../../whole/push/balanceTypes.ts'
import { pushHeadline } from '../../../../whole/push/pushHeadline.ts'
import { leversFor } from '../../../../whole/push/pushLevers.ts'
import { pushTrade } from '../../../../whole/push/pushTrade.ts'
import { type Look, says, saysRpm } from '../../../../whole/push/shown.ts'
import { lookOf } from '../../parts/displayLook.ts'
import { answerOf } from '../../parts/pageAnswer.ts'
import { QuestionPage } from '../../parts/QuestionPage.tsx'
import { Says } from '../../parts/Says.tsx'
import { foldsOf, TradeFigureView } from '../../parts/TradeParts.tsx'
import { useSteadyOrder } from '../../parts/useSteadyOrder.ts'
import type { Craft } from '../../state/craftFile.ts'
import { useApp } from '../../state/hooks.ts'
import { useBalances } from './balances.ts'
import { Changes, changesSay } from './Changes.tsx'
import { Choose } from './Choose.tsx'
import { Doubts } from './Doubts.tsx'
import { Coming, NoAnswer } from './NoBalance.tsx'
import { type Choosing, choiceBrief, useChoice } from './useChoice.ts'

const cautions = pushTrade.cautions ?? []

/** How will it go? Engines, jet and hull solved together, now and with what is tried. */
export function PushPage() {
  const balances = useBalances()
  if (!balances) return null
  const { craft, now, triedCraft, tried, stage, open, coming } = balances
  if (!now.balance && coming) return <Coming />
  if (!now.balance) return <NoAnswer says={now.says} path={now.path} />
  return (
    <Answered
      craft={craft}
      now={now.balance}
      triedCraft={triedCraft}
      tried={tried?.balance}
      fault={tried && !tried.balance ? tried.says : undefined}
      stage={stage}
      open={open}
    />
  )
}

const stages = {
  single: 'Ranges and changes are being worked out…',
  first: 'A first range from few draws; the good one, and what each change buys, are being worked out…',
  coarse: 'From a coarse simulation of the engines; the fine one is being worked out…',
  good: '',
} as const

interface Props {
  craft: Craft
  now: Balance
  triedCraft: Craft | undefined
  tried: Balance | undefined
  /** why the tried values give no answer */
  fault: string | undefined
  stage: keyof typeof stages
  /** the file leaves undecided what the search chooses */
  open: boolean
}

function Answered({ craft, now, triedCraft, tried, fault, stage, open }: Props) {
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
  const choosing = useChoice(craft)
  return (
    <QuestionPage
      question="push"
      asks="How will it go?"
      answer={answer}
      triedSays={triedSays}
      expects={tried ? expectsOf(now, tried, look) : ''}
      status={stages[stage]}
      first={open && <Undecided choosing={choosing} />}
      picture={<TradeFigureView figure={pushTrade.figures![0]!} now={solved} tried={triedSolved} bare />}
      inputs={useSteadyOrder(levers, of)}
      of={craft}
      folds={[
        ...(open
          ? []
          : [
              {
                id: 'choose',
                title: 'Choose the impeller',
                says: choiceBrief(choosing),
                children: <Choose {...choosing} />,
              },
            ]),
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

/** What the file leaves open, and the search for it: the first thing on the page. */
function Undecided({ choosing }: { choosing: Choosing }) {
  const put = useApp((s) => s.findings.push?.find((f) => f.id === 'push.undecided'))
  return (
    <section className="block">
      <h2>Choose the impeller</h2>
      {put && (
        <p>
          <Says says={put.says} />
        </p>
      )}
      <Choose {...choosing} />
    </section>
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
