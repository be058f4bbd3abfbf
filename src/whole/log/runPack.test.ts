import fc from 'fast-check'
import { expect, test } from 'vitest'
import { addEntry, readLog } from './logText.ts'
import type { LogEntry } from './logTypes.ts'
import { mergedLogs, packOf, unpack } from './runPack.ts'

const note = (says: string): LogEntry => ({ at: '2026-05-01', kind: 'note', says })
const logOf = (...says: string[]) => says.reduce((t, s) => addEntry(t, note(s), 'Heron'), '')

test('what is packed comes back: texts to the letter, arrays by kind and value, sound byte by byte', () => {
  const array = fc.oneof(
    fc.float32Array({ maxLength: 20 }),
    fc.float64Array({ maxLength: 20 }),
    fc.uint8Array({ maxLength: 20 }),
  )
  const whole = fc.record({
    a: array,
    list: fc.array(fc.double()),
    words: fc.string(),
    none: fc.constant(null),
  })
  fc.assert(
    fc.property(whole, fc.string(), fc.uint8Array({ maxLength: 50 }), (held, name, bytes) => {
      const pack = {
        craft: { name: 'heron.yaml', text: 'wakewright: 1\n' },
        log: logOf('x'),
        runs: [
          { id: '1', name, whole: held, sound: { bytes: Uint8Array.from(bytes), type: 'audio/wav' } },
          { id: '2', name, whole: held },
        ],
      }
      const back = unpack(packOf(pack))
      expect(back.problems).toEqual([])
      expect({ craft: back.craft, log: back.log }).toEqual({ craft: pack.craft, log: pack.log })
      expect(back.runs.map((r) => [r.id, r.name])).toEqual([
        ['1', name],
        ['2', name],
      ])
      const read = back.runs[0]!.whole as typeof held
      expect(read.a.constructor).toBe(held.a.constructor)
      expect([...read.a].map((v) => v + 0)).toEqual([...held.a].map((v) => v + 0))
      expect(read.list.map((v) => v + 0)).toEqual(held.list.map((v) => v + 0))
      expect([...back.runs[0]!.sound!.bytes]).toEqual([...bytes])
    }),
    { numRuns: 30 },
  )
})

test('a pack cut off, or one with a spoilt run, says what is missing and never throws', () => {
  expect(unpack(Uint8Array.of(1, 2, 3)).problems[0]).toContain('no ZIP file')
  const bytes = packOf({
    craft: { name: 'heron.yaml', text: 'x' },
    log: '',
    runs: [{ id: '1', name: 'a', whole: 1 }],
  })
  fc.assert(
    fc.property(fc.nat(bytes.length), fc.integer({ min: 0, max: 255 }), (at, value) => {
      const spoilt = Uint8Array.from(bytes)
      spoilt[at] = value
      expect(Array.isArray(unpack(spoilt).problems)).toBe(true)
      expect(Array.isArray(unpack(bytes.slice(0, at)).problems)).toBe(true)
    }),
  )
})

test('two logs join without losing or doubling an entry, whichever way round', () => {
  const base = logOf('a', 'b')
  const ours = addEntry(base, note('ours'), 'Heron')
  const theirs = addEntry(base, note('theirs'), 'Heron')
  const says = (text: string) => readLog(text).entries.map((e) => e.entry.says)
  expect(says(mergedLogs(ours, theirs))).toEqual(['a', 'b', 'ours', 'theirs'])
  expect(says(mergedLogs(theirs, ours))).toEqual(['a', 'b', 'theirs', 'ours'])
  expect(mergedLogs(ours, base)).toBe(ours)
  expect(mergedLogs('', theirs)).toBe(theirs)
  expect(mergedLogs(ours, ours)).toBe(ours)
  expect(readLog(mergedLogs(ours, theirs)).problems).toEqual([])
})
