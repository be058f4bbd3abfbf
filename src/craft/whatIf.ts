import { carryFiles } from './craftFiles.ts'
import type { Quantity } from './craftTypes.ts'
import { assumedQuantity, type Derived, type Tree, valueAt } from './defaults.ts'
import { camel } from './fields.ts'
import { fieldAt } from './paths.ts'
import type { Craft } from './schema/craftSchema.ts'

/** defaults of a craft that follow other values, so that trying a value carries its followers along */
const followers = new WeakMap<Craft, readonly Derived[]>()

export function rememberDerived(craft: Craft, derived: readonly Derived[]): void {
  followers.set(craft, derived)
}

/** A copy that holds some sections of a craft goes on letting the defaults in them follow. */
export function carryDerived(from: Craft, to: Craft): void {
  const derived = followers.get(from)
  if (!derived) return
  const held = new Set(Object.keys(to))
  followers.set(
    to,
    derived.filter((d) => held.has(d.segments[0]!)),
  )
}

const split = new Map<string, readonly string[]>()

/** "jet.rotor.trailing edge" -> the keys of the typed craft; paths are few, so they are kept */
function segmentsOf(path: string): readonly string[] {
  let made = split.get(path)
  if (!made) {
    made = path.split('.').map(camel)
    split.set(path, made)
  }
  return made
}

const copyOf = (node: unknown): Tree =>
  (Array.isArray(node) ? [...node] : { ...(node as Tree) }) as unknown as Tree

/** writes into a copy that shares everything off the path; `fresh` holds nodes that are already copies */
function put(
  root: Tree,
  segments: readonly string[],
  value: unknown,
  fresh: Set<unknown>,
  path: string,
): void {
  let at = root
  for (let i = 0; i < segments.length - 1; i++) {
    const key = segments[i]!
    const next = at[key]
    if (next === null || typeof next !== 'object')
      throw new RangeError(`${path}: the craft has no ${segments.slice(0, i + 1).join('.')}`)
    if (!fresh.has(next)) {
      at[key] = copyOf(next)
      fresh.add(at[key])
    }
    at = at[key] as Tree
  }
  at[segments.at(-1)!] = value
}

/**
 * A copy of a craft with some values replaced, SI numbers by path (words and flags may be replaced too).
 * The range keeps its width round the new value. Defaults that follow a replaced value follow it here.
 * Shares everything untouched with the original. Throws RangeError for a path the craft does not have
 * or a number that is not finite. Limits are not checked: a search may look beyond them.
 */
export function whatIf(craft: Craft, changes: Readonly<Record<string, number | string | boolean>>): Craft {
  const root = copyOf(craft)
  const fresh = new Set<unknown>([root])
  const touched = new Set<string>()
  for (const path in changes) {
    const to = changes[path]!
    const segments = segmentsOf(path)
    touched.add(segments.join('.'))
    const now = valueAt(root, segments)
    if (typeof to !== 'number') {
      const spec = fieldAt(path)
      if ((spec?.type === 'choice' && !spec.words.includes(String(to))) || typeof now === 'object')
        throw new RangeError(`${path}: ${String(to)} cannot stand here`)
      put(root, segments, to, fresh, path)
      continue
    }
    if (!Number.isFinite(to)) throw new RangeError(`${path}: ${to} is not a finite number`)
    put(root, segments, moved(now as Quantity | undefined, to, path), fresh, path)
  }
  const derived = followers.get(craft)
  const made = root as unknown as Craft
  carryFiles(craft, made)
  if (derived) {
    follow(root, derived, touched, fresh)
    followers.set(made, touchedOut(derived, touched))
  }
  return made
}

function moved(now: Quantity | undefined, to: number, path: string): Quantity {
  if (now && typeof now === 'object' && 'kind' in now) {
    // a choice that was open and is made is as exact as it is typed
    if (now.undecided) {
      const { undecided: _, ...made } = now
      return { ...made, value: to, low: to, high: to }
    }
    const step = to - now.value
    return { ...now, value: to, low: now.low + step, high: now.high + step }
  }
  const spec = fieldAt(path)
  if (spec?.type !== 'quantity') throw new RangeError(`${path} is not a number of the craft`)
  return { value: to, low: to, high: to, source: 'guess', kind: spec.kind, path }
}

/** a value that was set by hand follows nothing any more */
const touchedOut = (derived: readonly Derived[], touched: ReadonlySet<string>): readonly Derived[] =>
  derived.some((d) => touched.has(d.segments.join('.')))
    ? derived.filter((d) => !touched.has(d.segments.join('.')))
    : derived

function follow(
  root: Tree,
  derived: readonly Derived[],
  touched: ReadonlySet<string>,
  fresh: Set<unknown>,
): void {
  for (const d of derived) {
    if (touched.has(d.segments.join('.'))) continue
    const q = assumedQuantity(root, d)
    if (typeof q !== 'object') continue
    const now = valueAt(root, d.segments) as Quantity
    if (q.value !== now.value || q.low !== now.low || q.high !== now.high)
      put(root, d.segments, q, fresh, d.path)
  }
}
