import { readFileSync } from 'node:fs'
import fc from 'fast-check'
import { expect, test } from 'vitest'
import { type Craft, quantitiesOf, readCraft, whatIf } from '../../craft/index.ts'
import { leadsTo } from '../decisions.ts'
import { lookAt } from '../look.ts'
import { metricLook } from '../push/shown.ts'
import { craftPicture } from './craftPicture.ts'
import { numbered, numbersOf } from './numbered.ts'
import { placeOnCraft } from './placeOnCraft.ts'

const demo = (name: string): Craft =>
  readCraft(readFileSync(`${import.meta.dirname}/../../../demo/${name}.yaml`, 'utf8')).craft!
const teal = demo('teal')
const sandpiper = demo('sandpiper')
const x = (craft: Craft, path: string) => placeOnCraft(craft, path)!.at[0]

test('what has a place in the file is there', () => {
  expect(placeOnCraft(teal, 'openings.2.at')!.at).toEqual([0, 0.26, 0.19])
  expect(x(teal, 'weights.4.mass')).toBe(2.1)
  expect(x(teal, 'tanks.0.filled')).toBe(1.7)
  expect(x(teal, 'foam.0')).toBeCloseTo(2.375)
  expect(x(teal, 'compartments.1')).toBeCloseTo(2.125)
  expect(x(teal, 'rider.mass')).toBe(1.15)
})

test('along the drive line: nozzle at the transom, then rotor, drive and engines, the front one in front of the rear one', () => {
  const line = ['jet.nozzle.bore', 'jet.rotor.pitch', 'drive.ratio', 'engines.1.power', 'engines.0.power']
  const at = line.map((path) => x(teal, path))
  expect(at).toEqual([...at].sort((a, b) => a - b))
  expect(new Set(at).size).toBe(at.length)
  expect(at[0]).toBe(0)
})

test('a bay is at the hatch it is named like, else under the rider; a hot part between engines and outlet', () => {
  expect(x(teal, 'deck.bays.1.skin')).toBe(1.05)
  expect(x(teal, 'deck.bays.0.skin')).toBe(1.15)
  const hot = x(teal, 'hot parts.0.guard')
  expect(hot).toBeGreaterThan(0)
  expect(hot).toBeLessThan(x(teal, 'engines.0'))
})

test('what is nowhere on board has no place', () => {
  for (const path of ['place.depth', 'wants', 'log', 'nonsense', ''])
    expect(placeOnCraft(teal, path)).toBeUndefined()
})

test('whatever the measures, every place is a number, and the numbers stay on the sheet', () => {
  const paths = Array.from(quantitiesOf(sandpiper), (q) => q.path)
  fc.assert(
    fc.property(
      fc.constantFrom(
        'hull.length',
        'hull.beam',
        'rider.position',
        'rider.height',
        'jet.intake.front',
        'jet.duct.length',
      ),
      fc.double({ min: 0.1, max: 6, noNaN: true }),
      (path, value) => {
        const craft = whatIf(sandpiper, { [path]: value })
        const places = paths.flatMap((p) => placeOnCraft(craft, p) ?? [])
        expect(places.length).toBeGreaterThan(50)
        for (const { at } of places) expect(at.every(Number.isFinite)).toBe(true)
        const numbers = places.slice(0, 9).map((p, i) => ({ n: i + 1, ...p }))
        const sheet = craftPicture(craft, { ...metricLook, width: 94 }, numbers)
        expect(sheet.spots).toHaveLength(9)
        for (const s of sheet.spots!) {
          expect(s.y - s.r).toBeGreaterThan(0)
          expect(s.y + s.r).toBeLessThan(sheet.height)
        }
      },
    ),
    { numRuns: 60 },
  )
})

test('decisions keep their numbers; each leads to an input or a finding, and nearly all have a place on board', () => {
  const { decisions, findings } = lookAt(sandpiper)
  const list = numbered(sandpiper, decisions, findings)
  expect(list.map((d) => d.n)).toEqual(decisions.map((_, i) => i + 1))
  const pitch = list.find((d) => d.decision.id === 'impeller')!
  expect(leadsTo(pitch.decision, findings)).toEqual({ question: 'push', to: 'jet.rotor.pitch' })
  expect(pitch.places.map((p) => p.at[0])).toEqual([x(sandpiper, 'jet.rotor.pitch')])
  const swamped = list.find((d) => d.decision.id === 'float.swamped')!
  expect(leadsTo(swamped.decision, findings)).toEqual({ question: 'float', to: 'finding:float.swamped' })
  expect(list.filter((d) => d.places.length > 0).length).toBeGreaterThan(0.75 * list.length)
  expect(numbersOf(list).length).toBeGreaterThanOrEqual(list.length * 0.75)
})

test('where there is room for few, the first decisions have it and the changes that buy most, each under its own number', () => {
  const { decisions, findings } = lookAt(sandpiper)
  const all = numbered(sandpiper, decisions, findings)
  const few = numbered(sandpiper, decisions, findings, 5)
  expect(few).toHaveLength(5)
  for (const one of few) expect(one).toEqual(all.find((a) => a.n === one.n))
  const buying = decisions.filter((d) => d.gain).slice(0, 2)
  expect(buying.map((d) => d.id)).toContain('impeller')
  for (const d of buying) expect(few.some((one) => one.decision === d)).toBe(true)
  expect(few.slice(0, 3).map((one) => one.n)).toEqual([1, 2, 3])
})
