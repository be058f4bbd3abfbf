/**
 * The next check by what it is worth: how many minutes of repair its answer saves on average, less its own. One step of look-ahead is
 * enough: J. S. Breese and D. Heckerman, Decision-theoretic troubleshooting, UAI 12 (1996), from memory.
 */
import type { Craft } from '../../craft/schema/craftSchema.ts'
import { type Atom, rowOf, signsOf } from './atoms.ts'
import type { Cause } from './causeTypes.ts'
import { type Item, softly, sources } from './evidence.ts'
import { measureAt } from './measured.ts'
import { type Check, checksFor } from './nextChecks.ts'
import { observableAt, observables } from './observables.ts'
import { type Belief, ordersOf, repairMinutes, retry } from './repair.ts'
import type { Story } from './stories.ts'
import type { Weigher } from './weigher.ts'

/** groups of stories looked at */
const most = 300
/** minutes to find what is none of these */
const strange = 150
/** minutes that a bit of knowledge of the causes is worth by itself: what is known is neither mended nor asked for in vain; judgement */
const perBit = 30
/** minutes a check costs more where a hand goes near what turns */
const withCare = 2

export interface Worth {
  check: Check
  /** minutes saved on average less its own */
  worth: number
  /** share of each outcome */
  outcomes: Float64Array
  /** indices of the causes whose shares its outcomes move most */
  separates: readonly number[]
}

export interface WorthSetting {
  craft: Craft
  causes: readonly Cause[]
  atoms: readonly Atom[]
  stories: readonly Story[]
  items: readonly Item[]
  weigher: Weigher
}

/** how often a way shows a state, and how many times as often as usual, for that state to lay it open */
const shows = { often: 0.6, times: 6 }

interface Fixes {
  costs: readonly number[]
  placeOf: (a: Atom) => number
  none: number
  /** costs when an inspection found state `s` of observable `o`: what lies open is mended without another run */
  found: (costs: readonly number[], o: number, s: number) => number[]
}

/** Fixes of a craft: one a way of a cause, and one for what is none of these. */
function fixesOf(causes: readonly Cause[]): Fixes {
  const first: number[] = []
  const costs: number[] = []
  const ways: { cause: Cause; way: number }[] = []
  for (const cause of causes) {
    first.push(costs.length)
    cause.ways.forEach((w, way) => {
      costs.push(w.mend + retry)
      ways.push({ cause, way })
    })
  }
  costs.push(strange)
  const open = ({ cause, way }: (typeof ways)[number], o: number, s: number) => {
    const { id, usual } = observables[o]!
    const row = signsOf(cause, cause.ways[way]!)[id]
    const p = row ? rowOf(row, usual)[s]! : 0
    return p >= shows.often && p >= shows.times * usual[s]!
  }
  const found: Fixes['found'] = (from, o, s) =>
    from.map((c, i) =>
      i < ways.length && open(ways[i]!, o, s) ? Math.min(c, ways[i]!.cause.ways[ways[i]!.way]!.mend) : c,
    )
  return { costs, placeOf: (a) => first[a.cause]! + a.way, none: costs.length - 1, found }
}

/** Stories of the same causes in the same ways, whenever they began and wherever: what is mended is the same, and what a check finds. */
interface Group {
  /** atoms of its likeliest story */
  atoms: readonly number[]
  share: number
  fixes: readonly number[]
  /** the causes alone */
  causes: number
}

interface Grouped {
  groups: readonly Group[]
  /** group of each story; -1 where it is too unlikely to count */
  of: readonly number[]
}

function groupsOf(
  stories: readonly Story[],
  atoms: readonly Atom[],
  fixesOf: (s: Story) => number[],
): Grouped {
  const known = new Map<string, { group: Group; place: number }>()
  const sets = new Map<string, number>()
  const keys = stories.map((s) => {
    const own = s.atoms.map((a) => atoms[a]!)
    const key = own
      .map((a) => 16 * a.cause + a.way)
      .sort((a, b) => a - b)
      .join()
    const held = known.get(key)
    if (held) {
      held.group.share += s.share
      return key
    }
    const set = own
      .map((a) => a.cause)
      .sort((a, b) => a - b)
      .join()
    const causes = sets.get(set) ?? sets.size
    sets.set(set, causes)
    known.set(key, { group: { atoms: s.atoms, share: s.share, fixes: fixesOf(s), causes }, place: -1 })
    return key
  })
  const lead = [...known.values()].sort((a, b) => b.group.share - a.group.share).slice(0, most)
  lead.forEach((l, i) => {
    l.place = i
  })
  return { groups: lead.map((l) => l.group), of: keys.map((k) => known.get(k)!.place) }
}

