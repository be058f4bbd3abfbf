import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { readGauge } from './fitPieces.ts'
import { gasketPress, screwSpacing } from './gasketFlat.ts'
import { chooseRing, closingForce, drawnGroove, isNoRing } from './ringChoice.ts'
import { freeRing, ringOf, standardRings } from './ringSizes.ts'
import { closingLoad, glandState, thinned } from './sealGland.ts'
import { leakAcross, lipPress } from './sealLeak.ts'
import { swellOf } from './sealMaterials.ts'

const mm = 1e-3
const printer = { kind: 'filament' } as const

describe('rings of the table', () => {
  test('grow with their number within a section', () => {
    for (let i = 1; i < standardRings.length; i++) {
      const [a, b] = [standardRings[i - 1]!, standardRings[i]!]
      if (Math.abs(a.section - b.section) < 1e-9) expect(b.inside, b.name).toBeGreaterThan(a.inside)
    }
  })
  test('are found by their number however it is written; another is told', () => {
    expect(ringOf('214')).toBe(ringOf('AS568-214'))
    expect(ringOf(' -14 ').name).toBe('AS568-014')
    expect(() => ringOf('500')).toThrow(/^size: "500" is not one of the rings/)
    expect(() => freeRing(25 * mm, 30 * mm)).toThrow(/^section: 30 mm is outside 0.5 mm to 20 mm/)
    expect(() => freeRing(0, 3 * mm)).toThrow(/^inside: 0 mm/)
  })
})

describe('a ring in its groove', () => {
  const rings = fc.constantFrom(...standardRings)
  const doubts = fc.record({
    seatDoubt: fc.double({ min: 0, max: 0.2 * mm, noNaN: true }),
    depthDoubt: fc.double({ min: 0, max: 0.1 * mm, noNaN: true }),
    widthDoubt: fc.double({ min: 0, max: 0.2 * mm, noNaN: true }),
  })
  const kinds = fc.constantFrom('face' as const, 'plug' as const)
  test('has ends that hold its nominal squeeze, fill and stretch, the wider the more is in doubt', () => {
    fc.assert(
      fc.property(
        rings,
        kinds,
        doubts,
        fc.double({ min: 0, max: 0.3, noNaN: true }),
        (ring, kind, d, swell) => {
          const { depth, width } = drawnGroove(kind, ring, swell, printer)
          const seat = kind === 'face' ? ring.inside + 2 * ring.section : ring.inside * 1.02
          const at = (k: number) =>
            glandState(
              ring,
              {
                kind,
                seat,
                depth,
                width,
                seatDoubt: k * d.seatDoubt,
                depthDoubt: k * d.depthDoubt,
                widthDoubt: k * d.widthDoubt,
              },
              swell,
            )
          const [sharp, rough] = [at(0.2), at(1)]
          for (const key of ['squeeze', 'fill', 'stretch'] as const) {
            expect(rough[key].low).toBeLessThanOrEqual(rough[key].value + 1e-12)
            expect(rough[key].high).toBeGreaterThanOrEqual(rough[key].value - 1e-12)
            expect(rough[key].high - rough[key].low).toBeGreaterThanOrEqual(
              sharp[key].high - sharp[key].low - 1e-12,
            )
          }
        },
      ),
    )
  })
  test('a drawn groove never fills, swollen and at the worst of what a printer does', () => {
    fc.assert(
      fc.property(rings, kinds, fc.double({ min: 0, max: 0.4, noNaN: true }), (ring, kind, swell) => {
        const groove = drawnGroove(kind, ring, swell, printer)
        const seat = kind === 'face' ? ring.inside + 2 * ring.section : ring.inside * 1.02
        const { fill, squeeze } = glandState(ring, { kind, seat, ...groove }, swell)
        expect(fill.high).toBeLessThanOrEqual(0.93)
        expect(squeeze.value).toBeGreaterThan(0.1)
        expect(squeeze.value).toBeLessThan(0.3)
      }),
    )
  })
  test('a deeper groove squeezes less and fills less; a stretched ring thins by half its stretch', () => {
    const ring = ringOf('214')
    const at = (depth: number) =>
      glandState(ring, {
        kind: 'plug',
        seat: 25.4 * mm,
        depth,
        width: 4.9 * mm,
        seatDoubt: 0,
        depthDoubt: 0,
        widthDoubt: 0,
      })
    expect(at(3 * mm).squeeze.value).toBeLessThan(at(2.7 * mm).squeeze.value)
    expect(at(3 * mm).fill.value).toBeLessThan(at(2.7 * mm).fill.value)
    const big = freeRing(200 * mm, 3.53 * mm)
    expect(thinned(big, 208 * mm) / big.section).toBeCloseTo(1 - 0.5 * 0.04, 2)
  })
  test('no groove is told', () => {
    const ring = ringOf('214')
    const none = {
      kind: 'plug',
      seat: 25 * mm,
      depth: 0,
      width: 4.9 * mm,
      seatDoubt: 0,
      depthDoubt: 0,
      widthDoubt: 0,
    } as const
    expect(() => glandState(ring, none)).toThrow(/^depth: 0 m/)
  })
  test('takes the more force the more it is squeezed, none at none', () => {
    expect(closingLoad(3.53 * mm, 0)).toBe(0)
    for (let c = 0.05; c < 0.5; c += 0.05)
      expect(closingLoad(3.53 * mm, c)).toBeGreaterThan(closingLoad(3.53 * mm, c - 0.05))
    expect(() => closingLoad(3.53 * mm, 0.7)).toThrow(/^squeeze: 0.7/)
  })
})

