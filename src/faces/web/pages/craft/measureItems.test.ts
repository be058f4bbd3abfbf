import { readFileSync } from 'node:fs'
import { expect, test } from 'vitest'
import { readText } from '../../state/craftFile.ts'
import { measureItems } from './measureItems.ts'

const craft = readText(readFileSync('demo/heron.yaml', 'utf8'), 'heron.yaml').craft!
const driver = (path: string, topSpeed: number) => ({
  path,
  says: '',
  source: 'guess' as const,
  rotation: 0,
  pull: 0,
  topSpeed,
  share: { rotation: 0, pull: 0, topSpeed: 0 },
})

test('what moves the top speed comes first, with by how much in the unit shown', () => {
  const [first] = measureItems(craft, {}, [driver('jet.duct.rotor depth', -0.5)], 'metric')
  expect(first).toMatchObject({
    path: 'jet.duct.rotor depth',
    why: 'Its doubt moves the top speed by ±1.8 km/h.',
  })
  const [inch] = measureItems(craft, {}, [driver('jet.duct.rotor depth', -0.5)], 'inch')
  expect(inch?.why).toContain('±1.1 mph')
})

test('what is measured already, and what belongs to a model, is never asked for', () => {
  const paths = ['jet.rotor.pitch', 'model.hull drag']
  const items = measureItems(
    craft,
    {},
    paths.map((path) => driver(path, 9)),
    'metric',
  )
  expect(items.some(({ path }) => paths.includes(path ?? ''))).toBe(false)
})

test('what a finding asks for comes before what is only vague, and nothing is asked for twice', () => {
  const measureNext = { what: 'tow it at a steady walk', with: 'luggage scale', minutes: 20 }
  const finding = {
    id: 'x',
    question: 'push' as const,
    says: '',
    standing: 'watch' as const,
    because: [],
    sources: [],
  }
  const items = measureItems(
    craft,
    {
      push: [
        { ...finding, measureNext },
        { ...finding, id: 'y', measureNext },
      ],
    },
    [],
    'metric',
  )
  expect(items[0]).toMatchObject({ label: 'Tow it at a steady walk', why: 'A finding turns on it.' })
  expect(new Set(items.map((item) => item.key)).size).toBe(items.length)
})
