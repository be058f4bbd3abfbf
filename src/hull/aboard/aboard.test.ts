import { expect, test } from 'vitest'
import { craftOf, demoCraft, least, rootFile, withoutSection } from '../../craft/craft.testkit.ts'
import { whatIf } from '../../craft/index.ts'
import { aboard, carriedOn } from './aboard.ts'
import { kindOf } from './items.ts'

test('kindOf goes by the first telling word of a name', () => {
  const kinds = [
    ['engine and pipe', 'engine'],
    ['electric motor', 'engine'],
    ['hull with engine bed', 'spread'],
    ['jet and shaft', 'spread'],
    ['foam round the engine', 'spread'],
    ['empty tank', 'tank'],
    ['Fuel can', 'tank'],
    ['battery and box', 'gear'],
    ['', 'gear'],
  ] as const
  for (const [name, kind] of kinds) expect(kindOf(name), name).toBe(kind)
})

test('one list: the items of the file, tanks and rider make up what drag carries and what float settles', () => {
  for (const name of ['heron', 'teal', 'dabchick'] as const) {
    const all = aboard(demoCraft(name))
    const listed = all.weights.reduce((m, w) => m + w.mass, 0)
    const liquid = all.tanks.reduce((m, t) => m + t.volume * t.density, 0)
    expect(all.whole.mass).toBeCloseTo(listed + liquid, 9)
    expect(all.items.length).toBe(all.weights.length)
    expect(all.assumed).toBe(false)
  }
})

test('a size that is not given is guessed from the mass, and stands neither for inertia nor for dry room', () => {
  const all = aboard(demoCraft('heron'))
  const engine = all.items.find((w) => w.kind === 'engine')!
  expect(engine.sizeGuessed).toBe(true)
  // as dense as an engine with its pipe is taken to be
  expect(engine.mass / engine.size.reduce((v, s) => v * s, 1)).toBeCloseTo(900, 6)
  expect(all.weights.find((w) => w.name === engine.name)!.size).toBeUndefined()
  expect(all.taken.map((t) => t.name)).toContain('engine and pipe (size guessed)')
})

test('the shell of a tank that stands in its own section takes no room a second time', () => {
  const without = withoutSection(rootFile('demo/heron.yaml'), 'fuel').replace(
    ', size: [0.24 m, 0.26 m, 0.14 m] }',
    ' }',
  )
  expect(aboard(craftOf(without)).taken.map((t) => t.name)).not.toContain('empty tank (size guessed)')
  const none = craftOf(without.replace(/\ntanks:.*\n.*\n/, '\n'))
  expect(none.tanks).toHaveLength(0)
  expect(aboard(none).taken.map((t) => t.name)).toContain('empty tank (size guessed)')
})

test('a file without weights gets the usual weight of its size, fuel and all', () => {
  const bare = carriedOn(craftOf(least))
  expect(bare.assumed).toBe(true)
  expect(bare.whole.mass).toBeCloseTo(33 * 2.6 * 0.8, 9)
})

test('what weighs is shared while its sections are the same things, and read anew when one is not', () => {
  const craft = demoCraft('heron')
  expect(carriedOn({ ...craft, jet: { ...craft.jet } })).toBe(carriedOn(craft))
  expect(carriedOn(whatIf(craft, { 'rider.mass': 90 })).rider.mass).toBe(90)
})
