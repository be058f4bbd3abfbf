import { describe, expect, test } from 'vitest'
import type { Finding } from '../../base/answers/finding.ts'
import { deafLimits } from '../../base/answers/limit.testkit.ts'
import type { LimitTable } from '../../base/answers/limit.ts'
import { printed } from '../../base/answers/sentence.ts'
import { type Craft, readCraft } from '../../craft/index.ts'
import { solveTrade } from '../trade.ts'
import { printedParts } from './printedParts.ts'
import { printsTrade } from './printsTrade.ts'
import { reachPlaces, wayTo } from './reachPlaces.ts'
import { printsLimits } from './threadLimits.ts'

/** A small craft of our own with a tank, a hatch, a shaft and whatever a test wants to say of them. */
function craftOf({
  neck = 'over crests: 27.8 mm, pitches: 8, span: 12.1 mm, bore: 19 mm',
  holds = 'petrol and oil',
  hatch = 'clear: 300 mm',
  printer = '{ material: PA12, layer: 0.12 mm, thread clearance: 0.2 mm }',
  seal = 'at: [0.36 m, 0 m, 0.06 m]',
  foot = '[1.45 m, 0 m, 0.09 m]',
} = {}): Craft {
  const text = `
wakewright: 1
name: Trial
engines:
  - { kind: peak, displacement: 60 cm³, cylinders: 1, power: 4 kW, power at: 7600 rpm }
hull: { length: 2.4 m, beam: 0.8 m, depth: 0.24 m }
rider: { mass: 78 kg, height: 1.76 m }
jet: { rotor: { bore: 120 mm, pitch: 108 mm }, nozzle: { bore: 65 mm } }
weights: [{ name: hull, mass: 50 kg, at: [1.1 m, 0 m, 0.1 m] }]
tanks:
  - { kind: box, name: tank, holds: ${holds}, density: 750 kg/m³, foot: ${foot}, length: 236 mm, width: 256 mm, height: 136 mm${neck ? `, neck: { ${neck} }` : ''} }
openings:
  - { name: hatch, kind: hatch, at: [0.95 m, 0 m, 0.27 m]${hatch ? `, ${hatch}` : ''} }
  - { name: seal, kind: shaft seal, ${seal} }
printer: ${printer}
`
  const { craft, problems } = readCraft(text)
  if (!craft) throw new Error(problems.map((p) => p.says).join('\n'))
  return craft
}

const judged = (craft: Craft, limits: LimitTable = printsTrade.limits): Finding[] =>
  printsTrade.judge(solveTrade(printsTrade, craft, undefined), limits)
const partsFor = (craft: Craft) => printedParts(craft, solveTrade(printsTrade, craft, undefined))
const find = (list: readonly Finding[], id: string) => list.find((f) => f.id.startsWith(`prints.${id}`))

test('a neck of 27.8 mm over crests with 8 pitches in 12.1 mm: its thread with odds, three rings, a cap with its ring', () => {
  const craft = craftOf()
  const solved = solveTrade(printsTrade, craft, undefined)
  const named = find(judged(craft), 'thread')!
  expect(printed(named.says)).toMatch(/^The neck of tank has M28 × 1.5 by more than 99 %/)
  expect(named.standing).toBe('good')
  const [card] = printsTrade.cards!(solved)
  expect(card!.title).toBe('Three rings to try on the neck of tank')
  expect(
    card!.steps
      .slice(0, 3)
      .map((s) => printed(s))
      .join(),
  ).toMatch(/0\.10 mm.*0\.20 mm.*0\.30 mm/)
  const neck = solved.answer.necks[0]!
  expect(neck.cap!.profile.side).toBe('internal')
  expect(neck.cap!.clearance).toBeCloseTo(0.2e-3, 9)
  expect(find(judged(craft), 'gland')!.standing).toBe('good')
  expect(judged(craft).filter((f) => f.standing !== 'good')).toEqual([])
})

