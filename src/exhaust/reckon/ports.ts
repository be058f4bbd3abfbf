import type { Port } from '../../answers/reckoner.ts'

/** A length in mm with its ends and, where there is one, the value assumed; SI. */
export const length = (name: string, says: string, min: number, max: number, assumed?: number): Port => ({
  name,
  says,
  kind: 'length',
  unit: 'mm',
  min,
  max,
  ...(assumed === undefined ? {} : { assumed }),
})
