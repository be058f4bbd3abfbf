/**
 * What a book is made from: one look at the craft with every trade's answer, its parts, its log and the plan of the next run. The same
 * functions that the screens go by, asked once; chapters only lay out what stands here.
 */
import type { Question } from '../base/answers/finding.ts'
import type { MadePart } from '../base/answers/madePart.ts'
import type { DisplaySystem } from '../base/units/format.ts'
import type { Craft } from '../craft/index.ts'
import type { PaperName } from '../drawing/papers.ts'
import type { MadeSolid } from '../trades/prints/solids/makeSolid.ts'
import type { AnyTrade, Solved } from '../trades/trade.ts'
import { NotKnown, solveTrade } from '../trades/trade.ts'
import type { EngineAnswers } from '../whole/breath/engineAnswers.ts'
import type { CraftLog } from '../whole/log/craftLog.ts'
import { knownBy, type Look, lookAt } from '../whole/look.ts'
import { allParts } from '../whole/make/partsOfCraft.ts'
import { type NextChange, nextChange } from '../whole/next/nextChange.ts'
import { type RunPlan, runPlan } from '../whole/plan/runPlan.ts'
import { MapStore } from '../whole/push/craftModel.ts'
import { decided } from '../whole/push/decided.ts'
import { handedTo, type Known, trades } from '../whole/trades.ts'

/** A trade with its answer for this craft. */
export interface Worked {
  trade: AnyTrade
  now: Solved<unknown, unknown>
}

export interface BookSource {
  craft: Craft
  look: Look
  worked: readonly Worked[]
  engines: EngineAnswers | undefined
  parts: readonly MadePart[]
  /** printed parts that were made, by part */
  solids?: ReadonlyMap<string, MadeSolid>
  log: CraftLog
  /** absent where the craft cannot be balanced yet */
  plan?: RunPlan
  next?: NextChange
  units: DisplaySystem
  paper: PaperName
  /** year-month-day, printed on the cover */
  date: string
}

export interface BookAsked {
  engines?: EngineAnswers
  log: CraftLog
  solids?: ReadonlyMap<string, MadeSolid>
  units?: DisplaySystem
  paper?: PaperName
  date: string
  progress?: (part: number, says: string) => void
}

/** Works out all that a book tells. Takes a look and a plan. */
export function bookSource(given: Craft, asked: BookAsked): BookSource {
  const { engines, log, progress = () => {} } = asked
  const maps = new MapStore()
  const push = { maps, ...(engines ? { engines } : {}) }
  progress(0, 'Looking at the craft')
  const look = lookAt(given, push)
  const { balance, findings } = look
  const known = (balance && knownBy(balance)) ?? { craft: madeOf(given, engines), push }
  const { craft } = known
  progress(0.6, 'Planning the next run')
  const solved = engines?.solved
  const plan = balance && runPlan(craft, balance, { findings, log, maps, ...(solved ? { solved } : {}) })
  const next = balance && nextChange(craft, balance, { findings, log })
  return {
    craft,
    look,
    worked: workedBy(known),
    engines,
    parts: allParts(craft, findings),
    ...(asked.solids ? { solids: asked.solids } : {}),
    log,
    ...(plan ? { plan } : {}),
    ...(next ? { next } : {}),
    units: asked.units ?? 'metric',
    paper: asked.paper ?? 'A4',
    date: asked.date,
  }
}

/** The craft with its open choices made, as a look makes them. */
function madeOf(craft: Craft, engines: EngineAnswers | undefined): Craft {
  try {
    return decided(craft, engines?.solved).craft
  } catch (error) {
    if (error instanceof NotKnown) return craft
    throw error
  }
}

/** Every trade that can answer; those of a recording have none here. */
function workedBy(known: Known): Worked[] {
  return trades.flatMap((entry) => {
    const { trade } = entry
    const handed = handedTo(entry, known)
    if (trade.onlyHanded && handed === undefined) return []
    try {
      return [{ trade, now: solveTrade(trade, known.craft, handed) }]
    } catch (error) {
      if (error instanceof NotKnown) return []
      throw error
    }
  })
}

/** Trades of one question. */
export const workedOn = ({ worked }: BookSource, question: Question): Worked[] =>
  worked.filter(({ trade }) => trade.question === question)
