/** What to do, in its order: the same decisions as on the first screen, numbered on the craft. */
import { harms } from '../../base/answers/decision.ts'
import { say, whole } from '../../base/answers/sentence.ts'
import { proseIn } from '../../base/units/prose.ts'
import { gainSays, leadsTo, nextFirst, nextOf } from '../../whole/decisions.ts'
import { screenOf } from '../../whole/lookScreen.ts'
import { craftPicture } from '../../whole/picture/craftPicture.ts'
import { numbered, numbersOf } from '../../whole/picture/numbered.ts'
import { inchLook, metricLook } from '../../whole/push/shown.ts'
import { type Chapter, figure, seePage, shown } from '../bookContext.ts'

/** numbers there is room for on the picture */
const onPicture = 12

export const decisionsChapter: Chapter = {
  id: 'decisions',
  title: 'What to do',
  write(book) {
    const { page, source } = book
    const { craft, look, units } = source
    const all = nextFirst(look.decisions)
    const next = nextOf(look.decisions)
    figure(book, 'decisions', 110, () =>
      craftPicture(
        craft,
        units === 'inch' ? inchLook : metricLook,
        numbersOf(numbered(craft, all, look.findings, onPicture)),
      ),
    )
    if (all.length === 0) page.words('Nothing was found that asks for anything.')
    const parts: [string, typeof all][] = [
      ['Do next, one at a time', next],
      ...harms.map((harm): [string, typeof all] => [
        headOf[harm],
        all.filter((d) => !next.includes(d) && (d.harm ?? 'comfort') === harm),
      ]),
    ]
    for (const [head, list] of parts) {
      if (list.length === 0) continue
      page.heading(head)
      for (const d of list) {
        page.tick(`${all.indexOf(d) + 1}. ${shown(book, d.says)}`)
        if (d.act) page.words(shown(book, whole(d.act)), { indent: 9, bold: true })
        const changes = (d.changes ?? [])
          .map((c) => proseIn(`${c.path}: ${c.from} to ${c.to}`, units))
          .join('; ')
        if (changes || d.gain)
          page.words(
            shown(book, say`${changes}${d.gain ? say`${changes ? ': ' : ''}${gainSays(d.gain)}` : ''}`),
            { indent: 9 },
          )
        const { question } = leadsTo(d, look.findings)
        if (question !== 'craft') seePage(book, 'Why', question, 9)
        page.gap(0.8)
      }
    }
    const screen = screenOf(look)
    if (screen.whatIf.length > 0) {
      page.heading('What if')
      for (const one of screen.whatIf) page.words(shown(book, one), { indent: 5, sign: '·' })
    }
    if (screen.measure) {
      page.heading('Measure next')
      page.words(shown(book, whole(screen.measure)))
    }
  },
}

const headOf = {
  'before the water': 'Before it goes in the water',
  'will stop the run': 'What will stop the run',
  'costs speed': 'What costs speed',
  comfort: 'Comfort',
} as const
