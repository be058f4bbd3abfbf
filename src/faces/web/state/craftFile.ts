import { displayUnit } from '../../../base/units/format.ts'
import type { Kind } from '../../../base/units/kinds.ts'
import { proseIn } from '../../../base/units/prose.ts'
import {
  appendLog,
  type Craft,
  camel,
  fieldAt,
  type Problem,
  type Quantity,
  readCraft,
  removeValue,
  type Source,
  setValue,
  valueText,
  whatIf,
} from '../../../craft/index.ts'
import { withHullFiles } from './hullFiles.ts'
import { writtenNumber } from './shownValues.ts'
import type { UnitSystem } from './store.ts'
import type { Tried } from './work.ts'

export { labelOf } from '../../../craft/index.ts'
export type { Craft, Problem }

export interface Reading {
  /** absent while the text cannot be read */
  craft: Craft | undefined
  problems: readonly Problem[]
}

/** True when something keeps the file from being read; warnings do not. */
export function hasErrors(problems: readonly Problem[]): boolean {
  return problems.some((problem) => problem.severity === 'error')
}

/** Reads a craft file's text. */
export function readText(text: string, file: string): Reading {
  const { craft, problems } = readCraft(text, file)
  return { craft: craft && withHullFiles(craft), problems }
}

/** The tried values by path, a yes or no as a truth value. */
export function triedValues(tried: readonly Tried[]): Record<string, number | string | boolean> {
  const value = (t: Tried) => (fieldAt(t.path)?.type === 'flag' ? t.value === 'yes' : t.value)
  return Object.fromEntries(tried.map((t) => [t.path, value(t)]))
}

/** The craft with the tried values in it; undefined when nothing is tried or the craft has no such path any more. */
export function tryOn(craft: Craft, tried: readonly Tried[]): Craft | undefined {
  if (tried.length === 0) return undefined
  try {
    // a tried hull file is another one than the craft names
    return withHullFiles(whatIf(craft, triedValues(tried)))
  } catch {
    return undefined
  }
}

/** The text with one value written; throws RangeError when it cannot stand there. */
export function writeValue(text: string, path: string, value: string): string {
  return setValue(text, path, value)
}

/** True when the text has something at a path; false also when it cannot be told. */
export function isWritten(text: string, path: string): boolean {
  try {
    return valueText(text, path) !== undefined
  } catch {
    return false
  }
}

/** The text without a value or an item of a list. */
export { removeValue }

/** The text with everything tried written in, and one log entry for each. */
export function keepInFile(
  text: string,
  tried: readonly Tried[],
  entry: { date: string; reason: string; expect: string },
): string {
  const said = Object.fromEntries(
    (['reason', 'expect'] as const).filter((key) => entry[key] !== '').map((key) => [key, entry[key]]),
  )
  let kept = text
  for (const { path, text: to, was } of tried) {
    const from = valueText(kept, path) ?? was
    kept = appendLog(setValue(withoutOldKind(kept, path, to), path, to), {
      date: entry.date,
      path,
      from,
      to,
      ...said,
    })
  }
  return kept
}

/** Before an item becomes of another kind: the text without the values that the new kind does not have. */
function withoutOldKind(text: string, path: string, kind: string): string {
  const at = path.slice(0, path.lastIndexOf('.'))
  const owner = fieldAt(at)
  if (owner?.type !== 'variant' || path !== `${at}.${owner.tag}`) return text
  const before = owner.variants[valueText(text, path) ?? '']?.fields ?? {}
  const after = owner.variants[kind]?.fields ?? {}
  return Object.keys(before)
    .filter((key) => !(key in after) && isWritten(text, `${at}.${key}`))
    .reduce((sum, key) => removeValue(sum, `${at}.${key}`), text)
}

/** What the craft holds at a path of the file's own keys, typed craft in, anything out. */
function valueAt(craft: Craft, path: string): unknown {
  let at: unknown = craft
  for (const step of path.split('.').map(camel))
    at = at === null || typeof at !== 'object' ? undefined : (at as Record<string, unknown>)[step]
  return at
}

/** A value of the craft as a form shows it. Numbers are SI. */
export interface InputAt {
  path: string
  label: string
  gloss: string
  kind: Kind
  /** unit shown, '' for words and plain numbers */
  unit: string
  min: number
  max: number
  value: number | string | undefined
  low: number
  high: number
  source: Source
  /** as written in the file */
  text?: string
  /** for an assumed value: why this one */
  why?: string
  choices?: readonly string[]
}

/** The input at a path, or undefined when the craft has no such value. */
export function inputAt(craft: Craft, path: string, units: UnitSystem): InputAt | undefined {
  const spec = fieldAt(path)
  const held = valueAt(craft, path)
  const named = { path, label: spec?.label ?? path, gloss: proseIn(spec?.gloss ?? '', units) }
  const noNumber = {
    ...named,
    kind: 'choice' as Kind,
    unit: '',
    min: 0,
    max: 0,
    low: 0,
    high: 0,
    source: 'guess' as Source,
  }
  if (spec?.type === 'choice') return { ...noNumber, value: held as string | undefined, choices: spec.words }
  if (spec?.type === 'flag') return { ...noNumber, value: held ? 'yes' : 'no', choices: ['yes', 'no'] }
  if (spec?.type !== 'quantity') return undefined
  const { kind, min, max } = spec
  const unit = shownUnit(kind, units, spec.unit)
  const quantity = held as Quantity | undefined
  if (!quantity)
    return { ...named, kind, unit, min, max, value: undefined, low: 0, high: 0, source: 'assumed' }
  const { value, low, high, source, text, why } = quantity
  return {
    ...{ ...named, kind, unit, min, max, value, low, high, source },
    ...(text === undefined ? {} : { text }),
    ...(why === undefined ? {} : { why: proseIn(why, units) }),
  }
}

/** The unit a form shows: the field's own or its counterpart; none for ratios and counts. */
export function shownUnit(kind: Kind, units: UnitSystem, hint: string): string {
  const unit = displayUnit(kind, units, hint)
  return unit === '1' ? '' : unit
}

/** What the file says at a path, in short: "108 mm", "none". */
export function textOf(craft: Craft, path: string, units: UnitSystem): string {
  if (fieldAt(path)?.type === 'text') return String(valueAt(craft, path) ?? '')
  const input = inputAt(craft, path, units)
  if (!input || input.value === undefined) return ''
  if (typeof input.value === 'string') return input.value
  return `${writtenNumber(input.value, input.kind, input.unit)} ${input.unit}`.trim()
}
