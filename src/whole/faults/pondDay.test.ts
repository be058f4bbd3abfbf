/** A whole day on the pond, invented: two engines on one shaft, swarf in the tank, a coupling bolted up by hand. */
import { describe, expect, test } from 'vitest'
import { printed } from '../../base/answers/sentence.ts'
import { demoCraft } from '../push/demo.testkit.ts'
import { solveBalance } from '../push/solveBalance.ts'
import { besideStoryFigure } from './heardBeside.ts'
import { rankRun } from './rankRun.ts'
import { event, heardStretches } from './session.testkit.ts'
import type { RunSession } from './session.ts'

const craft = demoCraft('sandpiper')
const balance = solveBalance(craft, { ranges: false })
const hearing = heardStretches(
  [
    { to: 6, a: 4550 },
    { to: 12, a: 2630 },
    { to: 14, a: 10_950 },
    { to: 16, a: 0 },
    { to: 23, a: 2600 },
    { to: 28, a: 4900 },
  ],
  [
    event('firing stopped', 6),
    event('load lost', 12, { lasts: 2 }),
    event('stop', 14, { says: 'stops (cut at speed)' }),
    event('start', 16),
    event('hunting', 17, { lasts: 6 }),
    event('choke', 23, { value: 1 }),
  ],
)
const session: RunSession = {
  craft,
  balance,
  hearing,
  kind: 'tied up',
  log: [
    { at: '2026-05-10', kind: 'run', says: 'Two laps, went well.' },
    { at: '2026-05-16', kind: 'change', says: 'Drilled the tank for a new outlet; no filter fitted yet.' },
    { at: '2026-05-16', kind: 'change', says: 'Couplings bolted up hand-tight, printed nylon.' },
  ],
}
const told = rankRun(session)
const cause = (id: string) => told.causes.find((c) => c.id === id)!

describe('a day with three faults of which two have one cause', () => {
  test('is cut into what happened, in order', () => {
    expect(told.episodes.map((e) => e.kind)).toEqual([
      'both-pulling',
      'one-dragged',
      'load-lost',
      'silent',
      'restart',
      'will-not-rev',
      'choke-on',
    ])
  })

  test('says which engine stopped firing and when', () => {
    expect(told.stopped).toMatchObject({ engine: 'rear', since: 'e1' })
    expect(told.stopped!.any).toBeGreaterThan(0.8)
    expect(told.stopped!.share).toBeGreaterThan(0.8)
    expect(told.stopped!.sinceShare).toBeGreaterThan(0.8)
  })

  test('says which coupling opened, by the speed it raced to, and that its bolts backed out rather than that it broke', () => {
    const between = cause('coupling:shaft.1')
    expect(between.share).toBeGreaterThan(0.9)
    expect(between.since).toBe('e2')
    expect(between.ways[0]!.id).toBe('bolts')
    expect(between.ways[0]!.share).toBeGreaterThan(0.7)
  })

  test('says that the jets are part blocked, probably on both carburettors', () => {
    expect(cause('lean').share).toBeGreaterThan(0.7)
    expect(cause('lean').ways[0]).toMatchObject({ id: 'both-jets' })
  })

  test('cannot say whether the impeller is too steep, and says what to do', () => {
    const pitch = told.cannotSay.find((f) => f.id === 'cannot-say-pitch')!
    expect(printed(pitch.says)).toContain('never pulled together for 10 s')
    expect(pitch.standing).toBe('unknown')
  })

  test('has the bolts looked at first, then the fuel timed into a cup', () => {
    expect(told.checks[0]).toMatchObject({ id: 'bolts', minutes: 3 })
    const then = rankRun({ ...session, answered: [{ check: 'bolts', outcome: 'bolts out' }] })
    expect(then.checks[0]).toMatchObject({ id: 'cup', minutes: 10 })
  })

  test('lays what was heard beside the likeliest story, and draws both', () => {
    const [full, dragged, raced] = told.beside
    for (const b of [full!, dragged!, raced!])
      expect(Math.abs(Math.log(b.told[0]! / b.heard[0]!))).toBeLessThan(0.06)
    const sheet = besideStoryFigure(told.beside, 120)
    expect(sheet.plots?.length).toBe(1)
    expect(JSON.stringify(told.beside)).not.toMatch(/null/)
  })

  test('without the log the jets are no longer blamed on the tank, and the coupling still opened', () => {
    const bare = rankRun({ ...session, log: [] })
    const lean = bare.causes.find((c) => c.id === 'lean')!
    expect(lean.ways.find((w) => w.id === 'both-jets')!.share).toBeLessThan(0.6)
    expect(
      bare.causes.filter((c) => c.id.startsWith('coupling')).reduce((a, c) => a + c.share, 0),
    ).toBeGreaterThan(0.8)
  })

  test('an engine that raced slower was held by the dead one: the joint behind both opened', () => {
    const slower = heardStretches(
      [
        { to: 6, a: 4550 },
        { to: 12, a: 2630 },
        { to: 14, a: 10_260 },
        { to: 16, a: 0 },
      ],
      hearing.events.slice(0, 3),
    )
    const r = rankRun({ ...session, hearing: slower })
    const at = (id: string) => r.causes.find((c) => c.id === id)?.share ?? 0
    expect(at('coupling:shaft.3')).toBeGreaterThan(3 * at('coupling:shaft.1'))
  })
})