describe('a neck', () => {
  const neckOf = (neck: string, more = {}) => judged(craftOf({ neck, ...more }))
  test('of no table gets a cap to its own size', () => {
    const f = find(neckOf('over crests: 37.2 mm, pitches: 4, span: 16.9 mm'), 'thread')!
    expect(f.standing).toBe('watch')
    expect(printed(f.act!)).toMatch(/37.2\d? mm with a pitch of 4.2/)
  })
  test.each([
    // R 3/4: 26.441 mm at its gauge plane, and so 25.9 mm at the small end
    ['over crests: 26.1 mm, further up: 26.79 mm, pitches: 6, span: 10.9 mm', /R 3\/4 by/],
    [
      'over crests: 26.25 mm, further up: 26.93 mm, pitches: 6, span: 10.89 mm, flanks: 60 deg',
      /3\/4-14 NPT by (100|9\d) %/,
    ],
  ])(
    'that grows by one in sixteen is a taper pipe thread, told by name, and gets no printed cap: %s',
    (neck, name) => {
      const craft = craftOf({ neck })
      const f = find(judged(craft), 'taper')!
      expect(f.standing).toBe('watch')
      expect(printed(f.says)).toMatch(name)
      expect(printed(f.act!)).toMatch(/^screw a metal cap of/)
      expect(find(judged(craft), 'thread')).toBeUndefined()
      expect(partsFor(craft).filter((part) => /^(cap|try-ring)/.test(part.id))).toEqual([])
    },
  )
  test('read at one place alone, of a pitch that parallel and taper pipe threads share, asks for the other reading', () => {
    const f = find(neckOf('over crests: 26.4 mm, pitches: 6, span: 10.9 mm'), 'taper')!
    expect(f.measureNext!.path).toBe('tanks.0.neck.further up')
    expect(
      find(neckOf('over crests: 26.4 mm, further up: 26.42 mm, pitches: 6, span: 10.9 mm'), 'taper'),
    ).toBeUndefined()
  })
  test('whose second reading is none of a thread names field and limit', () => {
    const f = find(neckOf('over crests: 26.4 mm, further up: 60 mm, pitches: 6, span: 10.9 mm'), 'taper')!
    expect(f.standing).toBe('unknown')
    expect(printed(f.says)).toMatch(/further: 60 mm is outside 22\.\d+ mm to 30\.\d+ mm/)
  })
  test('whose crests were counted for pitches is asked to be counted again', () => {
    const f = find(neckOf('over crests: 27.8 mm, pitches: 9, span: 12.1 mm'), 'thread')!
    expect(printed(f.act!)).toMatch(/^count once more, pitches and not crests: 8 of them .* are M28 × 1.5$/)
  })
  test('that may be either of a pair that fools people asks for what tells them apart', () => {
    const f = find(neckOf('over crests: 9.7 mm ±0.2, pitches: 4, span: 3.9 mm ±0.3'), 'thread')!
    expect(f.standing).toBe('watch')
    expect(printed(f.act!)).toMatch(/^measure along 1?\d pitches: .* is M10 × 1, .* is G 1\/8$/)
  })
  test('misread altogether is unknown, with the field and its limit', () => {
    const f = find(neckOf('over crests: 28 mm, pitches: 2, span: 100 mm'), 'thread')!
    expect(f.standing).toBe('unknown')
    expect(printed(f.says)).toMatch(/span: 100 mm is outside 0.3 mm to 24 mm, what 2 pitches come to/)
  })
  test('without a bore has no ring yet, and says what to measure', () => {
    expect(find(neckOf('over crests: 27.8 mm, pitches: 8, span: 12.1 mm'), 'gland')!.measureNext!.path).toBe(
      'tanks.0.neck.bore',
    )
  })
  test('too thin in its wall for any ring gets a washer, its room told', () => {
    const f = find(neckOf('over crests: 27.8 mm, pitches: 8, span: 12.1 mm, bore: 24 mm'), 'ring')!
    expect(printed(f.says)).toMatch(/No ring of the table goes on tank: an outside of 26.38 mm is less than/)
    expect(printed(f.act!)).toMatch(/^cut a flat washer/)
  })
  test('with a ring of another size is told which goes', () => {
    const f = find(
      neckOf('over crests: 27.8 mm, pitches: 8, span: 12.1 mm, bore: 19 mm, ring: { size: "341" }'),
      'ring',
    )!
    expect(printed(f.act!)).toMatch(/^take AS568-0/)
  })
  test('with a ring of no table names the size', () => {
    const f = find(
      neckOf('over crests: 27.8 mm, pitches: 8, span: 12.1 mm, bore: 19 mm, ring: { size: "999" }'),
      'ring',
    )!
    expect(printed(f.says)).toMatch(/size: "999" is not one of/)
  })
  test.each(['EPDM', 'silicone', 'natural rubber'])(
    'with a ring of %s must not hold petrol, and may hold water',
    (m) => {
      const ring = `over crests: 27.8 mm, pitches: 8, span: 12.1 mm, bore: 17 mm, ring: { material: ${m} }`
      expect(find(neckOf(ring), 'rubber')!.standing).toBe('stop')
      expect(find(neckOf(ring, { holds: 'water' }), 'rubber')).toBeUndefined()
    },
  )
  test.each([
    ['ABS', 'stop'],
    ['PC', 'stop'],
    ['PETG', 'watch'],
    ['POM', undefined],
  ])('with a cap of %s in petrol: %s', (material, standing) => {
    const list = judged(
      craftOf({ printer: `{ material: ${material}, layer: 0.12 mm, thread clearance: 0.2 mm }` }),
    )
    expect(find(list, 'plastic')?.standing).toBe(standing)
  })
  test('with layer lines across its seat leaks, coarse ones; the same lines along it do not', () => {
    const ring = (lines: string) =>
      find(
        neckOf(`over crests: 27.8 mm, pitches: 8, span: 12.1 mm, bore: 19 mm, ring: { lines: ${lines} }`),
        'lines',
      )
    expect(ring('across')!.standing).toBe('stop')
    expect(ring('along')).toBeUndefined()
  })
  test('whose printer nobody tried asks for three try-pieces', () => {
    expect(
      printed(find(judged(craftOf({ printer: '{ material: PA12, layer: 0.12 mm }' })), 'try')!.act!),
    ).toMatch(/^print the three try-pieces/)
  })
})

