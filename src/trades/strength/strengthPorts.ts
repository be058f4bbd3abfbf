/** Inputs, outputs and sources that several strength reckoners share. */
import { celsius, choice, mm, newtons, portOf } from '../../base/answers/portMakers.ts'
import type { Port } from '../../base/answers/reckoner.ts'
import type { Kind } from '../../base/units/kinds.ts'
import { alloyNames } from './alloys.ts'
import { foamNames } from './foams.ts'

export const plates = 'S. Timoshenko and S. Woinowsky-Krieger, Theory of Plates and Shells (1959)'
export const berger = 'H. M. Berger, J. Appl. Mech. 22 (1955)'

type Ends = Partial<Pick<Port, 'min' | 'max' | 'assumed'>>

export const size = <const N extends string>(
  name: N,
  says: string,
  { min = 1e-4, max = 10, assumed }: Ends = {},
) => mm(name, says, min, max, assumed)
export const force = <const N extends string>(
  name: N,
  says: string,
  { min = 1, max = 1e6, assumed }: Ends = {},
) => newtons(name, says, min, max, assumed)
export const out = <const N extends string>(name: N, says: string, kind: Kind, unit: string) =>
  portOf(kind, unit)(name, says)
export const alloy = choice('alloy', 'Sheet.', alloyNames)
export const foam = choice('foam', 'Foam, by kind and density in kg/m³.', foamNames)
export const sheet = size('t', 'Thickness of the sheet.', { min: 1e-4, max: 0.03 })

export const foamTemperature = celsius('temperature', 'Of the foam.', 233, 400, 293.15)
