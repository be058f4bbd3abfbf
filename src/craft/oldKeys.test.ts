import { expect, test } from 'vitest'
import { least } from './craft.testkit.ts'
import { setValue } from './edit.ts'
import { fieldAt, readCraft } from './index.ts'
import { removeValue } from './remove.ts'
import { craftFields } from './schema/craftSchema.ts'
import { oldKeys } from './schema/oldKeys.ts'

const withRise = (key: string) => `${least}  ${key}: 140 mm (measured)\n`

test('every old word leads to a key of today', () => {
  const hull = craftFields.hull.fields
  for (const [old, now] of Object.entries(oldKeys)) {
    expect(Object.hasOwn(hull, now), now).toBe(true)
    expect(Object.hasOwn(hull, old), old).toBe(false)
  }
})

test('a file with an old word reads as with the new one', () => {
  const [was, is] = ['nose rocker', 'nose rise'].map((key) => readCraft(withRise(key)))
  expect(was!.problems).toEqual([])
  expect(was!.craft!.hull.noseRise.value).toBeCloseTo(0.14, 12)
  expect(was!.craft!.hull.noseRise).toEqual(is!.craft!.hull.noseRise)
})

test('it is edited and taken out where it stands, its word as its builder wrote it', () => {
  const text = withRise('nose rocker')
  expect(setValue(text, 'hull.nose rise', '160 mm')).toBe(`${least}  nose rocker: 160 mm\n`)
  expect(removeValue(text, 'hull.nose rise')).toBe(least)
})

test('the old word and the new one in one file are one key given twice', () => {
  const { problems } = readCraft(`${withRise('nose rocker')}  nose rise: 120 mm\n`)
  expect(problems.map((p) => p.says).join()).toMatch(/nose rise is given twice/)
})

test('a path may name the old word', () => {
  expect(fieldAt('hull.nose rocker')).toBe(fieldAt('hull.nose rise'))
})
