/**
 * Stories: up to three faults at once, each from a moment on, weighed by Bayes' rule against the evidence. Two faults at once weigh 0.6 times
 * the product of their own weights (authored judgement).
 */
import { noneWeight } from './atoms.ts'
import { Weigher, type Weighing } from './weigher.ts'

export interface Story {
  /** indices of its atoms, rising; empty for "none of these" */
  atoms: readonly number[]
  /** ln of weight times likelihood, then its share of all */
  log: number
  share: number
}

/** weight of each further fault */
const further = 0.6
/** a joint that has opened takes the load off the others: they hardly open too */
const secondOpen = 0.15
/** ln below the best at which a story is dropped */
const depth = 11
/** atoms that may join a story: those that alone do best */
const mostPartners = 200
const widest = { second: 60, third: 40 } as const
/** Every story worth telling, likeliest first; their shares sum to 1. `alone`: causes that stand for nothing being wrong. */
export function tellStories(w: Weighing, alone: ReadonlySet<number>): { stories: Story[]; weigher: Weigher } {
  const weigher = new Weigher(w)
  const { atoms } = w
  const singles = atoms.map((a, i) => ({ atoms: [i], log: a.prior + weigher.likelihood([i]), share: 0 }))
  const none = { atoms: [], log: Math.log(noneWeight / w.total) + weigher.none(), share: 0 }
  const partners = singles
    .filter((s) => !alone.has(atoms[s.atoms[0]!]!.cause))
    .sort((a, b) => b.log - a.log)
    .slice(0, mostPartners)
    .map((s) => s.atoms[0]!)
  const seen = new Set<string>()
  const grow = (from: readonly Story[], most: number): Story[] => {
    const out: Story[] = []
    const lead = [...from].sort((a, b) => b.log - a.log).slice(0, most)
    const best = lead[0]?.log ?? 0
    for (const story of lead) {
      if (story.log < best - depth - 4) break
      const terms = weigher.terms(story.atoms)
      const sum = terms.reduce((a, b) => a + b, 0)
      for (const p of partners) {
        if (story.atoms.some((a) => atoms[a]!.cause === atoms[p]!.cause || alone.has(atoms[a]!.cause)))
          continue
        const set = [...story.atoms, p].sort((a, b) => a - b)
        const key = set.join()
        if (seen.has(key)) continue
        seen.add(key)
        const opens = set.filter((a) => atoms[a]!.open !== 0).length
        const prior = set.reduce(
          (sum, a) => sum + atoms[a]!.prior,
          (set.length - 1) * Math.log(further) + Math.max(0, opens - 1) * Math.log(secondOpen),
        )
        out.push({ atoms: set, log: prior + weigher.grown(terms, sum, set, p), share: 0 })
      }
    }
    return out
  }
  const pairs = grow(
    singles.filter((s) => !alone.has(atoms[s.atoms[0]!]!.cause)),
    widest.second,
  )
  const triples = grow(pairs, widest.third)
  const all = [none, ...singles, ...pairs, ...triples]
  return { stories: shared(all), weigher }
}

/** Shares from logarithms; what is far below the best goes. */
export function shared(all: readonly Story[]): Story[] {
  const best = all.reduce((m, s) => Math.max(m, s.log), Number.NEGATIVE_INFINITY)
  const kept = all.filter((s) => s.log > best - depth)
  const sum = kept.reduce((a, s) => a + Math.exp(s.log - best), 0)
  return kept.map((s) => ({ ...s, share: Math.exp(s.log - best) / sum })).sort((a, b) => b.share - a.share)
}
