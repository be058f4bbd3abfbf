import { expect, test } from 'vitest'
import { inWords } from '../../base/answers/printFinding.ts'
import { whatIf } from '../../craft/index.ts'
import { lookAt } from '../look.ts'
import { demoCraft } from '../push/demo.testkit.ts'
import {
  answerEngines,
  type EngineStore,
  engineKey,
  mapStore,
  type SimulatedEngine,
} from './engineAnswers.ts'

const craft = demoCraft('dabchick')
const heron = demoCraft('heron')

/** a store that counts what is worked out anew */
function counting(): EngineStore & { made: number } {
  const store = mapStore()
  const out = {
    made: 0,
    get: (key: string) => store.get(key),
    set: (key: string, engine: SimulatedEngine) => {
      if (!store.get(key)) out.made++
      store.set(key, engine)
    },
  }
  return out
}

test('a two-stroke known by ports and pipe gives the balance its curve, its range and the findings of Breath', () => {
  const store = counting()
  const engines = answerEngines(craft, { store, coarse: true })!
  expect(store.made).toBe(1)
  expect(engines.solved.get(0)!.powerPeak.power).toBeGreaterThan(5e3)
  expect(engines.simulated.get(0)!.outFlow).toHaveLength(360)

  const { findings, balance } = lookAt(craft, { engines, oneDead: false })
  expect(findings.find((f) => f.id === 'breath.headline')!.value).toBeGreaterThan(8)
  expect(balance!.pull.value).toBeGreaterThan(100)
  expect(balance!.pull.high).toBeGreaterThan(balance!.pull.low)
  expect(balance!.drivers.some((d) => d.path === 'engines.0.curve trust')).toBe(true)
  for (const id of ['trust', 'coarse', 'muffler', 'level', 'spill', 'suction', 'snorkel', 'caution'])
    expect(
      findings.map((f) => f.id),
      id,
    ).toContain(`breath.engines.0.${id}`)

  // a simulated engine's warnings give a reason that is not the warning again
  for (const f of inWords(findings.filter((one) => one.question === 'breath')))
    for (const b of f.because)
      if (b.says.length > 40) expect(f.says.toLowerCase()).not.toContain(b.says.toLowerCase())

  // the same craft again costs nothing; a change elsewhere neither; a change of the pipe does
  answerEngines(craft, { store, coarse: true })
  answerEngines(whatIf(craft, { 'jet.rotor.pitch': 0.1 }), { store, coarse: true })
  expect(store.made).toBe(1)
  // plain data: it goes through a file and through a worker's door
  const kept = engines.simulated.get(0)!
  expect(JSON.parse(JSON.stringify(kept)).curve.points).toHaveLength(kept.curve.points.length)
  expect(structuredClone(kept)).toEqual(kept)
})

test('what the simulation depends on is in the key: another stinger is another engine', () => {
  const key = (c: typeof craft) => engineKey(answerReading(c), [8000])
  expect(key(whatIf(craft, { 'engines.0.exhaust.stinger.bore': 0.02 }))).not.toBe(key(craft))
  expect(key(whatIf(craft, { 'rider.mass': 90 }))).toBe(key(craft))
})

function answerReading(c: typeof craft) {
  const engines = answerEngines(c, {
    cancelled: () => true,
    store: {
      get: () => ({
        curve: { points: [], dx: 0.01, cells: 1, cancelled: false },
        at: Number.NaN,
        outFlow: [],
      }),
      set: () => {},
    },
  })!
  return engines.readings.get(0)!.spec!
}

test('a craft without such an engine is answered at once, and its breathing is called not known', () => {
  const engines = answerEngines(heron)!
  expect(engines.solved.size).toBe(0)
  const breath = lookAt(heron, { engines, ranges: false }).findings.filter((f) => f.question === 'breath')
  expect(breath.map((f) => [f.id, f.standing])).toEqual([['breath.headline', 'unknown']])
})

test('called off, it gives no answer', () => {
  expect(answerEngines(craft, { cancelled: () => true })).toBeUndefined()
})
