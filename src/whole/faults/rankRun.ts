/** A session in, what went wrong out: episodes, causes with their odds, what stays open, and the next check. */

import type { Craft } from '../../craft/schema/craftSchema.ts'
import { drivelineTrade } from '../../trades/driveline/drivelineTrade.ts'
import { driveSettingOf } from '../../trades/driveline/driveSetting.ts'
import { type Opened, opensFirst } from '../../trades/driveline/opensFirst.ts'
import type { SolvedCurves } from '../../trades/engine/enginesFromCraft.ts'
import { NotKnown, solveTrade } from '../../trades/trade.ts'
import type { Balance } from '../push/balanceTypes.ts'
import { MapStore, modelFromCraft } from '../push/craftModel.ts'
import { atomsOf, noneWeight } from './atoms.ts'
import { cannotSayOf, isDecided } from './cannotSay.ts'
import { causesOf } from './causes.ts'
import type { Cause } from './causeTypes.ts'
import { episodesOf } from './episodes.ts'
import { evidenceOf, rotationDoubt } from './evidence.ts'
import { type ExplainSetting, rankedCauses, stoppedOf } from './explain.ts'
import { fightOf, impossibleOf } from './fights.ts'
import { besideOf } from './heardBeside.ts'
import { marksOf } from './heardMarks.ts'
import { factorOf, movesOf } from './moves.ts'
import { observables } from './observables.ts'
import type { NextCheck, RunRanking } from './rankingTypes.ts'
import { type RankLimits, rankLimits } from './rankLimits.ts'
import { RootTable } from './roots.ts'
import type { RunSession } from './session.ts'
import { tellStories } from './stories.ts'
import { type Worth, worthOfChecks } from './worth.ts'

/** What is worked out once a craft and kept: its causes and the roots of its faults. */
interface Known {
  balance: Balance | undefined
  causes: readonly Cause[]
  margins: ReadonlyMap<string, number>
  tied: RootTable | undefined
  moving: RootTable | undefined
}

const kept = new WeakMap<Craft, Known>()

function knownOf(craft: Craft, balance: Balance | undefined, solved: SolvedCurves | undefined): Known {
  const held = kept.get(craft)
  if (held && held.balance === balance) return held
  const { opened, margins } = balance ? jointsOf(craft, balance, solved) : { opened: [], margins: new Map() }
  const model = modelOr(craft, solved)
  const made: Known = {
    balance,
    causes: causesOf(craft, opened),
    margins,
    tied: model && new RootTable(model),
    moving: model && balance?.top && new RootTable(model, 0.9 * balance.top.speed),
  }
  kept.set(craft, made)
  return made
}

function modelOr(craft: Craft, solved: SolvedCurves | undefined) {
  try {
    return modelFromCraft(craft, new MapStore(), {}, solved)
  } catch (error) {
    // a craft that cannot be balanced is ranked by its signs alone
    if (error instanceof NotKnown) return undefined
    throw error
  }
}

function jointsOf(craft: Craft, balance: Balance, solved: SolvedCurves | undefined) {
  const setting = driveSettingOf(balance, solved)
  const { inputs, answer } = solveTrade(drivelineTrade, craft, setting)
  const margins = new Map<string, number>()
  let opened: readonly Opened[] = []
  if (inputs.chain && answer && inputs.setting) {
    opened = opensFirst(inputs.chain, answer, inputs.setting)
    for (const p of answer.parts)
      margins.set(p.of.path, Math.min(margins.get(p.of.path) ?? Number.POSITIVE_INFINITY, p.margin.value))
  }
  return { opened, margins }
}

/** s of silence after which heat and a tank's pressure have gone */
const longPause = 20
/** most onsets looked at: the moments at which most changed */
const mostOnsets = 7

/** Ranks what may have gone wrong. Without a recording the episodes are empty and everything counts for the whole day. */
export function rankRun(
  session: RunSession,
  limits: RankLimits = rankLimits,
  progress: (part: number, says: string) => void = () => {},
): RunRanking {
  const { craft, balance, hearing } = session
  const known = knownOf(craft, balance, session.solved)
  const { causes } = known
  const roots = session.kind === 'under way' ? (known.moving ?? known.tied) : known.tied
  const running = craft.engines.flatMap((e, i) => (e.running ? [i] : []))
  const shared = craft.drive.arrangement === 'one shaft'
  const expected = roots?.lines({ dead: 0, open: 0 })[0]?.rotation ?? Number.NaN
  const episodes = hearing ? episodesOf(hearing, marksOf(hearing.events), expected, running.length) : []
  const { items, all } = evidenceOf(session, episodes, { engines: running.length, shared, expected })
  const moves = movesOf(craft, session.log ?? [], known.margins)
  const weightOf = (c: Cause) => session.weights?.[c.id] ?? c.prior
  const onsets = episodes.map((_, i) => i).slice(1, mostOnsets + 1)
  const atoms = atomsOf({
    causes,
    items,
    engines: running,
    onsets,
    pauses: episodes.flatMap((e, i) => (e.kind === 'silent' && e.to - e.from >= longPause ? [i] : [])),
    roots,
    moved: (cause, way) => factorOf(moves, cause, way),
    weightOf,
  })
  const total = causes.reduce((a, c) => a + weightOf(c), 0) + noneWeight
  const alone = new Set(causes.flatMap((c, i) => (c.id === 'as-designed' ? [i] : [])))
  progress(0.4, 'Weighing stories')
  const { stories, weigher } = tellStories(
    { items, atoms, roots, shared, total, engines: running.length, doubt: rotationDoubt(session) },
    alone,
  )
  const setting: ExplainSetting = {
    causes,
    atoms,
    stories,
    items,
    weigher,
    episodes,
    moves,
    engineName: (i) => craft.engines[i]?.name ?? `engine ${i + 1}`,
    engines: craft.engines.length,
    limits,
    weightOf,
  }
  progress(0.75, 'Weighing checks')
  const ranked = rankedCauses(setting)
  const stopped = stoppedOf(setting)
  const fight = fightOf(all, items, atoms, weigher, limits)
  const most = Math.max(0, ...craft.engines.map((e) => e.redline?.value ?? 0))
  return {
    episodes: episodes.map(({ id, kind, from, to, says }) => ({ id, kind, from, to, says })),
    causes: ranked,
    ...(stopped ? { stopped } : {}),
    none: stories.filter((s) => s.atoms.length === 0).reduce((a, s) => a + s.share, 0),
    cannotSay: cannotSayOf({ session, episodes, causes: ranked, engines: running.length, shared }, limits),
    checks: worthOfChecks({ craft, causes, atoms, stories, items, weigher }).map((w) => nextCheck(w, causes)),
    beside: besideOf(episodes, atoms, stories[0], roots, shared),
    doubts: [
      ...impossibleOf(session, episodes, { most, expected, engines: running.length }, limits),
      ...(fight ? [fight] : []),
    ],
    decided: isDecided(ranked, limits),
  }
}

function nextCheck({ check, worth, outcomes, separates }: Worth, causes: readonly Cause[]): NextCheck {
  const o = observables.find((x) => x.id === check.reveals)!
  return {
    id: check.id,
    act: check.act,
    minutes: check.minutes,
    worth,
    separates: separates.map((c) => causes[c]!.id),
    cautions: check.cautions,
    outcomes: o.states.map((id, i) => ({ id, says: o.words[i]!, share: outcomes[i]! })),
  }
}
