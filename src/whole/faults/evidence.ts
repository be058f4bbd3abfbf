/**
 * A session as evidence: each item says which states of an observable it speaks for and how far it is trusted, of one episode or of the
 * whole day; steps of speed from one episode to the next stand beside them. What nobody noticed is no item.
 * Soft evidence as likelihoods: J. Pearl, Probabilistic Reasoning in Intelligent Systems (1988), ch. 2.
 */
import { asChange, inPercent } from '../../base/answers/amounts.ts'
import { type Sentence, say } from '../../base/answers/sentence.ts'
import type { Heard, HeardEpisode } from './episodes.ts'
import type { Mark } from './heardMarks.ts'
import { nextChecks } from './nextChecks.ts'
import { observableAt, observables } from './observables.ts'
import type { RunSession, SessionObserved } from './session.ts'

/** Who says so; a later one in the list goes before an earlier one of the same observable. */
export const sources = ['heard', 'typed', 'check'] as const
export type Source = (typeof sources)[number]

export interface StateItem {
  kind: 'state'
  id: string
  /** place of the observable in the list */
  observable: number
  state: number
  /** likelihood of each state */
  likely: Float64Array
  /** index of the episode; -1 for the whole day */
  at: number
  source: Source
  says: Sentence
}

export interface StepItem {
  kind: 'step'
  id: string
  label: 'A' | 'B'
  /** indices of the episodes; `from` -1: against the speed predicted for the craft as it should be */
  from: number
  at: number
  /** ln of the ratio of speeds */
  moved: number
  /** standard deviation of that, where the same faults are at work on both sides */
  sigma: number
  /** share of such steps that a hand on the throttle makes */
  byHand: number
  /** the racing stretch is the one after it (1), the one before it (-1), or neither (0): it races because something came, not because it went */
  racing: -1 | 0 | 1
  says: Sentence
}

/** How many engines are heard, and how fast: a line that a story asks for and nobody hears speaks against it. */
export interface LinesItem {
  kind: 'lines'
  id: string
  at: number
  /** rev/s */
  heard: readonly number[]
  says: Sentence
}

export type Item = StateItem | StepItem | LinesItem

/** How far each source is trusted where nothing else is said: authored judgement. */
export const trust: Readonly<Record<Source, number>> = { heard: 0.85, typed: 0.85, check: 0.92 }

/** Likelihood of `n` states when one of them is said with reliability `r`. */
export function softly(state: number, n: number, r: number): Float64Array {
  const out = new Float64Array(n).fill((1 - r) / n)
  out[state]! += r
  return out
}

/** An item from its words; undefined where the words are not in the list (an answer that says nothing, such as "not tried"). */
export function stateItem(
  id: string,
  state: string,
  source: Source,
  reliability = trust[source],
  at = -1,
): StateItem | undefined {
  const k = observableAt(id)
  const o = observables[k]
  const s = o?.states.indexOf(state) ?? -1
  if (!o || s < 0) return undefined
  return {
    kind: 'state',
    id: `${id}${at < 0 ? '' : `@${at}`}`,
    observable: k,
    state: s,
    likely: softly(s, o.states.length, Math.min(0.99, Math.max(0, reliability))),
    at,
    source,
    says: o.words[s]!,
  }
}

/** Words that say the same of another observable too. */
const also: readonly { id: string; state: string; observable: string; as: string; sure: number }[] = [
  { id: 'burble', state: 'all the time', observable: 'sounded', as: 'burbling', sure: 0.8 },
  { id: 'burble', state: 'at part throttle', observable: 'sounded', as: 'burbling', sure: 0.4 },
]

function typedItems({ observed = [] }: RunSession, episodes: readonly HeardEpisode[]): StateItem[] {
  return observed.flatMap((o: SessionObserved) => {
    const at = o.episode === undefined ? -1 : episodes.findIndex((e) => e.id === o.episode)
    const sure = o.sure ?? trust.typed
    const alias = also.find((a) => a.id === o.id && a.state === o.state)
    const item = alias
      ? stateItem(alias.observable, alias.as, 'typed', Math.min(sure, alias.sure), at)
      : stateItem(o.id, o.state, 'typed', sure, at)
    return item ? [item] : []
  })
}

