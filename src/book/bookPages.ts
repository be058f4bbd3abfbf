/**
 * The chapters of a book laid out one after another, with a cover, contents and numbers at the foot. Where a chapter names the page of another
 * thing, pages are laid out again until none of these numbers moves; drawings are made once.
 */
import type { Sheet } from '../drawing/sheet.ts'
import { type WrittenPages, writtenPages } from '../drawing/writtenPage.ts'
import { type BookBox, boxList } from './bookBoxes.ts'
import { type BookContext, type BookStore, type Chapter, sourceList } from './bookContext.ts'
import type { BookSource } from './bookSource.ts'
import { chapters } from './chapters/chapters.ts'
import { coverPages } from './chapters/cover.ts'

export interface BookChapter {
  id: string
  title: string
  /** number of its first page in the whole */
  first: number
  pages: readonly Sheet[]
}

export interface Book {
  title: string
  /** cover and contents first */
  chapters: readonly BookChapter[]
  boxes: readonly BookBox[]
  figures: ReadonlyMap<string, Sheet>
  tables: ReadonlyMap<string, readonly (readonly string[])[]>
}

/** an entry of the contents */
export interface Entry {
  title: string
  name: string
  depth: number
  page: number
}

/** letters as large as a bench wants them, over those of a letter's */
const letters = 1.18
/** layouts until the numbers stand; each can move a page only where a number grew by a digit */
const mostPasses = 5

export const footOf = ({ craft, date }: BookSource): string =>
  `${craft.name}, ${date}. What stands here was computed from what the craft file says and is no proof of any rule: where a rule or a licence applies, ask those it names.`

interface Layout {
  cover: WrittenPages
  written: { chapter: Chapter; page: WrittenPages }[]
  entries: Entry[]
  boxes: readonly BookBox[]
}

/** A book's pages. `progress` is told of each chapter. */
export function bookPages(
  source: BookSource,
  progress: (part: number, says: string) => void = () => {},
): Book {
  const store: BookStore = { figures: new Map(), tables: new Map() }
  const list = chapters(source)
  let before: Layout = layOut(source, list, store, new Map(), [], progress)
  for (let pass = 1; pass < mostPasses; pass++) {
    const places = placesOf(before)
    const now = layOut(source, list, store, places, entriesOf(before), () => {})
    const moved = placesOf(now)
    const same = moved.size === places.size && [...moved].every(([name, n]) => places.get(name) === n)
    before = now
    if (same) break
  }
  return finished(source, before, store)
}

function layOut(
  source: BookSource,
  list: readonly Chapter[],
  store: BookStore,
  places: ReadonlyMap<string, number>,
  entries: readonly Entry[],
  progress: (part: number, says: string) => void,
): Layout {
  const boxes = boxList(source.craft, source.units)
  const cited = sourceList()
  const how = { paper: source.paper, letters }
  const contextOf = (page: WrittenPages): BookContext => ({
    source,
    page,
    boxes,
    cited,
    store,
    pageOf: (name) => {
      const n = places.get(name)
      // nothing is known where anything stands while pages are first laid out
      return n === undefined ? (places.size === 0 ? 'page –' : undefined) : `page ${n}`
    },
  })
  const cover = writtenPages('Cover and contents', footOf(source), how)
  coverPages(contextOf(cover), entries)
  const written = list.map((chapter, i) => {
    progress(i / list.length, chapter.title)
    const page = writtenPages(chapter.title, footOf(source), how)
    page.heading(chapter.title, { depth: 1, name: chapter.id })
    chapter.write(contextOf(page))
    return { chapter, page }
  })
  return { cover, written, entries: [...entries], boxes: boxes.all() }
}

/** First page of each part, in the order of the book. */
function firstPages({ cover, written }: Layout): number[] {
  let next = 1 + cover.count()
  return written.map(({ page }) => {
    const first = next
    next += page.count()
    return first
  })
}

const eachPlace = <T>(
  layout: Layout,
  of: (place: NonNullable<Sheet['places']>[number], n: number) => T,
): T[] => {
  const firsts = firstPages(layout)
  return layout.written.flatMap(({ page }, i) =>
    page.pages().flatMap((sheet, k) => (sheet.places ?? []).map((place) => of(place, firsts[i]! + k))),
  )
}

const placesOf = (layout: Layout): Map<string, number> =>
  new Map(eachPlace(layout, ({ name }, n) => [name, n] as const))

const entriesOf = (layout: Layout): Entry[] =>
  eachPlace(layout, ({ name, title, depth = 1 }, page) =>
    title === undefined ? [] : [{ title, name, depth, page }],
  ).flat()

function finished(source: BookSource, layout: Layout, { figures, tables }: BookStore): Book {
  const firsts = firstPages(layout)
  const of = layout.cover.count() + layout.written.reduce((sum, { page }) => sum + page.count(), 0)
  return {
    title: `${source.craft.name}: the book to build from`,
    chapters: [
      {
        id: 'contents',
        title: 'Cover and contents',
        first: 1,
        pages: layout.cover.pages({ first: 1, of }),
      },
      ...layout.written.map(({ chapter, page }, i) => ({
        id: chapter.id,
        title: chapter.title,
        first: firsts[i]!,
        pages: page.pages({ first: firsts[i]!, of }),
      })),
    ],
    boxes: layout.boxes,
    figures,
    tables,
  }
}
