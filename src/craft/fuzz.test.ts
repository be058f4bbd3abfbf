import fc from 'fast-check'
import { expect, test } from 'vitest'
import { full, heron, teal, twoStroke } from './craft.testkit.ts'
import { setValue } from './edit.ts'
import { formatProblem } from './problem.ts'
import { readCraft } from './read.ts'

const pieces = fc.constantFrom(
  ...[
    '[',
    ']',
    '{',
    '}',
    ':',
    ': ',
    '- ',
    '\n',
    '\r\n',
    '  ',
    '\t',
    '#',
    "'",
    '"',
    '|',
    '>',
    '&a ',
    '*a',
    '!!x ',
    '%',
    '---\n',
    '...\n',
    '? ',
    ',',
    '±',
    'mm',
    'NaN',
    '-',
    '\u0000',
    '\uFEFF',
    '\uD800',
    '1e999',
    '<<: ',
    '\u2028',
    '🛶',
    '__proto__: 1\n',
    'constructor: x\n',
  ],
)
type Mutation = { at: number; cut: number; put: string }
const mutation: fc.Arbitrary<Mutation> = fc.record({
  at: fc.double({ min: 0, max: 1, noNaN: true }),
  cut: fc.oneof(fc.constant(0), fc.integer({ min: 0, max: 12 }), fc.integer({ min: 0, max: 400 })),
  put: fc.oneof(pieces, fc.constant(''), fc.string({ maxLength: 6, unit: 'binary' })),
})
const mutated = fc
  .tuple(fc.constantFrom(full, heron, teal, twoStroke), fc.array(mutation, { minLength: 1, maxLength: 4 }))
  .map(([text, ms]) =>
    ms.reduce((t, m) => {
      const i = Math.floor(m.at * t.length)
      return t.slice(0, i) + m.put + t.slice(i + m.cut)
    }, text),
  )

/** a reading is whole: a craft or an error, and every problem has a place in the file */
function holds(text: string): void {
  const { craft, problems, source } = readCraft(text, 'f.yaml')
  expect(source.text).toBe(text)
  expect(craft === undefined).toBe(problems.some((p) => p.severity === 'error'))
  const lines = text.split('\n')
  for (const p of problems) {
    expect(p.line).toBeGreaterThanOrEqual(1)
    expect(p.line).toBeLessThanOrEqual(lines.length)
    expect(p.column).toBeGreaterThanOrEqual(1)
    expect(p.column).toBeLessThanOrEqual(lines[p.line - 1]!.length + 1)
    expect(p.says.length).toBeLessThan(1500)
    expect(formatProblem(p)).toMatch(/^f\.yaml:\d+:\d+: [^\n]+$/)
    expect(p.says).not.toContain('could not be read')
  }
}

test('a demo with random pieces cut out and put in reads, or gives a located problem; it never throws', () => {
  fc.assert(fc.property(mutated, holds), { numRuns: 400 })
})

test('any text at all reads, or gives a located problem; it never throws', () => {
  fc.assert(fc.property(fc.string({ maxLength: 300, unit: 'binary' }), holds), { numRuns: 300 })
  fc.assert(
    fc.property(
      fc.array(pieces, { maxLength: 60 }).map((p) => p.join('')),
      holds,
    ),
    { numRuns: 400 },
  )
})

test('an edit of a damaged file either writes the value or says why not', () => {
  fc.assert(
    fc.property(mutated, (text) => {
      let after: string
      try {
        after = setValue(text, 'jet.rotor.pitch', '99 mm')
      } catch (e) {
        expect(e).toBeInstanceOf(RangeError)
        return
      }
      expect(after).toContain('99 mm')
    }),
    { numRuns: 200 },
  )
})
