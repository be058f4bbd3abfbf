import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { chipInJet, settledShare, speedAtShare, torqueAtMixture } from './chipInJet.ts'
import { type ChipForm, chipBlocks, chokeFactor, jetFlow, jetFor, stripThatBlocks } from './jetFlow.ts'

const forms: ChipForm[] = ['strip', 'edge', 'round']
const width = fc.double({ min: 0, max: 1, noNaN: true })

describe('chipBlocks', () => {
  test.each(forms)(
    'a %s shuts nothing when it has no width, all when it is as wide as the jet, and more the wider it is',
    (form) => {
      expect(chipBlocks(0, form)).toBeCloseTo(0, 12)
      expect(chipBlocks(1, form)).toBeCloseTo(1, 12)
      fc.assert(
        fc.property(width, width, (a, b) => {
          const [x, y] = a < b ? [a, b] : [b, a]
          expect(chipBlocks(x, form)).toBeLessThanOrEqual(chipBlocks(y, form) + 1e-12)
        }),
      )
    },
  )
  test('two edge chips that meet shut what one whole jet is', () => {
    fc.assert(
      fc.property(width, (k) => {
        expect(chipBlocks(k, 'edge') + chipBlocks(1 - k, 'edge')).toBeCloseTo(1, 9)
      }),
    )
  })
  test('a strip is what two edge chips leave over', () => {
    fc.assert(
      fc.property(width, (k) => {
        expect(chipBlocks(k, 'strip') + 2 * chipBlocks((1 - k) / 2, 'edge')).toBeCloseTo(1, 9)
      }),
    )
  })
  test('the width of the strip that shuts a share is found again', () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 0.95, noNaN: true }), (k) => {
        expect(stripThatBlocks(chipBlocks(k, 'strip'))).toBeCloseTo(k, 6)
      }),
    )
  })
  test('a width that is no number is refused', () => {
    expect(() => chipBlocks(Number.NaN, 'strip')).toThrow(/k: NaN/)
  })
})

describe('jets', () => {
  test('the flow goes with the square of the bore and the root of the pressure; nothing drawn, nothing flows', () => {
    const one = jetFlow(0.8e-3, 2e3, 745)
    expect(jetFlow(1.6e-3, 2e3, 745) / one).toBeCloseTo(4, 12)
    expect(jetFlow(0.8e-3, 8e3, 745) / one).toBeCloseTo(2, 12)
    expect(jetFlow(0.8e-3, 0, 745)).toBe(0)
    expect(jetFlow(0.8e-3, -5, 745)).toBe(0)
  })
  test('the jet for a flow passes that flow; under no pressure there is none', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 1e-5, max: 1e-2, noNaN: true }),
        fc.double({ min: 100, max: 1e4, noNaN: true }),
        (m, p) => {
          expect(jetFlow(jetFor(m, p, 745), p, 745) * 745).toBeCloseTo(m, 12)
        },
      ),
    )
    expect(() => jetFor(1e-3, 0, 745)).toThrow(/pressure/)
  })
  test('the choke brings back the flow that the chip took: the depression grows by 1/(1 − b)²', () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 0.9, noNaN: true }), (b) => {
        const clean = jetFlow(1e-3, 2e3, 745)
        expect((1 - b) * jetFlow(1e-3, 2e3 * chokeFactor(b), 745)).toBeCloseTo(clean, 12)
      }),
    )
    expect(chokeFactor(1)).toBe(Number.POSITIVE_INFINITY)
  })
})

const engines = [
  { name: 'front', lambda: 0.87 },
  { name: 'rear', lambda: 0.9 },
]
/** engines of the same torque at every speed, and an impeller that asks for it at 100 rev/s */
const rotation = Array.from({ length: 61 }, (_, i) => 2 * i)
const asked = rotation.map((n) => 10 * (n / 100) ** 2)
const curve = {
  speed: [0, 4, 5, 8, 12, 14],
  thrust: [600, 500, 480, 400, 300, 250],
  drag: [0, 150, 210, 220, 280, 300],
  water: [30, 30, 30, 30, 30, 30],
  rotation,
  engine: rotation.map(() => 10),
  tiedUp: asked,
  atTop: asked,
}

