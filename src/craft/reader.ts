import { isMap, isScalar, isSeq, type Pair, type YAMLMap } from 'yaml'
import { formatQuantity } from '../base/units/format.ts'
import { keyMeant, nearest } from '../base/units/near.ts'
import { expectedText, isQuantityProblem, parseQuantity } from '../base/units/parse.ts'
import type { Quantity } from './craftTypes.ts'
import { type Derived, pending, type Tree } from './defaults.ts'
import {
  type ChoiceSpec,
  camel,
  type Fields,
  type FlagSpec,
  type ListSpec,
  type PointSpec,
  type QuantitySpec,
  type Spec,
  type TextSpec,
  type VariantSpec,
} from './fields.ts'
import { quoted } from './problem.ts'
import { todaysKey } from './schema/oldKeys.ts'
import { usualSpread } from './valueSpread.ts'

/** What is gathered while a file is walked. */
/** Whether a key stands elsewhere, and where, in words. */
export interface KeyHome {
  known: boolean
  says?: string
}

export interface Walk {
  /** offset of each value in the text, by path */
  places: Map<string, number>
  waiting: Derived[]
  /** paths of words and flags that were left out and filled in */
  assumedWords: string[]
  /** where else a key of this name belongs, in words, for one that stands in the wrong group */
  homeOf: (key: string, path: string) => KeyHome
  complain: (offset: number, path: string, found: string, expected: string, says: string) => void
}

/** where a value stands: its path in the file's words, the same in the tree's keys, and an offset to point at */
interface Spot {
  path: string
  segments: readonly string[]
  offset: number
}

/** undefined: nothing usable was read (already complained about, or optional and absent) */
type Got = unknown

const below = (spot: Spot, key: string, offset: number): Spot => ({
  path: spot.path === '' ? key : `${spot.path}.${key}`,
  segments: [...spot.segments, camel(key)],
  offset,
})

/** a value left empty: `key:` with nothing after it */
export function isBlank(node: unknown): boolean {
  if (node === null || node === undefined) return true
  return isScalar(node) && (node.value === null || (node.value === '' && node.type === 'PLAIN'))
}

export const startOf = (node: unknown, otherwise: number): number =>
  (node as { range?: readonly number[] | null } | null)?.range?.[0] ?? otherwise

function shown(node: unknown): string {
  if (isMap(node)) return 'a group of keys'
  if (isSeq(node)) return 'a list'
  if (isScalar(node)) return quoted(String(node.value))
  return 'nothing'
}

/** Reads one field; `node` is undefined when the file has none. */
function readField(walk: Walk, spec: Spec, node: unknown, spot: Spot): Got {
  if (node !== undefined) walk.places.set(spot.path, spot.offset)
  switch (spec.type) {
    case 'quantity':
      return readQuantity(walk, spec, node, spot)
    case 'choice':
      return readChoice(walk, spec, node, spot)
    case 'text':
      return readText(walk, spec, node, spot)
    case 'flag':
      return readFlag(walk, spec, node, spot)
    case 'point':
      return readPoint(walk, spec, node, spot)
    case 'group':
      if (spec.presence === 'optional' && node === undefined) return undefined
      return readFields(walk, spec.fields, node, spot, {})
    case 'list':
      return readList(walk, spec, node, spot)
    case 'variant':
      return readVariant(walk, spec, node, spot)
  }
}

function missing(walk: Walk, spot: Spot, expected: string): undefined {
  walk.complain(spot.offset, spot.path, 'nothing', expected, `${spot.path} is missing; expected ${expected}`)
  return undefined
}

function wrong(walk: Walk, spot: Spot, node: unknown, expected: string): undefined {
  const found = isBlank(node) ? 'nothing' : shown(node)
  walk.complain(spot.offset, spot.path, found, expected, `${spot.path} is ${found}; expected ${expected}`)
  return undefined
}

/** the text of a scalar, or undefined after a complaint */
function scalarText(walk: Walk, node: unknown, spot: Spot, expected: string): string | undefined {
  if (!isScalar(node) || isBlank(node)) return wrong(walk, spot, node, expected)
  return String(node.value)
}

/** "between 30 mm and 400 mm" */
export function limitsInWords(spec: QuantitySpec): string {
  const show = (x: number) => formatQuantity(x, spec.kind, spec.unit, 6)
  if (spec.max === Number.MAX_VALUE) return `${show(spec.min)} or more`
  return `between ${show(spec.min)} and ${show(spec.max)}`
}

/** what stands in the file for a choice that is still to be made */
export const undecidedWord = 'undecided'

