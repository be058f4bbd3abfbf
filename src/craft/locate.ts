import {
  isMap,
  isScalar,
  isSeq,
  type Pair,
  parseDocument,
  type Scalar,
  type YAMLMap,
  type YAMLSeq,
} from 'yaml'
import { camel, type Fields, type Spec } from './fields.ts'
import { blockedBy } from './guard.ts'
import { tagSpec } from './paths.ts'
import { isBlank } from './reader.ts'
import { craftFields } from './schema/craftSchema.ts'
import { todaysKey } from './schema/oldKeys.ts'

/** Where things stand in the text of a craft file: the ground on which edits are made. */

/** a replacement of text[from, to) */
export interface Splice {
  from: number
  to: number
  put: string
}

/** the text with one piece replaced */
export const apply = (text: string, s: Splice) => text.slice(0, s.from) + s.put + text.slice(s.to)

/** the parsed file, null when it is empty; RangeError for a text with a fault of form */
export function openText(text: string, why: string) {
  const blocked = blockedBy(text)
  if (blocked) throw new RangeError(`${why}: found ${blocked.found}`)
  const document = parseDocument(text, {
    schema: 'failsafe',
    prettyErrors: false,
    uniqueKeys: false,
    keepSourceTokens: true,
    logLevel: 'error',
  })
  const first = document.errors[0]
  if (first) throw new RangeError(`${why}: the file has a fault (${first.code}) at offset ${first.pos[0]}`)
  if (document.contents !== null && !isMap(document.contents))
    throw new RangeError(`${why}: the file is not a group of keys`)
  return document.contents as YAMLMap | null
}

/** one step down: the key as the file writes it, and what stands there */
export interface Step {
  key: string
  spec: Spec
}

/** the path's steps with the file's own keys; RangeError for a path no craft file has */
export function stepsOf(path: string, map: YAMLMap | null): Step[] {
  const steps: Step[] = []
  let options: (Fields | 'index')[] = [craftFields]
  let item: Spec[] = []
  let node: unknown = map
  for (const raw of path.split('.')) {
    let key: string | undefined
    let found: Spec | undefined
    for (const [i, o] of options.entries()) {
      if (o === 'index') {
        if (/^\d{1,4}$/.test(raw)) [key, found] = [String(Number(raw)), item[i]]
      } else {
        const k = Object.hasOwn(o, raw) ? raw : Object.keys(o).find((name) => camel(name) === raw)
        if (k !== undefined) [key, found] = [k, o[k]]
      }
      if (found) break
    }
    if (key === undefined || !found) throw new RangeError(`${path}: a craft file has no such value`)
    steps.push({ key, spec: found })
    node = childOf(node, key)
    ;[options, item] = inside(found, node)
  }
  return steps
}

/** what may come below a field, given what stands there now */
function inside(spec: Spec, node: unknown): [(Fields | 'index')[], Spec[]] {
  if (spec.type === 'group') return [[spec.fields], []]
  if (spec.type === 'list') return [['index'], [spec.item]]
  if (spec.type === 'point') return [['index'], [spec.each]]
  if (spec.type !== 'variant') return [[], []]
  const tag = tagSpec(spec)
  const word = isMap(node) ? scalarOf(childOf(node, spec.tag)) : undefined
  const one = word !== undefined && Object.hasOwn(spec.variants, word) ? spec.variants[word] : undefined
  const tables = one ? [one.fields] : Object.values(spec.variants).map((v) => v.fields)
  return [[{ [spec.tag]: tag }, ...tables], []]
}

/** the text of a scalar, undefined for anything else */
export const scalarOf = (node: unknown) => (isScalar(node) ? String(node.value) : undefined)

/** the pair with this key, or undefined */
export function pairOf(map: YAMLMap, key: string): Pair | undefined {
  return map.items.find((p) => isScalar(p.key) && todaysKey(String(p.key.value)) === key)
}

/** what stands under a key of a group or at an index of a list; undefined when nothing does */
export function childOf(node: unknown, key: string): unknown {
  if (isMap(node)) return pairOf(node, key)?.value ?? undefined
  if (isSeq(node)) return node.items[Number(key)]
  return undefined
}

/** the line end a text uses */
export const lineEnd = (text: string) => (text.includes('\r\n') ? '\r\n' : '\n')

interface Token {
  type: string
  offset: number
  source?: string
}

interface TokenItem {
  start: Token[]
  sep?: Token[]
}

/** offset just after the colon of a key, or after the dash of a list item */
export function afterMark(holder: YAMLMap | YAMLSeq, index: number): number | undefined {
  const item = (holder.srcToken as { items?: TokenItem[] } | undefined)?.items?.[index]
  const wanted = isMap(holder) ? item?.sep : item?.start
  const mark = wanted?.find((t) => t.type === 'map-value-ind' || t.type === 'seq-item-ind')
  return mark === undefined ? undefined : mark.offset + 1
}

/** where a key stands among the pairs of a group, -1 for nowhere; for a list, the index itself */
export function indexIn(holder: YAMLMap | YAMLSeq, key: string): number {
  return isMap(holder)
    ? holder.items.findIndex((p) => isScalar(p.key) && todaysKey(String(p.key.value)) === key)
    : Number(key)
}

/** characters before an offset in its line, a byte order mark not counted */
export function columnOf(text: string, offset: number): number {
  const start = text.lastIndexOf('\n', offset - 1) + 1
  const bom = start === 0 && text.charCodeAt(0) === 0xfeff ? 1 : 0
  return offset - start - bom
}

/** offset of the line end at or after `offset`, before its \r\n or \n */
export function endOfLine(text: string, offset: number): number {
  const n = text.indexOf('\n', offset)
  if (n === -1) return text.length
  return n > offset && text[n - 1] === '\r' ? n - 1 : n
}

/** offset just after the last character of what stands in a node */
export function contentEnd(text: string, node: unknown, otherwise: number): number {
  if ((isMap(node) || isSeq(node)) && node.flow !== true && node.items.length > 0) {
    const last: unknown = node.items.at(-1)
    if (isSeq(node)) return contentEnd(text, last, node.range![1])
    const pair = last as Pair
    const at = afterMark(node, node.items.length - 1) ?? (pair.key as Scalar).range![1]
    return isBlank(pair.value) ? at : contentEnd(text, pair.value, at)
  }
  const end = (node as { range?: readonly number[] } | null)?.range?.[1] ?? otherwise
  // a block of lines counts its line end in
  return end > 0 && text[end - 1] === '\n' ? end - (text[end - 2] === '\r' ? 2 : 1) : end
}

/** offset just after the last character of a pair of a group */
export function pairEnd(text: string, map: YAMLMap, index: number): number {
  const pair = map.items[index]!
  const at = afterMark(map, index) ?? (pair.key as Scalar).range![1]
  return isBlank(pair.value) ? at : contentEnd(text, pair.value, at)
}