describe('a hatch', () => {
  test('with a screwed lid gets a coarse thread of its own, a ring that hands can close, and none where it is too wide', () => {
    const { answer } = solveTrade(
      printsTrade,
      craftOf({ hatch: 'clear: 130 mm, shut: screw lid' }),
      undefined,
    )
    const [h] = answer.hatches
    expect(h!.thread!.half).toBeCloseTo(Math.PI / 4, 9)
    expect(h!.thread!.d1).toBeGreaterThan(0.13)
    expect(h!.seal.seated!.ring.section).toBeLessThan(4e-3)
    const wide = judged(craftOf({ hatch: 'clear: 500 mm, shut: screw lid' }))
    expect(find(wide, 'ring')!.standing).toBe('watch')
  })
  test('lets a hand through the farther the wider it is', () => {
    const of = (clear: number) => judged(craftOf({ hatch: `clear: ${clear} mm` }))
    expect(find(of(300), 'reach')!.id).toBe('prints.reach.all')
    const closed = find(of(100), 'reach.closed')!
    expect(closed.standing).toBe('watch')
    expect(printed(closed.act!)).toMatch(/^(open hatch to|cut a hatch of) 125 mm/)
    expect(
      find(of(50), 'reach.closed')!.because.some((b) => /too narrow for a hand/.test(printed(b.says))),
    ).toBe(true)
  })
  test('shut by rivets counts as deck', () => {
    const f = find(judged(craftOf({ hatch: 'clear: 300 mm, shut: rivets and sealant' })), 'reach.closed')!
    expect(f.because.some((b) => /shut by rivets and sealant/.test(printed(b.says)))).toBe(true)
    expect(printed(f.act!)).toMatch(/before the deck is riveted$/)
  })
  test('of unknown width is to be measured first', () => {
    expect(find(judged(craftOf({ hatch: '' })), 'reach')!.measureNext!.path).toBe('openings.0.clear')
  })
  test('is the nearer to what it reaches the wider it is, never farther than from its middle', () => {
    const [spot] = reachPlaces(craftOf()).spots
    const at = [0.95, 0, 0.27] as const
    const ways = [0, 0.1, 0.3, 1].map((clear) => wayTo({ at, clear }, spot!.at))
    for (let i = 1; i < ways.length; i++) expect(ways[i]!).toBeLessThanOrEqual(ways[i - 1]!)
  })
})

test('every limit of threads, seals and reach, moved, changes a verdict', () => {
  const neck = 'over crests: 27.8 mm, pitches: 8, span: 12.1 mm, bore: 19 mm'
  // what wants looking at within a hand, and within a forearm, of the hatch
  const low = { seal: 'at: [0.95 m, 0 m, 0.15 m]', foot: '[0.95 m, 0 m, 0.05 m]' }
  const mid = { ...low, seal: 'at: [0.7 m, 0 m, 0.1 m]' }
  const crafts = [
    craftOf(),
    craftOf({ printer: '{ material: PA12, layer: 0.2 mm }', hatch: 'clear: 120 mm, shut: screw lid' }),
    craftOf({ neck: `${neck}, ring: { lines: across }`, hatch: 'clear: 100 mm', ...low }),
    craftOf({
      neck: `${neck}, ring: { inside: 20.5 mm, section: 1.78 mm, width: 2.2 mm }`,
      hatch: 'clear: 118 mm',
      ...mid,
    }),
    craftOf({
      neck: `${neck}, ring: { seat: plug, inside: 15.7 mm, section: 1.78 mm }`,
      hatch: 'clear: 130 mm',
    }),
    craftOf({ neck: `${neck}, ring: { seat: plug }` }),
    craftOf({ neck: 'over crests: 26.1 mm, further up: 26.4 mm ±0.4, pitches: 6, span: 10.9 mm' }),
    craftOf({ neck: `${neck}, ring: { inside: 22.8 mm, section: 1.78 mm }` }),
  ]
  const judgements = crafts.map((craft) => (limits: LimitTable) => judged(craft, limits))
  expect(deafLimits(printsLimits, judgements)).toEqual([])
})
