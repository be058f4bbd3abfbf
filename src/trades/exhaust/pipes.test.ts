import fc from 'fast-check'
import { expect, test } from 'vitest'
import {
  beyondRoom,
  canBeMade,
  lengthOfPipe,
  makeable,
  type PipeShape,
  pipeOfShape,
  roundedPipe,
  shapeOfPipe,
  stockBore,
  tubeBores,
} from './pipeShape.ts'
import { searchPipe, steps, type Turned, turned } from './pipeSpace.ts'
import { proportionedPipe, taperedPipe } from './proportions.ts'
import { boresToTry, stingerRisk } from './stinger.ts'
import { classes, soundSpeed, tunedLength, tunedRotation } from './tuning.ts'

const num = (min: number, max: number) => fc.double({ min, max, noNaN: true })
const shape: PipeShape = {
  flange: 0.029,
  header: 0.12,
  headerEnd: 0.031,
  diffuser: 0.37,
  horn: 1.5,
  belly: 0.09,
  bellyBore: 0.08,
  baffle: 0.21,
  stingerBore: 0.019,
  stinger: 0.19,
}
const tunedOf = (s: PipeShape) => s.header + s.diffuser + s.belly + s.baffle

test('tuned length and tuned rotation undo each other', () => {
  fc.assert(
    fc.property(num(2, 3.7), num(50, 250), num(250, 1000), (open, rotation, T) => {
      const c = soundSpeed(T)
      expect(tunedRotation(open, tunedLength(open, rotation, c), c)).toBeCloseTo(rotation, 8)
    }),
  )
})

test('a proportioned pipe has no steps, is as long as asked, and scales with its length and port', () => {
  fc.assert(
    fc.property(
      num(0.4, 1.4),
      num(0.018, 0.045),
      fc.constantFrom(...classes),
      fc.constantFrom(2, 3),
      num(1, 2),
      (L, d, kind, stages, horn) => {
        const pipe = proportionedPipe({
          tunedLength: L,
          portDiameter: d,
          kind,
          stages: stages as 2 | 3,
          horn,
        })
        const { segments } = pipe
        for (let i = 1; i < segments.length; i++) expect(segments[i]!.d0).toBeCloseTo(segments[i - 1]!.d1, 12)
        expect(segments.reduce((sum, s) => sum + s.length, 0)).toBeCloseTo(L, 9)
        expect(segments[segments.length - 1]!.d1).toBeCloseTo(pipe.stinger.bore, 12)
        const twice = proportionedPipe({
          tunedLength: 2 * L,
          portDiameter: 2 * d,
          kind,
          stages: stages as 2 | 3,
          horn,
        })
        expect(twice.segments[1]!.d1).toBeCloseTo(2 * segments[1]!.d1, 9)
      },
    ),
  )
})

test('pipes of no length or port are refused by name, and tapers that leave no belly', () => {
  expect(() => proportionedPipe({ tunedLength: 0, portDiameter: 0.03, kind: 'road' })).toThrow(/tunedLength/)
  expect(() => proportionedPipe({ tunedLength: 1, portDiameter: Number.NaN, kind: 'road' })).toThrow(
    /portDiameter/,
  )
  expect(() => taperedPipe({ tunedLength: 0.3, portDiameter: 0.03 })).toThrow(/no belly/)
})

test('a shape made into a pipe has no steps and reads back as the same shape', () => {
  const pipe = pipeOfShape(shape, 0.04)
  expect(pipe.segments[0]!.d0).toBe(shape.flange)
  for (let i = 1; i < pipe.segments.length; i++)
    expect(pipe.segments[i]!.d0).toBeCloseTo(pipe.segments[i - 1]!.d1, 12)
  expect(pipe.tunedLength).toBeCloseTo(0.04 + tunedOf(shape), 12)
  const back = shapeOfPipe(pipe.segments, pipe.stinger)!
  for (const key of Object.keys(shape) as (keyof PipeShape)[])
    expect(back[key], key).toBeCloseTo(shape[key], 6)
})

test('bends are laid on header and diffuser and add up to what was asked', () => {
  const pipe = pipeOfShape(shape, 0.04, 1.8)
  expect(pipe.segments.reduce((sum, s) => sum + (s.bend ?? 0), 0)).toBeCloseTo(1.8, 9)
  expect(pipe.segments[4]!.bend).toBeUndefined()
})

test('turning any number but the length leaves the tuned length alone, and turning back undoes it', () => {
  for (const name of Object.keys(steps) as Turned[]) {
    const there = turned(shape, name, 1.1)
    if (name !== 'length' && name !== 'stinger') expect(tunedOf(there), name).toBeCloseTo(tunedOf(shape), 12)
    const back = turned(there, name, 1 / 1.1)
    for (const key of Object.keys(shape) as (keyof PipeShape)[])
      expect(back[key], `${name} ${key}`).toBeCloseTo(shape[key], 9)
  }
})

test('makeable sizes lie on their grids within half a step and are makeable again unchanged', () => {
  fc.assert(
    fc.property(
      num(0.03, 0.3),
      num(0.1, 0.5),
      num(0.05, 0.12),
      num(0.012, 0.03),
      (header, diffuser, bellyBore, stingerBore) => {
        const m = makeable({ ...shape, header, diffuser, bellyBore, stingerBore })
        expect(Math.abs(m.header - header)).toBeLessThanOrEqual(0.5001e-3)
        expect(Math.abs(m.bellyBore - bellyBore)).toBeLessThanOrEqual(0.2501e-3)
        expect(tubeBores).toContain(m.stingerBore)
        expect(makeable(m)).toEqual(m)
      },
    ),
  )
})

