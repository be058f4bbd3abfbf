import { stepToSi, toSi } from '../base/units/convert.ts'
import { type Kind, siUnit } from '../base/units/kinds.ts'

/**
 * The field tables: one declaration a value, from which the reader, the JSON Schema, the forms, the
 * defaults and the reference page are all made. Keys are written as in the file ("trailing edge");
 * the typed craft carries them in camelCase (trailingEdge). Limits and defaults are declared in the
 * field's own unit and held in SI.
 */
export interface Measure {
  what: string
  with: string
  minutes: number
}

interface Common {
  label?: string
  /** one sentence in a builder's words: what it is, from where to where */
  gloss: string
  measure?: Measure
}

/** A default: a fixed value, or a value that follows another field. Always named with its reason. */
export interface FixedDefault {
  value: number
  low: number
  high: number
  why: string
}
export interface FollowingDefault {
  /** path of the field it follows, looked up in the enclosing groups from the inside out */
  of: string
  times?: number
  plus?: number
  /** the likely range: factors when `times` is given, else amounts added */
  low: number
  high: number
  why: string
}
/** one default for each word of a choice, looked up like `of` */
interface ChosenDefault {
  by: string
  each: Readonly<Record<string, FixedDefault | FollowingDefault>>
  why: string
}
export type Default = FixedDefault | FollowingDefault | ChosenDefault

type Presence = 'required' | 'assumed' | 'optional'

interface QuantityOptions extends Common {
  /** the unit a builder would write it in */
  unit?: string
  min?: number
  max?: number
  assumed?: Default
  optional?: true
  /** a decision or a table entry: no uncertainty unless one is written */
  exact?: true
  /** where a thing stands: how well that is read, in `unit`, however far from nought it is */
  coarse?: number
  /** a choice that may be left open by writing `undecided`: what stands in for it until it is made */
  undecided?: Default
}

export interface QuantitySpec<P extends Presence = Presence> extends Common {
  readonly type: 'quantity'
  readonly kind: Kind
  readonly unit: string
  /** SI, inclusive */
  readonly min: number
  readonly max: number
  readonly presence: P
  readonly assumed?: Default
  readonly undecided?: Default
  readonly exact?: true
  /** half width of the likely range of a measured value when none is written, SI */
  readonly coarse?: number
}

export interface ChoiceSpec<W extends string = string, P extends Presence = Presence> extends Common {
  readonly type: 'choice'
  readonly words: readonly W[]
  readonly presence: P
  readonly assumed?: { value: W; why: string }
}

export interface TextSpec<P extends Presence = Presence> extends Common {
  readonly type: 'text'
  readonly presence: P
  readonly maxLength: number
  readonly pattern?: RegExp
  readonly patternSays?: string
}

/** yes or no; always has a default */
export interface FlagSpec extends Common {
  readonly type: 'flag'
  readonly presence: 'assumed'
  readonly assumed: { value: boolean; why: string }
}

/** two or three lengths in square brackets */
export interface PointSpec<P extends Presence = Presence, N extends 2 | 3 = 2 | 3> extends Common {
  readonly type: 'point'
  readonly size: N
  readonly axes: readonly string[]
  readonly each: QuantitySpec<'required'>
  readonly presence: P
}

export type Fields = { readonly [key: string]: Spec }

export interface GroupSpec<F extends Fields = Fields, P extends Presence = Presence> extends Common {
  readonly type: 'group'
  readonly fields: F
  readonly presence: P
}

export interface ListSpec<S = unknown, P extends Presence = Presence> extends Common {
  readonly type: 'list'
  readonly item: S & Spec
  readonly presence: P
  readonly minItems: number
  readonly maxItems: number
}

/** a group whose fields depend on the word under `tag` */
export interface VariantSpec<V extends VariantTable = VariantTable> extends Common {
  readonly type: 'variant'
  readonly tag: string
  readonly variants: V
  readonly presence: 'required'
}
export type VariantTable = { readonly [word: string]: { readonly gloss: string; readonly fields: Fields } }

export type Spec =
  | QuantitySpec
  | ChoiceSpec
  | TextSpec
  | FlagSpec
  | PointSpec
  | GroupSpec
  | ListSpec
  | VariantSpec

type PresenceOf<O> = O extends { optional: true }
  ? 'optional'
  : O extends { assumed: object }
    ? 'assumed'
    : 'required'

const fixedToSi = (d: FixedDefault, kind: Kind, unit: string): FixedDefault => ({
  ...d,
  value: toSi(d.value, kind, unit),
  low: toSi(d.low, kind, unit),
  high: toSi(d.high, kind, unit),
})

function defaultToSi(d: Default, kind: Kind, unit: string): Default {
  if ('by' in d)
    return {
      ...d,
      each: Object.fromEntries(
        Object.entries(d.each).map(([word, one]) => [
          word,
          defaultToSi(one, kind, unit) as FixedDefault | FollowingDefault,
        ]),
      ),
    }
  if ('value' in d) return fixedToSi(d, kind, unit)
  if (d.times !== undefined) return d
  const step = (x: number) => stepToSi(x, kind, unit)
  return { ...d, plus: step(d.plus ?? 0), low: step(d.low), high: step(d.high) }
}

