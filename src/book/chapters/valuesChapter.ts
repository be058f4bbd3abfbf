/** Every number of the craft file with how well it is known, section by section; a box beside what is worth measuring. */
import { inField } from '../../base/answers/amounts.ts'
import { type Sentence, say } from '../../base/answers/sentence.ts'
import { fieldAt, isQuantitySpec, labelOf, type Quantity, quantitiesOf } from '../../craft/index.ts'
import { type BookContext, type Chapter, shown, tableOf } from '../bookContext.ts'

/** what a reading comes from, as it is told */
const sourceWord = {
  measured: 'measured',
  maker: 'the maker’s',
  guess: 'a guess',
  assumed: 'assumed',
} as const

export const valuesChapter: Chapter = {
  id: 'craft',
  title: 'The craft in numbers',
  write(book) {
    const { page, source } = book
    const sections = new Map<string, Quantity[]>()
    for (const q of quantitiesOf(source.craft)) {
      const [section = ''] = q.path.split('.')
      // the log and what was fitted to runs stand in chapters of their own
      if (section === 'log') continue
      const own = sections.get(section)
      if (own) own.push(q)
      else sections.set(section, [q])
    }
    page.words(
      'What is a guess or assumed carries its likely range; what is not measured and can be has the number of its box at the end of the book.',
      { quiet: true },
    )
    for (const [section, list] of sections) {
      page.heading(fieldAt(section)?.label ?? upper(section))
      tableOf(
        book,
        `values ${section}`,
        ['What', 'Value', 'Likely range', 'How known', 'Box'],
        list.map((q) => [
          labelOf(q.path, source.craft),
          shown(book, valueSays(q)),
          q.high > q.low ? shown(book, rangeSays(q)) : '',
          sourceWord[q.source],
          boxFor(book, q),
        ]),
      )
    }
  },
}

const upper = (word: string) => `${word.charAt(0).toUpperCase()}${word.slice(1)}`

const unitOf = (q: Quantity): string => {
  const field = fieldAt(q.path)
  return isQuantitySpec(field) ? field.unit : ''
}

const valueSays = (q: Quantity): Sentence =>
  q.undecided
    ? say`${inField(q.value, q.kind, unitOf(q))}, not decided`
    : say`${inField(q.value, q.kind, unitOf(q))}`

const rangeSays = (q: Quantity): Sentence =>
  say`${inField(q.low, q.kind, unitOf(q))} to ${inField(q.high, q.kind, unitOf(q))}`

/** Number of the box of a value that is not measured and that a tool can be held to. */
function boxFor({ boxes }: BookContext, q: Quantity): string {
  return q.source !== 'measured' && fieldAt(q.path)?.measure ? String(boxes.of(q.path).n) : ''
}
