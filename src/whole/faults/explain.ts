/** Stories gathered into causes: how likely each is, in which way, at which engine, since when, and what speaks for and against it. */
import { inPercent, inSeconds } from '../../base/answers/amounts.ts'
import { joined, type Sentence, say, whole } from '../../base/answers/sentence.ts'
import type { Atom } from './atoms.ts'
import type { Cause } from './causeTypes.ts'
import type { HeardEpisode } from './episodes.ts'
import type { Item } from './evidence.ts'
import { type Move, movesFor } from './moves.ts'
import type { RankedCause, RunRanking } from './rankingTypes.ts'
import type { RankLimits } from './rankLimits.ts'
import type { Story } from './stories.ts'
import type { Weigher } from './weigher.ts'

export interface ExplainSetting {
  causes: readonly Cause[]
  atoms: readonly Atom[]
  stories: readonly Story[]
  items: readonly Item[]
  weigher: Weigher
  episodes: readonly HeardEpisode[]
  moves: readonly Move[]
  /** name of the engine at a place */
  engineName: (place: number) => string
  /** engines of the craft: of one alone nobody asks which */
  engines: number
  limits: RankLimits
  /** weight beforehand of a cause */
  weightOf: (cause: Cause) => number
}

/** stories looked at for what speaks for and against */
const looked = 60
/** causes below this share are told without reasons */
const told = 0.02
const mostReasons = 4

const add = <K>(to: Map<K, number>, key: K, x: number) => to.set(key, (to.get(key) ?? 0) + x)
const largest = <K>(of: ReadonlyMap<K, number>): [K, number] | undefined =>
  [...of].reduce<[K, number] | undefined>((best, x) => (best && best[1] >= x[1] ? best : x), undefined)

export function rankedCauses(s: ExplainSetting): RankedCause[] {
  const { causes, atoms, stories } = s
  const share = new Float64Array(causes.length)
  const ways = causes.map(() => new Map<number, number>())
  const begins = causes.map(() => new Map<number, number>())
  const places = causes.map(() => new Map<string, number>())
  for (const story of stories)
    for (const i of story.atoms) {
      const a = atoms[i]!
      share[a.cause]! += story.share
      add(ways[a.cause]!, a.way, story.share)
      add(begins[a.cause]!, a.onset, story.share)
      add(places[a.cause]!, a.engines.join(), story.share)
    }
  const order = [...share.keys()].filter((c) => share[c]! > 1e-4).sort((a, b) => share[b]! - share[a]!)
  return order.map((c) => {
    const cause = causes[c]!
    const all = share[c]!
    const part = <K>(of: ReadonlyMap<K, number>) => {
      const top = largest(of)
      return top && { key: top[0], share: top[1] / all }
    }
    const begin = part(begins[c]!)
    const place = part(places[c]!)
    const { named } = s.limits
    const since = begin && begin.share >= named.value ? s.episodes[begin.key] : undefined
    const single = place && !place.key.includes(',') ? Number(place.key) : undefined
    const engine =
      single !== undefined &&
      s.engines > 1 &&
      place!.share >= named.value &&
      cause.ways.some((w) => (w.reach ?? cause.reach) === 'one' && !w.oneStops)
        ? s.engineName(single)
        : undefined
    const byId = new Map<string, number>()
    for (const [w, x] of ways[c]!) add(byId, cause.ways[w]!.id, x)
    const list = [...byId]
      .sort((a, b) => b[1] - a[1])
      .map(([id, x]) => ({ id, says: cause.ways.find((w) => w.id === id)!.says, share: x / all }))
    const reasons = all >= told ? reasonsOf(s, c) : { for: [], against: [] }
    return {
      id: cause.id,
      says: causeSays(cause, list, engine, since, named.value),
      share: all,
      weight: s.weightOf(cause),
      ...(since ? { since: since.id } : {}),
      ...(engine ? { engine: { name: engine, share: place!.share } } : {}),
      ways: list,
      mend: cause.mendSays,
      for: reasons.for,
      against: reasons.against,
    }
  })
}

