import { readFileSync } from 'node:fs'
import { resolve } from 'node:path'
import { expect, test } from 'vitest'
import { readCraft } from '../../craft/index.ts'
import { carriedOn } from '../../hull/aboard/aboard.ts'
import { dragSaid as hullDragFindings } from './drag.testkit.ts'
import { hullFromCraft } from './dragFromCraft.ts'

const text = readFileSync(resolve(import.meta.dirname, '../../../demo/heron.yaml'), 'utf8')
const read = (change: (t: string) => string = (t) => t) => {
  const reading = readCraft(change(text), 'heron.yaml')
  if (!reading.craft) throw new Error(JSON.stringify(reading.problems))
  return reading.craft
}

test('hullFromCraft takes the demo craft over number by number', () => {
  const { spec, loading, conditions, riderAt } = hullFromCraft(read())
  expect(spec).toMatchObject({
    length: 2.4,
    chineBeam: 0.7,
    depth: 0.24,
    noseRiseFrom: 1.55,
    tailWidth: 0.92,
  })
  expect(spec.intake?.front).toBeCloseTo(0.62, 12)
  expect(spec.intake?.area).toBeCloseTo(0.26 * 0.125, 12)
  expect(loading.mass).toBeCloseTo(60.1 + 5.8 * 0.749, 9)
  expect(loading.riderMass).toBe(78)
  expect(riderAt).toBe(0.95)
  expect(conditions.depth).toBe(1.8)
  expect(conditions.density).toBeCloseTo(998.94, 1)
  // nozzle 50 mm above still water, and the water a little below the deck
  expect(loading.thrustLine.height).toBeGreaterThan(0.12)
  expect(loading.thrustLine.height).toBeLessThan(0.24)
})

test('what drag carries is the mass and its centre, the liquid in the tank once', () => {
  const w = carriedOn(read()).whole
  const fuel = 5.8 * 0.749
  expect(w.x).toBeCloseTo(
    (34 * 1.12 + 13.5 * 0.72 + 7.8 * 0.22 + (1.6 + fuel) * 1.45 + 3.2 * 1.6) / (60.1 + fuel),
    9,
  )
})

const ids = (craft: ReturnType<typeof read>, top?: number) => hullDragFindings(craft, top).map((f) => f.id)

test('every finding has a sentence, a standing and a source, and its numbers are finite', () => {
  for (const f of hullDragFindings(read(), 9)) {
    expect(f.says).toMatch(/^[A-Z].*\.$/)
    expect(f.says).not.toMatch(/NaN|undefined|Infinity/)
    expect(f.sources.length).toBeGreaterThan(0)
    for (const x of [f.value, f.low, f.high]) if (x !== undefined) expect(Number.isFinite(x)).toBe(true)
  }
})

test('a rider well aft is told to move forward, and one in place is not', () => {
  const aft = hullDragFindings(read((t) => t.replace('position: 0.95 m', 'position: 0.65 m'))).find(
    (f) => f.id === 'hull.rider-place',
  )!
  expect(aft.standing).toBe('watch')
  expect(aft.says).toMatch(/Moving 20 cm forward saves \d+ N/)
  const forward = hullDragFindings(read((t) => t.replace('position: 0.95 m', 'position: 1.35 m'))).find(
    (f) => f.id === 'hull.rider-place',
  )!
  expect(forward.standing).toBe('good')
})

test('a pond of 0.6 m is flagged shallow, one of 5 m is not', () => {
  expect(ids(read((t) => t.replace('depth: 1.8 m (guess)', 'depth: 0.6 m')))).toContain('hull.shallow')
  expect(ids(read((t) => t.replace('depth: 1.8 m (guess)', 'depth: 5 m')))).not.toContain('hull.shallow')
})

test('an intake far forward runs dry at speed', () => {
  expect(
    ids(
      read((t) => t.replace('front: 0.62 m', 'front: 1.5 m')),
      10,
    ),
  ).toContain('hull.intake-dry')
  expect(
    ids(
      read((t) => t.replace('front: 0.62 m', 'front: 0.4 m')),
      6,
    ),
  ).not.toContain('hull.intake-dry')
})

test('a load the hull cannot carry makes the drag unknown', () => {
  expect(ids(read((t) => t.replace('mass: 34 kg ±1.5', 'mass: 600 kg')))).toEqual(['hull.drag-unknown'])
})

test('a file without weights is answered with a usual mass, and says so', () => {
  const bare = read((t) => t.replace(/weights:[\s\S]*/, 'weights: []\n'))
  expect(ids(bare)).toContain('hull.weights-assumed')
  expect(ids(read())).not.toContain('hull.weights-assumed')
})
