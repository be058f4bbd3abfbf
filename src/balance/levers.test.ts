import { readFileSync } from 'node:fs'
import { expect, test } from 'vitest'
import { fieldAt, readCraft } from '../craft/index.ts'
import { madeUpBalance } from './balance.testkit.ts'
import { leversFor } from './levers.ts'
import { metricLook } from './shown.ts'

const [heron, teal] = ['heron', 'teal'].map((name) => {
  const text = readFileSync(`${import.meta.dirname}/../../demo/${name}.yaml`, 'utf8')
  return readCraft(text, `${name}.yaml`).craft!
})

test('levers come strongest first, each a value of the craft file with what moving it does', () => {
  const b = madeUpBalance()
  const weak = { value: 0.01, low: 0, high: 0.02 }
  b.changes = [
    { ...b.changes[0]!, path: 'jet.nozzle.bore', says: 'nozzle 3 mm larger', topSpeed: weak, pull: weak },
    { ...b.changes[0]!, path: 'drive.ratio', says: '10 % more reduction' },
    { ...b.changes[0]!, path: 'drive.ratio', says: 'a little more reduction', topSpeed: weak, pull: weak },
  ]
  const levers = leversFor(heron!, b, metricLook)
  expect(levers[0]!.path).toBe('drive.ratio')
  expect(levers[0]!.effect).toMatch(/^10 % more reduction: \+1\.9 km\/h, \+14 N of pull$/)
  expect(levers[1]!.path).toBe('jet.nozzle.bore')
  for (const lever of levers) expect(fieldAt(lever.path), lever.path).toBeDefined()
})

test('slider ends stand on either side of the value now', () => {
  for (const lever of leversFor(heron!, madeUpBalance(), metricLook)) {
    if (lever.low === undefined) continue
    expect(lever.high!).toBeGreaterThan(lever.low)
  }
  const pitch = leversFor(heron!, madeUpBalance(), metricLook).find((l) => l.path === 'jet.rotor.pitch')!
  expect(pitch.low!).toBeLessThan(heron!.jet.rotor.pitch.value)
  expect(pitch.high!).toBeGreaterThan(heron!.jet.rotor.pitch.value)
})

test('engines that may be dead and their clutch are levers only where there are several', () => {
  const paths = (craft: typeof heron) => leversFor(craft!, madeUpBalance(), metricLook).map((l) => l.path)
  expect(paths(heron).some((p) => p.endsWith('running'))).toBe(false)
  expect(paths(teal).filter((p) => p.endsWith('running'))).toHaveLength(2)
  expect(paths(teal)).toContain('drive.clutch')
})
