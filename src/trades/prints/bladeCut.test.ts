import fc from 'fast-check'
import { expect, test } from 'vitest'
import { type BladeCut, cutBlades } from './bladeCut.ts'
import { makeSolid } from './solids/makeSolid.ts'
import { pipeTaper, readTaper, taperThreads } from './taperThreads.ts'

const rotor: BladeCut = {
  blades: 3,
  cut: 1,
  bladeMass: 0.02,
  bladeArm: 0.042,
  mass: 0.25,
  rotation: 100,
  density: 1270,
  hole: 8e-3,
  holeArm: 17e-3,
  deepest: 60e-3,
}

test('every second blade cut off leaves an impeller even; a hole never leaves it worse; a deep enough one leaves nothing', () => {
  expect(cutBlades({ ...rotor, blades: 4, cut: 2 }).before).toBe(0)
  expect(cutBlades({ ...rotor, blades: 6, cut: 3 }).before).toBe(0)
  fc.assert(
    fc.property(
      fc.integer({ min: 2, max: 8 }),
      fc.integer({ min: 1, max: 7 }),
      fc.double({ min: 0, max: 0.1, noNaN: true }),
      (blades, cut, deepest) => {
        fc.pre(cut < blades)
        const got = cutBlades({ ...rotor, blades, cut, deepest })
        expect(got.after).toBeLessThanOrEqual(got.before)
        expect(got.after).toBeGreaterThanOrEqual(-1e-12)
        expect(cutBlades({ ...rotor, blades, cut, deepest: 1e6 }).after).toBeCloseTo(0, 9)
        // all blades but one cut off are as far out as one alone
        expect(cutBlades({ ...rotor, blades, cut: blades - 1 }).before).toBeCloseTo(
          rotor.bladeMass * rotor.bladeArm,
          12,
        )
      },
    ),
  )
})

test('blades that cannot be cut off and holes that meet the axis are refused by name', () => {
  expect(() => cutBlades({ ...rotor, cut: 3 })).toThrow(/^cut: 3 is outside 1 to 2/)
  expect(() => cutBlades({ ...rotor, hole: 0.05 })).toThrow(/^hole/)
})

test('the mesh of an impeller with a blade left away is out of balance by what one blade of it weighs and lies off', async () => {
  const chord = 0.1e-3
  const of = async (left: number) =>
    makeSolid({ shape: 'impeller', values: { blades: 3, key: 0, left } }, { chord, walls: false })
  const [whole, less] = await Promise.all([of(0), of(1)])
  const blade = whole.bodies[0]!.volume - less.bodies[0]!.volume
  const arm = less.offCentre! / blade
  // between hub and tip, as a wrapped blade's middle is
  expect(arm).toBeGreaterThan(0.008)
  expect(arm).toBeLessThan(0.06)
  const cut = cutBlades({ ...rotor, bladeMass: blade * rotor.density, bladeArm: arm })
  expect(cut.before / (less.offCentre! * rotor.density)).toBeCloseTo(1, 9)
})

test('any taper pipe thread read at both ends is called tapered and named first or second; the same read twice at one size is not', () => {
  fc.assert(
    fc.property(fc.constantFrom(...taperThreads), fc.double({ min: 0, max: 1, noNaN: true }), (t, from) => {
      const pitches = Math.max(3, Math.floor((0.8 * t.long) / t.pitch))
      const span = pitches * t.pitch
      const across = t.small + from * Math.max(0, t.long - span) * pipeTaper
      const reading = { side: 'external' as const, across, span, pitches, flanks: 2 * t.half }
      const got = readTaper(reading, across + span * pipeTaper)
      expect(got.odds).toBeGreaterThan(0.5)
      expect(got.guesses.slice(0, 2).map((g) => g.thread.name)).toContain(t.name)
      expect(readTaper(reading, across).odds).toBeLessThan(0.1)
    }),
  )
})
