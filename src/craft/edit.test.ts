import fc from 'fast-check'
import { expect, test } from 'vitest'
import { parse } from 'yaml'
import { craftOf, full, heron, least, problemsOf, teal, twoStroke } from './craft.testkit.ts'
import { appendLog, setValue, valueText } from './edit.ts'
import { fieldAt, quantitiesOf } from './paths.ts'
import { readCraft } from './read.ts'
import { removeValue } from './remove.ts'

/** the only lines that differ between two texts, as "-old" and "+new" */
function changes(before: string, after: string): string[] {
  const a = before.split('\n')
  const b = after.split('\n')
  let start = 0
  while (start < a.length && a[start] === b[start]) start++
  let end = 0
  while (end < Math.min(a.length, b.length) - start && a.at(-1 - end) === b.at(-1 - end)) end++
  return [
    ...a.slice(start, a.length - end).map((l) => `-${l}`),
    ...b.slice(start, b.length - end).map((l) => `+${l}`),
  ]
}
/** every scalar of a text by its path, but one; places count in the names of the craft's own keys */
function leaves(text: string, but: string): Map<string, unknown> {
  const out = new Map<string, unknown>()
  const walk = (node: unknown, path: string) => {
    if (node !== null && typeof node === 'object')
      for (const [k, v] of Object.entries(node)) walk(v, path === '' ? k : `${path}.${k}`)
    else if (path !== but) out.set(path, node)
  }
  walk(parse(text, { schema: 'failsafe' }), '')
  return out
}
const setting = (text: string, path: string, value: string) => changes(text, setValue(text, path, value))
const removing = (text: string, path: string) => changes(text, removeValue(text, path))

test('setting a value changes its characters alone and keeps the comment behind it', () => {
  expect(setting(full, 'drive.ratio', '1.5 (measured)')).toEqual([
    '-  ratio: 1.25 (measured) # engine turns per impeller turn',
    '+  ratio: 1.5 (measured) # engine turns per impeller turn',
  ])
})

test('keys are found as written in the file and in camelCase', () => {
  const a = setValue(full, 'jet.rotor.trailing edge', '2 mm')
  expect(setValue(full, 'jet.rotor.trailingEdge', '2 mm')).toBe(a)
  expect(craftOf(a).jet.rotor.trailingEdge.value).toBe(0.002)
})

test('a value inside brackets is changed there, and one coordinate of a place too', () => {
  expect(setting(full, 'engines.0.curve.1.torque', '6.3 N·m')).toEqual([
    '-      - { at: 4000 rpm, torque: 6.1 N·m }',
    '+      - { at: 4000 rpm, torque: 6.3 N·m }',
  ])
  expect(setting(full, 'weights.2.at.0', '0.3 m')[1]).toContain('at: [0.3 m, 0 m, 0.07 m] }')
  expect(setting(full, 'weights.2.at', '[1 m, 2 cm, 3 mm]')[1]).toContain('at: [1 m, 2 cm, 3 mm] }')
})

test('a key that was missing goes where the order of the file puts it', () => {
  expect(setting(full, 'jet.rotor.tip thickness', '4 mm')).toEqual(['+    tip thickness: 4 mm'])
  expect(setValue(full, 'jet.rotor.tip thickness', '4 mm')).toContain(
    '    root thickness: 9 mm (measured)\n    tip thickness: 4 mm\n    roughness',
  )
  expect(setValue(full, 'engines.0.running', 'no')).toContain(
    '  - name: engine\n    kind: curve\n    running: no\n',
  )
  expect(setting(least, 'jet.rotor.hand', 'left')).toEqual([
    '-  rotor: { bore: 105 mm, pitch: 95 mm }',
    '+  rotor: { bore: 105 mm, hand: left, pitch: 95 mm }',
  ])
})

test('a section that was missing is made in order, parted as the file parts its sections', () => {
  expect(setValue(full.replace(/drive:\n( .*\n)*\n/, ''), 'drive.clutch', 'one-way')).toContain(
    '  redline: 8800 rpm (maker)\n\ndrive:\n  clutch: one-way\n\njet:\n',
  )
  expect(setting(least, 'rider.mass', '70 kg')).toEqual(['+rider:', '+  mass: 70 kg'])
  expect(setValue(least, 'rider.mass', '70 kg')).toMatch(
    /^wakewright: 1\nname: Least\nrider:\n {2}mass: 70 kg\nengines:/,
  )
})

