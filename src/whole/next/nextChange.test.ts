import { expect, test } from 'vitest'
import type { Finding } from '../../base/answers/finding.ts'
import { printed } from '../../base/answers/sentence.ts'
import type { RunRanking } from '../faults/rankingTypes.ts'
import { craftLog } from '../log/craftLog.ts'
import { addEntry } from '../log/logText.ts'
import type { LogEntry } from '../log/logTypes.ts'
import { MapStore } from '../push/craftModel.ts'
import { demoCraft } from '../push/demo.testkit.ts'
import { solveBalance } from '../push/solveBalance.ts'
import { canMake, nextChange } from './nextChange.ts'

const heron = demoCraft('heron')
const sandpiper = demoCraft('sandpiper')
const maps = new MapStore()
const balance = solveBalance(heron, { maps })
const logOf = (...entries: LogEntry[]) =>
  craftLog(
    heron,
    entries.reduce((t, e) => addEntry(t, e, 'Heron'), ''),
  )
const run: LogEntry = {
  at: '2026-05-01',
  kind: 'run',
  says: '',
  readings: { pull: '500 N', rpm: '6300', 'top speed': '40 km/h' },
}

test('what is offered is one of the craft’s own changes, surely gains what is wanted, and says what the next run shows', () => {
  let offered = 0
  for (const craft of [heron, sandpiper]) {
    for (const wants of ['pull', 'speed', undefined] as const) {
      const wish = { ...craft, ...(wants ? { wants } : {}) } as typeof craft
      const b = solveBalance(wish, { maps })
      const { says, change } = nextChange(wish, b)
      expect(printed(says)).not.toMatch(/NaN|—|undefined/)
      if (!change) {
        expect(printed(says)).toMatch(/^Nothing yet/)
        continue
      }
      offered++
      expect(change.gain.low).toBeGreaterThan(0)
      expect(b.changes.some((c) => c.id === change.id && canMake(wish, c))).toBe(true)
      expect(change.changes.length).toBeGreaterThan(0)
      expect(printed(change.show)).not.toMatch(/NaN|—/)
      expect(change.hours.low).toBeGreaterThan(0)
    }
  }
  expect(offered).toBeGreaterThan(0)
})

test('what it should show goes by the last run where there is one', () => {
  const wish = { ...heron, wants: 'pull' } as typeof heron
  const b = {
    ...balance,
    changes: balance.changes.map((c) =>
      c.id === 'nozzle-larger' ? { ...c, pull: { value: 40, low: 20, high: 60 } } : c,
    ),
  }
  const { change } = nextChange(wish, b, { log: logOf(run) })
  expect(change!.expects.from).toBe('last run')
  const c = b.changes.find((one) => one.id === change!.id)!
  expect(change!.expects.pull.value).toBeCloseTo(500 * (1 + c.pull.value / b.pull.value), 6)
})

test('nothing yet where something says stop, a cause is likely, or the last change has not been run', () => {
  const stop = {
    id: 'x',
    question: 'float',
    says: 'It sinks',
    act: 'Add foam',
    standing: 'stop',
    because: [],
    sources: [],
  } as Finding
  const ranking: RunRanking = {
    episodes: [],
    causes: [
      {
        id: 'lean',
        says: 'short of fuel',
        share: 0.6,
        weight: 12,
        ways: [],
        mend: 'mend it',
        for: [],
        against: [],
      },
    ],
    none: 0.1,
    cannotSay: [],
    beside: [],
    doubts: [],
    decided: true,
    checks: [
      {
        id: 'cup',
        act: 'Time a cup of fuel',
        minutes: 10,
        worth: 5,
        separates: ['lean'],
        cautions: [],
        outcomes: [],
      },
    ],
  }
  const changed = logOf(run, { at: '2026-05-02', kind: 'change', says: 'new plug' })
  const says = (setting: Parameters<typeof nextChange>[2]) => {
    const next = nextChange(heron, balance, setting)
    expect(next.change).toBeUndefined()
    return printed(next.says)
  }
  expect(says({ findings: [stop] })).toBe('Nothing yet: first what says stop. Add foam.')
  expect(says({ ranking })).toContain('“short of fuel” (60 %)')
  expect(says({ ranking })).toContain('Time a cup of fuel.')
  expect(says({ log: changed })).toContain('has not been run')
})

test('without a sure gain there is nothing yet, and what to measure', () => {
  const flat = {
    ...balance,
    changes: balance.changes.map((c) => ({
      ...c,
      pull: { value: 30, low: -30, high: 60 },
      topSpeed: { value: 0.1, low: -1, high: 1 },
    })),
  }
  expect(printed(nextChange(heron, flat).says)).toMatch(/^Nothing yet: the best change .* may cost some/)
  expect(printed(nextChange(heron, { ...balance, changes: [] }).says)).toMatch(/^Nothing yet: no change/)
})

test('a lighter craft is no change to make, and an impeller that is not printed is not offered in print', () => {
  expect(canMake(heron, { id: 'lighter' })).toBe(false)
  expect(canMake(heron, { id: 'pitch-best' })).toBe(true)
  const cast = {
    ...heron,
    jet: { ...heron.jet, rotor: { ...heron.jet.rotor, material: 'aluminium' } },
  } as unknown as typeof heron
  expect(canMake(cast, { id: 'pitch-best' })).toBe(false)
  expect(canMake(cast, { id: 'nozzle-larger' })).toBe(true)
})
