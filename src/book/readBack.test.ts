import { describe, expect, test } from 'vitest'
import { demoCraft } from '../whole/push/demo.testkit.ts'
import { boxList, boxWords, runBoxes } from './bookBoxes.ts'
import { readBack } from './readBack.ts'

const craft = demoCraft('heron')
const boxes = boxList(craft, 'metric')
const pitch = boxes.of('jet.rotor.pitch')
const ramp = boxes.of('jet.intake.ramp')
const pull = boxes.of('run:pull')

describe('boxes', () => {
  test('a value has one box wherever it is asked for', () => {
    expect(boxes.of('jet.rotor.pitch')).toBe(pitch)
    expect(boxWords(pitch)).toBe('box 1: Impeller pitch, mm')
    expect(boxWords(ramp)).toMatch(/, °$/)
    expect(boxWords(boxList(craft, 'inch').of('run:pull'))).toBe('box 1: Pull, lb')
  })
  test('what is no value of a craft and no reading is refused', () => {
    expect(() => boxes.of('jet.rotor.colour')).toThrow(/no value of a craft file/)
    expect(() => boxes.of('run:mood')).toThrow(/no reading of a run/)
    expect(runBoxes(2)).toContain('run:rpm B')
    expect(runBoxes(1)).not.toContain('run:rpm B')
  })
})

describe('readings typed back', () => {
  const typed = (texts: Record<number, string>) => readBack(boxes.all(), texts)
  test('a bare number is taken in the unit of its box, one with a unit in its own', () => {
    expect(typed({ [pitch.n]: '97.5' }).values).toEqual([
      { path: 'jet.rotor.pitch', text: '97.5 mm (measured)' },
    ])
    expect(typed({ [pitch.n]: ' 3.84 in ' }).values[0]!.text).toBe('3.84 in (measured)')
    expect(typed({ [pitch.n]: '97 mm ±1 (guess)' }).values[0]!.text).toBe('97 mm ±1 (guess)')
    expect(typed({ [pull.n]: '52' }).readings).toEqual({ pull: '52 kg' })
  })
  test('empty boxes are left alone', () => {
    expect(typed({ [pitch.n]: '  ' })).toEqual({ values: [], readings: {}, faults: [] })
  })
  test.each([
    ['5000', /outside its limits.*between/],
    ['five', /expected/],
    ['97 kg', /expected/],
  ])('%s for a pitch is refused by box, value and limit', (text, says) => {
    const { values, faults } = typed({ [pitch.n]: text })
    expect(values).toEqual([])
    expect(faults).toEqual([{ n: pitch.n, says: expect.stringMatching(says) }])
    expect(faults[0]!.says).toContain('box 1, Impeller pitch')
  })
  test('a pull no craft has is refused', () => {
    expect(typed({ [pull.n]: '90000' }).faults[0]!.says).toMatch(/no such craft does that/)
  })
})
