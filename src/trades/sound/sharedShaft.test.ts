import { expect, test } from 'vitest'
import { printed } from '../../base/answers/sentence.ts'
import type { RunEvent } from './shaftEvents.ts'
import { onSharedShaft } from './sharedShaft.ts'
import type { CraftExpects } from './soundFromCraft.ts'

const shared: CraftExpects = { engines: 2, coupling: 'one shaft' }
const step = (kind: RunEvent['kind'], time: number, before: number, after: number): RunEvent => ({
  kind,
  time,
  lasts: 3,
  engine: 'A',
  says: '',
  value: after,
  before,
  after,
  confidence: 1,
})
const fall = step('fall', 6, 5200, 3930)

test('on one shaft a step down that one engine leaves is one that stops firing, and back up is that it fires again', () => {
  const [down, up] = onSharedShaft([fall, step('step up', 9, 3930, 5230)], shared)
  expect(down).toMatchObject({ kind: 'one dead', time: 6 })
  expect(printed(down!.says)).toMatch(
    /stops firing and is turned along: from 5200 rpm to 3930 rpm, 24 % down/,
  )
  expect(up!.kind).toBe('fires again')
})

test('the balance’s own step is believed more than the usual one', () => {
  const sure = (low: number, high: number) =>
    onSharedShaft([fall], shared, { oneDead: { low, high } })[0]!.confidence
  expect(sure(0.7, 0.8)).toBeGreaterThan(sure(0.4, 0.6))
  expect(sure(0.4, 0.6)).toBe(onSharedShaft([fall], shared)[0]!.confidence)
})

test('a step too small or too large for it stays a fall, and so does any with one engine or engines apart', () => {
  const kind = (after: number, expects = shared) =>
    onSharedShaft([step('fall', 6, 5200, after)], expects)[0]!.kind
  expect(kind(4900)).toBe('fall')
  expect(kind(2400)).toBe('fall')
  for (const coupling of ['single', 'apart', 'one-way'] as const)
    expect(kind(3930, { engines: coupling === 'single' ? 1 : 2, coupling })).toBe('fall')
})

test('a step up to another speed than the one before is no firing again', () => {
  expect(onSharedShaft([fall, step('step up', 9, 3930, 4600)], shared)[1]!.kind).toBe('step up')
})

test('one engine alone that outruns both has lost its load, from an idle’s speed too; one that comes up to their speed has not', () => {
  const rise = (after: number) =>
    onSharedShaft([step('fall', 6, 4550, 2630), step('speed rises', 12, 2630, after)], shared, {
      oneDead: { low: 0.5, high: 0.7 },
    })[1]!
  expect(rise(10_950).kind).toBe('load lost')
  expect(rise(4800).kind).toBe('speed rises')
  expect(onSharedShaft([step('speed rises', 12, 2630, 10_950)], shared)[0]!.kind).toBe('speed rises')
})
