/** Handbook questions beside planing: porpoising and spray. */
import { degrees, ratio, squareMetres } from '../../base/answers/portMakers.ts'
import { defineReckoner } from '../../base/answers/reckoner.ts'
import { gravity, waterAt } from '../../physics/fluid/water.ts'
import { angle, deadrise, length, mass, out, speed, temperature } from './dragPorts.ts'
import { celanoLimit, chartLimit, porpoisingLimit, porpoisingNumber } from './porpoising.ts'
import { whiskerSpray } from './spray.ts'

export const porpoising = defineReckoner({
  id: 'porpoising',
  title: 'Porpoising limit',
  trade: 'hull',
  says: 'Trim above which a planing hull starts to bounce by itself. Two readings of the same tests; hold to the lower, and stay 1.5° under it.',
  inputs: [
    speed,
    mass,
    length('beam', 'Chine beam.', 0.2, 5),
    { ...deadrise, max: (20 * Math.PI) / 180 },
    temperature,
  ],
  outputs: [
    degrees('limit', 'The lower limit.'),
    degrees('chart', 'From the 1964 chart.'),
    degrees('fit', 'From the 1998 fit.'),
    ratio('loading', 'Chart abscissa √(CL/2); the chart runs from 0.13 to 0.35.'),
  ],
  reckon: (g) => {
    const q = 0.5 * waterAt(g.temperature).density * g.speed ** 2
    const x = porpoisingNumber((g.mass * gravity) / (q * g.beam ** 2))
    if (x > 0.5) throw new RangeError(`speed: ${g.speed} m/s is below planing for this mass and beam`)
    return {
      limit: porpoisingLimit(x, g.deadrise),
      chart: chartLimit(x, g.deadrise),
      fit: celanoLimit(x, g.deadrise),
      loading: x,
    }
  },
  sources: [
    'Savitsky 1964 after Day and Haag 1952, chart reading from memory',
    'Celano 1998, Trident Scholar report 254, from memory',
  ],
})

export const spray = defineReckoner({
  id: 'spray',
  title: 'Whisker spray',
  trade: 'hull',
  says: 'Area and drag of the spray sheet ahead of the wetted bottom. Flat bottoms throw it forward and the sum has no meaning there.',
  inputs: [
    speed,
    length('beam', 'Chine beam.', 0.2, 5),
    angle('deadrise', 'Angle of the bottom to the level.', 5, 35),
    angle('trim', 'Running trim.', 0.5, 15),
    temperature,
  ],
  outputs: [
    squareMetres('area', 'True area, both sides.'),
    degrees('angle', 'Angle of the spray edge to the keel.'),
    out.drag,
  ],
  reckon: (g) => {
    const w = waterAt(g.temperature)
    const s = whiskerSpray(g.speed, g.beam, g.deadrise, g.trim, w.density, w.kinematicViscosity)
    if (s.area === 0)
      throw new RangeError(`trim: too steep for this deadrise, the spray edge is within 10° of square across`)
    return { area: s.area, angle: s.angle, drag: s.drag }
  },
  sources: ['Savitsky, DeLorme and Datla 2007, Inclusion of whisker spray drag, Marine Technology 44(1)'],
})
