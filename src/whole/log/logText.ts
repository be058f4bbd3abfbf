/**
 * The log as text: one block an entry, oldest first, each block beginning with "- " at the edge. Only ever added to at its end, so that
 * two branches of it merge by taking both sides; every block is read for itself, so that one spoilt by hand costs no other.
 * YAML 1.2.2 (2021) with every scalar kept as its text.
 */
import { isMap, isScalar, LineCounter, type Pair, parseDocument, stringify } from 'yaml'
import { type LogEntry, type LogKind, type LogProblem, logKinds } from './logTypes.ts'

/** An entry as it stands in a log, with the line its block begins on. */
export interface ReadEntry {
  entry: LogEntry
  /** from 1; 0 for an entry of the craft file's own log */
  line: number
}

export interface ReadLog {
  entries: readonly ReadEntry[]
  problems: readonly LogProblem[]
}

/** a block is some lines; a log of thousands of entries stays far below this */
const mostCharacters = 8_000_000
const mostOfBlock = 20_000

const date = /^\d{4}-(\d{2})-(\d{2})([T ]\d{2}:\d{2}(:\d{2}(\.\d+)?)?(Z|[+-]\d{2}:\d{2})?)?$/

/** A date as the log takes it: year-month-day, a time may follow; no 13th month and no 32nd. */
export function isLogDate(text: string): boolean {
  const m = date.exec(text)
  return m !== null && Number(m[1]) >= 1 && Number(m[1]) <= 12 && Number(m[2]) >= 1 && Number(m[2]) <= 31
}

/** key in the file, by field of the entry; in the order they are written */
const keys: readonly [keyof LogEntry, string][] = [
  ['at', 'at'],
  ['kind', 'kind'],
  ['says', 'says'],
  ['path', 'path'],
  ['from', 'from'],
  ['to', 'to'],
  ['reason', 'reason'],
  ['expect', 'expect'],
  ['part', 'part'],
  ['madeFrom', 'made from'],
  ['check', 'check'],
  ['outcome', 'outcome'],
  ['run', 'run'],
  ['readings', 'readings'],
]

/** The block of one entry, with a line end behind it. */
export function entryText(entry: LogEntry): string {
  const out: Record<string, unknown> = {}
  for (const [field, key] of keys) {
    const value = entry[field]
    if (value === undefined || value === '') continue
    if (typeof value === 'string') out[key] = value
    else if (Object.keys(value).length > 0) out[key] = value
  }
  return stringify([out], { lineWidth: 0, schema: 'failsafe' })
}

const head = (name: string) =>
  `# Log of ${name.replace(/\s+/g, ' ')}: one block an entry, new ones at the end.\n`

/** The text with an entry added behind everything that stood there, which stays as it is to the letter. */
export function addEntry(text: string, entry: LogEntry, craftName: string): string {
  const eol = text.includes('\r\n') ? '\r\n' : '\n'
  const before = text === '' ? head(craftName) : text.endsWith('\n') ? text : `${text}${eol}`
  const gap = before.endsWith(`${eol}${eol}`) ? '' : eol
  return `${before}${gap}${entryText(entry).replaceAll('\n', eol)}`
}

/** Reads a log. A block that cannot be read is told with its line and passed over; the text itself is never touched. */
export function readLog(text: string): ReadLog {
  const entries: ReadEntry[] = []
  const problems: LogProblem[] = []
  if (text.length > mostCharacters) {
    const says = `the log is ${Math.round(text.length / 1e6)} million characters long; at most ${mostCharacters / 1e6} are read`
    return { entries, problems: [{ line: 1, says }] }
  }
  const seen = new Map<string, number>()
  for (const block of blocksOf(text, problems)) {
    const entry = readBlock(block, problems)
    if (!entry) continue
    // both sides of a merge may hold the same entry
    const same = JSON.stringify([
      block.lines
        .map((l) => l.trimEnd())
        .join('\n')
        .trimEnd(),
    ])
    const first = seen.get(same)
    if (first === undefined) {
      seen.set(same, block.line)
      entries.push({ entry, line: block.line })
    } else
      problems.push({ line: block.line, says: `this entry stands on line ${first} already; it counts once` })
  }
  return { entries, problems }
}

interface Block {
  line: number
  lines: string[]
}

/** marks that a merge leaves where both sides added something */
const mergeMark = /^(<{7}|={7}|>{7}|\|{7})( |$)/

