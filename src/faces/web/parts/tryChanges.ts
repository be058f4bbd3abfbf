import type { FileChange } from '../../../base/answers/decision.ts'
import { isQuantityProblem, parseQuantity } from '../../../base/units/parse.ts'
import { fieldAt } from '../../../craft/index.ts'
import { app } from '../state/app.ts'
import { shownUnit } from '../state/craftFile.ts'
import { writtenNumber } from '../state/shownValues.ts'
import type { UnitSystem } from '../state/store.ts'

type Trial = readonly [string, number | string, string]

/**
 * Changes as one would type them, as trials: metric as they stand, else as a reader of inches types them; those of a path that no craft
 * has are left out.
 */
export function trialsOf(changes: readonly FileChange[], units: UnitSystem): Trial[] {
  return changes.flatMap(({ path, to }): Trial[] => {
    const field = fieldAt(path)
    if (!field) return []
    if (field.type !== 'quantity') return [[path, to, to]]
    const { kind, unit } = field
    const read = parseQuantity(to, kind, unit)
    if (isQuantityProblem(read)) return []
    const inches = shownUnit(kind, units, unit)
    const text = units === 'metric' ? to : `${writtenNumber(read.value, kind, inches)} ${inches}`.trim()
    return [[path, read.value, text]]
  })
}

/** Tries everything a decision would change, in one step. */
export function tryChanges(changes: readonly FileChange[], what: string): void {
  app.tryAll(trialsOf(changes, app.store.get().units), what)
}
