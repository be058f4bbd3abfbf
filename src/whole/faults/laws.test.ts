/** Laws of the ranking that hold whatever the evidence. */
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { seededRandom } from '../../base/numerics/random.ts'
import { demoCraft } from '../push/demo.testkit.ts'
import { solveBalance } from '../push/solveBalance.ts'
import { onceEach, softly, stateItem } from './evidence.ts'
import { nextChecks } from './nextChecks.ts'
import { observables } from './observables.ts'
import { rankLimits } from './rankLimits.ts'
import { rankRun } from './rankRun.ts'
import { type Belief, minutesIn, ordersOf, patience, repairMinutes } from './repair.ts'
import { event, heardStretches } from './session.testkit.ts'
import type { SessionObserved } from './session.ts'

const craft = demoCraft('heron')
const teal = demoCraft('teal')
const seen = fc
  .constantFrom(...observables)
  .chain((o) => fc.constantFrom(...o.states).map((state) => ({ id: o.id, state })))
const session = fc.uniqueArray(seen, { minLength: 0, maxLength: 5, selector: (s) => s.id })
const shares = (observed: readonly SessionObserved[]) =>
  new Map(rankRun({ craft, observed }).causes.map((c) => [c.id, c.share] as const))
const few = { numRuns: 25 }

describe('posterior', () => {
  test('is a share between nought and one for every cause, and with none of these covers all stories', () => {
    fc.assert(
      fc.property(session, (observed) => {
        const r = rankRun({ craft, observed })
        for (const c of r.causes) {
          expect(c.share).toBeGreaterThanOrEqual(0)
          expect(c.share).toBeLessThanOrEqual(1 + 1e-9)
          expect(c.ways.reduce((a, w) => a + w.share, 0)).toBeCloseTo(1, 6)
        }
        // every story has a cause in it, or is none of these
        expect(r.none + r.causes.reduce((a, c) => a + c.share, 0)).toBeGreaterThan(1 - 1e-3)
      }),
      few,
    )
  })

  test('does not depend on the order of the evidence', () => {
    fc.assert(
      fc.property(session, (observed) => {
        const one = shares(observed)
        const other = shares([...observed].reverse())
        for (const [id, p] of one) expect(other.get(id) ?? 0).toBeCloseTo(p, 9)
      }),
      few,
    )
  })

  test('with evidence that is not trusted at all is that of no evidence', () => {
    const bare = shares([])
    for (const [id, p] of shares([{ id: 'choke', state: 'helped', sure: 0 }]))
      expect(p).toBeCloseTo(bare.get(id) ?? 0, 2)
  })

  test('the same thing said twice counts once', () => {
    const item = stateItem('choke', 'helped', 'typed')!
    expect(onceEach([item, item])).toHaveLength(1)
    const once = shares([{ id: 'choke', state: 'helped' }])
    const twice = shares([
      { id: 'choke', state: 'helped' },
      { id: 'choke', state: 'helped' },
    ])
    for (const [id, p] of once) expect(twice.get(id)).toBeCloseTo(p, 12)
  })

  test('grows for a cause as what speaks for it is trusted more', () => {
    let before = 0
    for (const sure of [0, 0.3, 0.6, 0.85, 0.95]) {
      const p = shares([{ id: 'cap', state: 'recovered', sure }]).get('vent')!
      expect(p).toBeGreaterThan(before)
      before = p
    }
  })

  test('is moved by one sign no further than its trust allows', () => {
    // a sign of n states trusted r, floored at 0.02: the largest ratio of likelihoods of two causes
    const bound = (r: number, n: number) =>
      (r * (0.98 + 0.02 / n) + (1 - r) / n) / ((r * 0.02) / n + (1 - r) / n)
    const bare = shares([])
    for (const r of [0.6, 0.85, 0.95]) {
      const now = shares([{ id: 'plug', state: 'white', sure: r }])
      const n = observables.find((o) => o.id === 'plug')!.states.length
      const odds = (m: ReadonlyMap<string, number>) => m.get('lean')! / m.get('rich')!
      expect(odds(now) / odds(bare)).toBeLessThanOrEqual(bound(r, n) * 1.02)
    }
  })

  test('soft likelihoods of any trust sum to one', () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 1, noNaN: true }), fc.integer({ min: 2, max: 6 }), (r, n) => {
        expect(softly(0, n, r).reduce((a, b) => a + b, 0)).toBeCloseTo(1, 12)
      }),
    )
  })
})