function readQuantity(walk: Walk, spec: QuantitySpec, node: unknown, spot: Spot): Got {
  const expected = expectedText(spec.kind, spec.unit)
  if (node === undefined) {
    if (spec.presence === 'required') return missing(walk, spot, expected)
    if (spec.presence === 'optional') return undefined
    walk.waiting.push({ segments: spot.segments, path: spot.path, spec })
    return pending
  }
  const text = scalarText(walk, node, spot, expected)
  if (text === undefined) return undefined
  if (text.trim() === undecidedWord) {
    if (!spec.undecided) return notOpen(walk, spot, expected)
    walk.waiting.push({ segments: spot.segments, path: spot.path, spec, undecided: true })
    return pending
  }
  const q = quantityOf(spec, text, spot.path)
  if ('says' in q) {
    walk.complain(spot.offset, spot.path, q.found, q.expected, q.says)
    return undefined
  }
  return q
}

function notOpen(walk: Walk, spot: Spot, expected: string): undefined {
  const says = `${spot.path} cannot be left ${undecidedWord}: nothing works it out; expected ${expected}`
  walk.complain(spot.offset, spot.path, quoted(undecidedWord), expected, says)
  return undefined
}

/** A written value of a field -> its quantity, or what is wrong with it. Used by the reader and by forms. */
export function quantityOf(
  spec: QuantitySpec,
  text: string,
  path: string,
): Quantity | { says: string; found: string; expected: string } {
  const read = parseQuantity(text, spec.kind, spec.unit)
  if (isQuantityProblem(read))
    return {
      found: quoted(text),
      expected: read.expected,
      says: `${path} ${quoted(text)} ${read.problem}; expected ${read.expected}`,
    }
  const { value } = read
  // a hair of rounding must not refuse a value that stands on its limit
  const hair = 1e-9 * Math.max(Math.abs(spec.min), Math.abs(value))
  if (value < spec.min - hair || value > spec.max + hair) {
    const expected = limitsInWords(spec)
    const why = value < 0 && spec.min >= 0 && spec.kind !== 'temperature' ? 'is negative' : 'is out of range'
    return { found: quoted(text), expected, says: `${path} ${quoted(text)} ${why}; expected ${expected}` }
  }
  const source = read.source ?? 'guess'
  const half = read.uncertainty ?? usualSpread(spec, source, value)
  return {
    value,
    low: half === 0 ? value : Math.min(value, Math.max(spec.min, value - half)),
    high: half === 0 ? value : Math.max(value, Math.min(spec.max, value + half)),
    source,
    text,
    kind: spec.kind,
    path,
  }
}

/** "none, one-way (one-wai is nearest to one-way)" */
function oneOf(words: readonly string[], got?: string): string {
  const near = got === undefined ? undefined : nearest(got, words)
  return `one of ${words.join(', ')}${near ? `; "${near}" is nearest` : ''}`
}

function readChoice(walk: Walk, spec: ChoiceSpec, node: unknown, spot: Spot): Got {
  if (node === undefined) {
    if (spec.presence === 'required') return missing(walk, spot, oneOf(spec.words))
    if (spec.presence === 'assumed') walk.assumedWords.push(spot.path)
    return spec.assumed?.value
  }
  const text = scalarText(walk, node, spot, oneOf(spec.words))
  if (text === undefined) return undefined
  if (spec.words.includes(text.trim())) return text.trim()
  return wrong(walk, spot, node, oneOf(spec.words, text.trim()))
}

function readText(walk: Walk, spec: TextSpec, node: unknown, spot: Spot): Got {
  const expected = spec.patternSays ?? `words of at most ${spec.maxLength} characters`
  if (node === undefined) return spec.presence === 'required' ? missing(walk, spot, expected) : undefined
  const text = scalarText(walk, node, spot, expected)
  if (text === undefined) return undefined
  if (text.length > spec.maxLength || (spec.pattern && !spec.pattern.test(text)))
    return wrong(walk, spot, node, expected)
  return text
}

const yes = new Set(['yes', 'true'])
const no = new Set(['no', 'false'])

function readFlag(walk: Walk, spec: FlagSpec, node: unknown, spot: Spot): Got {
  if (node === undefined) {
    walk.assumedWords.push(spot.path)
    return spec.assumed.value
  }
  const text = scalarText(walk, node, spot, 'yes or no')
  if (text === undefined) return undefined
  if (yes.has(text)) return true
  if (no.has(text)) return false
  return wrong(walk, spot, node, 'yes or no')
}

function readPoint(walk: Walk, spec: PointSpec, node: unknown, spot: Spot): Got {
  const expected = `${spec.size} lengths in square brackets: ${spec.axes.join(', ')}`
  if (node === undefined) return spec.presence === 'required' ? missing(walk, spot, expected) : undefined
  if (!isSeq(node)) return wrong(walk, spot, node, expected)
  if (node.items.length !== spec.size) {
    const found = `a list of ${node.items.length}`
    walk.complain(spot.offset, spot.path, found, expected, `${spot.path} is ${found}; expected ${expected}`)
    return undefined
  }
  return node.items.map((item, i) =>
    readField(walk, spec.each, item ?? null, below(spot, String(i), startOf(item, spot.offset))),
  )
}

