/** The log, oldest first, and what the runs of the season came to. */
import { entrySays } from '../../whole/log/craftLog.ts'
import { seasonFigure, seasonOf } from '../../whole/log/season.ts'
import { seasonTable } from '../../whole/log/seasonTable.ts'
import { inchLook, metricLook } from '../../whole/push/shown.ts'
import { type Chapter, figure, numberTable, tableOf } from '../bookContext.ts'

export const logChapter: Chapter = {
  id: 'log',
  title: 'The log and the season',
  write(book) {
    const { page, source } = book
    const { log, units } = source
    const season = seasonOf(log)
    if (season.runs.length > 0) {
      figure(book, 'season', 150, () => seasonFigure(season, units === 'inch' ? inchLook : metricLook))
      numberTable(book, 'season', seasonTable(season))
    }
    if (log.entries.length === 0) page.words('Nothing is written down yet.')
    tableOf(
      book,
      'log',
      ['Date', 'What', 'In words'],
      log.entries.map((e) => [e.entry.at, e.entry.kind, entrySays(e)]),
    )
    page.heading('To write on', { name: 'log lines' })
    for (let i = 0; i < 6; i++) page.boxes(['date', 'run, check, change or part', 'what was found'])
  },
}
