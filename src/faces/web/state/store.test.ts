import { readFileSync } from 'node:fs'
import { expect, test } from 'vitest'
import { templateText } from '../../../craft/templates.ts'
import { keepInFile, labelOf, readText, textOf } from './craftFile.ts'
import { createStore } from './store.ts'
import { change, newWork, type Tried } from './work.ts'

const heron = readFileSync('demo/heron.yaml', 'utf8')
const pitchTo = (mm: number): Tried => ({
  path: 'jet.rotor.pitch',
  value: mm / 1000,
  text: `${mm} mm`,
  was: '108 mm',
})
const holding = (text: string) => {
  const store = createStore()
  store.setWork(newWork('x', 'x.yaml', text))
  return store
}
const type = (store: ReturnType<typeof holding>, text: string) =>
  store.setWork(change(store.get().work!, { text, label: 'type' }, 0))

test('a text that reads gives a craft and no errors', () => {
  const { craft, problems } = holding(heron).get()
  expect(craft?.name).toBe('Heron')
  expect(problems.filter((p) => p.severity === 'error')).toEqual([])
})

test('while the text is broken the craft of the last good text stands', () => {
  const store = holding(heron)
  const { craft } = store.get()
  type(store, heron.replace('bore: 120.0 mm', 'bore: 120.0'))
  expect(store.get().craft).toBe(craft)
  expect(store.get().problems[0]?.says).toContain('jet.rotor.bore')
  expect(store.get().work?.goodText).toBe(heron)
  type(store, heron.replace('bore: 120.0 mm', 'bore: 121 mm'))
  expect(store.get().problems).toEqual([])
  expect(store.get().craft?.jet.rotor.bore.value).toBeCloseTo(0.121, 12)
})

test('a broken text that was saved comes back with the craft of the good text saved beside it', () => {
  const store = createStore()
  store.setWork({ ...newWork('x', 'x.yaml', 'nonsense'), goodText: heron })
  expect(store.get().craft?.name).toBe('Heron')
  expect(store.get().problems).not.toEqual([])
})

test('another craft never shows the last one’s numbers', () => {
  const store = holding(heron)
  store.setWork(newWork('y', 'y.yaml', 'nonsense'))
  expect(store.get().craft).toBeUndefined()
})

test('tried values make a craft beside the one in the file', () => {
  const store = holding(heron)
  store.setWork(change(store.get().work!, { tried: [pitchTo(95)], label: 'try' }, 0))
  expect(store.get().triedCraft?.jet.rotor.pitch.value).toBeCloseTo(0.095, 12)
  expect(store.get().craft?.jet.rotor.pitch.value).toBeCloseTo(0.108, 12)
})

test('a tried value whose path is gone from the file tries nothing', () => {
  const store = holding(heron)
  const tried: Tried = { path: 'engines.4.redline', value: 100, text: '6000 rpm', was: '' }
  store.setWork(change(store.get().work!, { tried: [tried], label: 'try' }, 0))
  expect(store.get().triedCraft).toBeUndefined()
})

test('what did not change keeps its identity, so that nothing is drawn again for it', () => {
  const store = holding(heron)
  const { craft } = store.get()
  store.setWork(change(store.get().work!, { tried: [pitchTo(95)], label: 'try' }, 0))
  expect(store.get().craft).toBe(craft)
})

test('keeping writes the value and one log entry, and leaves every other line as it stands', () => {
  const kept = keepInFile(heron, [pitchTo(95)], { date: '2026-05-14', reason: 'bogs: always', expect: '' })
  const { craft } = readText(kept, 'x.yaml')
  expect(craft?.jet.rotor.pitch.value).toBeCloseTo(0.095, 12)
  expect(craft?.log).toEqual([
    {
      date: '2026-05-14',
      path: 'jet.rotor.pitch',
      from: '108 mm ±3 (measured)',
      to: '95 mm',
      reason: 'bogs: always',
    },
  ])
  const lines = new Set(kept.split('\n'))
  expect(heron.split('\n').filter((line) => !lines.has(line))).toEqual(['    pitch: 108 mm ±3 (measured)'])
})

test('a new craft reads, whatever it is called', () => {
  for (const name of ['My craft', 'a: b', '"quoted"', '# no comment', '{x}', 'Ærø'])
    expect(readText(templateText(name), 'x.yaml').craft?.name).toBe(name)
})

test('a value is said in the unit asked for', () => {
  const { craft } = readText(heron, 'x.yaml')
  expect(textOf(craft!, 'jet.rotor.bore', 'metric')).toBe('120 mm')
  expect(textOf(craft!, 'jet.rotor.bore', 'inch')).toBe('4.724 in')
  expect(textOf(craft!, 'drive.clutch', 'inch')).toBe('none')
})

test('a bay kept as another kind loses the values that only its old kind had, and the file reads', () => {
  const tried: Tried[] = [
    { path: 'deck.bays.2.kind', value: 'sandwich', text: 'sandwich', was: 'stringers' },
    { path: 'deck.bays.2.skin', value: 0.8e-3, text: '0.8 mm', was: '1.5 mm' },
    { path: 'deck.bays.2.foam', value: 'XPS 35', text: 'XPS 35', was: '' },
    { path: 'deck.bays.2.core', value: 0.02, text: '20 mm', was: '' },
  ]
  const kept = keepInFile(heron, tried, { date: '2026-05-14', reason: '', expect: '' })
  const { craft, problems } = readText(kept, 'x.yaml')
  expect(problems.filter((p) => p.severity === 'error')).toEqual([])
  expect(craft?.deck.bays[2]).toMatchObject({ kind: 'sandwich', name: 'fore deck', foam: 'XPS 35' })
  expect(kept).not.toContain('spacing: 120 mm')
  // the other bays are as they were
  expect(craft?.deck.bays.slice(0, 2)).toEqual(readText(heron, 'x.yaml').craft?.deck.bays.slice(0, 2))
})

test('what has a name of its own goes by it, the rest by its place in the list', () => {
  const { craft } = readText(heron, 'heron.yaml')
  const said = (path: string) => labelOf(path, craft)
  expect(said('deck.bays.0.skin')).toBe('knee pads, skin')
  expect(said('weights.1.mass')).toBe('engine and pipe, mass')
  expect(said('weights.1.at.0')).toMatch(/^engine and pipe, at, /)
  expect(said('foam.1.from.2')).toMatch(/^port side, from, /)
  expect(said('openings.3.gap')).toBe('tank vent, gap')
  expect(said('tanks.0.liquid')).toMatch(/^fuel tank, /)
  expect(said('hot parts.1.distance')).toMatch(/^stinger, /)
  expect(said('engines.0.redline')).toBe('engine, redline')
  expect(said('rider.mass')).toBe('Rider mass')
  // without a craft, or without a name
  expect(labelOf('deck.bays.0.skin')).toBe('Bay 1 skin')
  expect(said('deck.bays.9.skin')).toBe('Bay 10 skin')
})
