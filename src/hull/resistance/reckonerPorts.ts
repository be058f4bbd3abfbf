/** Inputs and outputs that several reckoners of drag share. */
import type { Port } from '../../answers/reckoner.ts'

export const temperature: Port = {
  name: 'temperature',
  says: 'Temperature of the water.',
  kind: 'temperature',
  unit: '°C',
  min: 273.15,
  max: 313.15,
  assumed: 288.15,
}
export const length = (name: string, says: string, min: number, max: number, assumed?: number): Port => ({
  name,
  says,
  kind: 'length',
  unit: 'm',
  min,
  max,
  ...(assumed === undefined ? {} : { assumed }),
})
export const angle = (name: string, says: string, min: number, max: number, assumed?: number): Port => {
  const degree = Math.PI / 180
  return {
    name,
    says,
    kind: 'angle',
    unit: 'deg',
    min: min * degree,
    max: max * degree,
    ...(assumed === undefined ? {} : { assumed: assumed * degree }),
  }
}
export const speed: Port = {
  name: 'speed',
  says: 'Speed through the water.',
  kind: 'speed',
  unit: 'm/s',
  min: 0.5,
  max: 30,
}
export const mass: Port = { name: 'mass', says: 'All aboard.', kind: 'mass', unit: 'kg', min: 20, max: 5000 }
export const deadrise = angle('deadrise', 'Angle of the bottom to the level, aft.', 0, 35, 5)
export const force = (name: string, says: string): Port => ({ name, says, kind: 'force', unit: 'N' })
export const out = {
  trim: { name: 'trim', says: 'Bow up.', kind: 'angle', unit: 'deg' } satisfies Port,
  drag: force('drag', 'Total drag.'),
}
export const savitsky = 'Savitsky 1964, Hydrodynamic design of planing hulls, Marine Technology 1(1)'
