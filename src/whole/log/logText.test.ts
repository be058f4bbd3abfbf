import fc from 'fast-check'
import { expect, test } from 'vitest'
import { addEntry, entryText, isLogDate, readLog } from './logText.ts'
import { type LogEntry, logKinds } from './logTypes.ts'

const word = fc
  .string({ unit: 'grapheme', minLength: 1, maxLength: 60 })
  .map((s) => s.replace(/[\p{Cc}\p{Cs}\u2028\u2029\uFEFF\uFFFE\uFFFF]/gu, ' ').trim())
  .filter((s) => s !== '')
const words = fc.oneof(
  word,
  fc.constantFrom('null', '~', '- x', '# x', 'a: b', "it's", '"', '1e3', '| x', 'yes\nno', '{', '*a'),
)
const readings = fc.dictionary(fc.constantFrom('pull', 'rpm', 'rpm A', 'top speed', 'wind'), words, {
  minKeys: 1,
  maxKeys: 4,
  noNullPrototype: true,
})
const entries: fc.Arbitrary<LogEntry> = fc.record(
  {
    at: fc.constantFrom('2026-05-14', '2026-05-14 10:30', '2027-12-31T09:00:00Z'),
    kind: fc.constantFrom(...logKinds),
    says: words,
    path: words,
    from: words,
    to: words,
    reason: words,
    madeFrom: words,
    check: words,
    outcome: words,
    run: words,
    readings,
  },
  { requiredKeys: ['at', 'kind', 'says'] },
)
const written = (list: readonly LogEntry[]) => list.reduce((text, e) => addEntry(text, e, 'Heron'), '')
const read = (text: string) => readLog(text).entries.map((e) => e.entry)
/** the reader counts the same block once */
const once = (list: readonly LogEntry[]) => [...new Map(list.map((e) => [entryText(e), e])).values()]

test('what is written is read again, entry by entry, in order', () => {
  fc.assert(
    fc.property(fc.array(entries, { maxLength: 6 }), (list) => {
      const { problems } = readLog(written(once(list)))
      expect(problems).toEqual([])
      expect(read(written(once(list)))).toEqual(once(list))
    }),
  )
})

test('adding leaves every letter that stood there, comments and unknown keys among them', () => {
  fc.assert(
    fc.property(entries, (entry) => {
      const before = '# mine\r\n\r\n- at: 2026-05-01\r\n  kind: note\r\n  says: x\r\n  weather: rain\r\n'
      const after = addEntry(before, entry, 'Heron')
      expect(after.startsWith(before)).toBe(true)
      expect(read(after)).toHaveLength(2)
    }),
  )
})

test('two branches that each added entries merge by taking both sides, marks or no marks', () => {
  fc.assert(
    fc.property(
      fc.array(entries, { maxLength: 3 }),
      fc.array(entries, { minLength: 1, maxLength: 3 }),
      fc.array(entries, { minLength: 1, maxLength: 3 }),
      (base, ours, theirs) => {
        const common = written(base)
        const added = (list: readonly LogEntry[]) =>
          list.reduce((t, e) => addEntry(t, e, 'Heron'), common).slice(common.length)
        const a = added(ours)
        const b = added(theirs)
        const marked = `${common}<<<<<<< ours\n${a}=======\n${b}>>>>>>> theirs\n`
        const all = once([...base, ...ours, ...theirs])
        expect(read(`${common}${a}${b}`)).toEqual(all)
        expect(read(marked)).toEqual(all)
        const told = readLog(marked).problems.filter((p) => p.says.includes('merge'))
        expect(told.map((p) => p.line)).toEqual([common.split('\n').length])
      },
    ),
  )
})

test('a block spoilt by hand is told by its line and costs no other entry', () => {
  const good = ['2026-05-01', '2026-05-02', '2026-05-03'].map(
    (at): LogEntry => ({ at, kind: 'note', says: `on ${at}` }),
  )
  const text = written(good)
  const line = text.split('\n').findIndex((l) => l.includes('2026-05-02')) + 1
  const spoilt = (by: string) => readLog(text.replace('- at: 2026-05-02', by))
  for (const [by, says] of [
    ['- at: 2026-13-02', 'at is "2026-13-02"; expected a date'],
    ['- at: tomorrow', 'at is "tomorrow"; expected a date'],
    ['- on: 2026-05-02', 'has no "at"'],
    ['- at: "2026-05-02', 'cannot be read'],
    ['- at: [2026, 5]', '"at" has more keys'],
    ['- at: 2026-05-02\n  at: 2026-05-03', 'stands twice'],
  ] as const) {
    const { entries, problems } = spoilt(by)
    expect(entries.map((e) => e.entry.at)).toEqual(['2026-05-01', '2026-05-03'])
    expect(problems).toHaveLength(1)
    expect(problems[0]!.says).toContain(says)
    expect(Math.abs(problems[0]!.line - line)).toBeLessThanOrEqual(1)
  }
})

test('an unknown kind, readings that are none and stray lines are told', () => {
  const says = (text: string) => readLog(text).problems.map((p) => `${p.line}: ${p.says}`)
  expect(says('- at: 2026-05-01\n  kind: party\n')[0]).toMatch(
    /^2: kind is "party"; expected one of run, check/,
  )
  expect(says('- at: 2026-05-01\n  kind: run\n  readings: [1]\n')[0]).toMatch(/^3: "readings" is not/)
  expect(says('# head\nhello\n')[0]).toMatch(/^2: "hello" belongs to no entry/)
  expect(says('- \n')[0]).toMatch(/^1: this entry holds no keys/)
})

test('no text makes the reader throw, and every entry it gives has a date and a kind', () => {
  const piece = fc.oneof(
    fc.string({ unit: 'binary', maxLength: 30 }),
    fc.constantFrom(
      '- at: 2026-05-01\n',
      '  kind: run\n',
      '  says: |\n    x\n',
      '- &a *a\n',
      '\t',
      '<<<<<<< \n',
      '- - - x\n',
      '  readings:\n',
      '    pull: 1\n',
      '? x\n',
      '- !!js x\n',
    ),
  )
  fc.assert(
    fc.property(fc.array(piece, { maxLength: 12 }), (pieces) => {
      const { entries, problems } = readLog(pieces.join(''))
      for (const { entry, line } of entries) {
        expect(isLogDate(entry.at)).toBe(true)
        expect(logKinds).toContain(entry.kind)
        expect(line).toBeGreaterThan(0)
      }
      for (const p of problems) expect(p.says).not.toBe('')
    }),
  )
})

test('a log of megabytes of nonsense is refused or read quickly, never hung on', () => {
  expect(readLog('x'.repeat(9_000_000)).problems[0]!.says).toContain('million characters')
  expect(readLog(`- at: ${'['.repeat(30_000)}`).problems[0]!.says).toContain('characters long')
})