test('the nearest tube that is sold is the nearest', () => {
  expect(stockBore(0.0191)).toBeCloseTo(0.019, 9)
  for (const b of tubeBores) expect(stockBore(b)).toBe(b)
})

test('a pipe that fits its room stands out by nothing; a longer or wider one by its part', () => {
  const pipe = pipeOfShape(shape, 0.04)
  const room = { length: lengthOfPipe(pipe), diameter: 0.08, bend: 0, given: true }
  expect(beyondRoom(pipe, room)).toBeCloseTo(0, 9)
  expect(beyondRoom(pipe, { ...room, length: room.length / 1.1 })).toBeCloseTo(0.1, 9)
  expect(beyondRoom(pipe, { ...room, diameter: 0.04 })).toBeCloseTo(1, 9)
})

/** a smooth worth with its best at known sizes, and a kink in it */
const aim = { bellyBore: 0.088, stingerBore: 0.021, length: 0.83 }
const worthOf = (s: PipeShape) =>
  1 -
  40 * Math.log(s.bellyBore / aim.bellyBore) ** 2 -
  20 * Math.abs(Math.log(s.stingerBore / aim.stingerBore)) -
  60 * Math.log(tunedOf(s) / aim.length) ** 2

test('the search climbs to the best it is given, through a kink, and tells the best few it met', async () => {
  const asked: PipeShape[] = []
  const r = await searchPipe(shape, async (list) => {
    asked.push(...list)
    return list.map(worthOf)
  })
  expect(r.worth).toBeGreaterThan(worthOf(shape))
  expect(r.best.bellyBore).toBeCloseTo(aim.bellyBore, 2)
  expect(Math.abs(Math.log(r.best.stingerBore / aim.stingerBore))).toBeLessThan(0.02)
  expect(r.looked).toBe(asked.length)
  expect(r.leaders[0]).toEqual({ shape: r.best, worth: r.worth })
  for (let i = 1; i < r.leaders.length; i++)
    expect(r.leaders[i]!.worth).toBeLessThanOrEqual(r.leaders[i - 1]!.worth)
  // nothing is asked twice and nothing that cannot be rolled
  expect(new Set(asked.map((s) => JSON.stringify(s))).size).toBe(asked.length)
  expect(asked.every(canBeMade)).toBe(true)
})

test('the same worths give the same answer; NaN is worth less than anything', async () => {
  const run = () => searchPipe(shape, async (list) => list.map(worthOf))
  expect(await run()).toEqual(await run())
  const lame = await searchPipe(shape, async (list) => list.map((s) => (s === shape ? 1 : Number.NaN)))
  expect(lame.best).toEqual(shape)
})

test('a search called off stops asking; a limit on looks is kept', async () => {
  let asked = 0
  const worth = async (list: readonly PipeShape[]) => {
    asked += list.length
    return list.map(worthOf)
  }
  const off = await searchPipe(shape, worth, { cancelled: () => asked > 5 })
  expect(off.cancelled).toBe(true)
  expect(asked).toBeLessThan(9)
  expect((await searchPipe(shape, worth, { most: 20 })).looked).toBeLessThanOrEqual(22)
})

test('a narrower or hotter stinger is never less of a risk', () => {
  const grave = { good: 0, watch: 1, stop: 2 }
  fc.assert(
    fc.property(num(0.012, 0.03), num(1e-4, 0.005), num(800, 1100), num(0, 60), (bore, less, t, hotter) => {
      const at = (b: number, T: number) =>
        grave[stingerRisk({ bore: b, port: 0.029, exhaustT: T, exhaustTNow: 900, inside: 9e3 }).risk]
      expect(at(bore - less, t)).toBeGreaterThanOrEqual(at(bore, t))
      expect(at(bore, t + hotter)).toBeGreaterThanOrEqual(at(bore, t))
    }),
  )
})

test('stinger bores to try rise, hold the present one once and lie about the port', () => {
  const list = boresToTry(0.028, 0.0193)
  expect(list).toEqual([...list].sort((a, b) => a - b))
  expect(list.filter((b) => b === 0.0193)).toHaveLength(1)
  expect(list.length).toBeGreaterThan(5)
})

test('a rounded pipe has whole millimetres and half ones only, still without steps, and stays as it is when rounded again', () => {
  const pipe = roundedPipe(pipeOfShape(makeable({ ...shape, diffuser: 0.447 }), 0.04))
  for (const [i, s] of pipe.segments.entries()) {
    expect(s.length * 1000).toBeCloseTo(Math.round(s.length * 1000), 9)
    expect(s.d1 * 2000).toBeCloseTo(Math.round(s.d1 * 2000), 9)
    if (i > 0) expect(s.d0).toBe(pipe.segments[i - 1]!.d1)
  }
  expect(pipe.tunedLength).toBeCloseTo(0.04 + pipe.segments.reduce((sum, s) => sum + s.length, 0), 12)
  expect(roundedPipe(pipe)).toEqual(pipe)
})
