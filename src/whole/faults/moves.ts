/**
 * What moves the weight of a cause before any evidence: what was done since the last good run, how tight the joints were made, what other
 * trades found. Factors are authored judgement; each says why it moved, and the builder can put the weights another way.
 */
import { inTimes } from '../../base/answers/amounts.ts'
import { type Sentence, say } from '../../base/answers/sentence.ts'
import type { Craft } from '../../craft/schema/craftSchema.ts'
import type { LogEntry } from '../log/logTypes.ts'
import { linksOf } from './linkCauses.ts'

export interface Move {
  cause: string
  /** left out: every way of it */
  way?: string
  factor: number
  says: Sentence
}

interface Rule {
  /** all of these stand in the entry */
  words: readonly RegExp[]
  /** none of these does */
  not?: RegExp
  cause: string
  way?: string
  factor: number
}

/** Words of an entry of the log, by what they make likelier. */
const rules: readonly Rule[] = [
  {
    words: [/drill|filed|cut|saw|grind|weld/i, /tank/i, /no filter|without (a |any )?filter|unfiltered/i],
    cause: 'lean',
    way: 'both-jets',
    factor: 60,
  },
  {
    words: [/drill|filed|cut|saw|grind|weld/i, /tank/i],
    not: /no filter|without (a |any )?filter|unfiltered|rinsed|flushed/i,
    cause: 'lean',
    way: 'both-jets',
    factor: 8,
  },
  {
    words: [
      /hand[- ]?tight|by hand|finger[- ]?tight|without (a )?torque/i,
      /coupling|joint|bolt|flange|shaft/i,
    ],
    cause: 'coupling:*',
    way: 'bolts',
    factor: 6,
  },
  {
    words: [/no (locker|locking)|without (locker|locking)|forgot.*lock/i],
    cause: 'coupling:*',
    way: 'bolts',
    factor: 4,
  },
  { words: [/impeller|rotor|pitch/i], not: /clean|look|check|gap/i, cause: 'steep', factor: 4 },
  { words: [/impeller|rotor|pitch/i], not: /clean|look|check|gap/i, cause: 'shallow', factor: 2.5 },
  { words: [/nozzle/i], not: /clean|look/i, cause: 'nozzle', factor: 5 },
  { words: [/pipe|exhaust|muffler/i], not: /bulge|look/i, cause: 'mistuned', factor: 4 },
  {
    words: [/carburett?or|jet|needle/i, /chang|new|clean|open|larger|set/i],
    cause: 'rich',
    way: 'jet',
    factor: 3,
  },
  {
    words: [/carburett?or|manifold|gasket|inlet|hose/i, /off|new|chang|open/i],
    cause: 'lean',
    way: 'air-leak',
    factor: 3,
  },
  { words: [/hose|filter|fuel line|fuel pump/i], cause: 'lean', way: 'feed', factor: 2.5 },
  { words: [/vent\b|tank cap/i], cause: 'vent', factor: 4 },
  { words: [/dunk|capsiz|went under|turned over|swamp|sank/i], cause: 'dunked', factor: 20 },
  { words: [/mixed|new fuel|fresh fuel|oil|can\b/i, /fuel|petrol|mix/i], cause: 'wrong-mix', factor: 3 },
  { words: [/cable|lever|throttle/i, /new|set|chang|moved/i], cause: 'throttle-short', factor: 5 },
  {
    words: [/kill|lead|switch|wir/i, /new|chang|moved|solder/i],
    cause: 'one-dead',
    way: 'kill-lead',
    factor: 4,
  },
  { words: [/weed|shallow|reed bed|gravel/i], cause: 'weed', factor: 4 },
  { words: [/battery|cargo|load|box|moved the/i, /heav|more|moved|added/i], cause: 'hull', factor: 2.5 },
]

const good = /went well|good run|all (was )?(fine|well)|no trouble|ran well/i

/** Entries since the last run that went well; all of them where none is said to have. */
export function sinceGood(log: readonly LogEntry[]): readonly LogEntry[] {
  const sorted = [...log].sort((a, b) => a.at.localeCompare(b.at))
  const last = sorted.findLastIndex((e) => e.kind === 'run' && good.test(e.says))
  return sorted.slice(last + 1)
}

const textOf = (e: LogEntry) => [e.says, e.path, e.from, e.to, e.reason, e.part].filter(Boolean).join(' ')

function logMoves(log: readonly LogEntry[]): Move[] {
  const out: Move[] = []
  for (const e of sinceGood(log)) {
    // what was looked at or bought changed nothing on the craft
    if (e.kind === 'check' || e.kind === 'bought') continue
    const text = textOf(e)
    for (const r of rules) {
      if (!r.words.every((w) => w.test(text)) || r.not?.test(text)) continue
      out.push({
        cause: r.cause,
        ...(r.way ? { way: r.way } : {}),
        factor: r.factor,
        says: say`the log has of ${e.at.slice(0, 10)}: “${short(e.says)}”`,
      })
    }
  }
  return out
}

const short = (text: string) => (text.length > 70 ? `${text.slice(0, 67).trimEnd()}…` : text)

/** Joints that were made so that they may open, by the file and by their reckoned margins. */
function jointMoves(craft: Craft, margins: ReadonlyMap<string, number>): Move[] {
  return linksOf(craft).flatMap((l): Move[] => {
    const cause = `coupling:${l.path}`
    const margin = margins.get(l.path)
    const weak = margin !== undefined && margin < 1
    return [
      ...(l.byHand
        ? [
            {
              cause,
              way: 'bolts',
              factor: l.printed ? 5 : 3,
              says: say`${l.name} is made hand-tight${l.printed ? ' in printed plastic, which yields under its bolts' : ''}`,
            },
          ]
        : []),
      ...(weak
        ? [
            {
              cause,
              factor: 3,
              says: say`${l.name} holds only ${inTimes(margin)} times what it has to carry`,
            },
          ]
        : []),
    ]
  })
}

/** Every move of a craft and its log. `margins`: least margin of the joints by craft path. */
export function movesOf(
  craft: Craft,
  log: readonly LogEntry[],
  margins: ReadonlyMap<string, number>,
): Move[] {
  const own = craft.log.map(
    (e): LogEntry => ({
      at: String(e.date),
      kind: 'change',
      says: [e.path, e.to, e.reason].filter(Boolean).join(' '),
    }),
  )
  return [...logMoves([...own, ...log]), ...jointMoves(craft, margins)]
}

const matches = (m: Move, cause: string, way: string) =>
  (m.cause === cause || (m.cause.endsWith('*') && cause.startsWith(m.cause.slice(0, -1)))) &&
  (m.way === undefined || m.way === way)

/** most that the log and other trades together may move one way of a cause */
const most = 80

/** Factor on a way's weight: reasons often tell one and the same fact, so only the strongest counts in full, the others by their root. */
export function factorOf(moves: readonly Move[], cause: string, way: string): number {
  const own = moves.filter((m) => matches(m, cause, way)).map((m) => m.factor)
  const first = Math.max(1, ...own)
  const all = own.reduce((f, x) => f * Math.sqrt(x), 1)
  return Math.min(most, Math.sqrt(first) * all)
}

/** What moved a cause, each reason once. */
export const movesFor = (moves: readonly Move[], cause: string): Sentence[] => {
  const own = moves.filter(
    (m) => m.cause === cause || (m.cause.endsWith('*') && cause.startsWith(m.cause.slice(0, -1))),
  )
  return [...new Map(own.map((m) => [JSON.stringify(m.says), m.says])).values()]
}
