import fc from 'fast-check'
import { expect, test } from 'vitest'
import { change, newWork, redo, type Tried, undo, type Work, withoutTried, withTried } from './work.ts'

const start = newWork('x', 'x.yaml', 'pitch: 108 mm\nnozzle: 65 mm\n')
const trial = (path: string, value: number): Tried => ({ path, value, text: `${value} mm`, was: '108 mm' })
const type = (work: Work, text: string, at: number, merge?: string) =>
  change(work, { text, label: 'edit', ...(merge ? { merge } : {}) }, at)

type Edit =
  | { do: 'type'; text: string; gap: number }
  | { do: 'try'; value: number; gap: number }
  | { do: 'undo' }
  | { do: 'redo' }

const edits: fc.Arbitrary<Edit[]> = fc.array(
  fc.oneof(
    fc.record({ do: fc.constant('type' as const), text: fc.string({ maxLength: 12 }), gap: fc.nat(3000) }),
    fc.record({ do: fc.constant('try' as const), value: fc.integer({ min: 1, max: 9 }), gap: fc.nat(3000) }),
    fc.constant({ do: 'undo' as const }),
    fc.constant({ do: 'redo' as const }),
  ),
  { maxLength: 30 },
)

test('undoing everything brings back the text and trials there were at first', () => {
  fc.assert(
    fc.property(edits, (list) => {
      let now = 0
      let work = start
      for (const edit of list) {
        if (edit.do === 'undo' || edit.do === 'redo') work = edit.do === 'undo' ? undo(work) : redo(work)
        else {
          now += edit.gap
          work =
            edit.do === 'type'
              ? type(work, edit.text, now, 'text')
              : change(
                  work,
                  { tried: withTried(work.tried, trial('pitch', edit.value)), label: 'try', merge: 'try' },
                  now,
                )
        }
      }
      const end = work
      while (work.past.length > 0) work = undo(work)
      expect([work.text, work.tried]).toEqual([start.text, start.tried])
      while (work.future.length > end.future.length) work = redo(work)
      expect([work.text, work.tried]).toEqual([end.text, end.tried])
    }),
  )
})

test('a history written out and read back still undoes', () => {
  const work = JSON.parse(JSON.stringify(type(start, 'pitch: 95 mm\n', 1))) as Work
  expect(undo(work).text).toBe(start.text)
})

test('quick steps of one key become one; slow ones and others do not', () => {
  const quick = type(type(start, 'a', 1000, 'text'), 'ab', 1500, 'text')
  expect(quick.past).toHaveLength(1)
  expect(undo(quick).text).toBe(start.text)
  expect(type(type(start, 'a', 1000, 'text'), 'ab', 9000, 'text').past).toHaveLength(2)
  expect(type(type(start, 'a', 1000, 'text'), 'ab', 1500, 'other').past).toHaveLength(2)
})

test('a change that changes nothing is no step', () => {
  expect(type(start, start.text, 1)).toBe(start)
})

test('a new step forgets what was undone', () => {
  expect(type(undo(type(start, 'a', 1)), 'b', 2).future).toEqual([])
})

test('trying a path again keeps what the file said; dropping leaves no trace', () => {
  const once = withTried([], trial('pitch', 95))
  const twice = withTried(once, { ...trial('pitch', 92), was: '95 mm' })
  expect(twice).toEqual([trial('pitch', 92)])
  expect(withoutTried(twice, 'pitch')).toEqual([])
})

test('no more than two hundred steps are kept', () => {
  let work = start
  for (let i = 0; i < 250; i++) work = type(work, `text ${i}`, i * 10_000)
  expect(work.past).toHaveLength(200)
})
