/**
 * The log of a craft as one list: the changes of values that stand in the craft file's own `log:` and everything else, which stands in
 * the log beside it. A fact stands in one of the two: a value that changed in the craft file, because the program writes both together;
 * runs, checks, parts, purchases, notes and changes that no value of the file tells (a new plug) in the log.
 */
import type { Craft } from '../../craft/index.ts'
import { type ReadEntry, type ReadLog, readLog } from './logText.ts'
import type { LogEntry, LogProblem } from './logTypes.ts'
import { numbersOf } from './readings.ts'

/** One entry of the joined log, numbered as it is listed. */
export interface CraftLogEntry extends ReadEntry {
  /** from 1, oldest first */
  number: number
  from: 'craft file' | 'log'
}

export interface CraftLog {
  entries: readonly CraftLogEntry[]
  problems: readonly LogProblem[]
}

const dayOf = (at: string) => at.slice(0, 10)

/** a date without a time stands before those of its day with one; equal ones keep their order */
const inOrder = (a: ReadEntry, b: ReadEntry) =>
  a.entry.at === b.entry.at ? 0 : a.entry.at.replace(' ', 'T') < b.entry.at.replace(' ', 'T') ? -1 : 1

const sameChange = (a: LogEntry, b: LogEntry) =>
  a.path !== undefined &&
  a.path === b.path &&
  dayOf(a.at) === dayOf(b.at) &&
  a.from === b.from &&
  a.to === b.to

/** Both logs as one, oldest first. What stands in both is told and counts once. */
export function craftLog(craft: Craft, text: string): CraftLog {
  const read: ReadLog = readLog(text)
  const problems = [...read.problems]
  const own = craft.log.map(({ date, path, from, to, reason, expect }): LogEntry => {
    const optional = { from, to, reason, expect }
    const given = Object.fromEntries(Object.entries(optional).filter(([, v]) => v !== undefined))
    return { at: date, kind: 'change', says: reason ?? '', path, ...given }
  })
  const beside = read.entries.filter(({ entry, line }) => {
    for (const fault of numbersOf(entry).faults) problems.push({ line, says: fault })
    if (!own.some((o) => sameChange(o, entry))) return true
    problems.push({
      line,
      says: `this change of ${entry.path} stands in the craft file’s log already; it counts once`,
    })
    return false
  })
  const all: (ReadEntry & { from: CraftLogEntry['from'] })[] = [
    ...own.map((entry) => ({ entry, line: 0, from: 'craft file' as const })),
    ...beside.map((one) => ({ ...one, from: 'log' as const })),
  ]
  all.sort(inOrder)
  return {
    entries: all.map((one, i) => ({ ...one, number: i + 1 })),
    problems: problems.sort((a, b) => a.line - b.line),
  }
}

/** What makes the craft another one: a change, a part made, something bought and fitted. */
export const isChange = ({ entry }: ReadEntry): boolean => entry.kind === 'change' || entry.kind === 'made'

/** The runs of a log. */
export const runsOf = (log: CraftLog): CraftLogEntry[] => log.entries.filter((e) => e.entry.kind === 'run')

/** Changes after one entry and before another, by their numbers. */
export const changesBetween = (log: CraftLog, after: number, before: number): CraftLogEntry[] =>
  log.entries.filter((e) => e.number > after && e.number < before && isChange(e))

/** An entry in one line of words: what it is, in the builder's own words where there are any. */
export function entrySays({ entry }: ReadEntry): string {
  const { kind, says, path, from, to, part, check, outcome, readings } = entry
  const change =
    path === undefined ? '' : `${path} ${from === undefined ? '' : `from ${from} `}to ${to ?? 'nothing'}`
  const found = check === undefined ? '' : `${check}${outcome === undefined ? '' : `: ${outcome}`}`
  const made = kind === 'made' ? (part ?? '') : ''
  const told = Object.entries(readings ?? {})
    .map(([name, value]) => `${name} ${value}`)
    .join(', ')
  return [change, found, made, says, told].filter((piece) => piece !== '').join('; ')
}
