import { styleText } from 'node:util'
import { printed } from '../../base/answers/sentence.ts'
import { nearest } from '../../base/units/near.ts'
import {
  appendLog,
  type Craft,
  fieldAt,
  listFields,
  readCraft,
  setValue,
  valueText,
} from '../../craft/index.ts'
import { terminalOf, widthFor } from '../../drawing/terminal.ts'
import { compareRuns, runNamed } from '../../whole/log/compare.ts'
import { type CraftLog, craftLog, entrySays, runsOf } from '../../whole/log/craftLog.ts'
import { addEntry, isLogDate } from '../../whole/log/logText.ts'
import { type LogEntry, type LogKind, logKinds } from '../../whole/log/logTypes.ts'
import { readingKinds, readingOf } from '../../whole/log/readings.ts'
import { seasonFigure, seasonOf } from '../../whole/log/season.ts'
import { inchLook, metricLook } from '../../whole/push/shown.ts'
import { inColour } from './figuresText.ts'
import { rewrite, textBeside } from './keptFile.ts'
import { unitsOf } from './lookCommand.ts'
import { BadInput, exit, print, printJson } from './outcome.ts'
import { type CraftOnDisk, readCraftFile } from './readCraftFile.ts'
import { seasonText } from './seasonText.ts'

/** heron.yaml and heron.log.yaml lie side by side. */
export const logPathOf = (craftFile: string): string => `${craftFile.replace(/\.ya?ml$/i, '')}.log.yaml`

/** A craft on disk with its log; faults of the log go to stderr by file and line. */
export function craftWithLog(file: string): CraftOnDisk & { log: CraftLog } {
  const on = readCraftFile(file)
  const { craft } = on
  const path = logPathOf(file)
  const log = craftLog(craft, textBeside(path))
  for (const p of log.problems) process.stderr.write(`${path}:${p.line}:1: ${p.says}\n`)
  return { ...on, log }
}

export interface LogAddOptions {
  at?: string
  reading?: string[]
  path?: string
  from?: string
  to?: string
  why?: string
  expect?: string
  part?: string
  check?: string
  outcome?: string
  run?: string
  json?: boolean
}

/** `wakewright log add CRAFT KIND WORDS…`: one entry behind all others; `today` is handed in. */
export function logAdd(
  file: string,
  kind: string,
  words: readonly string[],
  options: LogAddOptions,
  today: string,
): number {
  if (!logKinds.includes(kind as LogKind))
    throw new BadInput([`log: kind "${kind}" is not one of ${logKinds.join(', ')}`])
  const at = options.at ?? today
  if (!isLogDate(at)) throw new BadInput([`log: --at "${at}" is not a date such as 2026-05-14`])
  const on = readCraftFile(file)
  const entry: LogEntry = {
    at,
    kind: kind as LogKind,
    says: words.join(' '),
    ...given({
      from: options.from,
      to: options.to,
      reason: options.why,
      expect: options.expect,
      part: options.part,
      check: options.check,
      outcome: options.outcome,
      run: options.run,
    }),
    ...readingsOf(options.reading ?? []),
  }
  if (entry.says === '' && Object.keys(entry).length === 3 && options.path === undefined)
    throw new BadInput(['log: there is nothing to write down; say what was done in a few words'])
  const kept =
    options.path === undefined
      ? besideCraft(file, on.craft, entry)
      : inCraft(file, { ...entry, path: options.path }, on.text)
  if (options.json) printJson({ file: kept, entry: { ...entry, ...given({ path: options.path }) } })
  else print(`Written to ${kept}.`)
  return exit.fine
}

const given = (keys: Readonly<Record<string, string | undefined>>) =>
  Object.fromEntries(Object.entries(keys).filter(([, v]) => v !== undefined && v !== '')) as Partial<LogEntry>

function readingsOf(list: readonly string[]): { readings?: Record<string, string> } {
  const readings: Record<string, string> = {}
  for (const one of list) {
    const at = one.indexOf('=')
    const name = one.slice(0, at).trim()
    const value = one.slice(at + 1).trim()
    if (at <= 0 || value === '')
      throw new BadInput([`log: --reading "${one}" is not name=value, such as pull="21.5 kg"`])
    const read = readingOf(name, value)
    if (typeof read === 'string') throw new BadInput([`log: --reading ${name} ${read}`])
    if (read === undefined) {
      const near = nearest(
        name,
        readingKinds.map((r) => r.name),
      )
      if (near) process.stderr.write(`log: nothing is reckoned with "${name}"; "${near}" may be meant\n`)
    }
    readings[name] = value
  }
  return Object.keys(readings).length > 0 ? { readings } : {}
}

function besideCraft(file: string, craft: Craft, entry: LogEntry): string {
  const path = logPathOf(file)
  rewrite(path, (now) => addEntry(now, entry, craft.name))
  return path
}

