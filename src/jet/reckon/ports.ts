/** Inputs that several reckoners of the jet share. Limits are SI. */
import type { Port } from '../../answers/reckoner.ts'

const mm = (name: string, says: string, min: number, max: number, assumed?: number): Port => ({
  name,
  says,
  kind: 'length',
  unit: 'mm',
  min,
  max,
  ...(assumed === undefined ? {} : { assumed }),
})

export const port = {
  mm,
  bore: mm('bore', 'inside diameter of the wear ring', 0.03, 0.4),
  hub: mm('hub', 'diameter of the hub', 0.005, 0.38),
  nozzle: mm('nozzle', 'inside diameter of the nozzle at its exit', 0.01, 0.3),
  pitch: mm('pitch', 'advance of the blade face in one turn', 0.01, 0.8),
  blades: { name: 'blades', says: 'number of blades', kind: 'count', unit: '1', min: 1, max: 8, assumed: 3 },
  wrap: {
    name: 'wrap',
    says: 'angle a blade covers seen from astern',
    kind: 'angle',
    unit: 'deg',
    min: 0.35,
    max: 7,
    assumed: (150 * Math.PI) / 180,
  },
  rotation: { name: 'rotation', says: 'impeller rotation', kind: 'rotation', unit: 'rpm', min: 1, max: 400 },
  flow: { name: 'flow', says: 'water through the jet', kind: 'volumeFlow', unit: 'L/s', min: 1e-4, max: 2 },
  head: {
    name: 'head',
    says: 'energy the pump gives each kilogram',
    kind: 'specificEnergy',
    unit: 'm of water',
    min: 0.1,
    max: 2000,
  },
  speed: {
    name: 'speed',
    says: 'speed of the craft',
    kind: 'speed',
    unit: 'km/h',
    min: 0,
    max: 40,
    assumed: 0,
  },
  water: {
    name: 'water',
    says: 'temperature of the water (fresh)',
    kind: 'temperature',
    unit: '°C',
    min: 273.15,
    max: 313.15,
    assumed: 288.15,
  },
  torque: {
    name: 'torque',
    says: 'torque at the impeller',
    kind: 'torque',
    unit: 'N·m',
    min: 0.01,
    max: 1000,
  },
  ratio: (name: string, says: string, min: number, max: number, assumed?: number, unit = '1'): Port => ({
    name,
    says,
    kind: 'ratio',
    unit,
    min,
    max,
    ...(assumed === undefined ? {} : { assumed }),
  }),
} as const satisfies Record<string, Port | ((...a: never[]) => Port)>

export const area = (diameter: number): number => 0.25 * Math.PI * diameter * diameter

/** Throws when the hub is not inside the bore. */
export function annulusOf(bore: number, hub: number): number {
  if (!(hub < bore)) throw new RangeError(`hub ${hub} m is not smaller than the bore ${bore} m`)
  return area(bore) - area(hub)
}
