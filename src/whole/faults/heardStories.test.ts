/** Recordings as short stories, invented, events by hand: what they make of the first cause. */
import { describe, expect, test } from 'vitest'
import { whatIf } from '../../craft/index.ts'
import { demoCraft } from '../push/demo.testkit.ts'
import { solveBalance } from '../push/solveBalance.ts'
import type { RunRanking } from './rankingTypes.ts'
import { rankRun } from './rankRun.ts'
import { event, heardStretches } from './session.testkit.ts'

const teal = demoCraft('teal')
const apart = whatIf(teal, { 'drive.arrangement': 'a jet each' as unknown as number })
const balance = solveBalance(teal, { ranges: false })
const heron = demoCraft('heron')

const place = (r: RunRanking, id: string) => {
  const seen = [...new Set(r.causes.map((c) => c.id.replace(/:.*/, '')))]
  return seen.indexOf(id) + 1 || 99
}

describe('stories from the sound', () => {
  test('T1: one of two races again and again when warm: its coupling slips', () => {
    const flares = [12, 20, 26]
    const hearing = heardStretches(
      [
        { to: 12, a: 5600, b: 5500 },
        { to: 14, a: 5600, b: 8900 },
        { to: 20, a: 5600, b: 5500 },
        { to: 22, a: 5600, b: 8900 },
        { to: 26, a: 5600, b: 5500 },
        { to: 28, a: 5600, b: 8900 },
        { to: 32, a: 5600, b: 5500 },
      ],
      flares.map((t) => event('flare', t, { engine: 'B', lasts: 2 })),
    )
    const r = rankRun({
      craft: apart,
      hearing,
      observed: [
        { id: 'raced', state: 'stayed' },
        { id: 'engines', state: 'unlike' },
        { id: 'lasted', state: 'when hot' },
      ],
    })
    expect(place(r, 'coupling')).toBe(1)
  })

  test('T2: short races that come back by themselves: the pump draws air', () => {
    const at = [5, 9, 13, 17, 21]
    const hearing = heardStretches(
      [
        ...at.flatMap((t) => [
          { to: t, a: 6400 },
          { to: t + 0.7, a: 8200 },
        ]),
        { to: 26, a: 6400 },
      ],
      at.map((t) => event('flare', t, { lasts: 0.7 })),
    )
    const r = rankRun({ craft: heron, hearing, observed: [{ id: 'lasted', state: 'in turns' }] })
    expect(place(r, 'ventilating')).toBe(1)
  })

  test('T3: one of two dies and the other falls: dead or seized, and turning it by hand tells which', () => {
    const hearing = heardStretches(
      [
        { to: 31, a: 6200, b: 6150 },
        { to: 40, a: 4900, b: 0 },
      ],
      [event('one dead', 31, { engine: 'B' })],
    )
    const first = rankRun({ craft: apart, hearing, observed: [{ id: 'lasted', state: 'suddenly' }] })
    expect(place(first, 'one-dead')).toBeLessThanOrEqual(2)
    const locked = rankRun({ craft: apart, hearing, answered: [{ check: 'hand', outcome: 'locked' }] })
    expect(place(locked, 'seized')).toBe(1)
    const free = rankRun({ craft: apart, hearing, answered: [{ check: 'hand', outcome: 'free' }] })
    expect(place(free, 'one-dead')).toBe(1)
    expect(first.checks.find((c) => c.id === 'hand')!.worth).toBeGreaterThan(0)
  })

  test('T4: fades after a minute and a half, and the cap cures it: the vent', () => {
    const hearing = heardStretches(
      [
        { to: 95, a: 7200 },
        { to: 110, a: 6500 },
        { to: 135, a: 5300 },
        { to: 195, a: 0 },
        { to: 215, a: 7200 },
      ],
      [event('fall', 95, { lasts: 40 }), event('misfire', 110, { lasts: 20, value: 0.06 })],
    )
    const r = rankRun({ craft: teal, balance, hearing, kind: 'tied up' })
    expect(place(r, 'vent')).toBeLessThanOrEqual(2)
    const cap = rankRun({
      craft: teal,
      balance,
      hearing,
      kind: 'tied up',
      answered: [{ check: 'cap', outcome: 'recovered' }],
    })
    expect(place(cap, 'vent')).toBe(1)
    expect(cap.causes[0]!.share).toBeGreaterThan(0.6)
  })

  test('T5: half orders alone leave it open; burbling with heavy smoke is rich', () => {
    const hearing = heardStretches(
      [{ to: 20, a: 4000 }],
      [event('four-stroking', 1, { lasts: 18, value: 18, confidence: 0.6 })],
    )
    const r = rankRun({ craft: heron, hearing })
    expect(r.decided).toBe(false)
    const smoky = rankRun({
      craft: heron,
      hearing,
      observed: [
        { id: 'sounded', state: 'burbling' },
        { id: 'smoke', state: 'heavy' },
      ],
    })
    expect(place(smoky, 'rich')).toBe(1)
  })

  test('T6: half orders jump while the shaft only falls: one of the pair stopped firing, not the engine at half speed', () => {
    const hearing = heardStretches(
      [
        { to: 14, a: 7400 },
        { to: 24, a: 3600 },
      ],
      [event('firing stopped', 14)],
    )
    const r = rankRun({ craft: teal, balance, hearing, kind: 'tied up' })
    expect(r.episodes.map((e) => e.kind)).toEqual(['both-pulling', 'one-dragged'])
    expect(r.stopped!.any).toBeGreaterThan(0.7)
    expect(r.stopped!.since).toBe('e1')
  })
})
