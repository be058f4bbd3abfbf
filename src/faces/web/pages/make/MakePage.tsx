import { useMemo, useState } from 'react'
import { inHours, inKg } from '../../../../base/answers/amounts.ts'
import type { MadePart } from '../../../../base/answers/madePart.ts'
import { joined, type Sentence, say } from '../../../../base/answers/sentence.ts'
import { patternsTrade } from '../../../../trades/patterns/patternsTrade.ts'
import { printsTrade } from '../../../../trades/prints/printsTrade.ts'
import { type AnyTrade, NotKnown, solveTrade } from '../../../../trades/trade.ts'
import { craftLog } from '../../../../whole/log/craftLog.ts'
import { allParts, handsOn, massOf, type PartState, stateOf } from '../../../../whole/make/partsOfCraft.ts'
import { trades } from '../../../../whole/trades.ts'
import type { FoldPart } from '../../parts/Fold.tsx'
import { QuestionPage } from '../../parts/QuestionPage.tsx'
import { Says } from '../../parts/Says.tsx'
import { foldsOf } from '../../parts/TradeParts.tsx'
import { useFindings } from '../../parts/useFindings.ts'
import type { Craft } from '../../state/craftFile.ts'
import { useApp } from '../../state/hooks.ts'
import { useLogText } from '../../state/logs.ts'
import { FlatPart } from './FlatPart.tsx'
import { PartCard } from './PartCard.tsx'
import { PrintPart } from './PrintPart.tsx'
import './make.css'

const tradesHere: readonly AnyTrade[] = [patternsTrade, printsTrade]

/** what a trade is handed besides the craft */
const settingOf = (trade: AnyTrade, craft: Craft): unknown =>
  trades.find((entry) => entry.trade === trade)?.setting?.({ craft, push: {} })

/** What do I cut and print? Every part of the craft with its state, and one at a time its pattern or solid. */
export function MakePage() {
  const craft = useApp((s) => s.craft)
  return craft ? <Parts craft={craft} /> : null
}

interface Row {
  part: MadePart
  state: PartState
}

/** All parts of the craft as the log knows them. */
function useRows(craft: Craft): readonly Row[] {
  const craftId = useApp((s) => s.work?.id)
  const text = useLogText(craftId)
  const findings = useApp((s) => s.findings)
  const all = useMemo(() => Object.values(findings).flat(), [findings])
  return useMemo(() => {
    const made = craftLog(craft, text).entries.flatMap(({ entry }) => (entry.kind === 'made' ? [entry] : []))
    return allParts(craft, all).map((part) => ({ part, state: stateOf(part, made) }))
  }, [craft, text, all])
}

function Parts({ craft }: { craft: Craft }) {
  const rows = useRows(craft)
  const [picked, setPicked] = useState<string>()
  const found = useFindings('make')
  const row = rows.find((r) => r.part.id === picked) ?? rows[0]
  const folds = useMemo(() => foldsOfTrades(craft), [craft])
  return (
    <QuestionPage
      question="make"
      asks="What do I cut and print?"
      answer={{ says: answerOf(rows) }}
      triedSays={found.triedHeadline?.says}
      choose={row && <Choice rows={rows} at={row.part.id} onPick={setPicked} />}
      picture={
        row ? (
          row.part.how === 'sheet' ? (
            <FlatPart part={row.part} key={row.part.id} />
          ) : (
            <PrintPart part={row.part} craft={craft} key={row.part.id} />
          )
        ) : (
          <p>
            Give the craft file an exhaust, a tank, a bay of the deck or an impeller, and its parts stand
            here.
          </p>
        )
      }
      panel={row ? <PartCard part={row.part} state={row.state} craft={craft} /> : <span />}
      inputs={[]}
      folds={[...(row ? stepsOf(row.part) : []), ...folds]}
      cautions={tradesHere.flatMap((t) => t.cautions ?? [])}
      method={tradesHere.flatMap((t) => t.method ?? [])}
    />
  )
}

/** "9 parts left to make of 12: 4 from sheet, 5 to print; 6 h to 19 h by hand, 5.2 kg." */
function answerOf(all: readonly Row[]): Sentence {
  // what would be made instead of others is a choice, not one more to make
  const rows = all.filter((r) => !r.part.instead)
  if (rows.length === 0) return 'There is nothing in the craft file yet that is cut or printed.'
  const left = rows.filter((r) => r.state !== 'made').map((r) => r.part)
  const changed = rows.filter((r) => r.state === 'changed since made').length
  const sheet = left.filter((p) => p.how === 'sheet').length
  const mass = massOf(left)
  const { low, high } = handsOn(left)
  const parts: Sentence[] = [
    say`${String(sheet)} from sheet and ${String(left.length - sheet)} to print`,
    say`${inHours(low)} to ${inHours(high)} of work by hand`,
    inKgSays(mass),
  ]
  const again = changed > 0 ? say`; ${String(changed)} changed since it was made` : ''
  const doubtful = left.filter((p) => p.findings.some((f) => f.standing !== 'good')).length
  const watch = doubtful > 0 ? say`; ${String(doubtful)} with something to watch` : ''
  return left.length === 0
    ? say`All ${String(rows.length)} parts are made.`
    : say`${String(left.length)} of ${String(rows.length)} parts are left to make: ${joined(parts)}${again}${watch}.`
}

const inKgSays = (mass: number): Sentence => say`${inKg(mass)}`

const stateWords: Readonly<Record<PartState, string>> = {
  'not made': '',
  made: ' (made)',
  'changed since made': ' (changed since made)',
}

function Choice({ rows, at, onPick }: { rows: readonly Row[]; at: string; onPick: (id: string) => void }) {
  const groups = [
    ['From sheet', rows.filter((r) => r.part.how === 'sheet')],
    ['To print', rows.filter((r) => r.part.how === 'print')],
  ] as const
  return (
    <label className="partchoice">
      Part{' '}
      <select value={at} onChange={(e) => onPick(e.target.value)}>
        {groups.map(([head, list]) =>
          list.length === 0 ? null : (
            <optgroup key={head} label={head}>
              {list.map(({ part, state }) => (
                <option key={part.id} value={part.id}>
                  {part.title}
                  {stateWords[state]}
                </option>
              ))}
            </optgroup>
          ),
        )}
      </select>
    </label>
  )
}

function stepsOf(part: MadePart): FoldPart[] {
  return [
    {
      id: 'steps',
      title: `How to make it: ${part.title}`,
      says: `${part.steps.length} steps`,
      children: (
        <>
          <ol className="steps">
            {part.steps.map((step, i) => (
              // biome-ignore lint/suspicious/noArrayIndexKey: steps keep their order
              <li key={i}>
                <Says says={step} />
              </li>
            ))}
          </ol>
          {part.cautions.map((c) => (
            <p key={c}>Caution: {c}</p>
          ))}
        </>
      ),
    },
  ]
}

/** What the trades of this page declare besides their parts: try-pieces, tables of threads and rings. */
function foldsOfTrades(craft: Craft): FoldPart[] {
  return tradesHere.flatMap((trade) => {
    try {
      return foldsOf(trade, solveTrade(trade, craft, settingOf(trade, craft)), undefined)
    } catch (error) {
      if (error instanceof NotKnown) return []
      throw error
    }
  })
}
