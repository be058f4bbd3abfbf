/** The chapters of a book, one line each, in their order. */
import type { Chapter } from '../bookContext.ts'
import type { BookSource } from '../bookSource.ts'
import { cardsChapter } from './cards.ts'
import { decisionsChapter } from './decisionsChapter.ts'
import { logChapter } from './logChapter.ts'
import { orderChapter } from './orderOfWork.ts'
import { partsChapter } from './partsChapter.ts'
import { patternsChapter } from './patternsChapter.ts'
import { questionChapters } from './questionChapter.ts'
import { readingsChapter } from './readingsChapter.ts'
import { runChapter } from './runChapter.ts'
import { sourcesChapter } from './sourcesChapter.ts'
import { valuesChapter } from './valuesChapter.ts'

/** Those that this craft has something for. */
export function chapters(source: BookSource): readonly Chapter[] {
  return [
    decisionsChapter,
    valuesChapter,
    ...questionChapters(source),
    ...(source.parts.length > 0 ? [partsChapter] : []),
    orderChapter,
    cardsChapter,
    ...(source.plan ? [runChapter] : []),
    logChapter,
    readingsChapter,
    sourcesChapter,
    ...(source.parts.some((p) => p.flats) ? [patternsChapter] : []),
  ]
}
