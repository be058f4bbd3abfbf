import { isMap, isScalar, isSeq, type Scalar, type YAMLMap, type YAMLSeq } from 'yaml'
import type { Fields, Spec } from './fields.ts'
import { type Fragment, flowText, itemLines, keyLines, type Quoting, scalarText } from './fragment.ts'
import {
  afterMark,
  apply,
  childOf,
  columnOf,
  contentEnd,
  endOfLine,
  indexIn,
  lineEnd,
  openText,
  pairEnd,
  pairOf,
  type Splice,
  type Step,
  scalarOf,
  stepsOf,
} from './locate.ts'
import { isBlank } from './reader.ts'
import { craftFields, versionKey } from './schema/craftSchema.ts'

/**
 * Edits of one place in a craft file's text. Each finds where the value stands and splices the text there,
 * so that comments, order, quotes, line ends and every byte elsewhere stay as they were. All throw RangeError
 * when the text cannot be parsed or the path is not one of a craft file.
 */

/** Changes one value, or writes it where the file had none. `value` is the text as a person would type it. */
export function setValue(text: string, path: string, value: string): string {
  const map = openText(text, path)
  const steps = stepsOf(path, map)
  const leaf = steps.at(-1)!.spec
  const whole = leaf.type === 'point'
  if (!whole && ['group', 'list', 'variant'].includes(leaf.type))
    throw new RangeError(`${path} holds several values; set them one by one`)
  const fragment: Fragment = whole ? pointItems(path, value) : value
  const made = putFragment(text, map, steps, fragment, path)
  verify(made, path, steps, fragment)
  return made
}

function pointItems(path: string, value: string): string[] {
  const inner = /^\s*\[(.*)\]\s*$/s.exec(value)?.[1]
  if (inner === undefined)
    throw new RangeError(`${path}: expected lengths in square brackets, found ${value}`)
  return inner.split(',').map((s) => s.trim())
}

/** the text read back must give the value; anything else is a fault of this file and must not reach the disk */
function verify(made: string, path: string, steps: readonly Step[], fragment: Fragment): void {
  let node: unknown = openText(made, path)
  for (const s of steps) node = childOf(node, s.key)
  const same = Array.isArray(fragment)
    ? isSeq(node) && fragment.every((f, i) => scalarOf(node.items[i]) === f)
    : scalarOf(node) === fragment
  if (!same)
    throw new RangeError(`${path}: the value could not be written here without touching its neighbours`)
}

/** goes down as far as the file has something, then replaces or creates */
function putFragment(
  text: string,
  map: YAMLMap | null,
  steps: readonly Step[],
  fragment: Fragment,
  path: string,
): string {
  if (!map) {
    const base = text === '' || text.endsWith('\n') ? text : text + lineEnd(text)
    return base + keyLines(steps[0]!.key, wrap(steps.slice(1), fragment)).join(lineEnd(text)) + lineEnd(text)
  }
  let holder: YAMLMap | YAMLSeq = map
  let fields: readonly string[] = [versionKey, ...Object.keys(craftFields)]
  for (let i = 0; i < steps.length; i++) {
    const { key, spec } = steps[i]!
    const rest = wrap(steps.slice(i + 1), fragment)
    const node = childOf(holder, key)
    const last = i === steps.length - 1
    if (node === undefined) return apply(text, addTo(text, holder, key, rest, fields, path))
    if (last && isScalar(node) && !isBlank(node)) return apply(text, replaceScalar(text, holder, node, rest))
    if (isBlank(node)) return apply(text, fillBlank(text, holder, key, rest, path))
    if (last && isSeq(node)) {
      const [from, to] = node.range!
      return apply(text, { from, to, put: flowText(rest) })
    }
    if (!isMap(node) && !isSeq(node)) throw new RangeError(`${path}: ${key} is not a group in this file`)
    holder = node
    fields = orderOf(spec, node)
  }
  throw new RangeError(`${path}: nothing to set`)
}

function orderOf(spec: Spec, node: unknown): readonly string[] {
  if (spec.type === 'group') return Object.keys(spec.fields)
  if (spec.type !== 'variant') return []
  const word = scalarOf(childOf(node, spec.tag)) ?? ''
  const own = Object.hasOwn(spec.variants, word)
    ? spec.variants[word]!.fields
    : Object.assign({}, ...Object.values(spec.variants).map((v) => v.fields))
  const keys = Object.keys(own as Fields)
  // the tag is written right after the name
  return [...keys.slice(0, 1), spec.tag, ...keys.slice(1)]
}

/** the fragment inside the groups that still have to be made */
function wrap(steps: readonly Step[], fragment: Fragment): Fragment {
  return steps.reduceRight<Fragment>(
    (made, { key }) => (/^\d+$/.test(key) ? [made] : { [key]: made }),
    fragment,
  )
}

function replaceScalar(text: string, holder: YAMLMap | YAMLSeq, node: Scalar, rest: Fragment): Splice {
  const [from, to] = node.range!
  if (typeof rest !== 'string') return { from, to, put: flowText(rest) }
  const quoting: Quoting =
    node.type === 'QUOTE_DOUBLE' ? 'double' : node.type === 'QUOTE_SINGLE' ? 'single' : 'plain'
  const put = scalarText(rest, holder.flow === true, quoting)
  // a block of lines ends after its line end, which must stay
  const tail = text.slice(from, to).endsWith('\n') ? lineEnd(text) : ''
  return { from, to, put: put + tail }
}

