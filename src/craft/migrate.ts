import { currentVersion } from './schema/craftSchema.ts'

/**
 * Carries a text of one version to the next, comments and all. Pure. `migrations[n]` takes version n to
 * n + 1. Version 1 is the first, so the list is empty; a change of the format adds one function here and
 * one fixture file of the old version to the tests.
 */
export type Migration = (text: string) => string
export const migrations: Readonly<Record<number, Migration>> = {}

/** Text of version `from` -> the same craft in version `to`. Throws RangeError when a step is missing. */
export function migrate(
  text: string,
  from: number,
  to: number = currentVersion,
  steps: Readonly<Record<number, Migration>> = migrations,
): string {
  if (from > to) throw new RangeError(`version ${from} is newer than ${to}; the file is left as it is`)
  let at = text
  for (let v = from; v < to; v++) {
    const step = steps[v]
    if (!step) throw new RangeError(`no way is known from version ${v} to ${v + 1}`)
    at = step(at)
  }
  return at
}