function readList(walk: Walk, spec: ListSpec, node: unknown, spot: Spot): Got {
  const expected = `a list of ${spec.minItems > 0 ? `${spec.minItems} to` : 'at most'} ${spec.maxItems} items`
  if (node === undefined) {
    if (spec.presence === 'optional') return undefined
    return spec.minItems > 0 ? missing(walk, spot, expected) : []
  }
  const items = isSeq(node) ? node.items : isBlank(node) ? [] : undefined
  if (!items) return wrong(walk, spot, node, `${expected}, each after a dash`)
  if (items.length < spec.minItems || items.length > spec.maxItems) {
    const found = `a list of ${items.length}`
    walk.complain(spot.offset, spot.path, found, expected, `${spot.path} is ${found}; expected ${expected}`)
    return undefined
  }
  return items.map((item, i) =>
    readField(walk, spec.item, item ?? null, below(spot, String(i), startOf(item, spot.offset))),
  )
}

function readVariant(walk: Walk, spec: VariantSpec, node: unknown, spot: Spot): Got {
  const words = Object.keys(spec.variants)
  if (!isMap(node)) return wrong(walk, spot, node, `a group of keys, ${spec.tag} among them`)
  const pair = node.items.find((p) => isScalar(p.key) && p.key.value === spec.tag)
  const at = below(spot, spec.tag, startOf(pair?.value ?? pair?.key, spot.offset))
  if (!pair) return missing(walk, at, oneOf(words))
  const word = isScalar(pair.value) ? String(pair.value.value).trim() : ''
  if (!Object.hasOwn(spec.variants, word)) return wrong(walk, at, pair.value, oneOf(words, word))
  walk.places.set(at.path, at.offset)
  return readFields(walk, spec.variants[word]!.fields, node, spot, { [spec.tag]: word })
}

/** Reads the keys of a group; `given` holds keys that were read already. */
export function readFields(
  walk: Walk,
  fields: Fields,
  node: unknown,
  spot: Spot,
  given: Tree,
): Tree | undefined {
  if (node !== undefined && !isBlank(node) && !isMap(node)) {
    return wrong(walk, spot, node, `a group of keys: ${Object.keys(fields).join(', ')}`)
  }
  const pairs = new Map<string, Pair>()
  if (isMap(node)) collectPairs(walk, fields, node, spot, given, pairs)
  const tree: Tree = { ...given }
  for (const [key, spec] of Object.entries(fields)) {
    const pair = pairs.get(key)
    const offset = pair ? startOf(isBlank(pair.value) ? pair.key : pair.value, spot.offset) : spot.offset
    const got = readField(walk, spec, pair ? (pair.value ?? null) : undefined, below(spot, key, offset))
    if (got !== undefined) tree[camel(key)] = got
  }
  return tree
}

function collectPairs(
  walk: Walk,
  fields: Fields,
  node: YAMLMap,
  spot: Spot,
  given: Tree,
  pairs: Map<string, Pair>,
): void {
  const seen = new Set<string>()
  const meant = new Map<string, Pair>()
  for (const pair of node.items) {
    const offset = startOf(pair.key, spot.offset)
    if (!isScalar(pair.key)) {
      const expected = 'a key of plain words'
      const path = spot.path || 'the file'
      walk.complain(
        offset,
        spot.path,
        shown(pair.key),
        expected,
        `${path} has ${shown(pair.key)} as a key; expected ${expected}`,
      )
      continue
    }
    const key = todaysKey(String(pair.key.value))
    if (seen.has(key)) {
      const { path } = below(spot, key, 0)
      const expected = 'each key once in its group'
      walk.complain(
        offset,
        path,
        'the same key twice',
        expected,
        `${path} is given twice; expected ${expected}`,
      )
      continue
    }
    seen.add(key)
    if (Object.hasOwn(given, key)) continue
    if (Object.hasOwn(fields, key)) pairs.set(key, pair)
    else {
      const known = Object.keys(fields)
      const home = walk.homeOf(key, spot.path)
      // a key of another group is no slip of one of this: "length" is not a misspelt "height"
      const near = keyMeant(key, known, !home.known)
      if (near) meant.set(near, pair)
      const expected = near ? `"${near}"` : `one of ${known.join(', ')}`
      const where = spot.path === '' ? 'a craft file' : spot.path
      const hint = near
        ? `; the nearest is "${near}"`
        : `${home.says ? `; ${home.says}` : ''}; known are ${known.join(', ')}`
      walk.complain(
        offset,
        below(spot, key, 0).path,
        quoted(key),
        expected,
        `${quoted(key)} is not a key of ${where}${hint}`,
      )
    }
  }
  // a misspelt key was told; what stands under it is read as meant, so that nothing is called missing
  for (const [key, pair] of meant) if (!pairs.has(key)) pairs.set(key, pair)
}
