/** A good exhaust and how its engine runs, invented, for the tests to spoil. */
import type { ExhaustInputs } from './exhaustFromCraft.ts'
import type { ExhaustRun } from './exhaustView.ts'

export const box = {
  length: 0.24,
  area: (Math.PI / 4) * 0.11 ** 2,
  inletBore: 0.019,
  outletBore: 0.022,
  inletReach: 0.08,
  outletReach: 0.06,
  packing: 0,
  resistivity: 15e3,
}
export const outlet = {
  bore: 0.022,
  length: 0.15,
  height: 0.2,
  highPoint: 0.35,
  assumed: false,
  flap: false,
  vent: true,
  drain: true,
  fall: 0.05,
}
export const snorkel = {
  bore: 0.038,
  length: 0.6,
  bends: 2,
  smoothBends: true,
  belledEntry: false,
  roughness: 1.5e-6,
  box: 1.2e-3,
  height: 0.5,
  heightAssumed: false,
}
export const inputs: ExhaustInputs = {
  name: 'engine',
  boxName: 'engine',
  airName: 'engine',
  at: 'engines.0',
  cylinders: 1,
  pipes: 1,
  intakes: 1,
  swept: 99e-6,
  lambda: 0.87,
  pipeVolume: 2e-3,
  stinger: { bore: 0.019, length: 0.19 },
  box,
  outlet,
  finish: 'bare',
  snorkel,
  air: { p: 101325, t: 293 },
  waterT: 289,
  waterDensity: 999,
}
export const pulses = Array.from({ length: 360 }, (_, i) => 0.018 + 0.004 * Math.cos((Math.PI * i) / 180))
export const run: ExhaustRun = {
  massFlow: 0.018,
  airFlow: 0.0165,
  exhaustT: 950,
  behind: 3700,
  rotation: 143,
  power: 11e3,
  engines: 1,
  outFlow: pulses,
}