test('groups and lists that were missing are made with what is set in them', () => {
  const text = setValue(least, 'weights.0.name', 'deck')
  expect(text.endsWith('weights:\n  - name: deck\n')).toBe(true)
  const more = setValue(setValue(text, 'weights.0.mass', '3 kg'), 'weights.0.at', '[1 m, 0 m, 0 m]')
  expect(more.endsWith('weights:\n  - name: deck\n    mass: 3 kg\n    at: [1 m, 0 m, 0 m]\n')).toBe(true)
  expect(craftOf(more).weights[0]!.at[0].value).toBe(1)
  expect(setValue(more, 'weights.1.name', 'tank').endsWith('  - name: tank\n')).toBe(true)
})

test('an empty key is filled in behind its colon', () => {
  const text = `${least}rider: # to be weighed\nplace:\n`
  expect(setting(text, 'place.water', 'salt')).toEqual(['+  water: salt'])
  expect(setting(text, 'rider.mass', '70 kg')).toEqual(['+  mass: 70 kg'])
  expect(setting(`${least}about:\n`, 'about', 'a test')).toEqual(['-about:', '+about: a test'])
})

test('quotes that were there stay, and quotes come where the text needs them', () => {
  const single = least.replace('name: Least', "name: 'Least'")
  expect(setting(single, 'name', "Lil' one")[1]).toBe("+name: 'Lil'' one'")
  const double = least.replace('name: Least', 'name: "Least"')
  expect(setting(double, 'name', 'a "b"')[1]).toBe('+name: "a \\"b\\""')
  expect(setting(least, 'name', 'a: b')[1]).toBe('+name: "a: b"')
  expect(setting(least, 'name', 'two\nlines')[1]).toBe('+name: "two\\nlines"')
  expect(setting(least, 'engines.0.name', 'a, b')[1]).toContain('{ name: "a, b", kind: peak')
})

test('a block of lines is replaced and what follows stays', () => {
  const text = least.replace('name: Least\n', 'name: Least\nabout: |\n  one\n  two\n')
  expect(setValue(text, 'about', 'three')).toBe(least.replace('name: Least\n', 'name: Least\nabout: three\n'))
})

test('line ends, a byte order mark and a missing last line end stay as they were', () => {
  const windows = `\uFEFF${full.replaceAll('\n', '\r\n').slice(0, -2)}`
  const edited = setValue(setValue(windows, 'jet.rotor.tip thickness', '4 mm'), 'log.0.date', '2026-05-14')
  expect(edited.startsWith('\uFEFF# A craft')).toBe(true)
  expect(edited.replaceAll('\r\n', '').includes('\n')).toBe(false)
  expect(edited.endsWith('log:\r\n  - date: 2026-05-14')).toBe(true)
  expect(setValue('\uFEFFwakewright: 1\n', 'name', 'x')).toBe('\uFEFFwakewright: 1\nname: x\n')
  expect(setValue('\uFEFFname: y\n', 'name', 'x')).toBe('\uFEFFname: x\n')
})

test('removing a value takes its line, its place in brackets, or its item', () => {
  expect(removing(full, 'drive.ratio')).toEqual([
    '-  ratio: 1.25 (measured) # engine turns per impeller turn',
  ])
  expect(removing(full, 'weights.1')).toHaveLength(1)
  expect(removing(full, 'jet.grate')).toEqual([
    '-  grate:',
    '-    bar: 4 mm (measured)',
    '-    gap: 18 mm (measured)',
    '-    bar shape: round',
  ])
  expect(removing(least, 'jet.rotor.bore')[1]).toBe('+  rotor: { pitch: 95 mm }')
  expect(removing(least, 'jet.rotor.pitch')[1]).toBe('+  rotor: { bore: 105 mm }')
  expect(removeValue(full, 'engines.0.name')).toContain('engines:\n  - kind: curve\n')
  expect(removeValue(full, 'jet.rotor.tip thickness')).toBe(full)
  expect(removeValue(full, 'rider.off centre')).toBe(full)
})

test('setting what was missing and removing it again gives the same bytes', () => {
  for (const [path, value] of [
    ['jet.rotor.tip thickness', '4 mm'],
    ['place.air pressure', '1013 mbar'],
    ['engines.0.running', 'no'],
    ['hull.mesh', 'hull.stl'],
  ] as const)
    for (const text of [full, heron, teal]) expect(removeValue(setValue(text, path, value), path)).toBe(text)
})

