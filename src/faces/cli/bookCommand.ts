import { mkdirSync, writeFileSync } from 'node:fs'
import { dirname, join, resolve } from 'node:path'
import { inCount } from '../../base/answers/amounts.ts'
import { printed, say } from '../../base/answers/sentence.ts'
import { bookFolder, bookPdf } from '../../book/bookFiles.ts'
import { formatProblem } from '../../craft/index.ts'
import { type PaperName, papers } from '../../drawing/papers.ts'
import { makeBook } from '../../jobs/bookJob.ts'
import { answerEngines } from '../../whole/breath/engineAnswers.ts'
import { isLogDate } from '../../whole/log/logText.ts'
import { fileStore } from './engineStore.ts'
import { fontsHere } from './fontsHere.ts'
import { kernelHere } from './kernelHere.ts'
import { craftWithLog } from './logCommand.ts'
import { unitsOf } from './lookCommand.ts'
import { BadInput, exit, print, printJson } from './outcome.ts'
import { progressLine } from './progress.ts'

interface BookOptions {
  to?: string
  paper: string
  date?: string
  json?: boolean
  units: string
}

/** `wakewright book CRAFT --to FILE.pdf` or a folder: the book to build from; `today` is handed in. */
export async function bookCommand(file: string, options: BookOptions, today: string): Promise<number> {
  const { units } = unitsOf('book', options)
  const { to, paper, date = today } = options
  if (!(paper in papers))
    throw new BadInput([`book: --paper ${paper}, expected ${Object.keys(papers).join(' or ')}`])
  if (!isLogDate(date)) throw new BadInput([`book: --date "${date}", expected year-month-day`])
  if (to === undefined && !options.json)
    throw new BadInput(['book: --to FILE.pdf, or --to FOLDER for a PDF a chapter, drawings and tables'])
  const { craft, log, warnings } = craftWithLog(file)
  for (const w of warnings) process.stderr.write(`${formatProblem(w)}\n`)
  const line = progressLine()
  const engines = answerEngines(craft, { store: fileStore(), coarse: true, progress: line.show })
  await kernelHere()
  const asked = { log, units, paper: paper as PaperName, date, ...(engines ? { engines } : {}) }
  const book = await makeBook(craft, asked, { progress: line.show, cancelled: () => false })
  line.end()
  const pages = book.chapters.reduce((sum, c) => sum + c.pages.length, 0)
  const written: string[] = []
  if (to !== undefined) {
    const writing = { fonts: fontsHere(), date }
    const files = /\.pdf$/i.test(to)
      ? { [resolve(to)]: await bookPdf(book, writing) }
      : Object.fromEntries(
          Object.entries(await bookFolder(book, writing)).map(([name, bytes]) => [
            join(resolve(to), name),
            bytes,
          ]),
        )
    written.push(...writeAll(files, to))
  }
  if (options.json)
    printJson({
      title: book.title,
      pages,
      chapters: book.chapters.map(({ id, title, first, pages: own }) => ({
        id,
        title,
        first,
        pages: own.length,
      })),
      boxes: book.boxes,
      written,
    })
  else {
    print(
      printed(
        say`${book.title}: ${inCount(pages)} pages, ${inCount(book.boxes.length)} boxes to write in.`,
        units,
      ),
    )
    for (const name of written) print(name)
  }
  return exit.fine
}

function writeAll(files: Readonly<Record<string, Uint8Array>>, to: string): string[] {
  try {
    for (const [path, bytes] of Object.entries(files)) {
      mkdirSync(dirname(path), { recursive: true })
      writeFileSync(path, bytes)
    }
  } catch (error) {
    throw new BadInput([`book: --to ${to}: it cannot be written (${(error as NodeJS.ErrnoException).code})`])
  }
  return Object.keys(files)
}
