import { useMemo } from 'react'
import type { Question } from '../../../../base/answers/finding.ts'
import { type AnyTrade, NotKnown, type Solved, solveTrade } from '../../../../trades/trade.ts'
import type { Balance } from '../../../../whole/push/balanceTypes.ts'
import type { TradeEntry } from '../../../../whole/trades.ts'
import { Cautions } from '../../parts/Cautions.tsx'
import { EmptyState } from '../../parts/EmptyState.tsx'
import { FindingsList } from '../../parts/FindingsList.tsx'
import type { FoldPart } from '../../parts/Fold.tsx'
import { InputLink } from '../../parts/InputLink.tsx'
import { answerOf } from '../../parts/pageAnswer.ts'
import { QuestionPage } from '../../parts/QuestionPage.tsx'
import { foldsOf, TradeFigureView } from '../../parts/TradeParts.tsx'
import { useFindings } from '../../parts/useFindings.ts'
import type { Craft } from '../../state/craftFile.ts'
import { triedCraftOf, useApp, useAppLater } from '../../state/hooks.ts'

interface Props {
  question: Question
  asks: string
  /** the trades of this question, the one with the answer first */
  entries: readonly TradeEntry[]
}

type Worked = { trade: AnyTrade; now: Solved<unknown, unknown>; tried: Solved<unknown, unknown> | undefined }

/** The page of a question whose trades have nothing to drag and nothing to search: read off their declarations. */
export function TradePage({ question, asks, entries }: Props) {
  const craft = useApp((s) => s.craft)
  const triedCraft = useAppLater(triedCraftOf)
  const looked = useApp((s) => s.looked)
  const found = useFindings(question)
  const balance = looked?.craft === craft ? looked?.balance : undefined
  const triedBalance = looked?.triedCraft === triedCraft ? looked?.triedBalance : undefined
  const worked = useMemo(
    () => craft && workOut(entries, craft, balance, triedCraft, triedBalance),
    [entries, craft, balance, triedCraft, triedBalance],
  )
  if (!worked || entries.length === 0) return null
  const cautions = entries.flatMap((e) => e.trade.cautions ?? [])
  if (worked instanceof NotKnown)
    return (
      <>
        <EmptyState title="This cannot be worked out yet" says={`${worked.message}.`}>
          <p>
            <InputLink link={worked.path}>Fill it in on the Craft page</InputLink>
          </p>
        </EmptyState>
        <FindingsList findings={found.now} title="What is known already" />
        <Cautions says={cautions} />
      </>
    )
  const pictured = worked.find((w) => (w.trade.figures ?? []).length > 0)
  return (
    <QuestionPage
      question={question}
      asks={asks}
      answer={answerOf(found.headline)}
      triedSays={found.triedHeadline?.says}
      picture={
        pictured && (
          <TradeFigureView figure={pictured.trade.figures![0]!} now={pictured.now} tried={pictured.tried} />
        )
      }
      inputs={worked.flatMap((w) => w.trade.levers?.(w.tried ?? w.now) ?? [])}
      folds={worked.flatMap((w) => namedFolds(w, w === pictured ? 1 : 0, worked.length > 1))}
      cautions={cautions}
      method={entries.flatMap((e) => e.trade.method ?? [])}
    />
  )
}

/** A trade's folds; where several trades share the page, its numbers say whose they are. */
function namedFolds({ trade, now, tried }: Worked, from: number, several: boolean): FoldPart[] {
  const numbers = `${trade.id}-numbers`
  return foldsOf(trade, now, tried, from).map((fold) =>
    several && fold.id === numbers ? { ...fold, title: `${trade.title}: the numbers` } : fold,
  )
}

/** Every trade of the page solved, or what the craft lacks for it. */
function workOut(
  entries: readonly TradeEntry[],
  craft: Craft,
  balance: Balance | undefined,
  triedCraft: Craft | undefined,
  triedBalance: Balance | undefined,
): Worked[] | NotKnown {
  const solve = ({ trade, setting }: TradeEntry, of: Craft, by: Balance | undefined) =>
    solveTrade(trade, of, setting?.({ craft: of, push: {}, ...(by ? { balance: by } : {}) }))
  try {
    return entries.map((entry) => ({
      trade: entry.trade,
      now: solve(entry, craft, balance),
      tried: triedCraft && orNone(() => solve(entry, triedCraft, triedBalance)),
    }))
  } catch (error) {
    if (error instanceof NotKnown) return error
    throw error
  }
}

/** what is tried may be impossible: then there is nothing to draw beside what is */
function orNone<T>(work: () => T): T | undefined {
  try {
    return work()
  } catch (error) {
    if (error instanceof NotKnown) return undefined
    throw error
  }
}
