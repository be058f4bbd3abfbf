/** The next run: the plan as its card has it, and a box for each number it leaves behind. */
import { planCard } from '../../whole/plan/planCard.ts'
import { boxWords, runBoxes } from '../bookBoxes.ts'
import { type Chapter, shown } from '../bookContext.ts'

export const runChapter: Chapter = {
  id: 'run',
  title: 'The next run',
  write(book) {
    const { page, source, boxes } = book
    const plan = source.plan!
    page.words(shown(book, plan.says), { bold: true })
    if (source.next) page.words(`The next change: ${shown(book, source.next.says)}`)
    page.words('The card that follows is to take along; these boxes are for what is typed back.')
    const list = runBoxes(source.craft.engines.length).map((to) => boxWords(boxes.of(to)))
    for (let i = 0; i < list.length; i += 3) page.boxes(list.slice(i, i + 3), 3)
    planCard(plan, source.craft.name, source.units, source.paper).forEach((sheet, i) => {
      page.page({
        ...sheet,
        places: i === 0 ? [{ name: 'run card', y: 280, title: 'Run card', depth: 2 }] : [],
      })
    })
  },
}