describe('the choice of a ring', () => {
  const place = { kind: 'face', wall: 0.2 * mm, swell: 0.1, printer } as const
  test('always lies within the room it was given', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 5, max: 200, noNaN: true }),
        fc.double({ min: 2, max: 40, noNaN: true }),
        (inner, more) => {
          const got = chooseRing({ ...place, inner: inner * mm, outer: (inner + more) * mm })
          if (isNoRing(got)) {
            expect(Number.isFinite(got.limit)).toBe(true)
            return
          }
          const { seat, width } = got.gland
          expect(seat).toBeLessThanOrEqual((inner + more) * mm)
          expect(seat - 2 * width).toBeGreaterThanOrEqual(inner * mm - 1e-5)
          expect(Math.abs(got.state.stretch.value)).toBeLessThan(0.06)
        },
      ),
    )
  })
  test('round a plug stretches its ring by no more than a twentieth', () => {
    for (let bore = 12; bore < 150; bore += 3.7) {
      const got = chooseRing({ ...place, kind: 'plug', inner: 0, outer: bore * mm })
      if (isNoRing(got)) continue
      expect(got.state.stretch.value, String(bore)).toBeGreaterThan(0)
      expect(got.state.stretch.value, String(bore)).toBeLessThanOrEqual(0.05 + 1e-9)
    }
  })
  test('takes a thinner ring where little force is to be had', () => {
    const room = { ...place, inner: 130 * mm, outer: 165 * mm }
    const strong = chooseRing(room)
    const weak = chooseRing({ ...room, force: 800 })
    if (isNoRing(strong) || isNoRing(weak)) throw new Error('both go')
    expect(weak.ring.section).toBeLessThan(strong.ring.section)
    expect(closingForce(weak)).toBeLessThan(closingForce(strong))
  })
  test('with no room says which value is short, and by how much', () => {
    expect(chooseRing({ ...place, inner: 20 * mm, outer: 22 * mm })).toMatchObject({
      field: 'outer',
      value: 22 * mm,
    })
    expect(chooseRing({ ...place, inner: 22 * mm, outer: 20 * mm })).toMatchObject({
      field: 'outer',
      limit: 22 * mm,
    })
    expect(chooseRing({ ...place, inner: 20 * mm, outer: 30 * mm, ring: ringOf('341') })).toMatchObject({
      field: 'ring',
    })
  })
})

