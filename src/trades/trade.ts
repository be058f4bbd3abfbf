/**
 * A trade is one declared thing: what it reads of the craft, its inputs, its pure answer, its judgement with every limit in one
 * table, its headline, and what a page shows of it. `look`, the pages, JSON, the book and the generic tests are read off the
 * declaration, so nothing is solved twice and nothing is worded twice.
 */
import type { Finding, Question } from '../base/answers/finding.ts'
import type { LimitTable } from '../base/answers/limit.ts'
import type { MadePart } from '../base/answers/madePart.ts'
import type { Reckoner } from '../base/answers/reckoner.ts'
import type { Amount, Sentence } from '../base/answers/sentence.ts'
import type { DisplaySystem } from '../base/units/format.ts'
import { carryFiles, filesOf } from '../craft/craftFiles.ts'
import { type Craft, carryDerived } from '../craft/index.ts'
import type { Sheet } from '../drawing/sheet.ts'

/** A section of the craft file, or the files that lie beside it. */
export type Section = keyof Craft | 'files'

/** One input that moves a trade's answer. */
export interface Lever {
  /** craft path */
  path: string
  /** what moving it does, in words */
  effect?: Sentence
  /** slider ends, SI; absent for words and flags */
  low?: number
  high?: number
}

/** How a figure is wanted: width in mm, the reader's units, and which of several things it is of (a bay, an engine). */
export interface FigureLook {
  width: number
  system: DisplaySystem
  pick?: number
}

/** A trade's inputs and answer for one craft. */
export interface Solved<Inputs, Answer> {
  readonly inputs: Inputs
  readonly answer: Answer
}

export interface TradeFigure<Inputs, Answer> {
  id: string
  title: string
  /** what to look at in it, one sentence */
  caption?: (now: Solved<Inputs, Answer>) => Sentence
  /** now, and what is tried drawn with it where something is */
  draw: (now: Solved<Inputs, Answer>, tried: Solved<Inputs, Answer> | undefined, look: FigureLook) => Sheet
}

/** A table of numbers: cells are words or amounts, printed in the reader's units. */
export interface NumberTable {
  caption: string
  heads: readonly string[]
  rows: readonly (readonly (string | Amount)[])[]
}

/** Steps in their order, to be done one after the other. */
export interface Card {
  id: string
  title: string
  /** what it comes to, in a few words */
  says: Sentence
  steps: readonly Sentence[]
}

export interface Trade<Inputs = unknown, Answer = unknown, Setting = undefined> {
  id: string
  /** the page it stands on */
  question: Question
  title: string
  /** the sections of the craft file it reads: answers are kept as long as these stay the same things */
  reads: readonly Section[]
  /** answers what it is handed (a recording), not a craft: it is asked only where there is such a thing */
  onlyHanded?: true
  /** the craft file, and what other trades found out first, to plain SI */
  inputs: (craft: Craft, setting: Setting) => Inputs
  answer: (inputs: Inputs) => Answer
  /** every limit that its judgement knows */
  limits: LimitTable
  /** what it has to say; reads limits from what it is handed, so that a test can move them */
  judge: (solved: Solved<Inputs, Answer>, limits: LimitTable) => Finding[]
  /** the page's answer in one sentence: a finding like any other, its id the trade's and `.headline` */
  headline?: (solved: Solved<Inputs, Answer>, limits: LimitTable) => Finding
  /** strongest first */
  levers?: (solved: Solved<Inputs, Answer>) => readonly Lever[]
  figures?: readonly TradeFigure<Inputs, Answer>[]
  numbers?: (now: Solved<Inputs, Answer>, tried?: Solved<Inputs, Answer>) => readonly NumberTable[]
  /** lists of steps made for this craft */
  cards?: (now: Solved<Inputs, Answer>) => readonly Card[]
  /** what is to be made: the page Make and the command `make` show each as a card */
  parts?: (now: Solved<Inputs, Answer>) => readonly MadePart[]
  reckoners?: readonly Reckoner[]
  /** one line each, at the act */
  cautions?: readonly string[]
  /** how the answer is worked out, a sentence or two a step */
  method?: readonly string[]
}

// biome-ignore lint/suspicious/noExplicitAny: a list holds trades of all inputs and answers; each is only handed its own
export type AnyTrade = Trade<any, any, any>

/** Keeps the types of a trade from its parts. */
export function defineTrade<Inputs, Answer, Setting = undefined>(
  trade: Trade<Inputs, Answer, Setting>,
): Trade<Inputs, Answer, Setting> {
  return trade
}

/** What a craft lacks for a trade to answer at all; `path` names the value. */
export class NotKnown extends Error {
  readonly path: string
  constructor(path: string, says: string) {
    super(says)
    this.path = path
  }
}

/** The craft with only the sections a trade says it reads: reading another is a mistake in the trade, and is named. */
function onlyRead(craft: Craft, trade: AnyTrade): Craft {
  const seen = {} as Record<string, unknown>
  for (const key of Object.keys(craft) as (keyof Craft)[]) {
    const known = trade.reads.includes(key) || key === 'name' || key === 'about'
    if (known) seen[key] = craft[key]
    else
      Object.defineProperty(seen, key, {
        get() {
          throw new Error(`the trade ${trade.id} reads "${key}" and does not say so in reads`)
        },
      })
  }
  const made = seen as Craft
  if (trade.reads.includes('files')) carryFiles(craft, made)
  carryDerived(craft, made)
  return made
}

interface Kept {
  sections: readonly unknown[]
  solved: Solved<unknown, unknown>
}

/** answers kept a trade: now, tried, and a few of a search */
const most = 6
const kept = new WeakMap<AnyTrade, Kept[]>()

/**
 * Inputs and answer of a trade for a craft. Kept by the identity of the sections the trade reads (and of what it was handed), so a
 * craft that shares them shares the answer. Throws NotKnown where the craft lacks what the trade needs.
 */
export function solveTrade<I, A, S>(trade: Trade<I, A, S>, craft: Craft, setting: S): Solved<I, A> {
  const sections: unknown[] = trade.reads.map((key) => (key === 'files' ? filesOf(craft) : craft[key]))
  sections.push(setting)
  const list = kept.get(trade) ?? []
  kept.set(trade, list)
  const known = list.find((k) => k.sections.every((s, i) => Object.is(s, sections[i])))
  if (known) return known.solved as Solved<I, A>
  const inputs = trade.inputs(onlyRead(craft, trade), setting)
  const solved: Solved<I, A> = { inputs, answer: trade.answer(inputs) }
  list.unshift({ sections, solved })
  list.length = Math.min(list.length, most)
  return solved
}
