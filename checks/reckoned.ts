import type { Reckoner } from '../src/base/answers/reckoner.ts'

/** What one of these reckoners answers; inputs that are not given stand at what the reckoner assumes. */
export const reckonedBy =
  (reckoners: readonly Reckoner[]) =>
  (id: string, given: Record<string, number>, words: Record<string, string> = {}) => {
    const { inputs, reckon } = reckoners.find((r) => r.id === id)!
    const assumed = inputs.flatMap((p) => (p.assumed === undefined ? [] : [[p.name, p.assumed] as const]))
    return reckon({ ...Object.fromEntries(assumed), ...given }, words)
  }
