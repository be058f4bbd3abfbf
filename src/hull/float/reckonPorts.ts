/** Inputs and words that the float reckoners share. */
import type { Port } from '../../answers/reckoner.ts'

export const naval = 'E. V. Lewis (ed.), Principles of Naval Architecture vol. I (1988)'
export const mass = (name: string, says: string, more: Partial<Port> = {}): Port => ({
  name,
  says,
  kind: 'mass',
  unit: 'kg',
  min: 0,
  max: 5000,
  ...more,
})
export const length = (name: string, says: string, unit: string, more: Partial<Port> = {}): Port => ({
  name,
  says,
  kind: 'length',
  unit,
  min: 0,
  max: 20,
  ...more,
})
export const water: Port = {
  name: 'water',
  says: 'Density of the water: 999 fresh, 1025 sea.',
  kind: 'density',
  unit: 'kg/m³',
  min: 950,
  max: 1100,
  assumed: 999,
}
export const swim =
  'A swamped craft is no raft to count on: wear a buoyancy aid, and try it in shallow water with a second person.'
