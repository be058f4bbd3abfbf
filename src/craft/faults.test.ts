import { expect, test } from 'vitest'
import { full, least, problemsOf, twoStroke } from './craft.testkit.ts'
import { maxCharacters } from './guard.ts'
import { readCraft } from './read.ts'

const swap = (from: string, to: string) => {
  if (!least.includes(from)) throw new Error(`the least craft has no ${from}`)
  return least.replace(from, to)
}

// what is changed in the least craft, and what must be said, with line and column
test.each([
  ['a missing unit', swap('105 mm', '105'), 'x.yaml:6:18: jet.rotor.bore "105" has no unit'],
  ['an unknown unit', swap('105 mm', '105 mn'), '"mm" may be meant'],
  ['a unit of another kind', swap('105 mm', '105 kW'), 'a unit of power'],
  ['NaN', swap('105 mm', 'NaN'), 'x.yaml:6:18: jet.rotor.bore "NaN" is not a number that can be measured'],
  ['.inf', swap('105 mm', '.inf'), 'is not a number that can be measured'],
  ['a negative size', swap('105 mm', '-105 mm'), 'is negative; expected between 30 mm and 400 mm'],
  ['a value out of range', swap('105 mm', '105 m'), 'is out of range; expected between 30 mm and 400 mm'],
  ['a comma for the point', swap('105 mm', "'105,5 mm'"), 'has a comma in its number'],
  [
    'an unknown key',
    swap('pitch:', 'ptich:'),
    'x.yaml:6:26: "ptich" is not a key of jet.rotor; the nearest is "pitch"',
  ],
  [
    'an unknown section',
    swap('hull:', 'hul:'),
    'x.yaml:8:1: "hul" is not a key of a craft file; the nearest is "hull"',
  ],
  [
    'a key of another kind of engine',
    swap('power: 4 kW', 'power: 4 kW, voltage: 48 V'),
    '"voltage" is not a key of engines.0; it belongs to kind electric',
  ],
  [
    'a key in the wrong group',
    swap('beam: 0.8 m', 'beam: 0.8 m\n  wrap: 150 deg'),
    '"wrap" is not a key of hull; it belongs to jet.rotor; known are length, beam',
  ],
  [
    'a key of another group that looks like one of this',
    swap('beam: 0.8 m', 'beam: 0.8 m\n  height: 1 m'),
    '"height" is not a key of hull; the nearest is "depth"',
  ],
  [
    'a builder’s word for a group that stands elsewhere',
    `${least}impeller: { bore: 100 mm }\n`,
    '"impeller" is not a key of a craft file; what is meant may be "rotor" of jet; known are',
  ],
  [
    'a builder’s word for a value of another section',
    `${least}width: 0.8 m\n`,
    '"width" is not a key of a craft file; what is meant may be "beam" of hull; known are',
  ],
  ['a missing value', swap(', pitch: 95 mm', ''), 'x.yaml:6:10: jet.rotor.pitch is missing'],
  ['a missing section', least.replace(/hull:[\s\S]*/, ''), 'hull.length is missing'],
  [
    'an empty value',
    swap('beam: 0.8 m', 'beam:'),
    'x.yaml:10:3: hull.beam is nothing; expected a number with a unit of length',
  ],
  ['a group where a value belongs', swap('105 mm', '{ a: 1 }'), 'jet.rotor.bore is a group of keys'],
  [
    'a value where a group belongs',
    swap('{ bore: 58 mm }', '58 mm'),
    'jet.nozzle is "58 mm"; expected a group of keys: bore, height, cone',
  ],
  ['a list where a group belongs', swap('{ bore: 58 mm }', '[58 mm]'), 'jet.nozzle is a list'],
  [
    'an unknown word',
    swap('pitch: 95 mm', 'pitch: 95 mm, hand: rihgt'),
    'expected one of right, left; "right" is nearest',
  ],
  [
    'an unknown kind of engine',
    swap('kind: peak', 'kind: peek'),
    'engines.0.kind is "peek"; expected one of curve, peak, electric, two-stroke; "peak" is nearest',
  ],
  ['an engine without a kind', swap('kind: peak, ', ''), 'engines.0.kind is missing'],
  [
    'no engine at all',
    swap(
      'engines:\n  - { kind: peak, displacement: 60 cm³, power: 4 kW, power at: 7500 rpm }',
      'engines: []',
    ),
    'engines is a list of 0',
  ],
  ['an unknown source', swap('105 mm', '105 mm (measurd)'), '"measured" may be meant'],
  ['half a blade', swap('pitch:', 'blades: 2.5, pitch:'), 'is not a whole number'],
  ['a question answered otherwise', swap('kind: peak', 'kind: peak, running: maybe'), 'expected yes or no'],
  [
    'a key given twice',
    `${least}  beam: 0.9 m\n`,
    'x.yaml:11:3: hull.beam is given twice; expected each key once in its group',
  ],
  ['a second document', `${least}---\nname: other\n`, 'a second document'],
  ['a tab', swap('  beam', '\tbeam'), 'a tab before the text'],
  ['an anchor', swap('105 mm', '&a 105 mm'), 'x.yaml:6:21: found the anchor "&a"'],
  ['an alias', swap('beam: 0.8 m', 'beam: *a'), 'the alias "*a"'],
  ['a tag', swap('105 mm', '!!float 105'), 'found the tag'],
  ['a merge key', swap('beam: 0.8 m', '<<: { beam: 0.8 m }'), '"<<" is not a key of hull'],
  ['a directive', `%YAML 1.1\n---\n${least}`, 'a line beginning with %'],
  ['a list for a file', '- 1\n', 'the file is a list'],
  ['plain text for a file', 'hello', 'the file is plain text'],
  [
    'an unclosed quote',
    swap('name: Least', 'name: "Least'),
    'x.yaml:2:7: found a quote or bracket that is never closed at ""Least"',
  ],
  [
    'keys under a value',
    swap('hull:', 'hull: 3'),
    'x.yaml:8:7: found a value with more keys or lines under it at "3"',
  ],
  ['an empty file', '', 'the file is empty'],
  ['only comments', '# nothing\n\n', 'the file is empty'],
  ['no version', swap('wakewright: 1\n', ''), 'does not say its version'],
  [
    'a version that is not a number',
    swap('wakewright: 1', 'wakewright: one'),
    'x.yaml:1:13: wakewright is "one"',
  ],
  [
    'a newer version',
    swap('wakewright: 1', 'wakewright: 2'),
    'x.yaml:1:13: the file is of version 2, newer than this program knows (1); it was left as it is',
  ],
  [
    'an unclosed bracket',
    swap('58 mm }', '58 mm'),
    'x.yaml:7:11: found a quote or bracket that is never closed at "{ bore: 58 mm"',
  ],
  ['a zero character', swap('0.8 m', '0.8 m\u0000'), 'x.yaml:10:14: found the character U+0000'],
  ['half a surrogate pair', swap('0.8 m', '0.8 m\uD800'), 'U+D800'],
] as const)('%s is told with its place', (_, text, says) => {
  const found = problemsOf(text)
  expect(found.join('\n')).toContain(says)
  for (const f of found) expect(f).toMatch(/^x\.yaml:\d+:\d+: \S/)
  expect(readCraft(text).craft).toBeUndefined()
})

