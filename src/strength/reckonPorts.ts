/** Inputs, outputs and sources that several strength reckoners share. */
import type { Port } from '../answers/reckoner.ts'
import { alloyNames } from './alloys.ts'
import { foamNames } from './foams.ts'

export const plates = 'S. Timoshenko and S. Woinowsky-Krieger, Theory of Plates and Shells (1959)'
export const berger = 'H. M. Berger, J. Appl. Mech. 22 (1955)'

export const mm = (name: string, says: string, more: Partial<Port> = {}): Port => ({
  name,
  says,
  kind: 'length',
  unit: 'mm',
  min: 1e-4,
  max: 10,
  ...more,
})
export const force = (name: string, says: string, more: Partial<Port> = {}): Port => ({
  name,
  says,
  kind: 'force',
  unit: 'N',
  min: 1,
  max: 1e6,
  ...more,
})
export const out = (name: string, says: string, kind: Port['kind'], unit: string): Port => ({
  name,
  says,
  kind,
  unit,
})
export const alloy: Port = { name: 'alloy', says: 'Sheet.', kind: 'choice', unit: '', choices: alloyNames }
export const foam: Port = {
  name: 'foam',
  says: 'Foam, by kind and density in kg/m³.',
  kind: 'choice',
  unit: '',
  choices: foamNames,
}
export const sheet = mm('t', 'Thickness of the sheet.', { min: 1e-4, max: 0.03 })

export const foamTemperature: Port = {
  name: 'temperature',
  says: 'Of the foam.',
  kind: 'temperature',
  unit: '°C',
  min: 233,
  max: 400,
  assumed: 293.15,
}