/** A number with a unit. `min` and `max` are inclusive and in `unit`; sizes may not be negative unless `min` says so. */
export function quantity<const O extends QuantityOptions>(kind: Kind, o: O): QuantitySpec<PresenceOf<O>> {
  const unit = o.unit ?? siUnit(kind)
  const floor = kind === 'temperature' ? 0 : toSi(0, kind, unit)
  const { assumed, optional, min, max, coarse, undecided, ...rest } = o as QuantityOptions
  return {
    ...rest,
    type: 'quantity',
    kind,
    unit,
    min: min === undefined ? floor : toSi(min, kind, unit),
    max: max === undefined ? Number.MAX_VALUE : toSi(max, kind, unit),
    presence: (optional ? 'optional' : assumed ? 'assumed' : 'required') as PresenceOf<O>,
    ...(assumed ? { assumed: defaultToSi(assumed, kind, unit) } : {}),
    ...(undecided ? { undecided: defaultToSi(undecided, kind, unit) } : {}),
    ...(coarse === undefined ? {} : { coarse: stepToSi(coarse, kind, unit) }),
  }
}

/** A whole number. */
export function count<const O extends Omit<QuantityOptions, 'unit'>>(o: O): QuantitySpec<PresenceOf<O>> {
  return quantity('count', o)
}

/** One of a list of words. */
export function choice<
  const W extends string,
  const O extends Common & { assumed?: { value: NoInfer<W>; why: string }; optional?: true },
>(words: readonly W[], o: O): ChoiceSpec<W, PresenceOf<O>> {
  const { optional, ...rest } = o as Common & { assumed?: { value: W; why: string }; optional?: true }
  return {
    ...rest,
    type: 'choice',
    words,
    presence: (optional ? 'optional' : rest.assumed ? 'assumed' : 'required') as PresenceOf<O>,
  }
}

/** Free words on one or more lines. */
export function text<
  const O extends Common & { optional?: true; maxLength?: number; pattern?: RegExp; patternSays?: string },
>(o: O): TextSpec<PresenceOf<O>> {
  const { optional, maxLength = 2000, ...rest } = o as Common & { optional?: true; maxLength?: number }
  return {
    ...rest,
    type: 'text',
    maxLength,
    presence: (optional ? 'optional' : 'required') as PresenceOf<O>,
  }
}

/** yes or no. */
export function flag(o: Common & { assumed: { value: boolean; why: string } }): FlagSpec {
  return { ...o, type: 'flag', presence: 'assumed' }
}

interface PointOptions extends Common {
  optional?: true
  min?: number
  max: number
  unit?: string
  coarse?: number
}

function lengths<N extends 2 | 3>(o: PointOptions, size: N, axes: readonly string[]) {
  const { optional, min, max, unit, coarse, ...rest } = o
  const each = quantity('length', {
    gloss: rest.gloss,
    min: min ?? -max,
    max,
    unit: unit ?? 'm',
    ...(coarse === undefined ? {} : { coarse }),
  })
  return { ...rest, type: 'point' as const, size, axes, each, presence: optional ? 'optional' : 'required' }
}

/** A place on the craft: forward of the transom, to port, up from the foot of the transom at the keel. */
export function place<const O extends PointOptions>(o: O): PointSpec<PresenceOf<O>, 3> {
  return lengths(o, 3, ['forward', 'to port', 'up']) as PointSpec<PresenceOf<O>, 3>
}

/** Length, width and height of a box round something. */
export function box<const O extends PointOptions>(o: O): PointSpec<PresenceOf<O>, 3> {
  return lengths({ min: 0, ...o }, 3, ['length', 'width', 'height']) as PointSpec<PresenceOf<O>, 3>
}

/** A point of a cross-section: out from the centreline, up from the baseline. */
export function offset<const O extends PointOptions>(o: O): PointSpec<PresenceOf<O>, 2> {
  return lengths(o, 2, ['out', 'up']) as PointSpec<PresenceOf<O>, 2>
}

/** Values that belong together. Absent in the file: filled from its fields' defaults, unless optional. */
export function group<const F extends Fields, const O extends Common & { optional?: true }>(
  o: O,
  fields: F,
): GroupSpec<F, O extends { optional: true } ? 'optional' : 'assumed'> {
  const { optional, ...rest } = o as Common & { optional?: true }
  return {
    ...rest,
    type: 'group',
    fields,
    presence: (optional ? 'optional' : 'assumed') as O extends { optional: true } ? 'optional' : 'assumed',
  }
}

/** Several of the same. Absent in the file: an empty list when minItems is 0, unless optional. */
export function list<
  const S extends Spec,
  const O extends Common & { optional?: true; minItems?: number; maxItems?: number },
>(o: O, item: S): ListSpec<S, O extends { optional: true } ? 'optional' : 'assumed'> {
  const {
    optional,
    minItems = 0,
    maxItems = 200,
    ...rest
  } = o as Common & { optional?: true; minItems?: number; maxItems?: number }
  return {
    ...rest,
    type: 'list',
    item,
    minItems,
    maxItems,
    presence: (optional ? 'optional' : 'assumed') as O extends { optional: true } ? 'optional' : 'assumed',
  }
}

/** A group whose further fields depend on a word. */
export function variant<const V extends VariantTable>(
  o: Common & { tag: string },
  variants: V,
): VariantSpec<V> {
  return { ...o, type: 'variant', variants, presence: 'required' }
}

const camels = new Map<string, string>()

/** "trailing edge" -> "trailingEdge". */
export function camel(key: string): string {
  let made = camels.get(key)
  if (made === undefined) {
    made = key.replace(/[ -]+(.)/g, (_, c: string) => c.toUpperCase())
    camels.set(key, made)
  }
  return made
}
