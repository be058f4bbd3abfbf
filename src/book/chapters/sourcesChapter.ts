/** Where figures and limits come from, by the numbers in brackets. */

import { proseIn } from '../../base/units/prose.ts'
import type { Chapter } from '../bookContext.ts'

export const sourcesChapter: Chapter = {
  id: 'sources',
  title: 'Sources',
  write({ page, cited, source }) {
    page.words(
      '“Common practice” and “judgement” say that no publication was found; “from memory” that the figure was not looked up again.',
      { quiet: true },
    )
    cited.all().forEach((one, i) => {
      page.words(proseIn(one, source.units), { indent: 9, sign: String(i + 1) })
    })
  },
}
