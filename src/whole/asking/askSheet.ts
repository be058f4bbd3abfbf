/**
 * The sheet to ask with: one page that a stranger can answer from. The craft to scale, ten numbers with where they come from, what
 * happened in order, the three likeliest causes with their odds, what was tried, and one question. Without names and without the place.
 */
import { inPercent, inSeconds } from '../../base/answers/amounts.ts'
import { printed, type Sentence, say } from '../../base/answers/sentence.ts'
import type { DisplaySystem } from '../../base/units/format.ts'
import { type Craft, carryDerived } from '../../craft/index.ts'
import type { Sheet } from '../../drawing/sheet.ts'
import { writtenPages } from '../../drawing/writtenPage.ts'
import type { RunRanking } from '../faults/rankingTypes.ts'
import { type CraftLog, type CraftLogEntry, entrySays } from '../log/craftLog.ts'
import { craftPicture } from '../picture/craftPicture.ts'
import type { Balance } from '../push/balanceTypes.ts'
import { inchLook, metricLook } from '../push/shown.ts'
import { type AskNumber, askNumbers } from './askNumbers.ts'
import { nameless, namelessPart } from './nameless.ts'

export interface AskSetting {
  balance?: Balance
  log?: CraftLog
  ranking?: RunRanking
  /** the builder's own question; one is made from the ranking when left out */
  question?: string
  units?: DisplaySystem
}

/** What stands on the sheet, before it is laid out. */
export interface AskContent {
  question: string
  numbers: readonly AskNumber[]
  timeline: readonly Sentence[]
  causes: readonly Sentence[]
  tried: readonly string[]
}

export interface AskSheet {
  sheet: Sheet
  text: string
}

const title = 'A question about a small powered craft'
const foot =
  'Odds and predicted figures come from a model of the craft and may be wrong. Whoever answers has not seen it; whoever tries the answer minds petrol, hot metal, turning parts and water.'
/** what fits on one page beside the picture */
const most = { timeline: 7, tried: 6, longest: 170 } as const

const cut = (text: string) => (text.length > most.longest ? `${text.slice(0, most.longest - 1)}…` : text)

export function askContent(craft: Craft, setting: AskSetting): AskContent {
  const { balance, log, ranking, question } = setting
  const causes = (ranking?.causes ?? []).slice(0, 3)
  return {
    question: cut(nameless(question?.trim() ?? '')) || madeQuestion(causes.length),
    numbers: askNumbers(craft, balance, log),
    timeline: timelineOf(ranking, log),
    causes: causes.map((c) => {
      const because = c.for[0]
      const against = c.against[0]
      return say`${inPercent(c.share)}: ${bare(c.says)}${because ? say`, for it: ${bare(because)}` : ''}${against ? say`; against it: ${bare(against)}` : ''}`
    }),
    tried: (log?.entries ?? [])
      .filter((e) => e.entry.kind === 'check' || e.entry.kind === 'change' || e.entry.kind === 'made')
      .slice(-most.tried)
      .map((e) => cut(nameless(entrySays(e)))),
  }
}

const madeQuestion = (causes: number) =>
  causes > 1
    ? 'Which of these causes would you look for first, and what would you check to tell them apart?'
    : 'What would you check first, and why?'

/** the words of a sentence without names, its numbers kept */
const bare = (s: Sentence): Sentence =>
  typeof s === 'string' ? nameless(s) : say`${s.map((p) => (typeof p === 'string' ? keepSpaces(p) : p))}`

const keepSpaces = (piece: string) => {
  const core = piece.trim()
  if (core === '') return piece
  const before = piece.slice(0, piece.indexOf(core[0]!))
  const after = piece.slice(piece.trimEnd().length)
  return `${before}${nameless(`x ${core}`).slice(2)}${after}`
}

