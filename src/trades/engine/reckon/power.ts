import {
  bar,
  celsius,
  degrees,
  gramsPerSecond,
  kW,
  newtonMetres,
  percent,
  portOf,
  ratio,
} from '../../../base/answers/portMakers.ts'
import { defineReckoner, type Reckoner } from '../../../base/answers/reckoner.ts'
import { frictionPressure, releaseFactor, wiebe } from '../burn.ts'
import { port } from './enginePorts.ts'

const definition = 'Mean effective pressure, SAE J604 terms; a two-stroke fires every turn: P = bmep · V · n'

/** Reckoners about pressure, power, fuel and burning. */
export const powerReckoners: readonly Reckoner[] = [
  defineReckoner({
    id: 'power-to-pressure',
    title: 'Mean pressure behind a power',
    trade: 'engine',
    says: 'Brake mean effective pressure and torque of a two-stroke from its power: the quickest check of a claim. 4 bar is a utility engine, 8 a good sport engine, 11 a racer.',
    inputs: [kW('power', 'at the crank', 10, 2e5), port.rpm, port.swept],
    outputs: [bar('pressure', 'brake mean effective pressure'), newtonMetres('torque', 'at the crank')],
    reckon: ({ power, rpm, swept }) => ({
      pressure: power / (rpm * swept),
      torque: power / (2 * Math.PI * rpm),
    }),
    sources: [definition],
  }),
  defineReckoner({
    id: 'pressure-to-power',
    title: 'Power from a mean pressure',
    trade: 'engine',
    says: 'What a two-stroke of a size gives at a speed if it reaches a brake mean effective pressure.',
    inputs: [bar('pressure', 'brake mean effective pressure', 1e4, 2e6), port.rpm, port.swept],
    outputs: [kW('power', 'at the crank'), newtonMetres('torque', 'at the crank')],
    reckon: ({ pressure, rpm, swept }) => ({
      power: pressure * rpm * swept,
      torque: (pressure * swept) / (2 * Math.PI),
    }),
    sources: [definition],
  }),
  defineReckoner({
    id: 'engine-friction',
    title: 'Friction of a two-stroke',
    trade: 'engine',
    says: 'Friction mean pressure and the power it takes. The factor is 150 for utility engines on rolling bearings to 250 for racing ones.',
    inputs: [
      port.stroke,
      port.rpm,
      port.swept,
      ratio('factor', 'Pa per metre of stroke and rpm', 20, 1000, 180),
    ],
    outputs: [bar('pressure', 'friction mean pressure'), kW('power', 'lost')],
    reckon: ({ stroke, rpm, swept, factor }) => {
      const pressure = frictionPressure(0, factor, stroke, rpm * 60)
      return { pressure, power: pressure * swept * rpm }
    },
    sources: ['Form of G. P. Blair, Design and Simulation of Two-Stroke Engines (1996), from memory'],
  }),
  defineReckoner({
    id: 'delivery-from-fuel',
    title: 'How well an engine breathes, from the fuel it burns',
    trade: 'engine',
    says: 'Delivery ratio and air flow from a timed bottle at full throttle, for a mixture you believe. A utility engine delivers 0.5 to 0.7, a good sport engine about 1.',
    inputs: [
      portOf('volumeFlow', 'L/h')('fuel', 'burnt, by volume', 1e-8, 1e-4),
      portOf('density', 'kg/m³')('fuelDensity', 'of the fuel', 600, 900, 745),
      ratio('lambda', 'air over the air the fuel needs', 0.7, 1.2, 0.87),
      port.rpm,
      port.swept,
      portOf('pressure', 'mbar')('pressure', 'of the air', 5e4, 1.09e5, 101325),
      celsius('temperature', 'of the air', 240, 325, 293.15),
    ],
    outputs: [
      ratio('delivery', 'air supplied over air that fills the swept volume'),
      gramsPerSecond('air', 'flow'),
    ],
    reckon: ({ fuel, fuelDensity, lambda, rpm, swept, pressure, temperature }) => {
      const air = fuel * fuelDensity * 14.7 * lambda
      return { air, delivery: air / ((pressure / (287.05 * temperature)) * swept * rpm) }
    },
    sources: [
      'Definition of delivery ratio, SAE J604; 14.7 kg of air to a kg of pump petrol, handbook value from memory',
    ],
    cautions: ['Measure fuel outdoors, away from the hot pipe, in a vessel that cannot tip.'],
  }),
  defineReckoner({
    id: 'burnt-part',
    title: 'How much has burnt at a crank angle',
    trade: 'engine',
    says: 'Burn curve of Wiebe: 99 % at the end of the duration with a = 5.',
    inputs: [
      degrees('since', 'crank angle since first flame', 0, 2),
      degrees('duration', 'of burning', 0.3, 2.1, 0.8727),
      ratio('a', 'completeness', 1, 8, 5),
      ratio('m', 'form', 0.3, 4, 1.3),
    ],
    outputs: [percent('burnt', 'part of the charge')],
    reckon: ({ since, duration, a, m }) => ({ burnt: wiebe(since / duration, a, m) }),
    sources: ['I. I. Wiebe (1956), after J. B. Heywood (1988), sec. 9.2'],
  }),
  defineReckoner({
    id: 'mixture-heat',
    title: 'Heat in a kilogram of charge',
    trade: 'engine',
    says: 'What a rich or lean charge frees: rich mixtures burn all the air but waste fuel, so the heat per kilogram hardly changes while the consumption does.',
    inputs: [ratio('lambda', 'air over the air the fuel needs', 0.7, 1.2)],
    outputs: [
      portOf('specificEnergy', 'MJ/kg')('heat', 'freed per kilogram of air and fuel'),
      percent('part', 'of the fuel’s own heat that is freed'),
    ],
    reckon: ({ lambda }) => {
      const part = releaseFactor(lambda)
      return { heat: (44e6 * part) / (1 + 15.07 * lambda), part }
    },
    sources: ['Derived: frozen equilibrium products of iso-octane, lower heat 44 MJ/kg'],
  }),
]
