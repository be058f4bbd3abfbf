import { expect, test } from 'vitest'
import { fieldAt } from '../../craft/index.ts'
import { madeUpBalance } from './balance.testkit.ts'
import { demoCraft } from './demo.testkit.ts'
import { leversFor } from './pushLevers.ts'
import { metricLook } from './shown.ts'

const heron = demoCraft('heron')
const teal = demoCraft('teal')

test('levers come strongest first, each a value of the craft file with what moving it does', () => {
  const b = madeUpBalance()
  const weak = { value: 0.01, low: 0, high: 0.02 }
  b.changes = [
    { ...b.changes[0]!, path: 'jet.nozzle.bore', says: 'nozzle 3 mm larger', topSpeed: weak, pull: weak },
    { ...b.changes[0]!, path: 'drive.ratio', says: '10 % more reduction' },
    { ...b.changes[0]!, path: 'drive.ratio', says: 'a little more reduction', topSpeed: weak, pull: weak },
  ]
  const levers = leversFor(heron, b, metricLook)
  expect(levers[0]!.path).toBe('drive.ratio')
  expect(levers[0]!.effect).toMatch(/^10 % more reduction: \+1\.9 km\/h, \+14 N of pull$/)
  expect(levers[1]!.path).toBe('jet.nozzle.bore')
  for (const lever of levers) expect(fieldAt(lever.path), lever.path).toBeDefined()
})

test('slider ends stand on either side of the value now', () => {
  const levers = leversFor(heron, madeUpBalance(), metricLook)
  const now: Record<string, number> = {
    'jet.rotor.pitch': heron.jet.rotor.pitch.value,
    'jet.nozzle.bore': heron.jet.nozzle.bore.value,
    'drive.ratio': heron.drive.ratio.value,
    'rider.mass': heron.rider.mass.value,
  }
  const sliders = levers.filter((l) => l.low !== undefined && l.path in now)
  expect(sliders.map((l) => l.path)).toContain('jet.rotor.pitch')
  expect(sliders.length).toBeGreaterThan(1)
  for (const { path, low, high } of sliders) {
    expect(low, path).toBeLessThan(now[path]!)
    expect(high, path).toBeGreaterThan(now[path]!)
  }
})

test('engines that may be dead and their clutch are levers only where there are several', () => {
  const paths = (craft: typeof heron) => leversFor(craft, madeUpBalance(), metricLook).map((l) => l.path)
  expect(paths(heron).some((p) => p.endsWith('running'))).toBe(false)
  expect(paths(teal).filter((p) => p.endsWith('running'))).toHaveLength(2)
  expect(paths(teal)).toContain('drive.clutch')
})
