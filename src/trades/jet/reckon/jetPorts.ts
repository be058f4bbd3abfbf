/** Inputs that several reckoners of the jet share. Limits are SI. */
import {
  celsius,
  count,
  degrees,
  kmh,
  litresPerSecond,
  metresOfWater,
  mm,
  newtonMetres,
  revsPerMinute,
} from '../../../base/answers/portMakers.ts'
import type { Port } from '../../../base/answers/reckoner.ts'

export const port = {
  bore: mm('bore', 'inside diameter of the wear ring', 0.03, 0.4),
  hub: mm('hub', 'diameter of the hub', 0.005, 0.38),
  nozzle: mm('nozzle', 'inside diameter of the nozzle at its exit', 0.01, 0.3),
  pitch: mm('pitch', 'advance of the blade face in one turn', 0.01, 0.8),
  blades: count('blades', 'number of blades', 1, 8, 3),
  wrap: degrees('wrap', 'angle a blade covers seen from astern', 0.35, 7, (150 * Math.PI) / 180),
  rotation: revsPerMinute('rotation', 'impeller rotation', 1, 400),
  flow: litresPerSecond('flow', 'water through the jet', 1e-4, 2),
  head: metresOfWater('head', 'energy the pump gives each kilogram', 0.1, 2000),
  speed: kmh('speed', 'speed of the craft', 0, 40, 0),
  water: celsius('water', 'temperature of the water (fresh)', 273.15, 313.15, 288.15),
  torque: newtonMetres('torque', 'torque at the impeller', 0.01, 1000),
} as const satisfies Record<string, Port>

export const area = (diameter: number): number => 0.25 * Math.PI * diameter * diameter

/** Throws when the hub is not inside the bore. */
export function annulusOf(bore: number, hub: number): number {
  if (!(hub < bore)) throw new RangeError(`hub ${hub} m is not smaller than the bore ${bore} m`)
  return area(bore) - area(hub)
}
