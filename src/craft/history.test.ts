import fc from 'fast-check'
import { expect, test } from 'vitest'
import {
  beginHistory,
  canRedo,
  canUndo,
  type History,
  historyFromJson,
  historyToJson,
  longest,
  record,
  redo,
  redoReason,
  textNow,
  undo,
  undoReason,
} from './history.ts'

/** "a b < > c": record a, record b, undo, redo, record c */
const play = (script: string, from: History = beginHistory('start', 'opened', 0)) =>
  script
    .split(' ')
    .filter((w) => w !== '')
    .reduce((h, w, i) => (w === '<' ? undo(h) : w === '>' ? redo(h) : record(h, w, `to ${w}`, i + 1)), from)

test.each([
  ['', 'start'],
  ['a', 'a'],
  ['a b <', 'a'],
  ['a b < <', 'start'],
  ['a b < < <', 'start'],
  ['a b < >', 'b'],
  ['a b < > >', 'b'],
  ['a b < c', 'c'],
  ['a b < c <', 'a'],
  ['a b < c >', 'c'],
  ['a a <', 'start'],
])('after "%s" the text is %s', (script, text) => {
  expect(textNow(play(script))).toBe(text)
})

test('undo and redo name what they would take back and bring again', () => {
  const h = play('a b <')
  expect(undoReason(h)).toBe('to a')
  expect(redoReason(h)).toBe('to b')
  expect(undoReason(play(''))).toBeUndefined()
  expect(redoReason(play('a'))).toBeUndefined()
})

const script = fc.array(fc.constantFrom('a', 'b', 'c', '<', '>'), { maxLength: 40 }).map((w) => w.join(' '))

test('undoing all steps gives the first text, and redoing them all the last', () => {
  fc.assert(
    fc.property(script, (s) => {
      let h = play(s)
      while (canRedo(h)) h = redo(h)
      const last = textNow(h)
      while (canUndo(h)) h = undo(h)
      expect(textNow(h)).toBe('start')
      while (canRedo(h)) h = redo(h)
      expect(textNow(h)).toBe(last)
    }),
  )
})

test('a stored history is the same when it comes back, and damaged ones are refused', () => {
  fc.assert(
    fc.property(script, (s) => {
      expect(historyFromJson(historyToJson(play(s)))).toEqual(play(s))
    }),
  )
  for (const bad of [
    '',
    '{}',
    'null',
    '[]',
    '{"history":1,"states":[],"at":0}',
    '{"history":2,"states":[],"at":0}',
    historyToJson(play('a')).slice(0, -2),
    '{"history":1,"states":[{"text":1,"reason":"","time":0}],"at":0}',
  ])
    expect(historyFromJson(bad)).toBeUndefined()
  fc.assert(
    fc.property(fc.json(), (j) => {
      expect(historyFromJson(j)).toBeUndefined()
    }),
  )
})

test('typing in one field within the joining time is one step', () => {
  let h = beginHistory('', 'opened', 0)
  h = record(h, '1', 'pitch', 1000, 800)
  h = record(h, '10', 'pitch', 1500, 800)
  h = record(h, '108', 'pitch', 2000, 800)
  h = record(h, '108 mm', 'pitch', 9000, 800)
  expect(h.states.map((s) => s.text)).toEqual(['', '108', '108 mm'])
})

test('the oldest states go when there are too many', () => {
  const h = play(Array.from({ length: longest + 20 }, (_, i) => `t${i}`).join(' '))
  expect(h.states).toHaveLength(longest)
  expect(textNow(h)).toBe(`t${longest + 19}`)
})
