/** Decisions as numbers on the craft's picture: where each is on board. */
import type { Decision } from '../../base/answers/decision.ts'
import type { Finding } from '../../base/answers/finding.ts'
import type { Craft } from '../../craft/index.ts'
import type { SketchNumber } from '../../drawing/craftSketch.ts'
import { pathsOf } from '../decisions.ts'
import { type OnCraft, placeOnCraft } from './placeOnCraft.ts'

export interface Numbered {
  n: number
  decision: Decision
  /** one for each of the things that are alike; none for what is nowhere on board */
  places: readonly OnCraft[]
}

/** changes that buy something which have a number wherever they stand in the order */
const gains = 2

/** Decisions in their order, numbered from one: as many as there is room for, the first ones and the changes that buy most. */
export function numbered(
  craft: Craft,
  decisions: readonly Decision[],
  findings: readonly Finding[],
  most = Number.POSITIVE_INFINITY,
): Numbered[] {
  const byId = new Map(findings.map((f) => [f.id, f]))
  const buying = decisions.filter((d) => d.gain).slice(0, gains)
  const rest = decisions.filter((d) => !buying.includes(d)).slice(0, most - buying.length)
  return decisions.flatMap((decision, i) => {
    if (!buying.includes(decision) && !rest.includes(decision)) return []
    const own = decision.findings.flatMap((id) => byId.get(id) ?? [])
    const changed = (decision.changes ?? []).map((c) => c.path)
    const places = own.flatMap((f, k) => {
      // the change is that of the first of them
      const paths = k === 0 ? [...changed, ...pathsOf(f)] : pathsOf(f)
      return firstOf(paths, (path) => placeOnCraft(craft, path)) ?? []
    })
    return {
      n: i + 1,
      decision,
      places: apart(places),
    }
  })
}

/** Numbers for the picture. */
export const numbersOf = (list: readonly Numbered[]): SketchNumber[] =>
  list.flatMap(({ n, places }) => places.map(({ at, from }) => ({ n, at, from })))

function firstOf<T>(paths: readonly string[], at: (path: string) => T | undefined): T | undefined {
  for (const path of paths) {
    const found = at(path)
    if (found) return found
  }
  return undefined
}

/** Places that are not all but the same, m. */
function apart(places: readonly OnCraft[]): OnCraft[] {
  return places.filter(
    (p, i) =>
      !places
        .slice(0, i)
        .some((q) => q.from === p.from && Math.hypot(...p.at.map((v, k) => v - q.at[k]!)) < 0.03),
  )
}