function checkItems({ answered = [] }: RunSession): StateItem[] {
  return answered.flatMap(({ check, outcome }) => {
    const known = nextChecks.find((c) => c.id === check)
    const item = known && stateItem(known.reveals, outcome, 'check', known.reliability)
    return item ? [item] : []
  })
}

/** What the marks of the hearing say, each of its own episode. */
function markItems(episodes: readonly HeardEpisode[], engines: number, shared: boolean): StateItem[] {
  const out: (StateItem | undefined)[] = []
  let cuts = 0
  let raced = false
  let misses = false
  episodes.forEach((e, i) => {
    const put = (id: string, state: string, sure: number) =>
      out.push(stateItem(id, state, 'heard', 0.9 * sure, i))
    for (const m of e.marks) {
      if (m.kind === 'races') put('raced', staysUp(episodes, i, m) ? 'stayed' : 'came back', m.sure)
      if (m.kind === 'load lost') put('raced', 'stayed', m.sure)
      if (m.kind === 'draws air') put('raced', 'came back', m.sure)
      raced ||= m.kind === 'races' || m.kind === 'load lost' || m.kind === 'draws air'
      misses ||= m.kind === 'misses' || m.kind === 'burbles'
      if (m.kind === 'one stops' && engines > 1) put('engines', 'only one', m.sure)
      if (m.kind === 'bogs') put('opening', 'bogged', 0.8 * m.sure)
      if (m.kind === 'misses') put('sounded', 'missing', 0.8 * m.sure)
      if (m.kind === 'burbles' && !episodes.slice(0, i + 1).some(oneStops))
        put('sounded', 'burbling', 0.8 * m.sure)
      if (m.kind === 'hunts') put('hunts', 'hunting', m.sure)
      if (m.kind === 'choke helps') put('choke', 'helped', m.sure)
      if (m.kind === 'choke hurts') put('choke', 'made it worse', m.sure)
      if (m.kind === 'fades' && m.lasts > 8 && m.at > 30)
        out.push(stateItem('lasted', 'after a minute or two', 'heard', 0.9 * m.sure))
      if (m.kind === 'stop' && m.how) put('stopped', m.how, 0.6 * m.sure)
      if (m.kind === 'cut-out') cuts++
    }
    // told by its speed alone
    if (e.kind === 'load-lost' && !e.marks.some((m) => m.kind === 'load lost' || m.kind === 'races')) {
      put('raced', 'stayed', 0.8)
      raced = true
    }
    if (shared && e.lines.length === 2 && apart(e.lines)) put('apart', 'apart', 0.85)
  })
  const pulled = episodes.filter(pulls)
  const seconds = pulled.reduce((s, e) => s + e.to - e.from, 0)
  // a sign that did not show counts only where it had time to
  if (!raced && seconds >= 8) out.push(stateItem('raced', 'no', 'heard', 0.75))
  if (!misses && seconds >= 4) out.push(stateItem('sounded', 'clean', 'heard', 0.45))
  if (cuts >= 2) out.push(stateItem('lasted', 'in turns', 'heard', 0.7))
  return out.filter((i) => i !== undefined)
}

const pulls = (e: HeardEpisode) => e.kind === 'both-pulling' || e.kind === 'pulling'
const oneStops = (e: HeardEpisode) => e.marks.some((m) => m.kind === 'one stops')
const apart = (lines: readonly Heard[]) => Math.abs(Math.log(lines[0]!.rotation / lines[1]!.rotation)) > 0.04

/** Nothing but a stop ends the racing; a race too short to be seen in the speed came back. */
function staysUp(episodes: readonly HeardEpisode[], i: number, m: Mark): boolean {
  const { kind } = episodes[i]!
  if (kind !== 'racing' && kind !== 'load-lost') return false
  const later = episodes.slice(i).find((e) => e.from >= m.at + m.lasts - 0.3)
  return later !== undefined && later.lines.length === 0
}

