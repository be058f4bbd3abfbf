import { expect, test } from 'vitest'
import type { Finding, Standing } from '../../base/answers/finding.ts'
import { inWords } from '../../base/answers/printFinding.ts'
import { monoxide } from '../../physics/gas/monoxide.ts'
import { box, inputs, outlet, pulses, run, snorkel } from './exhaust.testkit.ts'
import { exhaustFindings as exhaustFindingsRaw } from './exhaustFindings.ts'
import type { ExhaustInputs } from './exhaustFromCraft.ts'
import type { ExhaustRun, ExhaustView } from './exhaustView.ts'
import { floorAtOneMetre } from './level.ts'

// the tests read the words
const exhaustFindings = (...given: Parameters<typeof exhaustFindingsRaw>) =>
  inWords(exhaustFindingsRaw(...given))

const of = (list: readonly Finding[], id: string) => list.find((f) => f.id === `breath.engines.0.${id}`)
const standing = (
  i: Partial<ExhaustInputs>,
  id: string,
  more: { run?: Partial<ExhaustRun>; outlet?: NonNullable<ExhaustView['outlet']> } = {},
) =>
  of(
    exhaustFindings({
      inputs: { ...inputs, ...i },
      run: { ...run, ...more.run },
      ...(more.outlet ? { outlet: more.outlet } : {}),
    }),
    id,
  )?.standing

test('a good exhaust is good throughout, and its cautions stand beside it', () => {
  const list = exhaustFindings({ inputs, run })
  expect(list.filter((f) => f.standing !== 'good').map((f) => f.id)).toEqual([])
  expect(list.map((f) => f.id)).toContain('breath.engines.0.caution')
})

test('no finding says safe or complies, and every one names a source and a path or a reason', () => {
  const list = [
    ...exhaustFindings({ inputs, run }),
    ...exhaustFindings({ inputs: { ...inputs, outlet: { ...outlet, flap: true, height: 0 } } }),
  ]
  for (const f of list) {
    expect(f.question).toBe('breath')
    expect(`${f.says} ${f.because.map((b) => b.says).join(' ')}`).not.toMatch(/\bsafe|compl(y|ies)/i)
    expect(f.sources.length).toBeGreaterThan(0)
    expect(f.because.length).toBeGreaterThan(0)
  }
})

test('without a simulation nothing is said of level, pressure or charge', () => {
  const ids = exhaustFindings({ inputs }).map((f) => f.id)
  for (const id of ['level', 'back-pressure', 'snorkel', 'muffler'])
    expect(ids).not.toContain(`breath.engines.0.${id}`)
})

const afloat = (height: number, standing: Standing) => ({ height, standing, path: 'openings.2.at' })

test('how high the outlet stands is judged where the craft floats: here it is only said when nobody knows', () => {
  expect(standing({}, 'outlet')).toBeUndefined()
  expect(standing({ outlet: { ...outlet, height: 0.01 } }, 'outlet')).toBeUndefined()
  const assumed = { outlet: { ...outlet, assumed: true } }
  expect(standing(assumed, 'outlet')).toBe('unknown')
  expect(standing(assumed, 'outlet', { outlet: afloat(0.12, 'good') })).toBeUndefined()
  const { outlet: _, ...without } = inputs
  expect(of(exhaustFindings({ inputs: without, run }), 'outlet')?.standing).toBe('unknown')
})

test('suction is watched without a vent, and stops where the outlet floods as the craft floats', () => {
  const bare = { outlet: { ...outlet, vent: false } }
  expect(standing(bare, 'suction')).toBe('watch')
  expect(standing(bare, 'suction', { outlet: afloat(0.01, 'stop') })).toBe('stop')
  expect(standing({}, 'suction', { outlet: afloat(0.01, 'stop') })).toBe('good')
})

test('a flap under water asks more than an idling box has', () => {
  expect(standing({ outlet: { ...outlet, flap: true } }, 'flap')).toBe('good')
  expect(standing({ outlet: { ...outlet, flap: true, height: -0.05 } }, 'flap')).toBe('watch')
})

test('back pressure goes from good to watch to stop, and a mean outlet is watched', () => {
  expect(standing({}, 'back-pressure', { run: { behind: 9e3 } })).toBe('watch')
  expect(standing({}, 'back-pressure', { run: { behind: 25e3 } })).toBe('stop')
  expect(standing({ box: { ...box, outletBore: 0.019 } }, 'back-pressure')).toBe('watch')
})

test('the level at 25 m is never below the floor, rises with engines, is held against the figure for one engine’s power, and is to watch at most', () => {
  const level = (engines: number, k = 1) =>
    of(exhaustFindings({ inputs, run: { ...run, engines, outFlow: pulses.map((x) => k * x) } }), 'level')!
  expect(level(1, 1e-6).value).toBeGreaterThanOrEqual(floorAtOneMetre - 20 * Math.log10(25) - 1e-9)
  expect(level(2).value!).toBeGreaterThan(level(1).value!)
  expect(level(1).says).toContain('72 dB(A) published')
  expect(level(2).says).toContain('75 dB(A) published')
  expect(standing({}, 'level', { run: { outFlow: pulses.map((x) => 300 * x) } })).toBe('watch')
})

test('a small box, a box that cannot be built and no box at all are said', () => {
  expect(standing({ box: { ...box, length: 0.05, inletReach: 0, outletReach: 0 } }, 'box-size')).toBe('watch')
  expect(standing({ box: { ...box, inletReach: 0.2, outletReach: 0.1 } }, 'muffler')).toBe('stop')
  const { box: _, ...open } = inputs
  expect(of(exhaustFindings({ inputs: open, run }), 'muffler')!.standing).toBe('watch')
})

test('a low snorkel mouth and a thin tube are said', () => {
  expect(standing({ snorkel: { ...snorkel, height: 0.2 } }, 'snorkel-mouth')).toBe('watch')
  expect(standing({ snorkel: { ...snorkel, height: 0.05 } }, 'snorkel-mouth')).toBe('stop')
  expect(standing({ snorkel: { ...snorkel, bore: 0.014 } }, 'snorkel')).not.toBe('good')
})

test('richer mixtures hold more carbon monoxide: 4.6 % at 0.87, 7.2 % at 0.80', () => {
  expect(monoxide(0.87)).toBeCloseTo(0.046, 9)
  expect(monoxide(0.8)).toBeCloseTo(0.072, 9)
  expect(monoxide(0.95)).toBeLessThan(monoxide(0.9))
})
