/** Handbook questions of the sheet itself: popping, weld shrinkage, strength. */
import { defineReckoner, type Reckoner } from '../../base/answers/reckoner.ts'
import { alloyOf, strengthOf } from './alloys.ts'
import { camberFor, flatWelding, oilCanStepRectangle, panelBuckling, weldShrinkage } from './buckling.ts'
import { alloy, out, sheet, size } from './strengthPorts.ts'

const oilCan = defineReckoner({
  id: 'oil-canning',
  title: 'When flat sheet pops',
  trade: 'strength',
  says: 'The rise of temperature at which a flat panel held at its edges pops, the stress that buckles it, and the camber that stops it.',
  inputs: [size('a', 'Long side.', { min: 0.01 }), size('b', 'Short side.', { min: 0.01 }), sheet],
  outputs: [
    out('rise', 'Sheet warmer than its frame by.', 'temperatureStep', 'K'),
    out('stress', 'Compression one way that buckles it.', 'pressure', 'MPa'),
    out('camber', 'Camber that stops it.', 'length', 'mm'),
  ],
  reckon: (g) => ({
    rise: oilCanStepRectangle(g.t, g.a, g.b),
    stress: panelBuckling(g.t, g.b),
    camber: camberFor(g.b),
  }),
  sources: [
    'S. Timoshenko and J. Gere, Theory of Elastic Stability (1961), § 9.2',
    'Camber: common practice, no source',
  ],
})

const weld = defineReckoner({
  id: 'weld-shrinkage',
  title: 'Shrinkage across a butt weld in thin sheet',
  trade: 'strength',
  says: 'How far the two sides draw together, and the residual compression at which the panel beside it goes wavy. A shop rule: half as much again either way.',
  inputs: [
    { name: 'area', says: 'Section of the weld bead.', kind: 'area', unit: 'mm²', min: 1e-7, max: 1e-3 },
    sheet,
    size('b', 'Short side of the panel beside it.', { min: 0.02 }),
  ],
  outputs: [
    out('shrinkage', 'Likely.', 'length', 'mm'),
    out('low', 'At least.', 'length', 'mm'),
    out('high', 'At most.', 'length', 'mm'),
    out('buckles', 'Compression at which the panel buckles.', 'pressure', 'MPa'),
  ],
  reckon: (g) => {
    const s = weldShrinkage(g.area, g.t)
    return { shrinkage: s.value, low: s.low, high: s.high, buckles: panelBuckling(g.t, g.b) }
  },
  sources: [
    'Shrinkage 0.1 to 0.2 of weld section over thickness: shop practice, no source',
    'S. Timoshenko and J. Gere, Theory of Elastic Stability (1961), § 9.2',
  ],
  cautions: [
    `What keeps thin sheet flat: ${flatWelding.join('; ')}.`,
    'Eyes, skin, fumes and fire: weld with a mask, gloves, air and an extinguisher; never near a tank that held petrol.',
  ],
})

const sheetStrength = defineReckoner({
  id: 'sheet-strength',
  title: 'Strength of aluminium sheet, plain and welded',
  trade: 'strength',
  says: 'Least strengths as bought and within about 25 mm of a weld, and what a service load may use.',
  inputs: [alloy],
  outputs: [
    out('yield', 'Yield, as bought.', 'pressure', 'MPa'),
    out('ultimate', 'Ultimate, as bought.', 'pressure', 'MPa'),
    out('weldedYield', 'Yield beside a weld.', 'pressure', 'MPa'),
    out('weldedUltimate', 'Ultimate beside a weld.', 'pressure', 'MPa'),
    out('service', 'Service, 0.6 of yield beside a weld.', 'pressure', 'MPa'),
    out('density', 'Density.', 'density', 'kg/m³'),
  ],
  reckon: (_, w) => {
    const a = alloyOf(w.alloy)
    const s = strengthOf(a, true)
    return {
      yield: a.yield,
      ultimate: a.ultimate,
      weldedYield: s.yield,
      weldedUltimate: s.ultimate,
      service: 0.6 * s.yield,
      density: a.density,
    }
  },
  sources: [
    'EN 485-2; ASTM B209, from memory',
    'American Bureau of Shipping, Guide for High Speed Craft, 2-5-A1 table 2',
  ],
  cautions: ['Alloys with more than 3 % magnesium (5083, 5086) are not for long spells above 65 °C.'],
})

export const sheetReckoners: readonly Reckoner[] = [oilCan, weld, sheetStrength]