describe('seats', () => {
  const ring = { diameter: 28 * mm, section: 3.53 * mm }
  test('thinner layers and a harder squeeze leak less; fine enough ones not at all', () => {
    const leak = (squeeze: number, layer: number, kind: 'filament' | 'resin' = 'filament') =>
      leakAcross({ ...ring, squeeze }, { kind, layer: layer * mm }, 20.7e3, 0.6e-3).leak
    expect(leak(0.15, 0.2)).toBeGreaterThan(leak(0.3, 0.2))
    expect(leak(0.15, 0.3)).toBeGreaterThan(leak(0.15, 0.1))
    expect(leak(0.25, 0.05, 'resin')).toBe(0)
  })
  test('rubber swells more in petrol with ethanol than in petrol, and more when warm', () => {
    for (const m of ['FKM', 'NBR', 'HNBR'] as const) {
      expect(swellOf(m, 'petrol and ethanol', 293)).toBeGreaterThan(swellOf(m, 'petrol', 293))
      expect(swellOf(m, 'petrol', 323)).toBeGreaterThan(swellOf(m, 'petrol', 293))
    }
  })
  test('a lip presses the harder the more it is bent, and with the cube of its thickness', () => {
    const lip = { thickness: 1 * mm, length: 6 * mm, bent: 0.5 * mm, edge: 0.3 * mm, modulus: 12e6 }
    expect(lipPress({ ...lip, thickness: 2 * mm }).load / lipPress(lip).load).toBeCloseTo(8, 9)
    expect(lipPress({ ...lip, bent: 1 * mm }).pressure).toBeGreaterThan(lipPress(lip).pressure)
    expect(() => lipPress({ ...lip, bent: 3 * mm })).toThrow(/^bent/)
  })
  test('a wide thin gasket is harder than a narrow thick one, and wants screws closer', () => {
    const at = (width: number, thickness: number) =>
      gasketPress({ width, thickness, shore: 40, squeeze: 0.2 })
    expect(at(20 * mm, 2 * mm).pressure).toBeGreaterThan(at(10 * mm, 2 * mm).pressure)
    expect(at(10 * mm, 4 * mm).pressure).toBeLessThan(at(10 * mm, 2 * mm).pressure)
    expect(screwSpacing(5, 4e3, 0.1 * mm)).toBeLessThan(screwSpacing(5, 1e3, 0.1 * mm))
    expect(() => at(1 * mm, 2 * mm)).toThrow(/^width/)
    expect(() => gasketPress({ width: 0.01, thickness: 2 * mm, shore: 90, squeeze: 0.2 })).toThrow(/^shore/)
    expect(() => screwSpacing(0, 1, 1)).toThrow(/^stiffness/)
  })
})

describe('the try-piece', () => {
  const drawn = { barsDrawn: 60 * mm, holeDrawn: 12 * mm }
  test('tells scale and offset apart: a print that shrinks and has small holes gives both back', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.96, max: 1.04, noNaN: true }),
        fc.double({ min: -0.3 * mm, max: 0.8 * mm, noNaN: true }),
        fc.double({ min: 0, max: 0.4 * mm, noNaN: true }),
        (scale, offset, foot) => {
          const got = readGauge({
            ...drawn,
            barsMeasured: 60 * mm * scale,
            holeMeasured: 12 * mm * scale - offset,
            aboveMeasured: 20 * mm * scale,
            footMeasured: 20 * mm * scale + 2 * foot,
          })
          expect(got.scale).toBeCloseTo(scale, 9)
          expect(got.holeOffset).toBeCloseTo(offset, 9)
          expect(got.elephantFoot).toBeCloseTo(foot, 9)
        },
      ),
    )
  })
  test('a reading no printer gives is told', () => {
    const good = {
      ...drawn,
      barsMeasured: 60 * mm,
      holeMeasured: 11.8 * mm,
      footMeasured: 20.3 * mm,
      aboveMeasured: 20 * mm,
    }
    expect(() => readGauge({ ...good, barsMeasured: 6 * mm })).toThrow(/^barsMeasured/)
    expect(() => readGauge({ ...good, holeMeasured: 9 * mm })).toThrow(/^holeMeasured/)
    expect(() => readGauge({ ...good, footMeasured: 25 * mm })).toThrow(/^footMeasured/)
  })
})
