/**
 * What a run may have to tell apart, as changes to the model of the craft from slight to severe. Shares beforehand and spans are
 * authored judgement, not published data; open findings, the log and a ranking of causes move the shares.
 */
import type { Finding } from '../../base/answers/finding.ts'
import type { Craft } from '../../craft/index.ts'
import type { RunRanking } from '../faults/rankingTypes.ts'
import { type CraftLog, isChange, runsOf } from '../log/craftLog.ts'

/** Ends of a factor from slight to severe. */
export type Span = readonly [slight: number, severe: number]

/** What a suspect does to the model; a factor left out is 1. */
export interface SuspectChange {
  /** torque of the engines it reaches, and with the choke half shut */
  torque?: Span
  choked?: Span
  /** rotations of their torque curve */
  rotation?: Span
  /** torque the impeller takes and thrust it gives, at a rotation */
  load?: Span
  thrust?: Span
  /** drag of the hull */
  drag?: Span
  /** part of the engine's rotation that the impeller lags behind */
  slip?: Span
  /** the engine it reaches does not fire */
  dead?: true
  /** only from this throttle up */
  above?: number
}

export interface Suspect {
  id: string
  /** without a full stop */
  says: string
  /** weight beside those of the others */
  share: number
  /** the only engine it reaches, from 0; all when left out */
  engine?: number
  change: SuspectChange
}

interface Kind extends Omit<Suspect, 'engine'> {
  /** one engine alone can have it */
  one?: true
  /** what it is called where nothing burns */
  electric?: string
  /** only engines that burn */
  burns?: true
  /** only with so many engines running */
  least?: number
  /** findings that make it likelier: the beginnings of their ids */
  findings?: readonly string[]
  /** paths or words of changes since the last run that make it likelier */
  changed?: RegExp
}

const kinds: readonly Kind[] = [
  { id: 'as-filed', says: 'nothing is wrong: it goes as the file has it', share: 24, change: {} },
  {
    id: 'lean',
    says: 'short of fuel or lean',
    share: 20,
    one: true,
    burns: true,
    change: { torque: [0.9, 0.65], choked: [0.97, 0.9] },
    findings: ['fuel.'],
    changed: /fuel|tank|jet(s)?$|carb|filter|line/i,
  },
  {
    id: 'rich',
    says: 'too rich',
    share: 8,
    one: true,
    burns: true,
    change: { torque: [0.93, 0.75], choked: [0.75, 0.5] },
    changed: /carb|jet(s)?$|mixture|needle/i,
  },
  {
    id: 'weak',
    says: 'weak (compression, spark, air leak)',
    electric: 'weak (battery low, wiring, controller limit)',
    share: 9,
    one: true,
    change: { torque: [0.92, 0.7], choked: [0.85, 0.62] },
    findings: ['breath.', 'engine.'],
    changed: /engine|cylinder|piston|plug|ignition/i,
  },
  {
    id: 'dead',
    says: 'not firing',
    share: 7,
    one: true,
    least: 2,
    change: { dead: true },
    changed: /kill|spark|plug|ignition|carb|fuel|tank/i,
  },
  {
    id: 'steep',
    says: 'the impeller takes more than the file says (pitch, bore, nozzle)',
    share: 12,
    change: { load: [1.08, 1.4], thrust: [1.06, 1.25] },
    findings: ['push.pitch'],
    changed: /rotor|impeller|nozzle|pitch/i,
  },
  {
    id: 'blocked',
    says: 'weed or trash before the impeller, a worn tip gap',
    share: 9,
    change: { load: [0.97, 0.85], thrust: [0.88, 0.55] },
    changed: /intake|grate|gap|duct/i,
  },
  {
    id: 'air',
    says: 'the pump draws air at full throttle',
    share: 8,
    change: { load: [0.85, 0.55], thrust: [0.7, 0.35], above: 0.5 },
    findings: ['push.air', 'jet.'],
    changed: /intake|rotor depth|weights|rider/i,
  },
  {
    id: 'pipe',
    says: 'with its exhaust out of tune or water in it',
    share: 8,
    one: true,
    burns: true,
    change: { rotation: [0.97, 0.88], torque: [0.97, 0.85], choked: [0.92, 0.8] },
    findings: ['breath.'],
    changed: /exhaust|pipe|stinger|muffler/i,
  },
  {
    id: 'drag',
    says: 'more drag than reckoned (water aboard, trim, hull)',
    share: 10,
    change: { drag: [1.15, 1.6] },
    findings: ['float.'],
    changed: /hull|weights|rider|bilge/i,
  },
  {
    id: 'slip',
    says: 'a coupling or belt slips under load',
    share: 6,
    change: { slip: [0.04, 0.25], above: 0.5 },
    findings: ['drive', 'strength.drive', 'shaft'],
    changed: /shaft|coupling|belt|bolt|key/i,
  },
]

