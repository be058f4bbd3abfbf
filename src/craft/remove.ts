import { isMap, isSeq, type Scalar, type YAMLMap, type YAMLSeq } from 'yaml'
import {
  afterMark,
  apply,
  childOf,
  contentEnd,
  endOfLine,
  indexIn,
  openText,
  pairEnd,
  type Splice,
  stepsOf,
} from './locate.ts'

/** Takes a value, a group or a list item out of the file. The text is unchanged when it is not there. */
export function removeValue(text: string, path: string): string {
  const map = openText(text, path)
  const steps = stepsOf(path, map)
  let holder: unknown = map
  for (const s of steps.slice(0, -1)) holder = childOf(holder, s.key)
  const { key } = steps.at(-1)!
  if (!isMap(holder) && !isSeq(holder)) return text
  const index = indexIn(holder, key)
  if (index < 0 || index >= holder.items.length) return text
  const made = apply(
    text,
    holder.flow === true ? flowCut(text, holder, index) : blockCut(text, holder, index),
  )
  let node: unknown = openText(made, path)
  for (const s of steps.slice(0, -1)) node = childOf(node, s.key)
  const left = isMap(node) || isSeq(node) ? node.items.length : 0
  if (left !== holder.items.length - 1)
    throw new RangeError(`${path} cannot be taken out without touching its neighbours`)
  return made
}

const itemStart = (holder: YAMLMap | YAMLSeq, i: number): number =>
  isMap(holder) ? (holder.items[i]!.key as Scalar).range![0] : (holder.items[i] as Scalar).range![0]

const itemEnd = (text: string, holder: YAMLMap | YAMLSeq, i: number): number =>
  isMap(holder) ? pairEnd(text, holder, i) : contentEnd(text, holder.items[i], itemStart(holder, i))

function flowCut(text: string, holder: YAMLMap | YAMLSeq, i: number): Splice {
  if (i > 0) return { from: itemEnd(text, holder, i - 1), to: itemEnd(text, holder, i), put: '' }
  if (holder.items.length > 1) return { from: itemStart(holder, 0), to: itemStart(holder, 1), put: '' }
  return { from: itemStart(holder, 0), to: itemEnd(text, holder, 0), put: '' }
}

function blockCut(text: string, holder: YAMLMap | YAMLSeq, i: number): Splice {
  const start = isMap(holder) ? itemStart(holder, i) : afterMark(holder, i)! - 1
  const end = endOfLine(text, itemEnd(text, holder, i))
  const lineStart = text.lastIndexOf('\n', start - 1) + 1
  const alone = text.slice(lineStart, start).replace('\uFEFF', '').trim() === ''
  if (alone) {
    const eol = /^\r?\n/.exec(text.slice(end))?.[0].length ?? 0
    return { from: text.charCodeAt(lineStart) === 0xfeff ? lineStart + 1 : lineStart, to: end + eol, put: '' }
  }
  // the first key of a list item shares its line with the dash: the next key moves up
  if (i === 0 && holder.items.length > 1) {
    const next = isMap(holder) ? itemStart(holder, 1) : afterMark(holder, 1)! - 1
    return { from: start, to: next, put: '' }
  }
  return { from: start, to: end, put: '' }
}
