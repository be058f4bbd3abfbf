import { readFileSync } from 'node:fs'
import { resolve } from 'node:path'
import fc from 'fast-check'
import { expect, test } from 'vitest'
import { printed } from '../../base/answers/sentence.ts'
import { readCraft } from '../../craft/index.ts'
import { craftLog } from '../log/craftLog.ts'
import { addEntry } from '../log/logText.ts'
import { MapStore } from '../push/craftModel.ts'
import { demoCraft } from '../push/demo.testkit.ts'
import { solveBalance } from '../push/solveBalance.ts'
import { calibrate, type TrustedReading } from './calibrate.ts'
import { calibrationSays, trustedReadings, unfitted, withFit, withoutFit } from './calibrateSays.ts'

const heron = demoCraft('heron')
const maps = new MapStore()
const balance = solveBalance(heron, { maps })
const now = { rotation: balance.tiedUp.rotation, pull: balance.tiedUp.thrust, topSpeed: balance.top!.speed }
const readings = (parts: Partial<Record<keyof typeof now, number>>): TrustedReading[] =>
  Object.entries(parts).map(([of, part]) => ({
    of: of as keyof typeof now,
    value: part * now[of as keyof typeof now],
    run: '2026-05-16',
  }))
const fitTo = (parts: Partial<Record<keyof typeof now, number>>) =>
  calibrate(heron, balance, readings(parts), { maps })
const file = resolve(import.meta.dirname, '../../../demo/heron.yaml')
const text = readFileSync(file, 'utf8')

test('readings that say what the model says move nothing', () => {
  const c = fitTo({ rotation: 1, pull: 1, topSpeed: 1 })
  expect(c.refused).toBeUndefined()
  for (const f of c.factors) expect(Math.abs(f.factor.value - 1)).toBeLessThan(0.02)
})

test('engine speed alone moves the engines and leaves thrust and drag where their priors have them', () => {
  const c = fitTo({ rotation: 0.94 })
  const [engine, thrust, drag] = c.factors
  expect(c.refused).toBeUndefined()
  expect(engine!.factor.value).toBeLessThan(0.97)
  expect(engine!.measured).toBe(true)
  expect(thrust!.factor.value).toBe(1)
  expect(drag!.factor.value).toBe(1)
  expect([thrust!.measured, drag!.measured]).toEqual([false, false])
})

test('after a fit the model meets the readings within their scatter, and the doubt left is smaller', () => {
  const c = fitTo({ rotation: 0.96, pull: 0.92, topSpeed: 0.95 })
  expect(c.refused).toBeUndefined()
  for (const r of c.readings) expect(Math.abs(r.fitted / r.value - 1)).toBeLessThan(0.05)
  for (const left of Object.values(c.left)) {
    expect(left).toBeGreaterThan(0)
    expect(left).toBeLessThan(0.8)
  }
})

test('no posterior is wider than its prior and a reading more narrows', () => {
  fc.assert(
    fc.property(fc.double({ min: 0.95, max: 1.05, noNaN: true }), (part) => {
      const one = fitTo({ rotation: part })
      const two = fitTo({ rotation: part, pull: part * part })
      one.factors.forEach((f, k) => {
        expect(f.posterior).toBeLessThanOrEqual(f.prior * (1 + 1e-9))
        expect(two.factors[k]!.posterior).toBeLessThanOrEqual(f.posterior * 1.1)
      })
    }),
    { numRuns: 4 },
  )
})

test('a fit that needs what cannot be is refused, and the reading that looks wrong is named', () => {
  const c = fitTo({ rotation: 1, pull: 3, topSpeed: 1 })
  expect(c.refused?.reading).toBe(1)
  const says = calibrationSays(c)
    .map((s) => printed(s))
    .join(' ')
  expect(says).toContain('Refused')
  expect(says).toContain('The pull of 2026-05-16')
  const alone = fitTo({ rotation: 0.4 })
  expect(alone.refused?.reading).toBe(0)
})

test('a kept fit is read again, the balance uses it and says so; taken out, the file is as before', () => {
  const c = fitTo({ rotation: 0.96, pull: 0.92, topSpeed: 0.95 })
  const kept = withFit(text, c)
  const { craft, problems } = readCraft(kept, file)
  expect(problems.filter((p) => p.severity === 'error')).toEqual([])
  const then = solveBalance(craft!, { maps })
  expect(then.tiedUp.rotation / (0.96 * now.rotation)).toBeCloseTo(1, 1)
  expect(then.tiedUp.thrust / (0.92 * now.pull)).toBeCloseTo(1, 1)
  expect(then.tiedUp.rotation).toBeLessThan(now.rotation)
  const width = (r: { low: number; high: number; value: number }) => (r.high - r.low) / r.value
  expect(width(then.pull)).toBeLessThan(0.8 * width(balance.pull))
  expect(then.pull.low).toBeLessThan(then.pull.value)
  expect(readCraft(withoutFit(kept), file).craft).toEqual(readCraft(text, file).craft)
  expect(unfitted(craft!)).not.toHaveProperty('fitted')
})

test('readings come from the runs since the craft last changed, or from those that are named', () => {
  const run = (at: string, pull: string) => ({ at, kind: 'run' as const, says: '', readings: { pull } })
  const log = craftLog(
    heron,
    [
      run('2026-05-01', '20 kg'),
      { at: '2026-05-02', kind: 'change' as const, says: 'new plug' },
      run('2026-05-03', '22 kg'),
    ].reduce((t, e) => addEntry(t, e, 'Heron'), ''),
  )
  expect(trustedReadings(log).map((r) => r.run)).toEqual(['2026-05-03'])
  expect(trustedReadings(log, [1]).map((r) => r.run)).toEqual(['2026-05-01'])
})

test('nothing to fit to, or a reading that is none, is an error by name', () => {
  expect(() => calibrate(heron, balance, [])).toThrow(/readings: none/)
  expect(() => calibrate(heron, balance, [{ of: 'pull', value: Number.NaN, run: 'x' }])).toThrow(/pull: NaN/)
})
