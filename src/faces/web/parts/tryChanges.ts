import type { FileChange } from '../../../base/answers/decision.ts'
import { isQuantityProblem, parseQuantity } from '../../../base/units/parse.ts'
import { fieldAt } from '../../../craft/index.ts'
import { app } from '../state/app.ts'

type Trial = readonly [string, number | string, string]

/** Changes as one would type them, as trials; those of a path that no craft has are left out. */
export function trialsOf(changes: readonly FileChange[]): Trial[] {
  return changes.flatMap(({ path, to }): Trial[] => {
    const field = fieldAt(path)
    if (!field) return []
    if (field.type !== 'quantity') return [[path, to, to]]
    const read = parseQuantity(to, field.kind, field.unit)
    return isQuantityProblem(read) ? [] : [[path, read.value, to]]
  })
}

/** Tries everything a decision would change, in one step. */
export function tryChanges(changes: readonly FileChange[], what: string): void {
  app.tryAll(trialsOf(changes), what)
}
