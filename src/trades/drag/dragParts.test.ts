import fc from 'fast-check'
import { expect, test } from 'vitest'
import { airDrag, riderDragArea, stances } from './air.ts'
import { blountFoxMultiplier, savitskyHighSpeedLift, shufordLift } from './corrections.ts'
import { closeTransom, michell, type Offsets, wigley, wigleySurface } from './michell.ts'
import { celanoLimit, chartLimit, porpoisingLimit } from './porpoising.ts'
import { whiskerSpray } from './spray.ts'

const degree = Math.PI / 180
const number = (min: number, max: number) => fc.double({ min, max, noNaN: true })

test('air drag is quadratic, a head wind adds and a tail wind above boat speed pushes', () => {
  expect(airDrag(0.65, 10)).toBeCloseTo(4 * airDrag(0.65, 5), 12)
  expect(airDrag(0.65, 5, 1.225, 3)).toBeCloseTo(airDrag(0.65, 8), 12)
  expect(airDrag(0.65, 5, 1.225, -8)).toBeCloseTo(-airDrag(0.65, 3), 12)
})

test('a lower stance has less drag area and a lower one, and a bigger person more', () => {
  expect(stances.crouching.dragArea).toBeLessThan(stances.standing.dragArea)
  expect(stances.prone.dragArea).toBeLessThan(stances.kneeling.dragArea)
  expect(stances.prone.drag).toBeLessThan(stances.standing.drag)
  expect(riderDragArea('standing', 1.75, 80)).toBeCloseTo(0.65, 12)
  expect(riderDragArea('standing', 1.9, 95)).toBeGreaterThan(0.7)
})

test('spray is nil below 5° of deadrise and beyond 80°, has no step there, and never exceeds a small part of ½ρV²b²', () => {
  expect(whiskerSpray(8, 0.7, 4 * degree, 4 * degree, 999, 1.1e-6).drag).toBe(0)
  fc.assert(
    fc.property(number(5, 14), number(0, 0.5), number(0.03, 0.25), (V, deadrise, trim) => {
      const at = (d: number) => whiskerSpray(V, 0.7, d, trim, 999, 1.1e-6).drag
      expect(Math.abs(at(deadrise))).toBeLessThan(0.01 * 0.5 * 999 * V * V * 0.49)
      expect(Math.abs(at(deadrise + 1e-6) - at(deadrise))).toBeLessThan(0.05)
    }),
  )
})

test('spray thrown forward pushes: its direction passes 90° once the trim is steep for the deadrise', () => {
  expect(whiskerSpray(9, 0.7, 20 * degree, 3 * degree, 999, 1.1e-6).drag).toBeGreaterThan(0)
  expect(whiskerSpray(9, 0.7, 15 * degree, 11 * degree, 999, 1.1e-6).drag).toBeLessThan(0)
})

test('Savitsky and Shuford agree within 15 % over aspect 0.25 to 1 and trim 4 to 8°', () => {
  fc.assert(
    fc.property(number(0.25, 1), number(4, 8), (aspect, trim) => {
      const ratio = savitskyHighSpeedLift(aspect, trim * degree) / shufordLift(aspect, trim * degree, 0)
      expect(ratio).toBeGreaterThan(0.85)
      expect(ratio).toBeLessThan(1.05)
    }),
  )
})

test('the Blount–Fox multiplier dies out at high speed', () => {
  fc.assert(
    fc.property(number(0.5, 2), (x) => {
      expect(blountFoxMultiplier(x, 6)).toBeCloseTo(0.98, 3)
    }),
  )
})

test('the porpoising limit rises with deadrise and load, and is the lower of two fits', () => {
  fc.assert(
    fc.property(number(0.14, 0.34), number(5 * degree, 19 * degree), (x, deadrise) => {
      expect(celanoLimit(x + 0.01, deadrise)).toBeGreaterThan(celanoLimit(x, deadrise))
      expect(chartLimit(x, deadrise + 0.01)).toBeGreaterThan(chartLimit(x, deadrise))
      expect(porpoisingLimit(x, deadrise)).toBe(Math.min(celanoLimit(x, deadrise), chartLimit(x, deadrise)))
    }),
  )
})

test('chartLimit is held outside its range of 0.13 to 0.35', () => {
  expect(chartLimit(0.05, 0.1)).toBe(chartLimit(0.13, 0.1))
  expect(chartLimit(0.6, 0.1)).toBe(chartLimit(0.35, 0.1))
})

const speedAt = (Fn: number) => Fn * Math.sqrt(9.80665 * 10)

test('Michell resistance is never negative and does not change when the range and steps of its integral double', () => {
  const hull = wigley(10, 1, 0.625, 60, 16)
  for (const Fn of [0.2, 0.3, 0.5, 0.8]) {
    const R = michell(hull, speedAt(Fn), 1000)
    expect(R).toBeGreaterThan(0)
    expect(michell(hull, speedAt(Fn), 1000, 1600, 10) / R).toBeCloseTo(1, 4)
  }
})

test('Michell resistance converges with the square of the table spacing', () => {
  const at = (n: number) => michell(wigley(10, 1, 0.625, 10 * n, 3 * n), speedAt(0.45), 1000)
  const [a, b, c] = [at(3), at(6), at(12)]
  expect((a - b) / (b - c)).toBeGreaterThan(3.4)
  expect((a - b) / (b - c)).toBeLessThan(4.6)
})

test('Michell resistance grows with the square of the beam, and not at all from turning the hull round', () => {
  const hull = wigley(10, 1, 0.625, 40, 12)
  const wide = wigley(10, 2, 0.625, 40, 12)
  expect(michell(wide, speedAt(0.4), 1000) / michell(hull, speedAt(0.4), 1000)).toBeCloseTo(4, 9)
  const wedge: Offsets = {
    ...hull,
    half: hull.half.map((y, i) => y * (1 + hull.x[Math.floor(i / 13)]! / 20)),
  }
  const turned: Offsets = {
    ...hull,
    half: Float64Array.from(wedge.half, (_, i) => wedge.half[(40 - Math.floor(i / 13)) * 13 + (i % 13)]!),
  }
  expect(michell(turned, speedAt(0.4), 1000) / michell(wedge, speedAt(0.4), 1000)).toBeCloseTo(1, 9)
})

test('closeTransom adds a wake that ends at nothing and meets the hull', () => {
  const full = wigley(10, 1, 0.625, 40, 4)
  const cut: Offsets = { x: full.x.slice(15), z: full.z, half: full.half.slice(15 * 5) }
  const closed = closeTransom(cut, 0.8)
  expect(closed.half[0]).toBe(0)
  expect(closed.half[12 * 5]).toBe(cut.half[0])
  expect(closed.x[0]).toBeCloseTo(cut.x[0]! - 0.8, 12)
  expect(michell(closed, speedAt(0.5), 1000)).toBeGreaterThan(0)
})

test('wigleySurface tends to both sides of the centre plane as the beam goes to nothing', () => {
  expect(wigleySurface(10, 1e-6, 0.625, 20)).toBeCloseTo(12.5, 6)
})
