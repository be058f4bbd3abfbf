import fc from 'fast-check'
import { expect, test } from 'vitest'
import type { Finding } from '../../base/answers/finding.ts'
import { printed } from '../../base/answers/sentence.ts'
import { pdfOf } from '../../drawing/pdf.ts'
import type { RunRanking } from '../faults/rankingTypes.ts'
import { craftLog } from '../log/craftLog.ts'
import { addEntry } from '../log/logText.ts'
import { MapStore } from '../push/craftModel.ts'
import { demoCraft } from '../push/demo.testkit.ts'
import { solveBalance } from '../push/solveBalance.ts'
import { planCard, planText } from './planCard.ts'
import { outcomeOf, planModel } from './planModel.ts'
import { namedRight, severities } from './planWorth.ts'
import { runPlan } from './runPlan.ts'
import { type Suspect, suspectsOf } from './suspects.ts'

const heron = demoCraft('heron')
const sandpiper = demoCraft('sandpiper')
const maps = new MapStore()
const plans = {
  heron: () => solveBalance(heron, { maps }),
  sandpiper: () => solveBalance(sandpiper, { maps }),
}
const heronBalance = plans.heron()
const sandpiperBalance = plans.sandpiper()
const heronPlan = runPlan(heron, heronBalance, { maps })
const twinPlan = runPlan(sandpiper, sandpiperBalance, { maps })
const doubt = { rotation: 0.05, pull: 0.1, speed: 0.08 }

test('a plan of a quarter of an hour makes the likeliest cause the right one far more often', () => {
  for (const plan of [heronPlan, twinPlan]) {
    expect(plan.minutes).toBeLessThanOrEqual(15)
    expect(plan.before.cause).toBeLessThan(0.5)
    expect(plan.after.cause).toBeGreaterThan(0.75)
  }
})

test('full throttle tied up says what the headline says, the middle of the draws', () => {
  for (const [plan, balance] of [
    [heronPlan, heronBalance],
    [twinPlan, sandpiperBalance],
  ] as const) {
    const full = plan.steps.find((s) => s.id === 'full')!.expected[0]!
    expect(full.suspect).toBe('as-filed')
    expect(full.rotation[0]!.value).toBeCloseTo(balance.tiedUpRotation.value, 1)
    expect(full.pull!.value).toBeCloseTo(balance.pull.value, 0)
    expect(full.rotation[0]!.low).toBeLessThan(full.rotation[0]!.value)
    expect(full.rotation[0]!.high).toBeGreaterThan(full.rotation[0]!.value)
  }
})

test('two engines on one shaft are each run alone where that tells something; a single one is not', () => {
  expect(twinPlan.suspects.some((s) => s.id === 'dead 1')).toBe(true)
  expect(heronPlan.suspects.some((s) => s.id.startsWith('dead'))).toBe(false)
  expect(twinPlan.steps.some((s) => s.id.startsWith('alone'))).toBe(true)
  expect(heronPlan.steps.some((s) => s.id.startsWith('alone'))).toBe(false)
  expect(twinPlan.after.engine).toBeGreaterThan(0.6)
})

test('every step says what to do, what to mind, and no number that is none', () => {
  for (const plan of [heronPlan, twinPlan]) {
    expect(plan.steps.length).toBeGreaterThan(2)
    for (const step of plan.steps) {
      expect(step.cautions.length).toBeGreaterThan(0)
      expect(step.separates.length).toBeGreaterThan(0)
      for (const e of step.expected) expect(printed(e.says)).not.toMatch(/NaN|—|undefined/)
    }
    expect(printed(plan.says)).not.toMatch(/NaN|—/)
    expect(planText(plan)).not.toMatch(/NaN|undefined/)
  }
})

test('suspects do what they say: lean is slower and choking helps it, a steep impeller is slower and falls faster, drag is slower under way alone', () => {
  const of = planModel(heron, maps)
  const suspect = (id: string) => heronPlan.suspects.find((s) => s.id === id)!
  const full = { id: 'full', engines: [0], throttle: 1 }
  const run = (id: string, trial = {}, part = 0.5) => outcomeOf(of, { ...full, ...trial }, suspect(id), part)
  const base = run('as-filed')
  expect(run('lean').rotation[0]!).toBeLessThan(base.rotation[0]!)
  expect(run('lean', { choked: true }).rotation[0]!).toBeGreaterThan(run('lean').rotation[0]!)
  expect(run('as-filed', { choked: true }).rotation[0]!).toBeLessThan(base.rotation[0]!)
  expect(run('steep').rotation[0]!).toBeLessThan(base.rotation[0]!)
  expect(run('steep', { cut: true }).fall).toBeGreaterThan(1)
  expect(run('drag').rotation[0]!).toBeCloseTo(base.rotation[0]!, 6)
  expect(run('drag', { underWay: true }).speed).toBeLessThan(run('as-filed', { underWay: true }).speed)
  // air is drawn at full throttle only
  expect(run('air', { throttle: 1 / 3 })).toEqual(run('as-filed', { throttle: 1 / 3 }))
})

