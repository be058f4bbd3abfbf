import { isQuantityProblem, parseQuantity } from '../../../../base/units/parse.ts'
import type { Spec } from '../../../../craft/fields.ts'
import { shownUnit } from '../../state/craftFile.ts'
import { withUnit } from '../../state/shownValues.ts'
import type { UnitSystem } from '../../state/store.ts'

/** A value that is still to be given. */
export interface Blank {
  path: string
  spec: Spec
}

/** The values that something must have: its required fields, and theirs. */
export function blanksOf(spec: Spec, path: string): Blank[] {
  switch (spec.type) {
    case 'group':
      return requiredOf(spec.fields, path)
    case 'point':
      return spec.axes.map((axis, i) => ({ path: `${path}.${i}`, spec: { ...spec.each, label: axis } }))
    case 'list':
      return Array.from({ length: Math.max(1, spec.minItems) }, (_, i) =>
        blanksOf(spec.item, `${path}.${i}`),
      ).flat()
    case 'variant': {
      const [word = '', first] = Object.entries(spec.variants)[0] ?? []
      const tag: Spec = { type: 'choice', words: [word], presence: 'required', label: 'Kind', gloss: '' }
      return [{ path: `${path}.${spec.tag}`, spec: tag }, ...requiredOf(first?.fields ?? {}, path)]
    }
    default:
      return [{ path, spec }]
  }
}

/** The values among some fields that have no default: required ones, and those of groups and lists that must be there. */
export function requiredOf(fields: Readonly<Record<string, Spec>>, path: string): Blank[] {
  return Object.entries(fields).flatMap(([key, spec]) => {
    const at = `${path}.${key}`
    if (spec.presence === 'required') return blanksOf(spec, at)
    if (spec.presence === 'optional') return []
    if (spec.type === 'group') return requiredOf(spec.fields, at)
    return spec.type === 'list' && spec.minItems > 0 ? blanksOf(spec, at) : []
  })
}

/** What stands in a blank before anything is typed: the first of its words. */
export const firstWord = (spec: Spec): string => (spec.type === 'choice' ? (spec.words[0] ?? '') : '')

/** The text to write for what was typed, or what is wrong with it. */
export function readBlank(
  { spec }: Blank,
  typed: string,
  units: UnitSystem,
): { text: string } | { fault: string } {
  if (spec.type !== 'quantity') return typed === '' ? { fault: 'Needed.' } : { text: typed }
  const unit = shownUnit(spec.kind, units, spec.unit)
  const text = withUnit(typed, unit)
  const read = parseQuantity(text, spec.kind, unit)
  if (isQuantityProblem(read)) return { fault: `It ${read.problem}; expected ${read.expected}.` }
  if (read.value < spec.min || read.value > spec.max) return { fault: 'It is outside what can be.' }
  return { text }
}
