/**
 * A chapter for each question that the craft can be asked: the answer, its pictures, what was found, its numbers, the limits it was judged by
 * and how to measure what moves it. Everything is read off the trades' declarations.
 */
import type { Finding, Question } from '../../base/answers/finding.ts'
import type { Limit } from '../../base/answers/limit.ts'
import { type Sentence, whole } from '../../base/answers/sentence.ts'
import { fieldAt, labelOf } from '../../craft/index.ts'
import { pathsOf } from '../../whole/decisions.ts'
import { boxWords } from '../bookBoxes.ts'
import {
  type BookContext,
  type Chapter,
  cautions,
  figure,
  lines,
  numberTable,
  shown,
  tableOf,
} from '../bookContext.ts'
import { type BookSource, type Worked, workedOn } from '../bookSource.ts'
import { limitSays } from '../limitSays.ts'
import { moreFigures } from './moreFigures.ts'

const titles: Readonly<Partial<Record<Question, string>>> = {
  push: 'Push: how will it go?',
  breath: 'Breath: how do the engines breathe?',
  float: 'Float: how does it sit?',
  strength: 'Strength: will it hold?',
  fuel: 'Fuel: will it be fed?',
  make: 'Make: what was found of its parts',
}

const standingWord = { stop: 'stop', watch: 'watch', unknown: 'not known', good: 'good' } as const
/** how tall a picture may be, mm */
const tallest = 150

/** One for each question that anything was found on. */
export const questionChapters = (source: BookSource): Chapter[] =>
  (Object.keys(titles) as Question[])
    .filter((q) => source.look.findings.some((f) => f.question === q))
    .map((question) => ({ id: question, title: titles[question]!, write: (book) => write(book, question) }))

function write(book: BookContext, question: Question): void {
  const { page, source } = book
  const worked = workedOn(source, question)
  const own = source.look.findings.filter((f) => f.question === question)
  answer(book, own)
  cautions(book, [...new Set(worked.flatMap(({ trade }) => trade.cautions ?? []))])
  for (const [name, draw] of moreFigures(source, question)) figure(book, name, tallest, draw)
  for (const { trade, now } of worked)
    for (const f of trade.figures ?? []) {
      const caption = f.caption?.(now)
      figure(book, `${trade.id} ${f.id}`, tallest, () =>
        f.draw(now, undefined, { width: page.across, system: source.units }),
      )
      if (caption) page.words(shown(book, caption), { quiet: true })
    }
  found(book, question, own)
  measuring(book, question, worked, own)
  for (const w of worked) numbers(book, w, worked.length > 1)
  limits(book, question, worked)
  const method = worked.flatMap(({ trade }) => trade.method ?? [])
  if (method.length > 0) {
    page.heading('How it was worked out', { name: `${question} method`, under: 3 })
    lines(book, method)
  }
}

const isHeadline = (f: Finding) => f.id.endsWith('.headline')

function answer(book: BookContext, findings: readonly Finding[]): void {
  for (const f of findings.filter(isHeadline)) {
    book.page.words(shown(book, f.says), { size: 4.6, bold: true })
    lines(
      book,
      f.because.map((b) => whole(b.says)),
    )
  }
  book.page.gap(1)
}

/** Worst first; what is good in a line each. */
function found(book: BookContext, question: Question, findings: readonly Finding[]): void {
  const { page } = book
  const told = findings.filter((f) => !isHeadline(f))
  const asks = told.filter((f) => f.standing !== 'good')
  const good = told.filter((f) => f.standing === 'good')
  if (asks.length > 0) page.heading('To do, to watch, to find out', { name: `${question} found`, under: 3 })
  for (const f of asks) {
    page.words(`${standingWord[f.standing]}: ${shown(book, f.says)}`, { indent: 5, sign: '•' })
    for (const b of f.because) page.words(shown(book, whole(b.says)), { indent: 9, quiet: true })
    if (f.act) page.words(shown(book, whole(f.act)), { indent: 9, bold: true })
    const from = f.sources.map((s) => book.cited.of(s)).join(' ')
    if (from) page.words(`From ${from}`, { indent: 9, size: 2.8, quiet: true })
    page.gap(0.8)
  }
  if (good.length > 0) {
    page.heading('What is good', { name: `${question} good`, under: 3 })
    for (const f of good)
      page.words(`${shown(book, f.says)} ${f.sources.map((s) => book.cited.of(s)).join(' ')}`, {
        indent: 5,
        sign: '·',
      })
  }
}

/** What moves this answer and is not measured, or what a finding asks for: how to measure it, and a box for each reading. */
function measuring(
  book: BookContext,
  question: Question,
  worked: readonly Worked[],
  findings: readonly Finding[],
): void {
  const { page, source, boxes } = book
  const asked = findings.flatMap((f) => (f.measureNext?.path ? [f.measureNext.path] : []))
  const levers = worked.flatMap(({ trade, now }) => (trade.levers?.(now) ?? []).map((l) => l.path))
  const rests = findings.filter((f) => f.standing !== 'good').flatMap(pathsOf)
  const paths = [...new Set([...asked, ...levers, ...rests])].filter(
    (path) => fieldAt(path)?.type === 'quantity' && fieldAt(path)?.measure,
  )
  if (paths.length === 0) return
  page.heading('How to measure', { name: `${question} measure`, under: 3 })
  const own = paths.slice(0, 12)
  for (const path of own) {
    const how = fieldAt(path)!.measure!
    page.words(
      shown(book, `${labelOf(path, source.craft)}: ${how.what}, with ${how.with}, ${how.minutes} minutes.`),
      { indent: 5, sign: '·' },
    )
  }
  const list = own.map((path) => boxWords(boxes.of(path)))
  for (let i = 0; i < list.length; i += 3) page.boxes(list.slice(i, i + 3), 3)
}

function numbers(book: BookContext, { trade, now }: Worked, several: boolean): void {
  const tables = trade.numbers?.(now) ?? []
  if (tables.every((t) => t.rows.length === 0)) return
  book.page.heading(several ? `${trade.title}: the numbers` : 'The numbers', {
    name: `${trade.id} numbers`,
    under: 3,
  })
  tables.forEach((t, i) => {
    numberTable(book, `${trade.id} ${i + 1}`, t)
  })
}

function limits(book: BookContext, question: Question, worked: readonly Worked[]): void {
  const rows = worked.flatMap(({ trade }) =>
    Object.values(trade.limits).map((l: Limit): (string | Sentence)[] => [
      limitSays(l),
      l.says,
      book.cited.of(l.source),
    ]),
  )
  if (rows.length === 0) return
  book.page.heading('Limits it was judged by', { name: `${question} limits`, under: 3 })
  tableOf(book, `${question} limits`, ['Limit', 'What it means', 'From'], rows)
}
