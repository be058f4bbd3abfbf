import { expect, test } from 'vitest'
import { between, trackOf } from './frames.testkit.ts'
import { openedCouplings, type RunEvent } from './shaftEvents.ts'
import { soundLimits } from './soundLimits.ts'

const start: RunEvent = { kind: 'start', time: 4, lasts: 0, engine: 'B', says: '', confidence: 1 }
const told = (begins: number, ends: number) => {
  const kept = trackOf(8, () => 86)
  const other = trackOf(8, (t) => (t < 4 ? 0 : begins + (ends - begins) * between(t, 4, 4.5)))
  return openedCouplings(kept, other, [start], { rpmPerHertz: 60, limits: soundLimits })[0]!
}

test('a second line that leaves the first one’s speed is a coupling that opens, not a start', () => {
  const e = told(88, 140)
  expect(e.kind).toBe('coupling opens')
  expect(e.engine).toBe('both')
  expect(Math.round(e.before!)).toBe(5160)
  expect(Math.round(e.after!)).toBe(8400)
})

test('an engine that comes up from idle, and one that starts beside the first and stays there, have started', () => {
  expect(told(35, 120)).toBe(start)
  expect(told(87, 87)).toBe(start)
})
