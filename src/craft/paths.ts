import type { Quantity } from './craftTypes.ts'
import {
  type ChoiceSpec,
  camel,
  type Fields,
  type QuantitySpec,
  type Spec,
  type VariantSpec,
} from './fields.ts'
import { type Craft, craftFields } from './schema/craftSchema.ts'
import { todaysKey } from './schema/oldKeys.ts'

const found = new Map<string, Spec | undefined>()

/**
 * The field at a path such as `jet.rotor.trailing edge` or `engines.0.power at`; `*` may stand for an
 * index, and keys may be in camelCase. Where an engine's kind decides, the first kind with such a key
 * answers. Undefined for a path no craft has.
 */
export function fieldAt(path: string): Spec | undefined {
  if (!found.has(path)) found.set(path, descend(path.split('.')))
  return found.get(path)
}

/** the word that says which kind a variant is, as a field of its own */
export function tagSpec(spec: VariantSpec): ChoiceSpec {
  return {
    type: 'choice',
    words: Object.keys(spec.variants),
    gloss: 'What it is.',
    label: 'Kind',
    presence: 'required',
  }
}

function keyOf(fields: Fields, word: string): Spec | undefined {
  const step = todaysKey(word)
  if (Object.hasOwn(fields, step)) return fields[step]
  for (const key of Object.keys(fields)) if (camel(key) === step) return fields[key]
  return undefined
}

const isIndex = (step: string | undefined) => step !== undefined && (step === '*' || /^\d{1,6}$/.test(step))

function descend(steps: readonly string[]): Spec | undefined {
  const first = keyOf(craftFields, steps[0] ?? '')
  return first && into(first, steps.slice(1))
}

function into(spec: Spec, steps: readonly string[]): Spec | undefined {
  if (steps.length === 0) return spec
  const [step, ...rest] = steps as [string, ...string[]]
  switch (spec.type) {
    case 'list':
      return isIndex(step) ? into(spec.item, rest) : undefined
    case 'point':
      return isIndex(step) && rest.length === 0 && (step === '*' || Number(step) < spec.size)
        ? spec.each
        : undefined
    case 'group': {
      const next = keyOf(spec.fields, step)
      return next && into(next, rest)
    }
    case 'variant': {
      if (step === spec.tag && rest.length === 0) return tagSpec(spec)
      for (const v of Object.values(spec.variants)) {
        const next = keyOf(v.fields, step)
        const got = next && into(next, rest)
        if (got) return got
      }
      return undefined
    }
    default:
      return undefined
  }
}

export interface ListedField {
  /** path with `*` for list indexes */
  path: string
  spec: Spec
  /** the word of `kind` that brings this field, for engines */
  variant?: string
}

/** Every field in the order of the file, groups and lists before what they hold. */
export function listFields(): ListedField[] {
  const out: ListedField[] = []
  for (const [key, spec] of Object.entries(craftFields as Fields)) walk(spec, key, undefined, out)
  return out
}

function walk(spec: Spec, path: string, variant: string | undefined, out: ListedField[]): void {
  out.push(variant === undefined ? { path, spec } : { path, spec, variant })
  if (spec.type === 'group')
    for (const [key, next] of Object.entries(spec.fields)) walk(next, `${path}.${key}`, variant, out)
  else if (spec.type === 'list') walk(spec.item, `${path}.*`, variant, out)
  else if (spec.type === 'variant')
    for (const [word, v] of Object.entries(spec.variants)) {
      const tag = tagSpec(spec)
      out.push({ path: `${path}.${spec.tag}`, spec: tag, variant: word })
      for (const [key, next] of Object.entries(v.fields)) walk(next, `${path}.${key}`, word, out)
    }
}

/** Every number of a craft, in the order of the file. */
export function* quantitiesOf(craft: Craft): Generator<Quantity> {
  yield* below(craft)
}

function* below(node: unknown): Generator<Quantity> {
  if (node === null || typeof node !== 'object') return
  if ('kind' in node && 'path' in node && 'value' in node) {
    yield node as Quantity
    return
  }
  for (const next of Array.isArray(node) ? node : Object.values(node)) yield* below(next)
}

/** Narrows a field to a number. */
export function isQuantitySpec(spec: Spec | undefined): spec is QuantitySpec {
  return spec?.type === 'quantity'
}