/** Parts by which speeds are known: within one run, tied up and under way; after a hand may have moved the throttle. */
const within = { tied: 0.01, moving: 0.04 }

/** What a stretch that was still rising or falling adds to the doubt of its speed; what any tracked engine wavers by is in it already. */
const wavers = 0.02
const unsteady = ({ spread }: Heard) => Math.max(0, spread - wavers)

function stepItems(session: RunSession, episodes: readonly HeardEpisode[], shared: boolean): StepItem[] {
  const sigma = session.kind === 'under way' ? within.moving : within.tied
  const out: StepItem[] = []
  const spoken = new Set(['one-dragged', 'load-lost', 'both-pulling', 'pulling', 'racing'])
  episodes.forEach((e, i) => {
    if (e.to - e.from < 0.5) return
    for (const line of e.lines) {
      const heardIn = (b: HeardEpisode) => b.lines.some((l) => l.label === line.label) && b.to - b.from >= 0.5
      const last = episodes.slice(0, i).findLastIndex(heardIn)
      // a speed without load is told best from the one under full load: that of a dragged engine is less well known
      const full =
        e.kind === 'load-lost' ? episodes.slice(0, i).findLastIndex((b) => heardIn(b) && pulls(b)) : -1
      const was = full >= 0 ? full : last
      const before = was < 0 ? undefined : episodes[was]!.lines.find((l) => l.label === line.label)
      if (!before) continue
      const near = was === i - 1 || full >= 0
      const known = spoken.has(e.kind) && spoken.has(episodes[was]!.kind)
      const moved = Math.log(line.rotation / before.rotation)
      // with a jet each, whoever steers lifts when one of them dies
      const lifted = !shared && e.marks.some((m) => m.kind === 'one stops')
      out.push({
        kind: 'step',
        id: `step ${line.label} ${was}-${i}`,
        label: line.label,
        from: was,
        at: i,
        moved,
        sigma: Math.hypot(near ? sigma : 2 * sigma, unsteady(line), unsteady(before)),
        racing: e.kind === 'racing' ? 1 : episodes[was]!.kind === 'racing' ? -1 : 0,
        // no hand makes a loaded engine turn far faster than it pulls
        byHand: lifted ? 0.6 : e.kind === 'load-lost' ? 0.01 : known && near ? 0.1 : 0.5,
        says: say`the speed changed by ${asChange(inPercent(Math.exp(moved) - 1))}`,
      })
    }
  })
  return out
}

/** Stretches at work, in which an engine without its load would be heard. */
function lineItems(episodes: readonly HeardEpisode[]): LinesItem[] {
  const work = new Set(['both-pulling', 'pulling', 'one-dragged', 'load-lost', 'racing'])
  return episodes.flatMap((e, at) =>
    work.has(e.kind) && e.to - e.from >= 0.5
      ? [
          {
            kind: 'lines' as const,
            id: `lines ${at}`,
            at,
            heard: e.lines.map((l) => l.rotation),
            says:
              e.lines.length > 1
                ? 'two engines are heard turning apart'
                : 'no second speed is heard beside it',
          },
        ]
      : [],
  )
}

/** Standard deviation (ln) of the speed the craft is predicted to reach. */
export function rotationDoubt({ balance }: RunSession): number {
  const range = balance?.ranged ? balance.tiedUpRotation : undefined
  const doubt = range ? Math.log(range.high / range.low) / 4 : Number.NaN
  return doubt > 0 ? doubt : 0.1
}