/** a suspect that an open finding or a change since the last run points at is so many times likelier (judgement) */
const pointedAt = 2.5

export interface Believed {
  /** open findings of the craft */
  findings?: readonly Finding[]
  log?: CraftLog
  ranking?: RunRanking
}

/** The suspects of this craft with what is believed of them; shares sum to 1. */
export function suspectsOf(craft: Craft, { findings = [], log, ranking }: Believed = {}): Suspect[] {
  const engines = craft.engines.flatMap((e, i) => (e.running ? [i] : []))
  const burns = (i: number) => craft.engines[i]!.kind !== 'electric'
  const changes = log ? sinceLastRun(log) : []
  const open = findings.filter((f) => f.standing === 'stop' || f.standing === 'watch').map((f) => f.id)
  const list = kinds.flatMap((kind): Suspect[] => {
    const able = kind.burns ? engines.filter(burns) : engines
    if (able.length === 0 || engines.length < (kind.least ?? 1)) return []
    const pointed =
      (kind.findings ?? []).some((start) => open.some((id) => id.startsWith(start))) ||
      changes.some((words) => kind.changed?.test(words))
    const share = kind.share * (pointed ? pointedAt : 1)
    const { id, change } = kind
    const says = engines.some(burns) ? kind.says : (kind.electric ?? kind.says)
    if (!kind.one || engines.length < 2) return [{ id, says: single(says, kind), share, change }]
    const each = able.map((engine): Suspect => {
      const name = craft.engines[engine]!.name ?? `engine ${engine + 1}`
      return {
        id: `${id} ${engine + 1}`,
        says: `${name} ${says}`,
        share: share / able.length,
        engine,
        change,
      }
    })
    // all of them dead is no run; all lean from one swarf, or one mixture, is as likely as one alone
    if (change.dead) return each
    const all: Suspect = { id, says: `all engines ${says}`, share: share / 2, change }
    return [...each.map((s) => ({ ...s, share: s.share / 2 })), all]
  })
  return shared(ranking ? ranked(list, ranking) : list)
}

const single = (says: string, kind: Kind) => (kind.one ? `the engine ${says}` : says)

/** what changed since the last run, as words */
function sinceLastRun(log: CraftLog): string[] {
  const last = runsOf(log).at(-1)?.number ?? 0
  return log.entries
    .filter((e) => e.number > last && isChange(e))
    .map(({ entry }) => `${entry.path ?? ''} ${entry.says} ${entry.part ?? ''}`)
}

/** Shares of a ranking where it knows the suspect by its id, with or without the engine; the rest keep the rest. */
function ranked(list: readonly Suspect[], ranking: RunRanking): Suspect[] {
  const of = (s: Suspect) => {
    const bare = s.id.replace(/ \d+$/, '')
    const cause = ranking.causes.find((c) => c.id === s.id) ?? ranking.causes.find((c) => c.id === bare)
    return (
      cause && {
        share: cause.share,
        among: list.filter((o) => o.id === s.id || o.id.startsWith(`${cause.id} `) || o.id === cause.id)
          .length,
      }
    )
  }
  const known = list.map(of)
  const told = known.reduce((sum, k) => sum + (k ? k.share / k.among : 0), 0)
  const unknown = list.reduce((sum, s, i) => sum + (known[i] ? 0 : s.share), 0)
  const rest = Math.max(0.05, 1 - told)
  return list.map((s, i) => {
    const k = known[i]
    return { ...s, share: k ? k.share / k.among : (rest * s.share) / (unknown || 1) }
  })
}

function shared(list: readonly Suspect[]): Suspect[] {
  const sum = list.reduce((a, s) => a + s.share, 0)
  return list.map((s) => ({ ...s, share: s.share / sum }))
}
