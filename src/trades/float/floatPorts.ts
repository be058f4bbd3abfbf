/** Inputs and words that the float reckoners share. */
import { kgPerCubicMetre, kilograms, portOf } from '../../base/answers/portMakers.ts'
import type { Port } from '../../base/answers/reckoner.ts'

export const naval = 'E. V. Lewis (ed.), Principles of Naval Architecture vol. I (1988)'
type Ends = Partial<Pick<Port, 'min' | 'max' | 'assumed'>>

export const mass = <const N extends string>(
  name: N,
  says: string,
  { min = 0, max = 5000, assumed }: Ends = {},
) => kilograms(name, says, min, max, assumed)
export const length = <const N extends string>(
  name: N,
  says: string,
  unit: string,
  { min = 0, max = 20, assumed }: Ends = {},
) => portOf('length', unit)(name, says, min, max, assumed)
export const water = kgPerCubicMetre('water', 'Density of the water: 999 fresh, 1025 sea.', 950, 1100, 999)
export const swim =
  'A swamped craft is no raft to count on: wear a buoyancy aid, and try it in shallow water with a second person.'