describe('chipInJet', () => {
  test('without a chip nothing changes', () => {
    const e = chipInJet({ k: 0, form: 'strip', engine: 1, engines, curve })
    expect(e).toMatchObject({ blocked: 0, lambda: 0.9, fullThrottle: true, mostAir: 1, choke: 1 })
    expect(e.torque).toBeCloseTo(1, 2)
    expect(e.topSpeed).toBeCloseTo(e.topSpeedBefore!, 1)
  })
  test('a wider chip never gives more torque, more air or more speed, from any mixture', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.7, max: 1.05, noNaN: true }),
        fc.double({ min: 0, max: 0.9, noNaN: true }),
        fc.double({ min: 0, max: 0.1, noNaN: true }),
        fc.constantFrom(...forms),
        (lambda, k, more, form) => {
          const at = (w: number) =>
            chipInJet({ k: w, form, engine: 0, engines: [{ name: 'a', lambda }], curve })
          const [less, wide] = [at(k), at(Math.min(0.99, k + more))]
          expect(wide.mostAir).toBeLessThanOrEqual(less.mostAir + 1e-12)
          expect(wide.lambda).toBeGreaterThanOrEqual(less.lambda - 1e-12)
          // set rich, a little leaner pulls better: from the best mixture on it only falls
          if (less.lambda > 0.87) expect(wide.torque).toBeLessThanOrEqual(less.torque + 2e-3)
        },
      ),
    )
  })
  test('in one of two engines it costs about half of what it costs alone, and swarf reaches both', () => {
    const e = chipInJet({ k: 0.25, form: 'strip', engine: 0, engines, curve })
    expect(1 - e.together).toBeCloseTo((1 - e.torque) / 2, 12)
    expect(e.reaches).toEqual(['front', 'rear'])
    expect(e.topSpeed!).toBeLessThan(e.topSpeedBefore!)
  })
  test('a jet that is wholly shut gives nothing', () => {
    const e = chipInJet({ k: 1, form: 'strip', engine: 0, engines: [engines[0]!], curve })
    expect(e).toMatchObject({ torque: 0, mostAir: 0, fullThrottle: false, topSpeed: 0 })
  })
  test('an engine that is not there is refused by name', () => {
    expect(() => chipInJet({ k: 0.1, form: 'strip', engine: 2, engines })).toThrow(
      /engine: 2, expected 0 to 1/,
    )
  })
})

describe('speedAtShare', () => {
  test('it is where the thrust that is left first meets the drag: below the hump when it does not get over', () => {
    expect(speedAtShare(curve, 1)).toBeGreaterThan(12)
    const stuck = speedAtShare({ ...curve, drag: [0, 150, 310, 220, 280, 300] }, 0.6)
    expect(stuck).toBeGreaterThan(4)
    expect(stuck).toBeLessThan(5)
  })
  test('no thrust, no speed; a table of nothing, or one that ends with thrust over, gives no number', () => {
    expect(speedAtShare(curve, 0)).toBe(0)
    expect(speedAtShare({ ...curve, speed: [], thrust: [], drag: [] }, 1)).toBeNaN()
    expect(speedAtShare({ ...curve, drag: curve.drag.map((d) => d / 2) }, 1)).toBeNaN()
    const gaps = { ...curve, speed: [1, 2], thrust: [Number.NaN, Number.NaN], drag: [1, 2] }
    expect(speedAtShare(gaps, 1)).toBeNaN()
  })
})

describe('settledShare', () => {
  test('engines of even torque settle at the root of the share they have, whatever it is', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.05, max: 1, noNaN: true }), (share) => {
        expect(settledShare(curve, 0.5, share)).toBeCloseTo(Math.sqrt(share), 2)
      }),
    )
  })
  test('engines with a valley in their curve fall further than the share they lose', () => {
    const peaky = { ...curve, engine: rotation.map((n) => (n < 80 ? 7 : 10.5)) }
    expect(settledShare(peaky, 0, 1)).toBe(1)
    expect(settledShare(peaky, 0, 0.8)).toBeLessThan(0.78)
  })
  test('engines that never give what is asked stand still; without a table it says nothing: all of it', () => {
    expect(settledShare({ ...curve, tiedUp: asked.map((t) => t + 20), atTop: [] }, 0, 0.5)).toBe(1)
    expect(settledShare({ ...curve, tiedUp: asked.map((t) => t + 6), atTop: [] }, 0, 0.5)).toBe(0)
    expect(settledShare({ ...curve, rotation: [] }, 0, 0.5)).toBe(1)
  })
})

test('torque over the mixture has its top at 0.87 and falls both ways', () => {
  expect(torqueAtMixture(0.87)).toBe(1)
  for (const x of [0.05, 0.1, 0.2, 0.3]) {
    expect(torqueAtMixture(0.87 + x)).toBeLessThan(torqueAtMixture(0.87 + x - 0.05))
    expect(torqueAtMixture(0.87 - x)).toBeLessThan(torqueAtMixture(0.87 - x + 0.05))
  }
})
