/** Inputs and outputs that several reckoners of drag share. */
import {
  celsius,
  degrees,
  kilograms,
  metres,
  metresPerSecond,
  newtons,
} from '../../base/answers/portMakers.ts'

export const temperature = celsius('temperature', 'Temperature of the water.', 273.15, 313.15, 288.15)
/** A length in metres. */
export const length = metres
/** An angle; its ends and what is assumed in degrees. */
export const angle = <const N extends string>(
  name: N,
  says: string,
  min: number,
  max: number,
  assumed?: number,
) => {
  const degree = Math.PI / 180
  return degrees(name, says, min * degree, max * degree, assumed === undefined ? undefined : assumed * degree)
}
export const speed = metresPerSecond('speed', 'Speed through the water.', 0.5, 30)
export const mass = kilograms('mass', 'All aboard.', 20, 5000)
export const deadrise = angle('deadrise', 'Angle of the bottom to the level, aft.', 0, 35, 5)
export const force = newtons
export const out = {
  trim: degrees('trim', 'Bow up.'),
  drag: force('drag', 'Total drag.'),
}
export const savitsky = 'Savitsky 1964, Hydrodynamic design of planing hulls, Marine Technology 1(1)'
