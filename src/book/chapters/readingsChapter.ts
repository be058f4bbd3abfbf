/** All boxes by their numbers, to be typed back in one go. */
import { type Chapter, tableOf } from '../bookContext.ts'

export const readingsChapter: Chapter = {
  id: 'readings',
  title: 'Readings to type back',
  write(book) {
    const { page, boxes } = book
    page.words(
      'Every box of this book by its number. Write what was read into the last column; in the app the page Craft takes them in one form, and a number without a unit is taken in the unit that stands here.',
    )
    tableOf(
      book,
      'readings',
      ['Box', 'What', 'Unit', 'In the file', 'Read'],
      boxes
        .all()
        .map(({ n, to, label, unit }) => [
          String(n),
          label,
          unit,
          to.replace(/^run:/, 'run, '),
          '____________',
        ]),
    )
  },
}
