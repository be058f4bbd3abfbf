import { zipSync } from 'fflate'
import type { MadePart } from '../base/answers/madePart.ts'
import type { DisplaySystem } from '../base/units/format.ts'
import type { BookBox } from '../book/bookBoxes.ts'
import { type BookWriting, bookFolder, bookPdf } from '../book/bookFiles.ts'
import { type Book, bookPages } from '../book/bookPages.ts'
import { type BookAsked, bookSource } from '../book/bookSource.ts'
import { type Craft, type CraftFiles, giveFiles } from '../craft/index.ts'
import type { PaperName } from '../drawing/papers.ts'
import type { FontFiles } from '../drawing/pdf.ts'
import { type MadeSolid, makeSolid } from '../trades/prints/solids/makeSolid.ts'
import { answerEngines, mapStore } from '../whole/breath/engineAnswers.ts'
import { craftLog } from '../whole/log/craftLog.ts'
import { Cancelled, defineJob, type JobContext } from './job.ts'
import { craftOf } from './pipeSearchJob.ts'

export interface BookOrder {
  /** the craft file, what it names, and its log */
  text: string
  files?: CraftFiles
  log: string
  units: DisplaySystem
  paper: PaperName
  /** year-month-day */
  date: string
  fonts: FontFiles
  /** one PDF, or a ZIP of the folder */
  as: 'pdf' | 'zip'
}

export interface BookMade {
  bytes: Uint8Array<ArrayBuffer>
  pages: number
  boxes: readonly BookBox[]
}

/** chord of a body that is only looked at, m */
const forLooks = 0.6e-3

/** Printed parts made as coarsely as a picture wants them, whole and as drawn; one that cannot be made is left out, its findings say why. */
async function solidsOf(
  parts: readonly MadePart[],
  tell: (part: number, says: string) => void,
): Promise<ReadonlyMap<string, MadeSolid>> {
  const solids = new Map<string, MadeSolid>()
  const own = parts.filter((p) => p.solid)
  for (const [i, part] of own.entries()) {
    tell(i / own.length, `Drawing ${part.title}`)
    try {
      solids.set(
        part.id,
        await makeSolid(part.solid!, { chord: forLooks, walls: false }, () =>
          tell(i / own.length, `Drawing ${part.title}`),
        ),
      )
    } catch (error) {
      if (!(error instanceof RangeError)) throw error
    }
  }
  return solids
}

/** The pages of a craft's book; for a face that has its engines answered already. */
export async function makeBook(craft: Craft, asked: BookAsked, context: JobContext): Promise<Book> {
  const tell = (from: number, of: number) => (part: number, says: string) => {
    if (context.cancelled()) throw new Cancelled()
    context.progress(from + of * part, says)
  }
  const source = bookSource(craft, { ...asked, progress: tell(0, 0.5) })
  const solids = await solidsOf(source.parts, tell(0.5, 0.2))
  return bookPages({ ...source, solids }, tell(0.7, 0.3))
}

/** engines simulated for earlier books of this thread */
const engines = mapStore()

/** A craft's book, written. */
export const bookJob = defineJob<BookOrder, BookMade>('book', async (order, context) => {
  const craft = craftOf(order)
  if (order.files) giveFiles(craft, order.files)
  context.progress(0, 'Looking at the craft')
  const answers = answerEngines(craft, {
    store: engines,
    progress: (part, says) => context.progress(part, says),
    cancelled: () => context.cancelled(),
  })
  if (!answers) throw new Cancelled()
  const { units, paper, date, fonts } = order
  const asked = { engines: answers, log: craftLog(craft, order.log), units, paper, date }
  const book = await makeBook(craft, asked, context)
  context.progress(1, 'Writing it')
  const writing: BookWriting = { fonts, date }
  const bytes = order.as === 'pdf' ? await bookPdf(book, writing) : zipSync(await bookFolder(book, writing))
  return {
    bytes: bytes as Uint8Array<ArrayBuffer>,
    pages: book.chapters.reduce((sum, c) => sum + c.pages.length, 0),
    boxes: book.boxes,
  }
})
