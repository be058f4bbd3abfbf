/** The first pages: whose book it is, the craft to scale, how it goes in three lines, and what stands where. */
import { inCount } from '../../base/answers/amounts.ts'
import { say } from '../../base/answers/sentence.ts'
import { quantitiesOf } from '../../craft/index.ts'
import { screenOf } from '../../whole/lookScreen.ts'
import { craftPicture } from '../../whole/picture/craftPicture.ts'
import { inchLook, metricLook } from '../../whole/push/shown.ts'
import { type BookContext, figure, shown } from '../bookContext.ts'
import type { Entry } from '../bookPages.ts'

export function coverPages(book: BookContext, entries: readonly Entry[]): void {
  const { page, source } = book
  const { craft, look, units } = source
  page.words(craft.name, { size: 11, bold: true, role: 'H1' })
  page.words('The book to build from', { size: 6 })
  page.gap(1)
  if (craft.about) page.words(shown(book, craft.about))
  page.words(`Made ${source.date} from the craft file; every figure is of that day’s file.`, { quiet: true })
  page.gap(2)
  figure(book, 'craft', 120, () => craftPicture(craft, units === 'inch' ? inchLook : metricLook))
  for (const [i, line] of screenOf(look).answer.entries()) page.words(shown(book, line), { bold: i === 0 })
  page.gap(1)
  page.words(shown(book, countSays(book)), { quiet: true })
  page.newPage()
  page.heading('Contents', { depth: 2 })
  for (const { title, name, depth, page: n } of entries) {
    if (depth > 2) continue
    page.words(`${title}, page ${n}`, { indent: depth === 1 ? 0 : 7, bold: depth === 1, to: name })
  }
}

/** How many of the craft's numbers are known, and how well. */
function countSays({ source }: BookContext) {
  const count = { measured: 0, maker: 0, guess: 0, assumed: 0 }
  for (const q of quantitiesOf(source.craft)) count[q.source]++
  return say`Of its numbers ${inCount(count.measured)} were measured, ${inCount(count.maker)} are the maker’s, ${inCount(count.guess)} are guesses and ${inCount(count.assumed)} assumed where the file says nothing.`
}
