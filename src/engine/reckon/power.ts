import { defineReckoner, type Reckoner } from '../../answers/reckoner.ts'
import { frictionPressure, releaseFactor, wiebe } from '../burn.ts'
import { port } from './ports.ts'

const definition = 'Mean effective pressure, SAE J604 terms; a two-stroke fires every turn: P = bmep · V · n'

/** Reckoners about pressure, power, fuel and burning. */
export const powerReckoners: readonly Reckoner[] = [
  defineReckoner({
    id: 'power-to-pressure',
    title: 'Mean pressure behind a power',
    trade: 'engine',
    says: 'Brake mean effective pressure and torque of a two-stroke from its power: the quickest check of a claim. 4 bar is a utility engine, 8 a good sport engine, 11 a racer.',
    inputs: [
      { name: 'power', says: 'at the crank', kind: 'power', unit: 'kW', min: 10, max: 2e5 },
      port.rpm,
      port.swept,
    ],
    outputs: [
      { name: 'pressure', says: 'brake mean effective pressure', kind: 'pressure', unit: 'bar' },
      { name: 'torque', says: 'at the crank', kind: 'torque', unit: 'N·m' },
    ],
    reckon: ({ power, rpm, swept }) => ({
      pressure: power! / (rpm! * swept!),
      torque: power! / (2 * Math.PI * rpm!),
    }),
    sources: [definition],
  }),
  defineReckoner({
    id: 'pressure-to-power',
    title: 'Power from a mean pressure',
    trade: 'engine',
    says: 'What a two-stroke of a size gives at a speed if it reaches a brake mean effective pressure.',
    inputs: [
      {
        name: 'pressure',
        says: 'brake mean effective pressure',
        kind: 'pressure',
        unit: 'bar',
        min: 1e4,
        max: 2e6,
      },
      port.rpm,
      port.swept,
    ],
    outputs: [
      { name: 'power', says: 'at the crank', kind: 'power', unit: 'kW' },
      { name: 'torque', says: 'at the crank', kind: 'torque', unit: 'N·m' },
    ],
    reckon: ({ pressure, rpm, swept }) => ({
      power: pressure! * rpm! * swept!,
      torque: (pressure! * swept!) / (2 * Math.PI),
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
      {
        name: 'factor',
        says: 'Pa per metre of stroke and rpm',
        kind: 'ratio',
        unit: '1',
        min: 20,
        max: 1000,
        assumed: 180,
      },
    ],
    outputs: [
      { name: 'pressure', says: 'friction mean pressure', kind: 'pressure', unit: 'bar' },
      { name: 'power', says: 'lost', kind: 'power', unit: 'kW' },
    ],
    reckon: ({ stroke, rpm, swept, factor }) => {
      const pressure = frictionPressure(0, factor!, stroke!, rpm! * 60)
      return { pressure, power: pressure * swept! * rpm! }
    },
    sources: ['Form of G. P. Blair, Design and Simulation of Two-Stroke Engines (1996), from memory'],
  }),
  defineReckoner({
    id: 'delivery-from-fuel',
    title: 'How well an engine breathes, from the fuel it burns',
    trade: 'engine',
    says: 'Delivery ratio and air flow from a timed bottle at full throttle, for a mixture you believe. A utility engine delivers 0.5 to 0.7, a good sport engine about 1.',
    inputs: [
      { name: 'fuel', says: 'burnt, by volume', kind: 'volumeFlow', unit: 'L/h', min: 1e-8, max: 1e-4 },
      {
        name: 'fuelDensity',
        says: 'of the fuel',
        kind: 'density',
        unit: 'kg/m³',
        min: 600,
        max: 900,
        assumed: 745,
      },
      {
        name: 'lambda',
        says: 'air over the air the fuel needs',
        kind: 'ratio',
        unit: '1',
        min: 0.7,
        max: 1.2,
        assumed: 0.87,
      },
      port.rpm,
      port.swept,
      {
        name: 'pressure',
        says: 'of the air',
        kind: 'pressure',
        unit: 'mbar',
        min: 5e4,
        max: 1.09e5,
        assumed: 101325,
      },
      {
        name: 'temperature',
        says: 'of the air',
        kind: 'temperature',
        unit: '°C',
        min: 240,
        max: 325,
        assumed: 293.15,
      },
    ],
    outputs: [
      {
        name: 'delivery',
        says: 'air supplied over air that fills the swept volume',
        kind: 'ratio',
        unit: '1',
      },
      { name: 'air', says: 'flow', kind: 'massFlow', unit: 'g/s' },
    ],
    reckon: ({ fuel, fuelDensity, lambda, rpm, swept, pressure, temperature }) => {
      const air = fuel! * fuelDensity! * 14.7 * lambda!
      return { air, delivery: air / ((pressure! / (287.05 * temperature!)) * swept! * rpm!) }
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
      { name: 'since', says: 'crank angle since first flame', kind: 'angle', unit: 'deg', min: 0, max: 2 },
      {
        name: 'duration',
        says: 'of burning',
        kind: 'angle',
        unit: 'deg',
        min: 0.3,
        max: 2.1,
        assumed: 0.8727,
      },
      { name: 'a', says: 'completeness', kind: 'ratio', unit: '1', min: 1, max: 8, assumed: 5 },
      { name: 'm', says: 'form', kind: 'ratio', unit: '1', min: 0.3, max: 4, assumed: 1.3 },
    ],
    outputs: [{ name: 'burnt', says: 'part of the charge', kind: 'ratio', unit: '%' }],
    reckon: ({ since, duration, a, m }) => ({ burnt: wiebe(since! / duration!, a!, m!) }),
    sources: ['I. I. Wiebe (1956), after J. B. Heywood (1988), sec. 9.2'],
  }),
  defineReckoner({
    id: 'mixture-heat',
    title: 'Heat in a kilogram of charge',
    trade: 'engine',
    says: 'What a rich or lean charge frees: rich mixtures burn all the air but waste fuel, so the heat per kilogram hardly changes while the consumption does.',
    inputs: [
      {
        name: 'lambda',
        says: 'air over the air the fuel needs',
        kind: 'ratio',
        unit: '1',
        min: 0.7,
        max: 1.2,
      },
    ],
    outputs: [
      { name: 'heat', says: 'freed per kilogram of air and fuel', kind: 'specificEnergy', unit: 'MJ/kg' },
      { name: 'part', says: 'of the fuel’s own heat that is freed', kind: 'ratio', unit: '%' },
    ],
    reckon: ({ lambda }) => {
      const part = releaseFactor(lambda!)
      return { heat: (44e6 * part) / (1 + 15.07 * lambda!), part }
    },
    sources: ['Derived: frozen equilibrium products of iso-octane, lower heat 44 MJ/kg'],
  }),
]
