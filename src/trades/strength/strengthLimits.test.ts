import { readFileSync } from 'node:fs'
import { resolve } from 'node:path'
import fc from 'fast-check'
import { expect, test } from 'vitest'
import { deafLimits } from '../../base/answers/limit.testkit.ts'
import { readCraft, whatIf } from '../../craft/index.ts'
import { alloyOf } from './alloys.ts'
import { hatSection } from './beams.ts'
import { type DeckBay, deckBay } from './deckBay.ts'
import { strengthFindingsOf } from './deckFindings.ts'
import { strengthFromCraft } from './strengthFromCraft.ts'
import { type StrengthLimits, strengthLimits } from './strengthLimits.ts'

const craftOf = (name: string) =>
  readCraft(readFileSync(resolve(import.meta.dirname, `../../../demo/${name}.yaml`), 'utf8')).craft!
const heron = craftOf('heron')

test('every limit, moved, changes what is said of some deck', () => {
  const crafts = [
    heron,
    craftOf('teal'),
    whatIf(heron, { 'deck.bays.1.skin': 0.9e-3, 'deck.bays.2.skin': 0.6e-3 }),
    whatIf(heron, { 'deck.bays.1.skin': 1.4e-3 }),
    whatIf(heron, { 'rider.mass': 160 }),
    whatIf(heron, { 'deck.joined': 'welded' }),
    whatIf(heron, { 'deck.rivet pitch': 0.015 }),
    // a light rider on thick sheet: the rivets hold, and only seal too thinly
    whatIf(heron, {
      'rider.mass': 40,
      'deck.bays.0.skin': 4e-3,
      'deck.bays.1.skin': 4e-3,
      'deck.bays.2.skin': 4e-3,
    }),
    whatIf(heron, { 'deck.bays.0.skin': 4e-3, 'deck.bays.1.skin': 4e-3, 'deck.bays.2.skin': 4e-3 }),
  ]
  const judgements = crafts.map((c) => {
    const inputs = strengthFromCraft(c)
    return (limits: StrengthLimits) => strengthFindingsOf(inputs, limits)
  })
  expect(deafLimits(strengthLimits as StrengthLimits, judgements)).toEqual([])
}, 600_000)

const num = (min: number, max: number) => fc.double({ min, max, noNaN: true })
const bay: DeckBay = {
  name: 'bay',
  length: 0.4,
  width: 0.36,
  t: 2e-3,
  alloy: alloyOf('5052-H32'),
  welded: false,
  held: false,
  support: { kind: 'alone' },
}
const skin = (b: DeckBay, mass = 80) => deckBay(b, mass, undefined, 29).loads.map((l) => l.skin)
const on = (spacing: number) => ({
  kind: 'stringers' as const,
  spacing,
  section: hatSection(0.03, 0.03, 1.5e-3),
})

test('hats closing under a sheet never ask more of it: none, 200, 150, 100, 80 mm', () => {
  const ladder = [
    skin(bay),
    ...[0.2, 0.15, 0.1, 0.08].map((spacing) => skin({ ...bay, support: on(spacing) })),
  ]
  for (let i = 1; i < ladder.length; i++)
    for (const [k, margin] of ladder[i]!.entries())
      expect(margin).toBeGreaterThanOrEqual(ladder[i - 1]![k]! * (1 - 1e-12))
})

test('a closer support, thicker sheet or lighter rider never lowers what the sheet bears', () => {
  fc.assert(
    fc.property(num(0.06, 0.3), num(0.8e-3, 4e-3), num(50, 120), num(1, 2), (spacing, t, mass, k) => {
      const own = skin({ ...bay, t, support: on(spacing) }, mass)
      const least = (others: number[]) => {
        for (const [i, m] of others.entries()) expect(m).toBeGreaterThanOrEqual(own[i]! * (1 - 1e-9))
      }
      least(skin({ ...bay, t, support: on(spacing / k) }, mass))
      least(skin({ ...bay, t: t * k, support: on(spacing) }, mass))
      least(skin({ ...bay, t, support: on(spacing) }, mass / k))
    }),
    { numRuns: 25 },
  )
})