function causeSays(
  cause: Cause,
  ways: readonly { says: string; share: number }[],
  engine: string | undefined,
  since: HeardEpisode | undefined,
  named: number,
): Sentence {
  const [first, second] = ways
  const how =
    !first || ways.length === 1
      ? undefined
      : first.share >= named
        ? say`most likely ${first.says} (${inPercent(first.share)})`
        : second
          ? say`${first.says} (${inPercent(first.share)}) or ${second.says} (${inPercent(second.share)})`
          : undefined
  const parts: Sentence[] = [cause.says]
  if (engine) parts.push(say`the ${engine} one`)
  if (since && since.from > 0) parts.push(say`from ${inSeconds(since.from)} on`)
  if (how) parts.push(how)
  return whole(
    parts.length === 1 ? parts[0]! : say`${joined(parts.slice(0, -1))}${how ? ': ' : ', '}${parts.at(-1)!}`,
  )
}

/** Which engine no longer fired, whatever the reason: named where one is likelier than not. */
export function stoppedOf({ atoms, stories, episodes, engineName }: ExplainSetting): RunRanking['stopped'] {
  const at = new Map<string, number>()
  const places = new Map<number, number>()
  let all = 0
  for (const s of stories) {
    const a = s.atoms.map((i) => atoms[i]!).find((x) => x.dead > 0)
    if (!a) continue
    all += s.share
    add(at, episodes[a.onset]?.id ?? '', s.share)
    add(places, Math.log2(a.dead), s.share)
  }
  const place = largest(places)
  const since = largest(at)
  if (!place || !since || all < 0.3 || !Number.isInteger(place[0])) return undefined
  return {
    engine: engineName(place[0]),
    share: place[1],
    any: all,
    ...(since[0] === '' ? {} : { since: since[0], sinceShare: since[1] / all }),
  }
}

/** Evidence by how much likelier it is in stories with the cause than in those without. */
function reasonsOf(
  { causes, atoms, stories, items, weigher, moves, limits }: ExplainSetting,
  c: number,
): { for: Sentence[]; against: Sentence[] } {
  const lead = stories.slice(0, looked)
  const has = lead.map((s) => s.atoms.some((a) => atoms[a]!.cause === c))
  const withIt = has.some(Boolean)
    ? lead
    : stories.filter((s) => s.atoms.some((a) => atoms[a]!.cause === c)).slice(0, 10)
  // against every other cause alone, by its weight beforehand: what the posterior keeps of the others has already learnt from the evidence
  const others = new Map<number, { atom: number; prior: number }>()
  atoms.forEach((a, i) => {
    if (a.cause === c) return
    const held = others.get(a.cause)
    if (!held || a.prior > held.prior) others.set(a.cause, { atom: i, prior: a.prior })
  })
  const rest = [...others.values()]
  const restSum = rest.reduce((x, o) => x + Math.exp(o.prior), 0)
  const gains = items.map((item, k) => {
    let sum = 0
    let own = 0
    for (const s of withIt) {
      if (!s.atoms.some((a) => atoms[a]!.cause === c)) continue
      const mine = s.atoms.filter((a) => atoms[a]!.cause === c)
      sum += s.share * Math.exp(weigher.item(k, mine))
      own += s.share
    }
    const without = rest.reduce((x, o) => x + Math.exp(o.prior + weigher.item(k, [o.atom])), 0) / restSum
    return { item, gain: Math.log(sum / own / without) }
  })
  const speaks = limits.speaks.value
  const sorted = gains.filter((g) => Number.isFinite(g.gain)).sort((a, b) => b.gain - a.gain)
  const once = (list: readonly Sentence[]) => [...new Map(list.map((x) => [JSON.stringify(x), x])).values()]
  const saysFor = [
    ...sorted.filter((g) => g.gain > speaks).map((g) => g.item.says),
    ...movesFor(moves, causes[c]!.id),
  ]
  const saysAgainst = sorted
    .filter((g) => g.gain < -speaks)
    .reverse()
    .map((g) => g.item.says)
  return { for: once(saysFor).slice(0, mostReasons), against: once(saysAgainst).slice(0, mostReasons) }
}
