import type { Kind } from '../units/kinds.ts'

/** One number or choice that goes in or comes out of a reckoner. Limits and defaults are SI. */
export interface Port {
  name: string
  /** what it is, in a builder's words */
  says: string
  kind: Kind
  /** the unit a builder would type or read it in; must be a unit of `kind` */
  unit: string
  min?: number
  max?: number
  /** used when the caller leaves it out; SI */
  assumed?: number
  /** for `kind: 'choice'`: the words that may stand here */
  choices?: readonly string[]
}

export type Reckoned = Record<string, number>

/** One handbook question answered from a few inputs by a pure function. */
export interface Reckoner {
  id: string
  title: string
  /** the trade folder it comes from */
  trade: string
  /** one or two sentences: what it answers, when it does not hold */
  says: string
  inputs: readonly Port[]
  outputs: readonly Port[]
  /** SI in, SI out; throws RangeError with the input's name when the inputs contradict each other */
  reckon: (given: Record<string, number>, words: Record<string, string>) => Reckoned
  sources: readonly string[]
  cautions?: readonly string[]
}

/** Keeps literal types and reads well in a list. */
export function defineReckoner(reckoner: Reckoner): Reckoner {
  return reckoner
}
