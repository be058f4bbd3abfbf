/** What stands in the log of a craft: one dated thing that was done or found out. Kept as plain text beside the craft file. */
export const logKinds = ['run', 'check', 'change', 'made', 'bought', 'note'] as const
export type LogKind = (typeof logKinds)[number]

export interface LogEntry {
  /** year-month-day, a time may follow */
  at: string
  kind: LogKind
  /** in the builder's own words */
  says: string
  /** change: path of the craft file, from, to, why and what it should do, as in the craft file's own log */
  path?: string
  from?: string
  to?: string
  reason?: string
  expect?: string
  /** made: the part's id and the text it was made from (`MadePart.madeFrom`) */
  part?: string
  madeFrom?: string
  /** check: its id and which of its outcomes was found */
  check?: string
  outcome?: string
  /** run: the folder or file it is kept in, and its numbers as one would type them (`pull: 230 N`, `rpm A: 5200 rpm`) */
  run?: string
  readings?: Readonly<Record<string, string>>
}

/** A thing wrong with a log: the line it stands on (from 1) and one sentence. */
export interface LogProblem {
  line: number
  says: string
}
