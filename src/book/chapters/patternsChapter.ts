/** Patterns at full size, tile by tile, each page as `make` prints it. */
import { tiled } from '../../drawing/tiles.ts'
import { partSheet } from '../../whole/make/patternFiles.ts'
import type { Chapter } from '../bookContext.ts'

/** pages of one pattern that are still bound in */
const mostTiles = 16

export const patternsChapter: Chapter = {
  id: 'patterns',
  title: 'Patterns at full size',
  write({ page, source, store }) {
    page.words(
      'Print these pages at 100 %, measure the square on the first, and cut nothing before it is right. Pages join where their crosses meet.',
      { bold: true },
    )
    for (const part of source.parts) {
      const name = `pattern ${part.id}`
      let sheet = store.figures.get(name)
      if (!sheet) {
        sheet = partSheet(part, source.units)
        if (!sheet) continue
        store.figures.set(name, sheet)
      }
      const tiles = tiled(sheet, { paper: source.paper, system: source.units })
      if (tiles.length > mostTiles) {
        page.heading(part.title, { name })
        page.words(
          `It takes ${tiles.length} pages, more than are bound here: wakewright make writes them, or a print shop prints its SVG on one sheet.`,
        )
        continue
      }
      tiles.forEach((tile, i) => {
        page.page({
          ...tile,
          places: i === 0 ? [{ name, y: tile.height - 10, title: part.title, depth: 2 }] : [],
        })
      })
    }
  },
}
