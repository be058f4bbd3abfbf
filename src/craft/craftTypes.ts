import type { Kind } from '../base/units/kinds.ts'
import type {
  ChoiceSpec,
  Fields,
  FlagSpec,
  GroupSpec,
  ListSpec,
  PointSpec,
  QuantitySpec,
  TextSpec,
  VariantSpec,
  VariantTable,
} from './fields.ts'

export type Source = 'measured' | 'maker' | 'guess' | 'assumed'

/** A number of the craft, SI, with the ends of its likely range (about nineteen cases in twenty). */
export interface Quantity {
  readonly value: number
  readonly low: number
  readonly high: number
  readonly source: Source
  /** as written in the file; absent for a default */
  readonly text?: string
  /** written `undecided` in the file: the value stands in until it is chosen */
  readonly undecided?: true
  /** for a default: why this value */
  readonly why?: string
  readonly kind: Kind
  /** dotted path with the file's own keys: jet.rotor.trailing edge, engines.0.power at */
  readonly path: string
}

/** forward of the transom, to port, up from the transom's foot; m */
export type Place = readonly [Quantity, Quantity, Quantity]

type Camel<K extends string> = K extends `${infer A} ${infer B}` ? `${A}${Capitalize<Camel<B>>}` : K

type Flat<T> = { readonly [K in keyof T]: T[K] } & {}

/** What reading a field of this spec gives. */
type ReadOf<S> =
  S extends QuantitySpec<infer _P>
    ? Quantity
    : S extends ChoiceSpec<infer W, infer _P>
      ? W
      : S extends TextSpec<infer _P>
        ? string
        : S extends FlagSpec
          ? boolean
          : S extends PointSpec<infer _P, infer N>
            ? N extends 2
              ? readonly [Quantity, Quantity]
              : Place
            : S extends GroupSpec<infer F, infer _P>
              ? FieldsOf<F>
              : S extends ListSpec<infer I, infer _P>
                ? readonly ReadOf<I>[]
                : S extends VariantSpec<infer V>
                  ? VariantOf<V>
                  : never

type Sure<F extends Fields> = { [K in keyof F]: F[K] extends { presence: 'optional' } ? never : K }[keyof F]
type Maybe<F extends Fields> = { [K in keyof F]: F[K] extends { presence: 'optional' } ? K : never }[keyof F]

export type FieldsOf<F extends Fields> = Flat<
  { [K in Sure<F> & string as Camel<K>]: ReadOf<F[K]> } & {
    [K in Maybe<F> & string as Camel<K>]?: ReadOf<F[K]>
  }
>

type VariantOf<V extends VariantTable> = {
  [W in keyof V & string]: Flat<{ kind: W } & FieldsOf<V[W]['fields']>>
}[keyof V & string]
