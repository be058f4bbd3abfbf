import { expect, test } from 'vitest'
import { madeUpBalance } from '../../whole/push/balance.testkit.ts'
import { demoCraft } from '../../whole/push/demo.testkit.ts'
import { madeUpDesign } from '../../whole/push/design.testkit.ts'
import { choiceText, figuresText } from './figuresText.ts'

const craft = demoCraft('heron')

test('the figures fit the terminal, name their curves and carry no colour unless asked', () => {
  for (const columns of [60, 80, 120]) {
    const text = figuresText(craft, madeUpBalance(), 'metric', columns, false)
    for (const row of text.split('\n')) expect([...row].length).toBeLessThanOrEqual(columns)
    for (const words of [
      'Engines against impeller',
      'Thrust against drag',
      'engines give',
      'boat speed, km/h',
      '2400 mm',
    ])
      expect(text).toContain(words)
    expect(text).not.toContain('\u001b')
  }
  expect(figuresText(craft, madeUpBalance(), 'inch', 80, true)).toContain('\u001b[38;2;')
})

test('without a balance only the craft is drawn', () => {
  const text = figuresText(craft, undefined, 'inch', 80, false)
  expect(text).toContain('94.5 in')
  expect(text).not.toContain('Thrust against drag')
})

test('what was compared for the jet is drawn: pull against speed and both over the pitch, in the units asked for', () => {
  const text = choiceText(madeUpDesign(), 'inch', 80, false)
  for (const words of ['Pull over pitch', 'Top speed over pitch', 'now', 'mph', 'in'])
    expect(text).toContain(words)
  expect(text).not.toMatch(/km\/h|\bmm\b/)
  for (const line of text.split('\n')) expect(line.length).toBeLessThanOrEqual(80)
})