test('appendLog makes the log and adds to it', () => {
  const entry = {
    date: '2026-05-14',
    path: 'jet.rotor.pitch',
    from: '118 mm',
    to: '108 mm',
    reason: 'too steep: bogs',
    expect: '+300 rpm',
  }
  const once = appendLog(full, entry)
  expect(once.slice(full.length)).toBe(
    '\nlog:\n  - date: 2026-05-14\n    path: jet.rotor.pitch\n    from: 118 mm\n    to: 108 mm\n    reason: "too steep: bogs"\n    expect: +300 rpm\n',
  )
  const twice = appendLog(once, { date: '2026-05-15', path: 'drive.ratio', to: '1.1' })
  expect(twice.startsWith(once)).toBe(true)
  expect(craftOf(twice).log).toEqual([entry, { date: '2026-05-15', path: 'drive.ratio', to: '1.1' }])
  expect(craftOf(appendLog(`${least}log: []\n`, entry)).log).toHaveLength(1)
  expect(craftOf(appendLog(`${least}log:\n`, entry)).log).toHaveLength(1)
})

test('valueText gives what stands in the file', () => {
  expect(valueText(full, 'jet.rotor.bore')).toBe('120.0 mm ±0.1 (measured)')
  expect(valueText(full, 'weights.2.at')).toBe('[0.22 m, 0 m, 0.07 m]')
  expect(valueText(full, 'jet.rotor.tip thickness')).toBeUndefined()
})

test('a path no craft has, a whole group, or a text that cannot be parsed is a RangeError', () => {
  expect(() => setValue(full, 'jet.rotor.colour', 'red')).toThrow(RangeError)
  expect(() => setValue(full, 'jet.rotor', '1')).toThrow(/one by one/)
  expect(() => setValue(full, 'weights.9.name', 'x')).toThrow(/the next is number 5/)
  expect(() => setValue('a: [', 'name', 'x')).toThrow(/has a fault/)
  expect(() => setValue('- 1', 'name', 'x')).toThrow(/not a group/)
  expect(() => setValue(full, 'engines.0.bore', '3 mm')).toThrow(/no such value/)
})

const dressed = fc.constantFrom(
  (t: string) => t,
  (t: string) => t.replaceAll('\n', '\r\n'),
  (t: string) => `\uFEFF${t}`,
  (t: string) => t.replace(/\n$/, ''),
)
const crafts = fc.constantFrom(full, heron, teal, least, twoStroke)

test('any value of any craft can be set to any text in its place, and nothing else moves', () => {
  const paths = new Map(
    [full, heron, teal, least, twoStroke].map((t) => [t, [...quantitiesOf(craftOf(t))].map((q) => q.path)]),
  )
  const value = fc.oneof(
    fc.string({ minLength: 1, maxLength: 20 }),
    fc.constantFrom(
      '1 mm',
      '- 3',
      '# x',
      'a: b',
      '[',
      '{ }',
      "'",
      '"',
      '- ',
      '---',
      '? a',
      '&a',
      '*a',
      '!t',
      '|',
      '>',
      '%',
      '@',
      '`',
      'a,b',
      'a\nb',
      '~',
      ' x ',
    ),
  )
  fc.assert(
    fc.property(crafts, dressed, fc.nat(), value, (plain, dress, n, v) => {
      const all = paths.get(plain)!
      const path = all[n % all.length]!
      const text = dress(plain)
      const before = valueText(text, path)
      const after = setValue(text, path, v)
      expect(valueText(after, path)).toBe(v)
      if (before === undefined) return
      // the same edit back again restores every byte unless quotes had to come
      if (!after.includes('"')) expect(setValue(after, path, before)).toBe(text)
      // every other value reads as before
      expect(leaves(after, path)).toEqual(leaves(text, path))
    }),
    { numRuns: 60 },
  )
})

test('what is missing can be set at every path and reads back, with the rest as it was', () => {
  for (const text of [full, teal, least, twoStroke])
    for (const q of quantitiesOf(craftOf(text))) {
      if (q.source !== 'assumed') continue
      const spec = fieldAt(q.path)!
      if (spec.type !== 'quantity') throw new Error(q.path)
      const after = setValue(text, q.path, q.kind === 'count' || q.kind === 'ratio' ? '3' : `3 ${spec.unit}`)
      expect(valueText(after, q.path)).toMatch(/^3/)
      const lines = changes(text, after).filter((l) => l.startsWith('-'))
      // nothing is lost: a line in brackets is written anew with the same words in it
      for (const l of lines)
        for (const word of l.slice(1).split(/[{},[\]]/)) expect(after).toContain(word.trim())
      expect(removeValue(after, q.path).replaceAll(/\s/g, '').length).toBeGreaterThanOrEqual(
        text.replaceAll(/\s/g, '').length,
      )
    }
})

test('reading changes nothing: the source holds the very text', () => {
  for (const text of [full, heron, teal, `\uFEFF${least.replaceAll('\n', '\r\n')}`, 'broken: ['])
    expect(readCraft(text).source.text).toBe(text)
  expect(problemsOf(`\uFEFF${least.replaceAll('\n', '\r\n')}`)).toEqual([])
})
