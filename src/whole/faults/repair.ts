/**
 * What it costs to get the craft right from a belief, and what a check saves of that. Fixes are tried in the order of share over cost,
 * which is the cheapest for one fault: J. B. Kadane and H. A. Simon, Optimal strategies for a class of constrained sequential problems,
 * Ann. Statist. 5 (1977) 237; expected cost of repair: D. Heckerman, J. S. Breese, K. Rommelse, Decision-theoretic troubleshooting,
 * CACM 38 (1995) 49, from memory. With several faults at once a story is mended when the last of its fixes was made.
 */

/** What may have happened: its share of the belief and the places of the fixes it needs. */
export interface Belief {
  share: number
  fixes: readonly number[]
}

/** minutes of the run that tries a fix again */
export const retry = 25

/** minutes after which nobody tries further fixes: somebody is asked, or another day comes; judgement */
export const patience = 300

/** An order of fixes: their places, first tried first. */
export type Order = readonly number[]

/** Orders worth trying: by share over cost, and story by story. `costs` in minutes, each above 0. */
export function ordersOf(beliefs: readonly Belief[], costs: readonly number[]): Order[] {
  const share = new Float64Array(costs.length)
  for (const b of beliefs) for (const f of b.fixes) share[f]! += b.share
  const each = costs.map((_, i) => i).sort((a, b) => share[b]! / costs[b]! - share[a]! / costs[a]!)
  // several faults are mended together or the craft does not go: the likeliest story first
  const stories = new Set<number>()
  for (const b of [...beliefs].sort((x, y) => y.share - x.share).slice(0, 12))
    for (const f of b.fixes) stories.add(f)
  return [each, [...stories, ...each.filter((f) => !stories.has(f))]]
}

/** Expected minutes of repair in one order, over beliefs whose shares sum to 1; none longer than patience lasts. */
export function minutesIn(order: Order, beliefs: readonly Belief[], costs: readonly number[]): number {
  const place = new Float64Array(costs.length)
  let spent = 0
  for (const f of order) {
    spent += costs[f]!
    place[f] = spent
  }
  let sum = 0
  for (const b of beliefs) {
    let until = 0
    for (const f of b.fixes) until = Math.max(until, place[f]!)
    sum += b.share * Math.min(until, patience)
  }
  return sum
}

/** Expected minutes of repair in the best of the orders, `also` among them. */
export const repairMinutes = (
  beliefs: readonly Belief[],
  costs: readonly number[],
  also: readonly Order[] = [],
): number => Math.min(...[...ordersOf(beliefs, costs), ...also].map((o) => minutesIn(o, beliefs, costs)))
