import { expect, test } from 'vitest'
import { templateText } from '../../../craft/templates.ts'
import { demoCraft } from '../../../whole/push/demo.testkit.ts'
import { readText, writeValue } from './craftFile.ts'
import { isOwn, ownValues } from './ownValues.ts'

const craftOf = (text: string) => readText(text, 'x.yaml').craft!
const given: readonly (readonly [string, string])[] = [
  ['jet.rotor.bore', '120 mm'],
  ['jet.rotor.pitch', '98 mm (measured)'],
  ['hull.length', '2.2 m'],
  ['rider.mass', '82 kg'],
]

test('a new craft has no value of its builder, and is his with the fourth that he gives', () => {
  let text = templateText('Grebe')
  expect(ownValues(craftOf(text))).toBe(0)
  for (const [i, [path, value]] of given.entries()) {
    expect(isOwn(craftOf(text))).toBe(false)
    text = writeValue(text, path, value)
    expect(ownValues(craftOf(text))).toBe(i + 1)
  }
  expect(isOwn(craftOf(text))).toBe(true)
})

test('to say the same value with its source is to give it', () => {
  const text = writeValue(templateText('Grebe'), 'jet.rotor.bore', '110 mm (measured)')
  expect(ownValues(craftOf(text))).toBe(1)
})

test('the examples are crafts of their own', () => {
  for (const name of ['heron', 'teal', 'dabchick', 'sandpiper'] as const)
    expect(isOwn(demoCraft(name)), name).toBe(true)
})

test('a value that another kind of craft begins with is one’s own here', () => {
  const text = writeValue(
    templateText('Grebe', 'stand on, one engine'),
    'jet.rotor.bore',
    '120 mm ±12 (guess)',
  )
  expect(templateText('x', 'kneel on, two engines in line')).toContain('120 mm ±12 (guess)')
  expect(ownValues(craftOf(text))).toBe(1)
})