const deep = (open: string, close: string) => swap('0.8 m', open.repeat(50_000) + close.repeat(50_000))
test.each([
  ['brackets', deep('[', ']')],
  ['braces', deep('{a: ', '}')],
  ['dashes', swap('beam: 0.8 m', `beam:\n    ${'- '.repeat(100_000)}`)],
  ['question marks', swap('beam: 0.8 m', `beam:\n    ${'? '.repeat(50_000)}`)],
  ['colons', swap('beam: 0.8 m', `beam:\n    ${': '.repeat(50_000)}`)],
  ['indentation', Array.from({ length: 600 }, (_, i) => `${' '.repeat(i)}a:`).join('\n')],
])('%s nested without end are refused before the parser sees them', (_, text) => {
  expect(problemsOf(text)).toEqual([expect.stringMatching(/nested too deep/)])
})

test('a file of aliases that would unfold without end is refused without unfolding', () => {
  const rows = Array.from(
    { length: 30 },
    (_, i) => `k${i + 1}: &a${i + 1} [${Array(9).fill(`*a${i}`).join(', ')}]`,
  )
  expect(problemsOf(`wakewright: 1\nk0: &a0 x\n${rows.join('\n')}\n`)[0]).toContain('the anchor "&a0"')
})

test('a file above the limit is refused unread, and one just below is still answered', () => {
  expect(problemsOf('a'.repeat(10_000_000))[0]).toContain('10000 thousand characters')
  const big = `${least}# ${'x'.repeat(maxCharacters - least.length - 3)}\n`
  expect(problemsOf(big)).toEqual([])
})

test.each([
  ['blank lines', ' \n'],
  ['comments', ' # c\n'],
  ['keys given twice', 'a: 1\n'],
  ['one character', 'x'],
  ['directives', '%a\n'],
  ['quotes', "'"],
])('the largest file there may be, all %s, is answered before the test runs out of time', (_, piece) => {
  expect(problemsOf(piece.repeat(Math.floor(maxCharacters / piece.length)))).not.toEqual([])
})

test('a file with a fault on every line gives a bounded list', () => {
  const many = least + Array.from({ length: 5000 }, (_, i) => `wrong${i}: 1\n`).join('')
  const found = problemsOf(many)
  expect(found.length).toBeGreaterThan(50)
  expect(found.length).toBeLessThanOrEqual(200)
})

