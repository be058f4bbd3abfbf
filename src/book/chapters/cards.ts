/** Cards for the bench and the bank: bolts, fuel and leak test, and every card that a trade makes for this craft. */
import { inCount, inTorque } from '../../base/answers/amounts.ts'
import { type Sentence, say } from '../../base/answers/sentence.ts'
import { usualTorque } from '../../trades/driveline/boltTorque.ts'
import type { DriveAnswer } from '../../trades/driveline/driveAnswer.ts'
import type { Card } from '../../trades/trade.ts'
import { type BookContext, type Chapter, cautions, numberTable, shown, tableOf } from '../bookContext.ts'
import type { Worked } from '../bookSource.ts'

/** cards whose place others lead to */
const names: Readonly<Record<string, string>> = { swarf: 'fuel card' }

export const cardsChapter: Chapter = {
  id: 'cards',
  title: 'Cards',
  write(book) {
    const { worked } = book.source
    const drive = worked.find(({ trade }) => trade.id === 'driveline')
    if (drive) boltCard(book, drive)
    const all = worked.flatMap((w) => (w.trade.cards?.(w.now) ?? []).map((card) => ({ card, w })))
    // a card for the fuel stands even where the tank needs no washing: the leak test is for every tank
    const fuel = worked.find(({ trade }) => trade.id === 'fuel')
    if (fuel && !all.some(({ card }) => card.id === 'swarf')) fuelHead(book, fuel)
    for (const { card, w } of all) oneCard(book, card, w)
  },
}

function oneCard(book: BookContext, card: Card, { trade, now }: Worked): void {
  const { page } = book
  page.heading(card.title, { name: names[card.id] ?? `card ${card.id}` })
  page.words(shown(book, card.says), { quiet: true })
  cautions(book, (trade.cautions ?? []).slice(0, 2))
  card.steps.forEach((step, i) => {
    page.tick(`${i + 1}. ${shown(book, step)}`)
  })
  if (card.id === 'swarf') leakTest(book, { trade, now })
  page.boxes(['date', 'by', 'what was found'])
}

function fuelHead(book: BookContext, fuel: Worked): void {
  book.page.heading('Fuel and leak test', { name: 'fuel card' })
  cautions(book, fuel.trade.cautions ?? [])
  leakTest(book, fuel)
  book.page.boxes(['date', 'pressure held', 'after minutes'])
}

/** Pressures of the leak test, as the trade tells them. */
function leakTest(book: BookContext, { trade, now }: Worked): void {
  const table = (trade.numbers?.(now) ?? []).find((t) => /leak test|Leak test|tight/i.test(t.caption))
  if (table) numberTable(book, 'leak test', table)
}

/** Each bolted joint: what to tighten it with, what locks it, and boxes for when it was done and looked at. */
function boltCard(book: BookContext, { now }: Worked): void {
  const answer = now.answer as DriveAnswer | undefined
  const rows = (answer?.inOrder ?? []).flatMap(({ of }): (string | Sentence)[][] =>
    of.kind === 'coupling'
      ? [
          [
            of.name,
            say`${inCount(of.number)} × ${of.bolt.size}, class ${of.className}`,
            of.torque
              ? say`${inTorque(of.torque.value)}`
              : say`none in the file; such bolts in metal stand ${inTorque(usualTorque(of.bolt, of.strength))}`,
            of.locking,
            '',
            '',
          ],
        ]
      : [],
  )
  if (rows.length === 0) return
  const { page } = book
  page.heading('Bolts', { name: 'bolt card' })
  page.words(
    'Tighten in three rounds crosswise, dry and clean; draw a line over head and part. Look at the lines after the first minutes, after the first day and each day after that.',
  )
  tableOf(book, 'bolts', ['Joint', 'Bolts', 'Tighten to', 'Locked by', 'Done', 'Looked at'], rows)
  const found = book.source.look.findings.filter(
    (f) => /^drive\./.test(f.id) && f.act && f.standing !== 'good',
  )
  for (const f of found) page.words(shown(book, f.says), { indent: 5, sign: '•' })
}
