import type { Kind } from '../units/kinds.ts'

/** One number or choice that goes in or comes out of a reckoner. Limits and defaults are SI. */
export interface Port<Name extends string = string> {
  name: Name
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

type Named<P, Kind> = P extends { name: infer N extends string; kind: infer K }
  ? [K] extends [Kind]
    ? N
    : never
  : never

/** The words of a choice are texts, everything else is a number. */
type NumberNames<Ports extends readonly Port[]> = Exclude<
  Ports[number]['name'],
  Named<Ports[number], 'choice'>
>

/** A reckoner that knows the names of its own inputs and outputs: none can be misspelt or left out. */
interface TypedReckoner<In extends readonly Port[], Out extends readonly Port[]>
  extends Omit<Reckoner, 'inputs' | 'outputs' | 'reckon'> {
  inputs: In
  outputs: Out
  reckon: (
    given: Readonly<Record<NumberNames<In>, number>>,
    words: Readonly<Record<Named<In[number], 'choice'>, string>>,
  ) => Readonly<Record<Out[number]['name'], number>>
}

/** Takes a reckoner whose function is checked against its ports; a list of them needs no names any more. */
export function defineReckoner<const In extends readonly Port[], const Out extends readonly Port[]>(
  reckoner: TypedReckoner<In, Out>,
): Reckoner {
  return reckoner as unknown as Reckoner
}
