import fc from 'fast-check'
import { expect, test } from 'vitest'
import { printed } from '../../base/answers/sentence.ts'
import { demoCraft } from '../push/demo.testkit.ts'
import { compareRuns, runNamed } from './compare.ts'
import { craftLog, entrySays, runsOf } from './craftLog.ts'
import { addEntry } from './logText.ts'
import type { LogEntry } from './logTypes.ts'
import { numbersOf, readingOf } from './readings.ts'
import { seasonFigure, seasonOf } from './season.ts'

const heron = demoCraft('heron')
const pitchChange = {
  date: '2026-06-01',
  path: 'jet.rotor.pitch',
  from: '112 mm',
  to: '108 mm',
  reason: 'too steep',
}
const changed = { ...heron, log: [pitchChange] } as typeof heron
const run = (at: string, readings: Record<string, string>): LogEntry => ({
  at,
  kind: 'run',
  says: '',
  readings,
})
const textOf = (...entries: LogEntry[]) => entries.reduce((t, e) => addEntry(t, e, 'Heron'), '')
const twoRuns = textOf(
  run('2026-05-14', { pull: '20 kg', rpm: '5200', 'top speed': '20 km/h', time: '12 min' }),
  { at: '2026-05-20', kind: 'bought', says: 'luggage scale' },
  run('2026-06-08', { pull: '24 kg', rpm: '5240', 'top speed': '21 km/h', time: '18 min' }),
)

test('both logs are one list in order of date, each entry once', () => {
  const log = craftLog(changed, twoRuns)
  expect(log.problems).toEqual([])
  expect(log.entries.map((e) => [e.number, e.entry.kind, e.from])).toEqual([
    [1, 'run', 'log'],
    [2, 'bought', 'log'],
    [3, 'change', 'craft file'],
    [4, 'run', 'log'],
  ])
})

test('a change of the craft file that was copied into the log is told and counts once', () => {
  const { date, ...rest } = pitchChange
  const twice = craftLog(changed, textOf({ at: date, kind: 'change', says: '', ...rest }))
  expect(twice.entries).toHaveLength(1)
  expect(twice.problems.map((p) => p.says)).toEqual([
    expect.stringContaining('stands in the craft file’s log already'),
  ])
})

test('runs are found by number, date, first and last; nothing else is a run', () => {
  const log = craftLog(changed, twoRuns)
  const number = (word: string) => runNamed(log, word)?.number
  expect(['1', '4', 'first', 'last', '2026-06-08'].map(number)).toEqual([1, 4, 1, 4, 4])
  expect(['2', '3', '9', '2027-01-01', '', 'x', '-1'].map(number)).toEqual(Array(7).fill(undefined))
})

test('two runs say what changed and what it did, and what chance does too', () => {
  const log = craftLog(changed, twoRuns)
  const compared = compareRuns(log, runNamed(log, '4')!, runNamed(log, '1')!)
  expect(compared.changes.map((c) => c.number)).toEqual([3])
  const byName = Object.fromEntries(compared.numbers.map((n) => [n.name, n]))
  expect(byName['pull']!.part).toBeCloseTo(0.2, 9)
  expect(byName['pull']!.beyondChance).toBe(true)
  expect(byName['engine speed']!.beyondChance).toBe(false)
  const says = printed(compared.says)
  expect(says).toContain('jet.rotor.pitch from 112 mm to 108 mm')
  expect(says).toContain('pull 196 N to 235 N (+20 %)')
  expect(says).toContain('which chance alone does too')
})

test('comparing a run with itself finds no change and no difference', () => {
  const log = craftLog(changed, twoRuns)
  for (const r of runsOf(log)) {
    const same = compareRuns(log, r, r)
    expect(same.changes).toEqual([])
    for (const n of same.numbers) expect([n.part, n.beyondChance]).toEqual([0, false])
  }
})

test('a season counts versions and running time, and draws a panel a number', () => {
  const season = seasonOf(craftLog(changed, twoRuns))
  expect(season.runs.map((r) => [r.version, r.hours])).toEqual([
    [1, 720],
    [2, 1800],
  ])
  expect(printed(season.says)).toBe('2 runs of 2 versions of the craft, 30 min of running.')
  expect(seasonFigure(season)!.marks.length).toBeGreaterThan(10)
  const empty = seasonOf(craftLog(heron, ''))
  expect(empty.runs).toEqual([])
  expect(seasonFigure(empty)).toBeUndefined()
})

test('readings are SI whatever they were typed in, and what cannot be is told with its limit', () => {
  expect(readingOf('pull', '20 kg')).toBeCloseTo(196.133, 3)
  expect(readingOf('pull', '44.1 lb')).toBeCloseTo(196.17, 2)
  expect(readingOf('pull', '196 N')).toBe(196)
  expect(readingOf('rpm A', '6000')).toBe(100)
  expect(readingOf('weather', 'rain')).toBeUndefined()
  expect(readingOf('rpm', '500000')).toMatch(/expected 300 rpm to 24\u202F000 rpm/)
  expect(readingOf('pull', 'much')).toMatch(/"much" does not begin with a number/)
})

test('no typed reading becomes a number outside its limits', () => {
  fc.assert(
    fc.property(
      fc.constantFrom('pull', 'rpm', 'top speed', 'time', 'fuel'),
      fc.string({ maxLength: 20 }),
      (name, text) => {
        const { values, faults } = numbersOf(run('2026-05-01', { [name]: text }))
        expect(Object.keys(values).length + faults.length).toBe(1)
        for (const v of Object.values(values)) expect(Number.isFinite(v)).toBe(true)
      },
    ),
  )
})

test('every kind of entry has words', () => {
  const entry: LogEntry = { at: '2026-05-01', kind: 'check', says: 'cold', check: 'plug', outcome: 'white' }
  expect(entrySays({ entry, line: 1 })).toBe('plug: white; cold')
})
