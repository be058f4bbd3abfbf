import { expect, test } from 'vitest'
import { whatIf } from '../../craft/index.ts'
import { beyondRoom, shapeOfPipe } from '../../trades/exhaust/pipeShape.ts'
import { MapStore } from '../push/craftModel.ts'
import { demoCraft } from '../push/demo.testkit.ts'
import { mapStore } from './engineAnswers.ts'
import { CalledOff, findPipe, handbookShape, type PipeSearchAnswer } from './pipeSearch.ts'
import { type TrialRequest, tryPipe } from './pipeTrial.ts'
import { prepareTrial, type Trial } from './trial.ts'
import { specWith } from './trialCurve.ts'

const craft = demoCraft('dabchick')
const store = mapStore()
const maps = new MapStore()
const order = { index: 0, store, maps }

/** a trial that looks at every other speed only: what is said of it holds for any speeds, and it takes half as long */
function quickTrial(): Trial {
  const trial = prepareTrial(craft, order)
  return { ...trial, rpms: trial.rpms.filter((_, i) => i % 2 === 0) }
}

test('the present pipe put back into the engine is the present engine', () => {
  const trial = prepareTrial(craft, order)
  expect(specWith(trial, trial.now)).toEqual(trial.spec)
})

test('the present pipe scores one against itself, the same in every thread, and a choked one less', () => {
  const one = quickTrial()
  const other = quickTrial()
  const now: TrialRequest = { name: 'now', pipe: one.now, cells: 'coarse' }
  const narrow: TrialRequest = { ...now, pipe: { ...one.now, stinger: { bore: 0.012, length: 0.3 } } }
  const [a, b] = [tryPipe(one, now), tryPipe(one, narrow)]
  expect(a.score).toBeCloseTo(1, 9)
  expect(b.score).toBeLessThan(0.97)
  // another thread, asked the other way round, says the same to the last digit
  expect(tryPipe(other, narrow)).toEqual(b)
  expect(tryPipe(other, now)).toEqual(a)
})

test('the handbook’s pipe for a higher speed is shorter, and fits the room', () => {
  const at = (aim: number) => handbookShape(prepareTrial(craft, { ...order, aim }))
  const [slow, fast] = [at(7500), at(9500)]
  expect(fast.diffuser + fast.header + fast.belly + fast.baffle).toBeLessThan(
    slow.diffuser + slow.header + slow.belly + slow.baffle,
  )
  expect(fast.bellyBore).toBeLessThanOrEqual(0.095)
})

test('a first answer comes early and marked as such; called off, the search gives the best so far at once', async () => {
  let early: PipeSearchAnswer | undefined
  const parts: number[] = []
  const trial = quickTrial()
  const search = findPipe(craft, order, {
    tryMany: async (requests) => requests.map((request) => tryPipe(trial, request)),
    early: (answer) => {
      early = answer
    },
    progress: (part) => parts.push(part),
    cancelled: () => early !== undefined,
  })
  const left = await search
  expect(left.final).toBe(false)
  expect(left.found.score).toBeGreaterThanOrEqual(early!.found.score)
  await expect(findPipe(craft, order, { cancelled: () => true })).rejects.toThrow(CalledOff)
  expect(early!.final).toBe(false)
  expect(early!.now.score).toBeCloseTo(1, 9)
  expect(early!.found.score).toBeGreaterThanOrEqual(early!.now.score)
  expect(early!.findings[0]!.standing).toBe('unknown')
  expect(early!.found.cells).toBe('coarse')
  expect(early!.speeds).toHaveLength(5)
  expect(parts).toEqual([...parts].sort((a, b) => a - b))
}, 90_000)

test('an engine without a pipe is refused by its path', () => {
  expect(() => prepareTrial(demoCraft('heron'), { index: 0 })).toThrow(/^engines\.0: it is curve/)
  const faulty = whatIf(craft, { 'engines.0.exhaust.muffler.length': 0.004 })
  expect(() => prepareTrial(faulty, { index: 0 })).toThrow(/engines\.0\.exhaust\.muffler/)
})

test('the demo’s present pipe has a shape that the search can begin from, inside its room', () => {
  const trial = prepareTrial(craft, order)
  expect(shapeOfPipe(trial.now.segments, trial.now.stinger)).toBeDefined()
  expect(beyondRoom(trial.now, trial.room)).toBe(0)
})
