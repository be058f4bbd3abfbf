import type { Quantity } from './craftTypes.ts'
import { camel, type Default, type FixedDefault, type FollowingDefault, type QuantitySpec } from './fields.ts'

/** marks a value that waits for its default while a craft is being read */
export const pending = Symbol('pending')

/** a craft under construction, before it has its type */
export interface Tree {
  [key: string]: unknown
}

/** A default that follows other fields, kept so that a tried value carries its followers along. */
export interface Derived {
  segments: readonly string[]
  path: string
  spec: QuantitySpec
  /** written `undecided`: the field's own stand-in instead of its default */
  undecided?: true
}

/** the value at a place in the tree, undefined when any step is absent */
export function valueAt(root: unknown, segments: readonly string[]): unknown {
  let at: unknown = root
  for (const s of segments) {
    if (at === null || typeof at !== 'object') return undefined
    at = (at as Tree)[s]
  }
  return at
}

/** looks `of` up in the groups that enclose a field, from the inside out, passing over the field itself */
function lookUp(root: unknown, at: readonly string[], of: string): unknown {
  const steps = of.split('.').map(camel)
  const inside = at.slice(0, -1)
  for (let n = inside.length; n >= 0; n--) {
    if (n === inside.length && steps.length === 1 && steps[0] === at.at(-1)) continue
    const found = valueAt(root, [...inside.slice(0, n), ...steps])
    if (found !== undefined) return found
  }
  return undefined
}

type Resolved = { value: number; low: number; high: number; why: string } | typeof pending | undefined

function resolveOne(root: unknown, at: readonly string[], d: FixedDefault | FollowingDefault): Resolved {
  if ('value' in d) return d
  const base = lookUp(root, at, d.of)
  if (base === pending) return pending
  if (base === undefined) return undefined
  const x = (base as Quantity).value
  const why = `${d.times === undefined ? 'follows' : d.times === 1 ? 'as' : `${d.times} ×`} ${d.of}: ${d.why}`
  if (d.times !== undefined) return { value: d.times * x, low: d.low * x, high: d.high * x, why }
  return { value: x + (d.plus ?? 0), low: x + d.low, high: x + d.high, why }
}

function resolve(root: unknown, at: readonly string[], d: Default): Resolved {
  if (!('by' in d)) return resolveOne(root, at, d)
  const word = lookUp(root, at, d.by)
  if (word === pending) return pending
  const one = typeof word === 'string' ? d.each[word] : undefined
  return one && resolveOne(root, at, one)
}

/** The default of a field at a place in the craft; undefined when what it follows is absent. */
export function assumedQuantity(root: unknown, d: Derived): Quantity | typeof pending | undefined {
  const { spec } = d
  const got = resolve(root, d.segments, standIn(d))
  if (got === pending || got === undefined) return got
  const clamp = (x: number) => Math.min(spec.max, Math.max(spec.min, x))
  return {
    value: clamp(got.value),
    low: clamp(Math.min(got.low, got.high)),
    high: clamp(Math.max(got.low, got.high)),
    source: 'assumed',
    why: got.why,
    kind: spec.kind,
    path: d.path,
    ...(d.undecided ? { undecided: true as const } : {}),
  }
}

const standIn = ({ spec, undecided }: Derived): Default => (undecided ? spec.undecided! : spec.assumed!)

/**
 * Puts defaults where `pending` stands, in as many passes as defaults follow one another. Returns those
 * that follow other fields, in an order in which each comes after what it follows, and those left over.
 */
export function fillDefaults(
  root: Tree,
  waiting: readonly Derived[],
): { derived: Derived[]; left: Derived[] } {
  const derived: Derived[] = []
  let left = [...waiting]
  for (let pass = 0; left.length > 0 && pass < 8; pass++) {
    const again: Derived[] = []
    for (const d of left) {
      const q = assumedQuantity(root, d)
      if (q === pending || q === undefined) again.push(d)
      else {
        const holder = valueAt(root, d.segments.slice(0, -1)) as Tree
        holder[d.segments.at(-1)!] = q
        if (!('value' in standIn(d))) derived.push(d)
      }
    }
    if (again.length === left.length) break
    left = again
  }
  return { derived, left }
}