/** The first steady stretch at full load against what the craft should do. */
function levelItems(session: RunSession, episodes: readonly HeardEpisode[], expected: number): StepItem[] {
  if (!Number.isFinite(expected)) return []
  const i = episodes.findIndex(
    (e) => (e.kind === 'both-pulling' || e.kind === 'pulling') && e.to - e.from >= 1.5,
  )
  // where nothing pulls as it should, the fastest steady stretch is what it reached
  const at = i >= 0 ? i : fastestOf(episodes)
  const line = episodes[at]?.lines[0]
  if (!line) return []
  const doubt = rotationDoubt(session)
  const told = session.kind === 'tied up' || session.kind === 'under way'
  const moved = Math.log(line.rotation / expected)
  return [
    {
      kind: 'step',
      id: 'level',
      label: line.label,
      from: -1,
      at,
      moved,
      sigma: Math.hypot(doubt, told ? 0.03 : 0.12),
      racing: 0,
      byHand: i >= 0 && told ? 0.15 : 0.5,
      says: say`the speed is ${asChange(inPercent(Math.exp(moved) - 1))} off what the craft should reach`,
    },
  ]
}

function fastestOf(episodes: readonly HeardEpisode[]): number {
  let best = -1
  episodes.forEach((e, i) => {
    if (e.to - e.from < 1.5 || e.lines.length === 0 || e.kind === 'load-lost' || e.kind === 'racing') return
    if (best < 0 || e.lines[0]!.rotation > episodes[best]!.lines[0]!.rotation) best = i
  })
  return best
}

/** A scale's reading against the pull that goes with the speed heard beside it: what is wrong with the pump shows, the engines do not. */
function pullItem(session: RunSession, episodes: readonly HeardEpisode[], expected: number): StateItem[] {
  const { pull, balance } = session
  const full = episodes.find(pulls)
  const turned = full?.lines[0]?.rotation
  if (!(pull && pull > 0) || !balance || !(turned && expected > 0)) return []
  const predicted = balance.pull.value * (turned / expected) ** 2
  const ratio = pull / predicted
  const state = ratio < 0.8 ? 'low' : ratio > 1.15 ? 'high' : 'as predicted'
  const item = stateItem('pull', state, 'heard', 0.8)
  return item ? [item] : []
}

/**
 * One item an observable and episode: what a check found goes before what was typed, that before what was heard. What is said of the whole
 * day and of an episode alike counts once, of the episode.
 */
export function onceEach(items: readonly StateItem[]): StateItem[] {
  const rank = (i: StateItem) => sources.indexOf(i.source)
  const kept = new Map<string, StateItem>()
  for (const i of items) {
    const held = kept.get(i.id)
    const sharper = held && rank(i) === rank(held) && Math.max(...i.likely) > Math.max(...held.likely)
    if (!held || rank(i) > rank(held) || sharper) kept.set(i.id, i)
  }
  const list = [...kept.values()]
  // what was seen afterwards of a thing goes before what was heard of it, unless they tell of different times
  return list.filter((i) => {
    const others = list.filter((o) => o !== i && o.observable === i.observable)
    if (i.at < 0) return !others.some((o) => o.at >= 0 && o.state === i.state && rank(o) >= rank(i))
    return !others.some((o) =>
      o.at < 0 ? o.state === i.state && rank(o) > rank(i) : o.state === i.state && o.at < i.at,
    )
  })
}

export interface EvidenceOptions {
  engines: number
  shared: boolean
  /** rev/s the engines should reach, NaN where unknown */
  expected: number
}

/** Every item of a session, and the state items before double ones were dropped. */
export function evidenceOf(
  session: RunSession,
  episodes: readonly HeardEpisode[],
  { engines, shared, expected }: EvidenceOptions,
): { items: Item[]; all: StateItem[] } {
  const near = session.observed?.some((o) => o.id === 'nearby' && o.state === 'yes') ?? false
  const heard = near ? [] : markItems(episodes, engines, shared)
  const all = [
    ...heard,
    ...pullItem(session, episodes, expected),
    ...typedItems(session, episodes),
    ...checkItems(session),
  ]
  return {
    items: [
      ...onceEach(all),
      ...stepItems(session, episodes, shared),
      ...(shared && engines > 1 ? lineItems(episodes) : []),
      ...levelItems(session, episodes, expected),
    ],
    all,
  }
}