/** The episodes of the run where it was read; else the last entries of the log, by days counted from the first of them. */
function timelineOf(ranking: RunRanking | undefined, log: CraftLog | undefined): Sentence[] {
  const episodes = ranking?.episodes ?? []
  if (episodes.length > 0)
    return episodes
      .slice(0, most.timeline)
      .map((e) => say`${inSeconds(e.from, 1)} to ${inSeconds(e.to, 1)}: ${bare(e.says)}`)
  const last = (log?.entries ?? []).filter((e) => e.entry.kind !== 'note').slice(-most.timeline)
  const first = last[0]
  return first
    ? last.map(
        (e) => say`day ${String(daysBetween(first, e) + 1)}: ${e.entry.kind}, ${cut(nameless(entrySays(e)))}`,
      )
    : []
}

const daysBetween = (a: CraftLogEntry, b: CraftLogEntry): number => {
  const day = (e: CraftLogEntry) =>
    Date.UTC(
      ...(e.entry.at
        .slice(0, 10)
        .split('-')
        .map((v, i) => Number(v) - (i === 1 ? 1 : 0)) as [number, number, number]),
    )
  return Math.round((day(b) - day(a)) / 86_400_000)
}

/** The craft with nobody's name on it. */
function withoutNames(craft: Craft): Craft {
  const parts = <T extends { name: string }>(list: readonly T[]): T[] =>
    list.map((one) => ({ ...one, name: namelessPart(one.name) }))
  const made = {
    ...craft,
    name: 'The craft',
    about: '',
    engines: craft.engines.map((e, i) => ({ ...e, name: `engine ${i + 1}` })),
    weights: parts(craft.weights),
    tanks: parts(craft.tanks),
    openings: parts(craft.openings),
  } as unknown as Craft
  carryDerived(craft, made)
  return made
}

/** The sheet on one A4 page, and the same as plain text. */
export function askSheet(craft: Craft, setting: AskSetting = {}): AskSheet {
  const units = setting.units ?? 'metric'
  const content = askContent(craft, setting)
  return { sheet: drawn(craft, content, units), text: asText(content, units) }
}

function drawn(craft: Craft, content: AskContent, units: DisplaySystem): Sheet {
  const show = (s: Sentence) => printed(s, units)
  const page = writtenPages(title, foot)
  page.words(title, { size: 5.4, bold: true })
  page.gap(1.5)
  page.words(content.question, { size: 4.4 })
  page.gap(1)
  page.drawing(craftPicture(withoutNames(craft), units === 'inch' ? inchLook : metricLook), 95)
  for (const n of content.numbers) page.row([n.what, show(n.says), n.from], [44, 100, 38], { size: 2.7 })
  const small = { size: 2.9, indent: 5, sign: '·' } as const
  const part = (head: string, lines: readonly string[], none: string) => {
    page.gap(1.5)
    page.words(head, { size: 3.4, bold: true })
    if (lines.length === 0) page.words(none, { size: 2.9, quiet: true })
    for (const line of lines) {
      // one page, whatever happens: what no longer fits is left out
      if (page.left() < 9) return
      page.words(cut(line), small)
    }
  }
  part('What happened', content.timeline.map(show), 'Nothing was written down.')
  part('Likeliest causes, by the model', content.causes.map(show), 'Not ranked yet.')
  part('Tried and changed', content.tried, 'Nothing yet.')
  return page.pages()[0]!
}

function asText(content: AskContent, units: DisplaySystem): string {
  const show = (s: Sentence) => printed(s, units)
  const list = (head: string, lines: readonly string[], none: string) => [
    '',
    `${head}:`,
    ...(lines.length === 0 ? [`  ${none}`] : lines.map((l) => `  - ${l}`)),
  ]
  return [
    title,
    '',
    content.question,
    '',
    'Numbers:',
    ...content.numbers.map((n) => `  - ${n.what}: ${show(n.says)} [${n.from}]`),
    ...list('What happened', content.timeline.map(show), 'Nothing was written down.'),
    ...list('Likeliest causes, by the model', content.causes.map(show), 'Not ranked yet.'),
    ...list('Tried and changed', content.tried, 'Nothing yet.'),
    '',
    foot,
    '',
  ].join('\n')
}