test('a misspelt key is one problem: what stands under it is read as meant', () => {
  expect(problemsOf(swap('jet:', 'Jet:'))).toEqual([
    'x.yaml:5:1: "Jet" is not a key of a craft file; the nearest is "jet"',
  ])
  expect(problemsOf(swap('beam: 0.8 m', 'baem: 0.8'))).toEqual([
    'x.yaml:10:3: "baem" is not a key of hull; the nearest is "beam"',
    expect.stringContaining('x.yaml:10:9: hull.beam "0.8" has no unit'),
  ])
})

test('a fault of form is one problem, at the first place it shows', () => {
  expect(problemsOf(full.replace('    hand: right', '   hand: right'))).toHaveLength(1)
})

test('words that other YAML readers take for true, false or nothing are words here', () => {
  for (const word of ['no', 'NO', 'off', 'null', '~', 'y', '1e3', '0o17', '2026-05-14'])
    expect(readCraft(swap('name: Least', `name: ${word}`)).craft?.name).toBe(word)
})

// contradictions between values that are each possible
test.each([
  [
    'a hub as wide as the bore',
    swap('pitch: 95 mm', 'pitch: 95 mm, hub: 105 mm'),
    'jet.rotor.hub is 105 mm; expected a hub smaller than the bore of 105 mm',
    'error',
  ],
  [
    'a nozzle wider than the bore',
    swap('58 mm', '110 mm'),
    'jet.nozzle.bore is 110 mm; expected a nozzle no wider than',
    'error',
  ],
  [
    'a chine beam above the beam',
    swap('beam: 0.8 m', 'beam: 0.8 m\n  chine beam: 0.9 m'),
    'hull.chine beam is 0.9 m; expected a chine beam no wider',
    'error',
  ],
  [
    'a rider off the hull',
    `${least}rider: { position: 3 m }\n`,
    'rider.position is 3 m; expected a place on the hull of 2.6 m',
    'error',
  ],
  [
    'a weight off the hull',
    `${least}weights: [{ name: a, mass: 1 kg, at: [9 m, 0 m, 0 m] }]\n`,
    'weights.0.at.0 is 9 m',
    'error',
  ],
  [
    'a redline below the peak',
    swap('power at: 7500 rpm', 'power at: 7500 rpm, redline: 7000 rpm'),
    'a redline above the power peak at 7500 rpm',
    'error',
  ],
  [
    'a nose rise from beyond the nose',
    `${least}  nose rise from: 3 m\n`,
    'short of the nose at 2.6 m',
    'error',
  ],
  [
    'vanes the blades divide',
    swap('  nozzle:', '  stator: { vanes: 9 }\n  nozzle:'),
    'pulse together',
    'warning',
  ],
  ['a pitch far from usual', swap('95 mm', '30 mm'), 'look at it again', 'warning'],
  [
    'a gap ten times too wide',
    swap('pitch: 95 mm', 'pitch: 95 mm, gap: 5 mm'),
    'expected a gap of about 0.3 to 1 mm for a bore of 105 mm',
    'warning',
  ],
  [
    'a volume ten times off for its power',
    swap('displacement: 60 cm³', 'displacement: 600 cm³'),
    'look at all three again',
    'warning',
  ],
  [
    'a power ten times off for its volume',
    swap('power: 4 kW', 'power: 40 kW'),
    'look at all three again',
    'warning',
  ],
  [
    'transfers before the exhaust',
    twoStroke.replace('opens: 118 deg', 'opens: 91 deg'),
    'transfers that open after the exhaust at 92 deg',
    'error',
  ],
  [
    'a rod shorter than the stroke',
    twoStroke.replace('tune: sport', 'rod: 50 mm'),
    'a rod longer than the stroke',
    'error',
  ],
  [
    'a pipe with a step in it',
    twoStroke.replace('from: 42 mm', 'from: 60 mm'),
    'about the width the segment before ends with, 42 mm',
    'warning',
  ],
] as const)('%s is told', (_, text, says, severity) => {
  const { problems, craft } = readCraft(text, 'x.yaml')
  const told = problems.find((p) => p.says.includes(says))
  expect(told?.severity, problems.map((p) => p.says).join('\n')).toBe(severity)
  expect(craft === undefined).toBe(severity === 'error')
})

test('a torque curve whose speeds do not rise is told at the point that falls back', () => {
  const text = full.replace('at: 6500 rpm', 'at: 5500 rpm').replace('at: 6000 rpm', 'at: 5600 rpm')
  expect(problemsOf(text)).toEqual([
    expect.stringMatching(
      /:29:\d+: engines\.0\.curve\.4\.at is 5500 rpm; expected a speed above the point before at 5600 rpm/,
    ),
  ])
})