describe('the worth of a check', () => {
  test('is never less than what the check costs, and that of an answered one is its cost', () => {
    fc.assert(
      fc.property(session, (observed) => {
        for (const c of rankRun({ craft, observed }).checks) {
          const own = nextChecks.find((x) => x.id === c.id)!
          expect(c.worth).toBeGreaterThanOrEqual(-own.minutes - 2 - 1e-6)
        }
      }),
      few,
    )
    const done = rankRun({ craft, answered: [{ check: 'cap', outcome: 'no change' }] }).checks.find(
      (c) => c.id === 'cap',
    )!
    expect(done.worth).toBe(-3)
  })

  test('outcomes of a check not made yet sum to one', () => {
    for (const c of rankRun({ craft }).checks)
      expect(c.outcomes.reduce((a, o) => a + o.share, 0)).toBeCloseTo(1, 6)
  })
})

describe('minutes of repair', () => {
  const beliefs: Belief[] = [
    { share: 0.5, fixes: [0] },
    { share: 0.3, fixes: [1] },
    { share: 0.2, fixes: [2] },
  ]
  const costs = [100, 20, 10]

  test('of one fault are those of share over cost: 10 + 0.8 · 20 + 0.5 · 100', () => {
    expect(ordersOf(beliefs, costs)[0]).toEqual([2, 1, 0])
    expect(repairMinutes(beliefs, costs)).toBeCloseTo(76, 9)
  })

  test('agree with repairs drawn by lot', () => {
    const rng = seededRandom(4)
    const order = ordersOf(beliefs, costs)[0]!
    let sum = 0
    const n = 40_000
    for (let i = 0; i < n; i++) {
      let u = rng.next()
      const truth = beliefs.findIndex((b) => (u -= b.share) <= 0)
      let spent = 0
      for (const f of order) {
        spent += costs[f]!
        if (f === truth) break
      }
      sum += spent
    }
    expect(sum / n / minutesIn(order, beliefs, costs)).toBeCloseTo(1, 1)
    expect(Math.abs(sum / n / 76 - 1)).toBeLessThan(0.02)
  })

  test('end where patience does', () => {
    expect(repairMinutes([{ share: 1, fixes: [0] }], [5 * patience])).toBe(patience)
  })
})

describe('what does not fit is said', () => {
  test('two answers that contradict each other are named', () => {
    const r = rankRun({
      craft,
      observed: [{ id: 'cap', state: 'recovered' }],
      answered: [{ check: 'cap', outcome: 'no change' }],
    })
    expect(r.doubts.map((d) => d.id)).toContain('doubt-fight')
    const none = rankRun({ craft, observed: [{ id: 'cap', state: 'recovered' }] })
    expect(none.doubts).toEqual([])
  })

  test('a speed these engines cannot turn, a second engine and another craft’s speeds are named', () => {
    const balance = solveBalance(craft, { ranges: false })
    const doubts = (a: number, b?: number) =>
      rankRun({
        craft,
        balance,
        kind: 'tied up',
        hearing: heardStretches([{ to: 12, a, ...(b ? { b } : {}) }]),
      }).doubts.map((d) => d.id)
    expect(doubts(15_000)).toContain('doubt-speed')
    expect(doubts(6400, 7200)).toContain('doubt-engines')
    expect(doubts(6400)).toEqual([])
    const other = rankRun({
      craft: teal,
      balance: solveBalance(teal, { ranges: false }),
      kind: 'tied up',
      pull: 90_000,
      hearing: heardStretches([{ to: 12, a: 7400 }]),
    })
    expect(other.doubts.map((d) => d.id)).toEqual(['doubt-pull'])
  })

  test('a fight, a decision and a name each move with their limit', () => {
    const observed = [
      { id: 'cap', state: 'recovered' },
      { id: 'lasted', state: 'from the start' },
    ]
    const strict = { ...rankLimits, fights: { ...rankLimits.fights, value: 0.9 } }
    const deaf = { ...rankLimits, fights: { ...rankLimits.fights, value: 0 } }
    expect(rankRun({ craft, observed }, strict).doubts).toHaveLength(1)
    expect(rankRun({ craft, observed }, deaf).doubts).toEqual([])
    const hearing = heardStretches([{ to: 8, a: 6400 }], [event('start', 0.2)])
    const pitch = (value: number) =>
      rankRun(
        { craft, hearing },
        { ...rankLimits, together: { ...rankLimits.together, value } },
      ).cannotSay.some((f) => f.id === 'cannot-say-pitch')
    expect([pitch(10), pitch(2)]).toEqual([true, false])
  })
})

test('craft that are odd are ranked without a number that is none', () => {
  const electric = {
    ...craft,
    engines: craft.engines.map((e) => ({ ...e, running: false })),
  } as unknown as typeof craft
  for (const c of [electric, demoCraft('dabchick')]) {
    const r = rankRun({ craft: c, observed: [{ id: 'jet', state: 'frothy' }] })
    expect(r.causes.length).toBeGreaterThan(3)
    expect(JSON.stringify(r)).not.toMatch(/null|NaN/)
  }
})
