/**
 * What the hearing calls an event, as the marks that a story is cut by: the one place that knows the hearing's own words. A kind that is
 * not in the table still cuts the story, and says nothing more.
 */
import type { RunEvent } from '../../trades/sound/shaftEvents.ts'

export type MarkKind =
  | 'start'
  | 'stop'
  | 'cut-out'
  | 'races'
  | 'load lost'
  | 'one stops'
  | 'one fires again'
  | 'bogs'
  | 'fades'
  | 'misses'
  | 'burbles'
  | 'hunts'
  | 'choke helps'
  | 'choke hurts'
  | 'draws air'
  | 'other'

export interface Mark {
  kind: MarkKind
  /** s */
  at: number
  lasts: number
  engine: 'A' | 'B' | 'both'
  /** 0 to 1 */
  sure: number
  /** how it stopped, where that was heard */
  how?: 'by hand' | 'faded out' | 'at once'
  value?: number
}

/** One line a kind of the hearing. */
const kinds: Readonly<Record<string, MarkKind>> = {
  start: 'start',
  stop: 'stop',
  'cut-out': 'cut-out',
  flare: 'races',
  'load lost': 'load lost',
  'one dead': 'one stops',
  'firing stopped': 'one stops',
  'fires again': 'one fires again',
  bog: 'bogs',
  fall: 'fades',
  misfire: 'misses',
  'four-stroking': 'burbles',
  hunting: 'hunts',
  ventilation: 'draws air',
}

const hows: readonly [RegExp, NonNullable<Mark['how']>][] = [
  [/kill|by hand|switched/, 'by hand'],
  [/starv|faded|ran down/, 'faded out'],
  [/cut at speed|at once/, 'at once'],
]

const textOf = (e: RunEvent) =>
  typeof e.says === 'string' ? e.says : e.says.filter((p) => typeof p === 'string').join(' ')

/** The hearing's events in order of time. */
export function marksOf(events: readonly RunEvent[]): Mark[] {
  return events
    .filter((e) => Number.isFinite(e.time) && e.confidence > 0.15)
    .map((e) => {
      const kind: string = e.kind
      const how = kind === 'stop' ? hows.find(([words]) => words.test(textOf(e)))?.[1] : undefined
      const choke = /choke/.test(kind) ? ((e.value ?? 0) >= 0 ? 'choke helps' : 'choke hurts') : undefined
      return {
        kind: choke ?? kinds[kind] ?? 'other',
        at: e.time,
        lasts: Math.max(0, e.lasts),
        engine: e.engine,
        sure: Math.min(1, e.confidence),
        ...(how ? { how } : {}),
        ...(e.value === undefined ? {} : { value: e.value }),
      } satisfies Mark
    })
    .sort((a, b) => a.at - b.at)
}