test('a dead engine of a locked pair leaves its shaft turning slower and unevenly, alone it does not turn', () => {
  const of = planModel(sandpiper, maps)
  const dead = twinPlan.suspects.find((s) => s.id === 'dead 1')!
  const both = outcomeOf(of, { id: 'full', engines: [0, 1], throttle: 1 }, dead, 0)
  expect(both.uneven).toBe(true)
  expect(both.rotation[0]!).toBeLessThan(sandpiperBalance.tiedUp.rotation)
  expect(outcomeOf(of, { id: 'alone 1', engines: [0], throttle: 1 }, dead, 0).rotation[0]).toBeNaN()
})

test('a trial more never makes the right answer rarer by more than chance', () => {
  const of = planModel(heron, maps)
  const { suspects } = heronPlan
  const trials = [
    { id: 'full', engines: [0], throttle: 1 },
    { id: 'third', engines: [0], throttle: 1 / 3 },
    { id: 'choke', engines: [0], throttle: 1, choked: true as const },
    { id: 'way', engines: [0], throttle: 1, underWay: true as const },
  ].map((t) => suspects.map((s) => severities.map((part) => outcomeOf(of, t, s, part))))
  const right = (list: readonly number[]) =>
    namedRight(
      suspects,
      list.map((i) => trials[i]!),
      doubt,
    ).cause
  fc.assert(
    fc.property(fc.subarray([0, 1, 2, 3], { minLength: 1 }), fc.constantFrom(0, 1, 2, 3), (some, more) => {
      expect(right(some)).toBeGreaterThanOrEqual(right([]) - 0.05)
      if (!some.includes(more)) expect(right([...some, more])).toBeGreaterThan(right(some) - 0.05)
    }),
    { numRuns: 12 },
  )
})

test('shares sum to one; an open finding, a change in the log and a ranking each raise what they point at', () => {
  const share = (list: readonly Suspect[], id: string) => list.find((s) => s.id === id)!.share
  const sum = (list: readonly Suspect[]) => list.reduce((a, s) => a + s.share, 0)
  const plain = suspectsOf(heron)
  const finding = {
    id: 'push.pitch',
    question: 'push',
    says: '',
    standing: 'watch',
    because: [],
    sources: [],
  } as Finding
  const log = craftLog(
    heron,
    addEntry('', { at: '2026-05-01', kind: 'change', says: 'tank drilled, no filter' }, 'Heron'),
  )
  const ranking: RunRanking = {
    episodes: [],
    causes: [
      { id: 'lean', says: 'lean', share: 0.7, weight: 12, ways: [], mend: 'mend it', for: [], against: [] },
    ],
    none: 0.1,
    cannotSay: [],
    beside: [],
    doubts: [],
    decided: true,
    checks: [],
  }
  const pointed = suspectsOf(heron, { findings: [finding] })
  const logged = suspectsOf(heron, { log })
  const ranked = suspectsOf(heron, { ranking })
  for (const list of [plain, pointed, logged, ranked]) expect(sum(list)).toBeCloseTo(1, 9)
  expect(share(pointed, 'steep')).toBeGreaterThan(1.5 * share(plain, 'steep'))
  expect(share(logged, 'lean')).toBeGreaterThan(1.5 * share(plain, 'lean'))
  expect(share(ranked, 'lean')).toBeCloseTo(0.7, 2)
})

test('with no engine running there is no plan, and it says so', () => {
  const off = { ...heron, engines: heron.engines.map((e) => ({ ...e, running: false })) } as typeof heron
  const plan = runPlan(off, heronBalance)
  expect(plan.steps).toEqual([])
  expect(printed(plan.says)).toContain('No engine of the craft file runs')
})

test('the card prints on A4 and its PDF begins like one', async () => {
  const pages = planCard(twinPlan, 'Sandpiper')
  for (const page of pages) expect([page.width, page.height]).toEqual([210, 297])
  for (const page of pages) for (const m of page.marks) if (m.kind === 'text') expect(m.y).toBeGreaterThan(5)
  const bytes = await pdfOf(pages, 'Plan')
  expect(new TextDecoder().decode(bytes.slice(0, 5))).toBe('%PDF-')
})