/** A change of a value of the craft file: the value and its log entry are written together, into the craft file. */
function inCraft(file: string, entry: LogEntry & { path: string }, text: string): string {
  const { path, to } = entry
  if (entry.kind !== 'change') throw new BadInput([`log: --path belongs to a change, not to a ${entry.kind}`])
  if (!fieldAt(path)) {
    const near = nearest(
      path.replace(/\.\d+(?=\.|$)/g, '.*'),
      listFields().map((f) => f.path),
    )
    throw new BadInput([
      `log: a craft file has no "${path}"${near ? `; "${near}" may be meant` : ''}; a change that no value of it tells goes without --path`,
    ])
  }
  if (to === undefined) throw new BadInput([`log: --path "${path}" needs --to, the value since`])
  const was = valueText(text, path)
  if (was === to && entry.from === undefined)
    throw new BadInput([`log: ${path} is ${to} already; add --from, the value before`])
  const from = entry.from ?? was
  const { at, reason, expect, says } = entry
  const why = reason ?? says
  rewrite(file, (now) => {
    let next: string
    try {
      const set = was === to ? now : setValue(now, path, to)
      next = appendLog(set, {
        date: at,
        path,
        to,
        ...(from === undefined ? {} : { from }),
        ...(why === '' ? {} : { reason: why }),
        ...(expect === undefined ? {} : { expect }),
      })
    } catch (error) {
      if (error instanceof RangeError) throw new BadInput([`log: ${error.message}`])
      throw error
    }
    const { problems } = readCraft(next, file)
    const wrong = problems.find((p) => p.severity === 'error')
    if (wrong) throw new BadInput([`log: ${wrong.says}; nothing was written`])
    return next
  })
  return file
}

/** `wakewright log show CRAFT [--season [YEAR]]`. */
export function logShow(
  file: string,
  options: { season?: boolean | string; json?: boolean; draw?: boolean; units: string },
): number {
  const { units } = unitsOf('log', options)
  const { craft, log } = craftWithLog(file)
  if (options.season !== undefined && options.season !== false) {
    const year = typeof options.season === 'string' ? options.season : undefined
    if (year !== undefined && !/^\d{4}$/.test(year))
      throw new BadInput([`log: --season "${year}" is not a year such as 2026`])
    const season = seasonOf(log, year)
    if (options.json) {
      printJson({ units: { pull: 'N', rotation: 'rev/s', topSpeed: 'm/s', hours: 's' }, ...season })
      return exit.fine
    }
    print(`\n${styleText('bold', craft.name)}\n\n${printed(season.says, units)}`)
    if (season.runs.length > 0) print(seasonText(season, units))
    const figure = seasonFigure(season, {
      ...(units === 'inch' ? inchLook : metricLook),
      width: widthFor(Math.min(120, Math.max(60, process.stdout.columns ?? 96))),
    })
    if (options.draw && figure) print(terminalOf(figure, { colour: inColour() }).join('\n'))
    return exit.fine
  }
  if (options.json) {
    printJson({ entries: log.entries, problems: log.problems })
    return exit.fine
  }
  print(`\n${styleText('bold', craft.name)}\n`)
  if (log.entries.length === 0)
    print(
      'Nothing is written down yet: wakewright log add CRAFT run "what was run" --reading pull="21.5 kg".',
    )
  for (const one of log.entries)
    print(
      `${String(one.number).padStart(4)}  ${one.entry.at.padEnd(10)}  ${one.entry.kind.padEnd(6)}  ${entrySays(one)}`,
    )
  return exit.fine
}

/** `wakewright log compare CRAFT A B`. */
export function logCompare(
  file: string,
  a: string,
  b: string,
  options: { json?: boolean; units: string },
): number {
  const { units } = unitsOf('log', options)
  const { log } = craftWithLog(file)
  const runs = runsOf(log)
  const named = (word: string) => {
    const run = runNamed(log, word)
    if (run) return run
    const known = runs
      .map((r) => `${r.number} (${r.entry.at})`)
      .slice(-12)
      .join(', ')
    throw new BadInput([
      runs.length === 0
        ? 'log: no run stands in the log yet'
        : `log: "${word}" is no run of the log; expected first, last, a date, or one of ${known}`,
    ])
  }
  const compared = compareRuns(log, named(a), named(b))
  if (options.json) {
    printJson({
      units: { pull: 'N', 'engine speed': 'rev/s', 'top speed': 'm/s' },
      ...compared,
      says: printed(compared.says, units),
    })
    return exit.fine
  }
  print(`${compared.a.number} (${compared.a.entry.at}) against ${compared.b.number} (${compared.b.entry.at})`)
  print(printed(compared.says, units))
  for (const change of compared.changes) print(`  ${change.entry.at}  ${entrySays(change)}`)
  return exit.fine
}