function blocksOf(text: string, problems: LogProblem[]): Block[] {
  const blocks: Block[] = []
  let open: Block | undefined
  const lines = text.replace(/^\uFEFF/, '').split(/\r\n|\n|\r/)
  lines.forEach((line, i) => {
    if (mergeMark.test(line)) {
      if (line.startsWith('<')) {
        const says = 'a merge left its marks here; the entries of both sides are read, the marks can go'
        problems.push({ line: i + 1, says })
      }
      open = undefined
    } else if (/^-(\s|$)/.test(line)) {
      open = { line: i + 1, lines: [line] }
      blocks.push(open)
    } else if (open && !(line.startsWith('#') || /^\S/.test(line))) open.lines.push(line)
    else if (line.trim() !== '' && !line.startsWith('#')) {
      const says = `"${short(line)}" belongs to no entry; an entry begins with "- at: " and a date at the edge`
      problems.push({ line: i + 1, says })
    } else if (line.startsWith('#')) open = undefined
  })
  return blocks
}

const short = (text: string) => {
  const tidy = text.replace(/\p{Cc}+/gu, ' ').trim()
  return tidy.length > 50 ? `${tidy.slice(0, 48)}…` : tidy
}

function readBlock(block: Block, problems: LogProblem[]): LogEntry | undefined {
  const fault = (says: string, at = 0): undefined => {
    problems.push({ line: block.line + at, says })
  }
  const text = `${block.lines.join('\n')}\n`
  if (text.length > mostOfBlock)
    return fault(`this entry is ${text.length} characters long; at most ${mostOfBlock} are read`)
  const places = new LineCounter()
  const document = parseDocument(text, {
    schema: 'failsafe',
    prettyErrors: false,
    uniqueKeys: false,
    logLevel: 'error',
    lineCounter: places,
  })
  const wrong = document.errors[0]
  if (wrong) {
    // a quote left open is missed only at the end of the block
    const at = wrong.code === 'MISSING_CHAR' ? 0 : places.linePos(wrong.pos[0]).line - 1
    return fault(
      `this entry cannot be read at "${short(block.lines[at] ?? '')}"; nothing of it counts until it is mended`,
      at,
    )
  }
  const list = document.toJS({ maxAliasCount: 0 }) as unknown
  const first = (document.contents as { items?: unknown[] } | null)?.items?.[0]
  if (!Array.isArray(list) || list.length !== 1 || !isMap(first))
    return fault('this entry holds no keys; expected "at", "kind" and "says", a key and a value a line')
  const lineOf = (pair: Pair | undefined) => {
    const key = pair?.key
    return isScalar(key) && key.range ? places.linePos(key.range[0]).line - 1 : 0
  }
  const found = new Map<string, { value: unknown; at: number }>()
  for (const pair of first.items) {
    const key = isScalar(pair.key) ? String(pair.key.value) : ''
    const value = (list[0] as Record<string, unknown>)[key]
    if (found.has(key)) return fault(`"${short(key)}" stands twice in this entry`, lineOf(pair))
    found.set(key, { value, at: lineOf(pair) })
  }
  const out: Record<string, unknown> = {}
  for (const [field, key] of keys) {
    const is = found.get(key)
    // a key with nothing behind it, as left by hand, is as not there
    if (!is || is.value === '' || is.value === null) continue
    if (field === 'readings') {
      const readings = is.value
      const plain = typeof readings === 'object' && !Array.isArray(readings)
      if (!plain || !Object.values(readings as object).every((v) => typeof v === 'string'))
        return fault('"readings" is not a list of names and values, such as "pull: 230 N"', is.at)
      out[field] = readings
    } else if (typeof is.value === 'string') out[field] = is.value
    else return fault(`"${key}" has more keys or lines under it; expected one value`, is.at)
  }
  const at = out['at']
  if (typeof at !== 'string') return fault('this entry has no "at"; expected a date such as 2026-05-14')
  if (!isLogDate(at))
    return fault(`at is "${short(at)}"; expected a date such as 2026-05-14`, found.get('at')!.at)
  if (!logKinds.includes(out['kind'] as LogKind))
    return fault(
      `kind is "${short(String(out['kind'] ?? ''))}"; expected one of ${logKinds.join(', ')}`,
      found.get('kind')?.at,
    )
  return { ...out, says: (out['says'] as string | undefined) ?? '' } as unknown as LogEntry
}
