/** Reckoners of silencers and of how loud an outlet is. */
import {
  celsius,
  dBA,
  gramsPerSecond,
  hertz,
  kW,
  litres,
  mm,
  pascals,
  percent,
  portOf,
} from '../../../base/answers/portMakers.ts'
import { defineReckoner, type Reckoner } from '../../../base/answers/reckoner.ts'
import { aWeight, floorAtOneMetre, harmonicPressure, levelOf, passByLimit } from '../level.ts'
import { boxLoss, boxVolume } from '../muffler.ts'
import { absorption, delanyBazley, firstCrossMode, hotResistivity, straightThroughLoss } from '../packing.ts'

const munjal = 'M. L. Munjal, Acoustics of Ducts and Mufflers (1987, 2nd ed. 2014)'
const davis = 'D. D. Davis, G. M. Stokes, D. Moore, G. L. Stevens, NACA Report 1192 (1954)'
const delany = 'M. E. Delany and E. N. Bazley, Applied Acoustics 3 (1970) 105'
const frequency = hertz('frequency', 'frequency', 10, 5000)
const temperature = celsius('temperature', 'of the gas', 250, 1200, 673.15)
const loss = portOf('level', 'dB')

/** air-like gas: sound speed of 343.2 m/s at 20 °C, from γ 1.4 and R 287 */
const gasAt = (t: number) => ({ c: Math.sqrt(1.4 * 287 * t), density: 101325 / (287 * t) })

/** Reckoners of silencers. */
export const mufflerReckoners: readonly Reckoner[] = [
  defineReckoner({
    id: 'box-loss',
    title: 'What one muffler box takes off',
    trade: 'exhaust',
    says: 'Transmission loss of an empty box by plane waves, at one frequency. Nought where the box is half a wave long; tubes reaching in by a half and a quarter of its length close most gaps. Theory without flow: real boxes fall short.',
    inputs: [
      mm('length', 'box inside', 0.02, 2),
      mm('diameter', 'box inside', 0.02, 0.6),
      mm('inlet', 'bore of the incoming tube', 0.004, 0.15),
      mm('outlet', 'bore of the leaving tube', 0.004, 0.15),
      mm('inletReach', 'how far the incoming tube stands in', 0, 1.5, 0),
      mm('outletReach', 'how far the leaving tube stands in', 0, 1.5, 0),
      frequency,
      temperature,
    ],
    outputs: [loss('loss', 'taken off'), hertz('planeTo', 'holds up to'), litres('volume', 'of the box')],
    reckon: (g) => {
      const { c, density } = gasAt(g.temperature)
      const box = {
        length: g.length,
        area: (Math.PI / 4) * g.diameter ** 2,
        inletBore: g.inlet,
        outletBore: g.outlet,
        inletReach: g.inletReach,
        outletReach: g.outletReach,
        packing: 0,
        resistivity: 15e3,
      }
      const curve = boxLoss(box, [g.frequency], c, density)
      return { loss: curve.loss[0]!, planeTo: curve.planeTo, volume: boxVolume(box) }
    },
    sources: [munjal, davis],
  }),
  defineReckoner({
    id: 'packing-loss',
    title: 'What packing round a perforated tube takes off',
    trade: 'exhaust',
    says: 'Attenuation per metre of a straight-through silencer, computed and the half of it that a design may count on. On the water packing soaks: count on empty boxes.',
    inputs: [
      mm('bore', 'of the open core', 0.005, 0.15),
      mm('outer', 'diameter over the packing', 0.01, 0.5),
      portOf('flowResistivity', 'kPa·s/m²')('resistivity', 'of the packing, cold', 500, 5e5, 15e3),
      { ...frequency, max: 1000 },
      temperature,
    ],
    outputs: [
      portOf('levelPerLength', 'dB/m')('computed', 'by the formula'),
      portOf('levelPerLength', 'dB/m')('design', 'to count on'),
      hertz('crossMode', 'holds up to'),
    ],
    reckon: (g) => {
      if (!(g.outer > g.bore)) throw new RangeError('outer: must be larger than bore')
      const t = g.temperature
      const { c, density } = gasAt(t)
      const computed = straightThroughLoss(
        {
          bore: g.bore,
          outer: g.outer,
          resistivity: hotResistivity(g.resistivity, t),
          density,
          c,
        },
        g.frequency,
      )
      return { computed, design: 0.5 * computed, crossMode: firstCrossMode(g.outer, c) }
    },
    sources: [delany, 'Two parallel media with one long wave, derived'],
  }),
  defineReckoner({
    id: 'packing-absorption',
    title: 'How much a layer of packing swallows',
    trade: 'exhaust',
    says: 'Normal-incidence absorption of a fibrous layer on a hard wall; fitted for ρf/σ of 0.01 to 1.',
    inputs: [
      mm('depth', 'of the layer', 0.002, 0.5),
      portOf('flowResistivity', 'kPa·s/m²')('resistivity', 'of the packing, cold', 500, 5e5, 10e3),
      frequency,
      { ...temperature, assumed: 293.15 },
    ],
    outputs: [
      percent('absorption', 'part of the sound that is swallowed'),
      { name: 'fitted', says: '1 where the law was fitted, else 0', kind: 'count', unit: '' },
    ],
    reckon: (g) => {
      const t = g.temperature
      const { c, density } = gasAt(t)
      const medium = delanyBazley(g.frequency, hotResistivity(g.resistivity, t), density, c)
      return { absorption: absorption(medium, g.depth, density, c), fitted: medium.fitted ? 1 : 0 }
    },
    sources: [delany],
  }),
  defineReckoner({
    id: 'outlet-level',
    title: 'How loud one pulsing tone of an outlet is',
    trade: 'exhaust',
    says: 'Level of one harmonic of the mass flow over water. All of a craft together never gets below about 90 dB(A) at 1 m, whatever the muffler: jet noise, shell, intake and hull.',
    inputs: [
      gramsPerSecond('amplitude', 'of the mass flow at that frequency', 1e-7, 1),
      frequency,
      mm('distance', 'from the outlet', 0.1, 1000, 25),
    ],
    outputs: [
      pascals('pressure', 'root mean square'),
      loss('level', 'flat'),
      dBA('weighted', 'A-weighted'),
      dBA('floor', 'what no muffler takes away there'),
    ],
    reckon: (g) => {
      const pressure = harmonicPressure(g.amplitude, g.frequency, g.distance, true)
      const level = levelOf(pressure)
      return {
        pressure,
        level,
        weighted: level + aWeight(g.frequency),
        floor: floorAtOneMetre - 20 * Math.log10(g.distance),
      }
    },
    sources: [
      'A. P. Dowling and J. E. Ffowcs Williams, Sound and Sources of Sound (1983)',
      'IEC 61672-1:2013, Annex E',
    ],
  }),
  defineReckoner({
    id: 'pass-by-limit',
    title: 'Pass-by level to compare with',
    trade: 'exhaust',
    says: 'The European figures for recreational craft at 25 m by power. Only a measurement to the standard counts, and waters have rules of their own: ask the local authority.',
    inputs: [
      kW('power', 'of each engine', 100, 1e6),
      { name: 'engines', says: 'on the craft', kind: 'count', unit: '', min: 1, max: 8, assumed: 1 },
    ],
    outputs: [dBA('limit', 'at 25 m')],
    reckon: (g) => ({ limit: passByLimit(g.power, g.engines) }),
    sources: ['Directive 2013/53/EU, Annex I part C', 'EN ISO 14509'],
  }),
]