/** Every check the craft can be given with its worth, best first. One whose answer is known is worth its own minutes less. */
export function worthOfChecks({ craft, causes, atoms, stories, items, weigher }: WorthSetting): Worth[] {
  const { costs: bare, placeOf, none, found } = fixesOf(causes)
  // what was laid open before
  let costs = [...bare]
  for (const i of items)
    if (i.kind === 'state' && i.source === 'check') costs = found(costs, i.observable, i.state)
  const { groups, of } = groupsOf(stories, atoms, (s) =>
    s.atoms.length === 0 ? [none] : s.atoms.map((a) => placeOf(atoms[a]!)),
  )
  const fixes = groups.map((g) => g.fixes)
  const known = new Map<number, number>()
  for (const i of items) {
    if (i.kind === 'state')
      known.set(i.observable, Math.max(known.get(i.observable) ?? -1, sources.indexOf(i.source)))
    // the speed was heard at full load: recording it again tells nothing new
    if (i.kind === 'step' && i.from < 0 && i.byHand < 0.3) known.set(observableAt('rpm'), 1)
  }
  const ratios = ratioTable(causes)
  const heardBy = items.some((i) => i.kind !== 'state')
  const list = checksFor(craft).map((check): Worth => {
    const o = observableAt(check.reveals)
    const usual = observables[o]!.usual
    const n = usual.length
    const cost = check.minutes + (check.cautions.some((c) => c.startsWith('Engine off')) ? withCare : 0)
    if ((known.get(o) ?? -1) > 0 || (check.bySound && heardBy))
      return { check, worth: -cost, outcomes: new Float64Array(n), separates: [] }
    const shares = without(o, groups, of, { stories, items, weigher })
    const measure = measureAt(o)
    const given = groups.map(
      (g) =>
        (measure && g.atoms.length > 0 ? weigher.measured.shares(measure, g.atoms) : undefined) ??
        statesUnder(g, atoms, ratios, o, usual),
    )
    const now = beliefs(shares, fixes)
    const first = byCauses(shares, groups)
    // what would be done without the check can be done after it too
    const orders = ordersOf(now, costs)
    const before = repairMinutes(now, costs)
    const outcomes = new Float64Array(n)
    let after = 0
    let information = 0
    const moved = new Float64Array(causes.length)
    for (let s = 0; s < n; s++) {
      const likely = softly(s, n, check.reliability)
      const joint = shares.map((p, i) => p * dotted(given[i]!, likely))
      const p = joint.reduce((a, b) => a + b, 0)
      if (!(p > 1e-9)) continue
      outcomes[s] = p
      const then = joint.map((j) => j / p)
      after += p * repairMinutes(beliefs(then, fixes), check.inspects ? found(costs, o, s) : costs, orders)
      const sums = byCauses(then, groups)
      for (let g = 0; g < sums.length; g++)
        if (sums[g]! > 0) information += p * sums[g]! * Math.log(sums[g]! / first[g]!)
      for (let i = 0; i < groups.length; i++)
        for (const a of groups[i]!.atoms) moved[atoms[a]!.cause]! += p * Math.abs(then[i]! - shares[i]!)
    }
    const total = outcomes.reduce((a, b) => a + b, 0)
    const bits = information / total / Math.LN2
    const separates = [...moved.keys()].filter((c) => moved[c]! > 0.04).sort((a, b) => moved[b]! - moved[a]!)
    return {
      check,
      worth: before - after / total + perBit * bits - cost,
      outcomes,
      separates: separates.slice(0, 4),
    }
  })
  return list.sort((a, b) => b.worth - a.worth)
}

/** Shares of the groups before what was only heard of an observable: a check takes its place. */
function without(
  o: number,
  groups: readonly Group[],
  of: readonly number[],
  { stories, items, weigher }: Pick<WorthSetting, 'stories' | 'items' | 'weigher'>,
): number[] {
  const heard = items.flatMap((i, k) => (i.kind === 'state' && i.observable === o ? [k] : []))
  const out = groups.map((g) => (heard.length === 0 ? g.share : 0))
  if (heard.length > 0)
    stories.forEach((s, i) => {
      if (of[i]! < 0) return
      const own = s.atoms.length === 0 ? undefined : s.atoms
      out[of[i]!]! += s.share * Math.exp(-heard.reduce((log, k) => log + weigher.item(k, own), 0))
    })
  const sum = out.reduce((a, b) => a + b, 0)
  return out.map((w) => w / sum)
}

/** Shares of sets of causes, in whatever way they came about. */
function byCauses(shares: readonly number[], groups: readonly Group[]): Float64Array {
  const out = new Float64Array(groups.reduce((m, g) => Math.max(m, g.causes), 0) + 1)
  shares.forEach((p, i) => {
    out[groups[i]!.causes]! += p
  })
  return out
}

const beliefs = (shares: readonly number[], fixes: readonly (readonly number[])[]): Belief[] =>
  shares.map((share, i) => ({ share, fixes: fixes[i]! }))

function dotted(a: Float64Array, b: Float64Array): number {
  let sum = 0
  for (let i = 0; i < a.length; i++) sum += a[i]! * b[i]!
  return sum
}

type Ratios = (cause: number, way: number, observable: number) => Float64Array | undefined

/** What each way of a cause does to the usual shares of an observable; kept as long as the causes are the same. */
const tables = new WeakMap<readonly Cause[], Ratios>()
function ratioTable(causes: readonly Cause[]): Ratios {
  const held = tables.get(causes)
  if (held) return held
  const known = new Map<number, Float64Array | undefined>()
  const table: Ratios = (c, w, o) => {
    const key = (c * 16 + w) * 64 + o
    if (known.has(key)) return known.get(key)
    const cause = causes[c]!
    const { id, usual } = observables[o]!
    const row = signsOf(cause, cause.ways[w]!)[id]
    const ratio = row && rowOf(row, usual).map((p, s) => p / usual[s]!)
    known.set(key, ratio)
    return ratio
  }
  tables.set(causes, table)
  return table
}

/** Shares of an observable's states under a story, seen of the day as a whole. */
function statesUnder(
  story: Group,
  atoms: readonly Atom[],
  ratios: Ratios,
  o: number,
  usual: readonly number[],
): Float64Array {
  const p = Float64Array.from(usual)
  if (story.atoms.length === 0) return p.map((x) => 0.5 * x + 0.5 / p.length)
  for (const a of story.atoms) {
    const r = ratios(atoms[a]!.cause, atoms[a]!.way, o)
    if (r) for (let s = 0; s < p.length; s++) p[s]! *= r[s]!
  }
  const sum = p.reduce((a, b) => a + b, 0)
  return p.map((x) => x / sum)
}
