/**
 * The order of work: what has to be there before what, from decisions to the first water, made from this craft's parts and findings. That what
 * carries fuel is tested and what wants looking at is reached before a deck is closed: common practice, no source.
 */
import { inHours, inMm } from '../../base/answers/amounts.ts'
import type { Finding } from '../../base/answers/finding.ts'
import type { MadePart } from '../../base/answers/madePart.ts'
import { type Sentence, say, whole } from '../../base/answers/sentence.ts'
import { reachPlaces } from '../../trades/prints/reachPlaces.ts'
import { nextOf } from '../../whole/decisions.ts'
import { handsOn } from '../../whole/make/partsOfCraft.ts'
import { type BookContext, type Chapter, shown } from '../bookContext.ts'

interface Item {
  says: Sentence
  /** a place of the book */
  at?: string
}

interface Stage {
  name: string
  title: string
  why?: string
  items: readonly Item[]
}

export const orderChapter: Chapter = {
  id: 'order',
  title: 'The order of work',
  write(book) {
    const { page } = book
    for (const { name, title, why, items } of stages(book)) {
      if (items.length === 0) continue
      page.heading(title, { name: `order ${name}` })
      if (why) page.words(why, { quiet: true })
      for (const { says, at } of items) {
        const where = at === undefined ? undefined : book.pageOf(at)
        page.tick(shown(book, where ? say`${says} (${where})` : says))
      }
      page.boxes(['done on', 'by', 'what was found'])
    }
  },
}

const isDeck = (p: MadePart) => p.id.startsWith('deck')
const isTry = (p: MadePart) => /^(printer-gauge|try-)/.test(p.id)
const isTank = (p: MadePart) => /^tank/.test(p.id)

const partItem = (part: MadePart): Item => {
  const { low, high } = handsOn([part])
  return {
    says: high > 0 ? say`${part.title}: ${inHours(low, 0.1)} to ${inHours(high, 0.1)} by hand` : part.title,
    at: `part ${part.id}`,
  }
}

/** Stages in their order. */
function stages({ source }: BookContext): Stage[] {
  const { parts, look } = source
  const prints = parts.filter((p) => p.how === 'print')
  const sheet = parts.filter((p) => p.how === 'sheet')
  const tanks = sheet.filter(isTank)
  return [
    {
      name: 'decide',
      title: '1. Measure and decide',
      why: 'What is made is made from these numbers.',
      items: [
        { says: 'Take the readings of the list at the end and type them back.', at: 'readings' },
        ...nextOf(look.decisions)
          .filter((d) => d.changes)
          .map((d): Item => ({ says: whole(d.act ?? d.says), at: 'decisions' })),
      ],
    },
    {
      name: 'try',
      title: '2. Try-pieces for the printer',
      why: 'What fits is written into the craft file, and every print after it is made with it.',
      items: prints.filter(isTry).map(partItem),
    },
    { name: 'print', title: '3. Print', items: prints.filter((p) => !isTry(p)).map(partItem) },
    {
      name: 'weld',
      title: '4. Cut, roll and weld',
      why: 'Tanks first: they need days of tests that other work goes on beside.',
      items: [...tanks, ...sheet.filter((p) => !isTank(p) && !isDeck(p))].map(partItem),
    },
    {
      name: 'fit',
      title: '5. Into the hull',
      why: 'Before foam and deck are in the way.',
      items: fitItems(source),
    },
    {
      name: 'closed',
      title: '6. Check before it is closed for good',
      why: closedWhy(source.craft.deck.joined),
      items: beforeClosing(source),
    },
    { name: 'deck', title: '7. Close it', items: sheet.filter(isDeck).map(partItem) },
    {
      name: 'water',
      title: '8. First water',
      items: [
        ...look.decisions
          .filter((d) => d.harm === 'before the water')
          .map((d): Item => ({ says: whole(d.act ?? d.says), at: 'decisions' })),
        { says: 'Go through the card for each start.', at: 'cards' },
        ...(source.plan ? [{ says: 'Run by the plan and write the readings down.', at: 'run' }] : []),
      ],
    },
  ]
}

const closedWhy = (joined: string): string =>
  joined === 'riveted' || joined === 'bonded'
    ? `The deck is ${joined}: what is under it is not seen again without drilling.`
    : `The deck is ${joined}; look while nothing is in the way.`

function fitItems({ craft, worked }: BookContext['source']): Item[] {
  const has = (id: string) => worked.some((w) => w.trade.id === id)
  return [
    ...craft.foam.map(
      (f): Item => ({
        says: say`Foam ${f.name}: ${inMm(f.to[0].value - f.from[0].value)} by ${inMm(f.to[1].value - f.from[1].value)} by ${inMm(f.to[2].value - f.from[2].value)}, clear of what is hot`,
        at: 'strength',
      }),
    ),
    ...(craft.shaft.length > 0
      ? [
          { says: 'Line the shaft up by hand before a bolt is tight; it turns with two fingers.' },
          ...(craft.shaft.some((l) => l.kind === 'coupling')
            ? [{ says: 'Tighten by the bolt card, and mark each head.', at: 'bolt card' }]
            : []),
        ]
      : []),
    ...(craft.tanks.length > 0
      ? [{ says: 'Tank, hoses and filter in; wash and test by the card.', at: 'fuel card' }]
      : []),
    ...(has('controls')
      ? [{ says: 'Throttle, kill switch and cord; try them by the card.', at: 'cards' }]
      : []),
  ]
}

/** What nobody comes to later, or only through a hatch: with what for. */
function beforeClosing({ craft, look }: BookContext['source']): Item[] {
  const reach = look.findings.filter((f) => f.id.startsWith('prints.reach.'))
  const stops = look.findings.filter(
    (f): f is Finding & { act: Sentence } =>
      f.act !== undefined && f.standing !== 'good' && /^(deck|float\.foam|strength|drive)/.test(f.id),
  )
  return [
    ...reachPlaces(craft).spots.map(
      (s): Item => ({ says: `With the deck laid on loose, reach ${s.name} ${s.for}.` }),
    ),
    ...reach.filter((f) => f.act).map((f): Item => ({ says: whole(f.act!), at: 'make' })),
    ...stops.map((f): Item => ({ says: whole(f.act), at: f.question })),
    ...(craft.tanks.length > 0
      ? [
          {
            says: 'Tank and lines held their pressure through the leak test; no smell after a night shut.',
            at: 'fuel card',
          },
        ]
      : []),
    { says: 'Photographs of all of it with a tape in the picture.' },
  ]
}