/** writes behind `key:` or `-` that had nothing after it */
function fillBlank(
  text: string,
  holder: YAMLMap | YAMLSeq,
  key: string,
  rest: Fragment,
  path: string,
): Splice {
  const at = afterMark(holder, indexIn(holder, key))
  if (at === undefined) throw new RangeError(`${path}: ${key} has no place for a value`)
  if (typeof rest === 'string' || holder.flow === true)
    return { from: at, to: at, put: ` ${holder.flow ? flowText(rest) : scalarText(rest as string, false)}` }
  if (isSeq(holder)) return { from: at, to: at, put: ` ${flowText(rest)}` }
  const lines = keyLines(key, rest).slice(1)
  const end = endOfLine(text, at)
  const indent = ' '.repeat(columnOf(text, startOfPair(holder, key)))
  return insertLines(text, end, lines, indent)
}

const startOfPair = (map: YAMLMap, key: string) => (pairOf(map, key)!.key as Scalar).range![0]

/** lines put after the line that ends at `end` */
function insertLines(text: string, end: number, lines: readonly string[], indent: string): Splice {
  const eol = lineEnd(text)
  return { from: end, to: end, put: lines.map((l) => (l === '' ? eol : eol + indent + l)).join('') }
}

/** a key or an item the holder does not have yet */
function addTo(
  text: string,
  holder: YAMLMap | YAMLSeq,
  key: string,
  rest: Fragment,
  order: readonly string[],
  path: string,
): Splice {
  if (isSeq(holder)) {
    if (Number(key) !== holder.items.length)
      throw new RangeError(
        `${path}: the list has ${holder.items.length} items; the next is number ${holder.items.length}`,
      )
    return addItem(text, holder, rest)
  }
  const rank = (k: string) => order.indexOf(k)
  let after = -1
  holder.items.forEach((p, i) => {
    const r = rank(scalarOf(p.key) ?? '')
    if (r !== -1 && r < rank(key)) after = i
  })
  if (holder.flow === true) return addFlowPair(text, holder, after, `${key}: ${flowText(rest)}`)
  const lines = keyLines(key, rest)
  const first = (holder.items[0]!.key as Scalar).range![0]
  const indent = ' '.repeat(columnOf(text, first))
  if (after === -1) {
    const eol = lineEnd(text)
    return { from: first, to: first, put: lines.map((l) => l + eol + indent).join('') }
  }
  const end = endOfLine(text, pairEnd(text, holder, after))
  // sections are parted by a blank line where the file does so
  const section = indent === '' && lines.length > 1 && /\n\r?\n/.test(text)
  return insertLines(text, end, section ? ['', ...lines] : lines, indent)
}

function addFlowPair(text: string, map: YAMLMap, after: number, put: string): Splice {
  if (map.items.length === 0) {
    const [from, to] = map.range!
    return { from, to, put: `{ ${put} }` }
  }
  if (after === -1) {
    const at = (map.items[0]!.key as Scalar).range![0]
    return { from: at, to: at, put: `${put}, ` }
  }
  const at = pairEnd(text, map, after)
  return { from: at, to: at, put: `, ${put}` }
}

function addItem(text: string, seq: YAMLSeq, item: Fragment): Splice {
  if (seq.flow === true) {
    const last: unknown = seq.items.at(-1)
    if (last === undefined) {
      const [from, to] = seq.range!
      return { from, to, put: `[${flowText(item)}]` }
    }
    const at = contentEnd(text, last, seq.range![1])
    return { from: at, to: at, put: `, ${flowText(item)}` }
  }
  const dash = afterMark(seq, 0)! - 1
  const end = endOfLine(text, contentEnd(text, seq, seq.range![1]))
  return insertLines(text, end, itemLines(item), ' '.repeat(columnOf(text, dash)))
}

/** A change that was kept. Texts are as written in the file. */
export interface LogEntry {
  /** year-month-day, handed in by the caller */
  date: string
  path: string
  from?: string
  to?: string
  reason?: string
  expect?: string
}

/** Adds an entry at the end of the log, which is made when the file has none. */
export function appendLog(text: string, entry: LogEntry): string {
  const map = openText(text, 'log')
  const fragment: Record<string, string> = {}
  for (const key of ['date', 'path', 'from', 'to', 'reason', 'expect'] as const) {
    const value = entry[key]
    if (value !== undefined && value !== '') fragment[key] = value
  }
  const log = map ? childOf(map, 'log') : undefined
  const index = isSeq(log) ? log.items.length : 0
  const path = `log.${index}`
  const made = putFragment(text, map, stepsOf(path, map), fragment, path)
  openText(made, path)
  return made
}

/** The text of one value as it stands in the file, or undefined when the file has none there. */
export function valueText(text: string, path: string): string | undefined {
  const map = openText(text, path)
  let node: unknown = map
  for (const s of stepsOf(path, map)) node = childOf(node, s.key)
  if (isScalar(node)) return isBlank(node) ? undefined : String(node.value)
  if (!isSeq(node) && !isMap(node)) return undefined
  return text.slice(node.range![0], node.range![1])
}
