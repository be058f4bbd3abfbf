/** Every part: its drawing with sizes, what it is made of, hours, the order of work on it; before them what to cut, print and buy in lists. */
import { inGrams, inHours, inKg, inMm } from '../../base/answers/amounts.ts'
import type { MadePart } from '../../base/answers/madePart.ts'
import { joined, type Sentence, say, whole } from '../../base/answers/sentence.ts'
import { boundsOf } from '../../drawing/flatSheet.ts'
import { solidPicture } from '../../drawing/solidPicture.ts'
import type { MadeBody } from '../../trades/prints/solids/makeSolid.ts'
import { sectionFigure } from '../../trades/prints/solids/sectionFigure.ts'
import { handsOn, massOf } from '../../whole/make/partsOfCraft.ts'
import { type BookContext, type Chapter, cautions, figure, seePage, shown, tableOf } from '../bookContext.ts'
import { buyList } from '../buyList.ts'
import { partDrawing } from '../partDrawing.ts'

/** how tall a drawing may be, mm */
const tallest = 80
const tallSection = 70

export const partsChapter: Chapter = {
  id: 'parts',
  title: 'Parts to make',
  write(book) {
    const { page, source } = book
    const { low, high } = handsOn(source.parts)
    const mass = massOf(source.parts)
    page.words(shown(book, say`All of it: ${inKg(mass)}, ${inHours(low)} to ${inHours(high)} by hand.`))
    page.heading('To cut', { name: 'cut list' })
    const cut = source.parts.filter((p) => p.how === 'sheet')
    if (cut.length === 0) page.words('Nothing is cut from sheet.')
    tableOf(
      book,
      'cut list',
      ['Part', 'Piece', 'Material', 'Sheet', 'Length', 'Width', 'How many'],
      cutRows(cut),
    )
    page.heading('To print', { name: 'print list' })
    const prints = source.parts.filter((p) => p.how === 'print')
    if (prints.length === 0) page.words('Nothing is printed.')
    tableOf(
      book,
      'print list',
      ['Part', 'Material', 'Mass', 'On the printer', 'Page'],
      printRows(book, prints),
    )
    page.heading('To get', { name: 'buy list' })
    tableOf(book, 'buy list', ['What', 'How much', 'Mass', 'For'], buyList(source))
    for (const part of source.parts) onePart(book, part)
  },
}

const cutRows = (parts: readonly MadePart[]): (string | Sentence)[][] =>
  parts.flatMap((part) =>
    (part.flats?.() ?? []).map((piece) => {
      const { left, right, bottom, top } = boundsOf([{ piece }])
      const sides = [right - left, top - bottom].sort((a, b) => b - a) as [number, number]
      return [
        upper(part.title),
        piece.title,
        part.material,
        say`${inMm(piece.thickness, 0.1)}`,
        say`${inMm(sides[0])}`,
        say`${inMm(sides[1])}`,
        String(piece.count),
      ]
    }),
  )

const printRows = (book: BookContext, parts: readonly MadePart[]): (string | Sentence)[][] =>
  parts.map((part) => [
    part.title,
    part.material,
    part.mass === undefined ? '' : say`${inGrams(part.mass)}`,
    hoursSays(part, 'print') ?? '',
    book.pageOf(`part ${part.id}`)?.replace('page ', '') ?? '',
  ])

function hoursSays(part: MadePart, of: 'print' | 'hand'): Sentence | undefined {
  const own = part.hours.filter((h) => (h.work === 'print') === (of === 'print'))
  if (own.length === 0) return undefined
  const low = own.reduce((sum, h) => sum + h.low, 0)
  const high = own.reduce((sum, h) => sum + h.high, 0)
  return say`${inHours(low, 0.1)} to ${inHours(high, 0.1)}`
}

const upper = (words: string) => `${words.charAt(0).toUpperCase()}${words.slice(1)}`

/** Width at which a section with its dimensions is no taller than there is room, mm. */
function sectionWidth({ low, high }: MadeBody, across: number): number {
  const [wide, tall] = [high[0] - low[0], high[2] - low[2]]
  const dimensions = 28
  return Math.min(across, dimensions + ((tallSection - dimensions) * Math.max(wide, tall)) / tall)
}

function onePart(book: BookContext, part: MadePart): void {
  const { page, source } = book
  page.heading(upper(part.title), { name: `part ${part.id}` })
  page.words(shown(book, part.says))
  const facts: Sentence[] = [
    part.material,
    ...(part.mass === undefined ? [] : [say`${inKg(part.mass, 0.001)}`]),
    ...part.hours.map((h) => say`${h.work} ${inHours(h.low, 0.1)} to ${inHours(h.high, 0.1)}`),
  ]
  page.words(shown(book, whole(joined(facts, '; '))), { quiet: true })
  cautions(book, part.cautions)
  for (const f of part.findings)
    page.words(shown(book, f.act ? say`${f.says} ${whole(f.act)}` : f.says), { indent: 5, sign: '•' })
  if (part.how === 'sheet') {
    figure(book, `part ${part.id}`, tallest, () => partDrawing(part, page.across, tallest, source.units))
    seePage(book, 'Full size', `pattern ${part.id}`)
    const folded = part.folded?.() ?? []
    if (folded.length > 0)
      figure(book, `part ${part.id} made`, 60, () =>
        solidPicture(folded, { width: 80, title: `${part.title}, rolled up`, says: shown(book, part.says) }),
      )
  }
  const made = source.solids?.get(part.id)
  if (made) {
    figure(book, `part ${part.id}`, 60, () =>
      solidPicture(
        made.bodies.map((b) => b.mesh),
        { width: 80, title: part.title, says: shown(book, part.says) },
      ),
    )
    for (const body of made.bodies.slice(0, 2))
      figure(book, `part ${part.id} ${body.name}`, tallSection, () =>
        sectionFigure(body, { width: sectionWidth(body, page.across), system: source.units }),
      )
  }
  if (part.steps.length > 0) {
    page.heading('In this order', { depth: 3 })
    part.steps.forEach((step, i) => {
      page.tick(`${i + 1}. ${shown(book, step)}`)
    })
  }
  page.gap(2)
}
