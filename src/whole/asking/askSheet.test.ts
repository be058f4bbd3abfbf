import fc from 'fast-check'
import { expect, test } from 'vitest'
import { pdfOf } from '../../drawing/pdf.ts'
import type { RunRanking } from '../faults/rankingTypes.ts'
import { craftLog } from '../log/craftLog.ts'
import { addEntry } from '../log/logText.ts'
import type { LogEntry } from '../log/logTypes.ts'
import { demoCraft } from '../push/demo.testkit.ts'
import { solveBalance } from '../push/solveBalance.ts'
import { askContent, askSheet } from './askSheet.ts'
import { nameless, namelessPart } from './nameless.ts'

const heron = demoCraft('heron')
const sandpiper = demoCraft('sandpiper')
const balance = solveBalance(heron)
const entries: LogEntry[] = [
  {
    at: '2026-05-01',
    kind: 'run',
    says: 'tied up at Loch Invented with Agatha',
    readings: { pull: '500 N', rpm: '6300' },
  },
  { at: '2026-05-03', kind: 'change', says: 'tank drilled, no filter, see https://example.org/x' },
  { at: '2026-05-04', kind: 'check', says: 'cold', check: 'plug', outcome: 'white' },
]
const log = craftLog(
  heron,
  entries.reduce((t, e) => addEntry(t, e, 'Heron'), ''),
)
const ranking: RunRanking = {
  episodes: [
    { id: 'a', kind: 'both-pulling', from: 0, to: 6, says: 'both at speed' },
    { id: 'b', kind: 'one-dragged', from: 6, to: 12, says: 'one stops firing and is dragged' },
  ],
  causes: [0.5, 0.3, 0.1, 0.05].map((share, i) => ({
    id: `c${i}`,
    says: `cause ${i}`,
    share,
    weight: 5,
    ways: [],
    mend: 'mend it',
    for: ['it fits'],
    against: ['it does not'],
  })),
  none: 0.05,
  cannotSay: [],
  beside: [],
  doubts: [],
  decided: true,
  checks: [],
}

test('the sheet has ten numbers at most with their sources, three causes with odds, what was tried and one question', () => {
  for (const craft of [heron, sandpiper]) {
    const c = askContent(craft, { balance, log, ranking })
    expect(c.numbers.length).toBeGreaterThanOrEqual(6)
    expect(c.numbers.length).toBeLessThanOrEqual(10)
    for (const n of c.numbers) expect(n.from).not.toBe('')
    expect(c.causes).toHaveLength(3)
    expect(c.question).toMatch(/\?$/)
    expect(c.timeline).toHaveLength(2)
    expect(c.tried).toEqual(['tank drilled, no filter, see …', 'plug: white; cold'])
  }
})

test('no name, no place and no address is on it, in the picture either', () => {
  const named = {
    ...heron,
    weights: heron.weights.map((w, i) => (i === 0 ? { ...w, name: 'Agatha’s battery' } : w)),
  } as typeof heron
  const { sheet, text } = askSheet(named, { balance, log, question: 'Ask Agatha in Inventedville: why?' })
  const written = sheet.marks.flatMap((m) => (m.kind === 'text' ? [m.text] : [])).join(' ')
  for (const words of [text, written, sheet.title, sheet.says])
    expect(words).not.toMatch(/Agatha|Invented|Heron|example\.org|2026/)
  expect(written).toContain('battery')
})

test('it is one page, whatever the log holds, and its PDF begins like one', async () => {
  const long = craftLog(
    heron,
    Array.from(
      { length: 40 },
      (_, i): LogEntry => ({ at: '2026-05-01', kind: 'change', says: `${i} ${'word '.repeat(80)}` }),
    ).reduce((t, e) => addEntry(t, e, 'Heron'), ''),
  )
  const { sheet } = askSheet(heron, { balance, log: long, ranking, question: 'x'.repeat(5000) })
  expect([sheet.width, sheet.height]).toEqual([210, 297])
  for (const m of sheet.marks) if (m.kind === 'text') expect(m.y).toBeGreaterThan(5)
  expect(new TextDecoder().decode((await pdfOf([sheet], 'x')).slice(0, 5))).toBe('%PDF-')
})

test('with nothing known but the craft it still asks, and says what is not known', () => {
  const { text } = askSheet(heron)
  expect(text).toContain('What would you check first, and why?')
  expect(text).toContain('Not ranked yet.')
  expect(text).not.toMatch(/NaN|undefined|—/)
})

test('words without names keep numbers, units and materials', () => {
  expect(nameless('Pull was 230 N with PETG on Tuesday at 6300 rpm')).toBe(
    'Pull was 230 N with PETG on Tuesday at 6300 rpm',
  )
  expect(nameless('ran with Bert and Carla near Dunmere')).toBe('ran with … and … near …')
  expect(nameless('write to a.b@example.org or +44 20 7946 0958')).toBe('write to … or …')
  expect(nameless('at 56.12345, -3.98765 again')).toBe('at … again')
  expect(namelessPart('Bert’s fuel tank')).toBe('fuel tank')
})

test('no text makes it longer by more than its gaps, or leaves an address in it', () => {
  fc.assert(
    fc.property(fc.string({ unit: 'grapheme', maxLength: 200 }), (text) => {
      expect(nameless(text)).not.toMatch(/https?:\/\/|\S@\S+\.\S/)
    }),
  )
})
