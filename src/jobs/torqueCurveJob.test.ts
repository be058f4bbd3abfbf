import { expect, test } from 'vitest'
import { craftTextWith, sportEngine } from '../trades/engine/twoStroke.testkit.ts'
import { Cancelled } from './job.ts'
import { cycleTraceJob, torqueCurveJob } from './torqueCurveJob.ts'

const text = craftTextWith(sportEngine)
const quiet = { progress: () => {}, cancelled: () => false }

test('the job torque-curve answers with a curve and findings, and tells its progress', async () => {
  const parts: number[] = []
  const out = await torqueCurveJob.run(
    { text, tried: {}, engine: 0, rpms: [9000, 9500], dx: 0.03 },
    { progress: (p) => parts.push(p), cancelled: () => false },
  )
  expect(out.curve!.points.map((p) => p.rpm)).toEqual([9000, 9500])
  expect(out.findings.some((f) => f.id === 'breath.engines.0.trust')).toBe(true)
  expect(parts.at(-1)).toBe(1)
  // plain data: it goes through a worker's door
  expect(structuredClone(out)).toEqual(out)
})

test('a tried value reaches the simulation', async () => {
  const run = async (tried: Record<string, number>) =>
    (await torqueCurveJob.run({ text, tried, engine: 0, rpms: [9000], dx: 0.03 }, quiet)).curve!.points[0]!
  const [now, tried] = [await run({}), await run({ 'engines.0.carburettor.bore': 0.012 })]
  expect(tried.point!.deliveryRatio).toBeLessThan(now.point!.deliveryRatio)
})

test('a job that is called off throws Cancelled', () => {
  const context = { progress: () => {}, cancelled: () => true }
  expect(() => torqueCurveJob.run({ text, tried: {}, engine: 0, rpms: [9000], dx: 0.03 }, context)).toThrow(
    Cancelled,
  )
})

test('faults come back as findings, without a curve', async () => {
  const bad = craftTextWith(
    sportEngine.replace('length: 200 mm, width: 100 mm', 'length: 50 mm, width: 40 mm'),
  )
  const out = await torqueCurveJob.run({ text: bad, tried: {}, engine: 0 }, quiet)
  expect(out.curve).toBeUndefined()
  expect(out.findings[0]).toMatchObject({ standing: 'stop' })
})

test('the job cycle-trace gives one cycle at the speed asked for', async () => {
  const t = await cycleTraceJob.run({ text, tried: {}, engine: 0, rpm: 9000, dx: 0.03 }, quiet)
  expect(t.rpm).toBe(9000)
  expect(t.angle).toHaveLength(360)
})
