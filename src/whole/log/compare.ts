/** Two runs of a log beside each other: what changed between them, and what that did to pull, engine speed and top speed. */
import {
  type AmountMaker,
  asChange,
  inNewtons,
  inPercent,
  inRpm,
  inSpeed,
} from '../../base/answers/amounts.ts'
import { joined, type Sentence, say } from '../../base/answers/sentence.ts'
import { type CraftLog, type CraftLogEntry, changesBetween, entrySays, runsOf } from './craftLog.ts'
import { numbersOf, rotationOf } from './readings.ts'

/** One number of both runs, SI; `spread` is the part by which two readings of the same craft differ, one standard deviation. */
export interface ComparedNumber {
  name: 'pull' | 'engine speed' | 'top speed'
  before: number
  after: number
  part: number
  /** false where two runs of an unchanged craft differ as much */
  beyondChance: boolean
}

export interface Compared {
  a: CraftLogEntry
  b: CraftLogEntry
  changes: readonly CraftLogEntry[]
  numbers: readonly ComparedNumber[]
  says: Sentence
}

/** Scatter of one reading, a part: scale with three pulls, engine speed by ear, best five seconds of a GPS (own trials of the hearing; common practice for the scale). */
const scatter = { pull: 0.04, 'engine speed': 0.015, 'top speed': 0.05 } as const
/** two readings differ by chance at most so many standard deviations of their difference, nineteen times in twenty */
const beyond = 1.96

const makers: Readonly<Record<ComparedNumber['name'], AmountMaker>> = {
  pull: inNewtons,
  'engine speed': inRpm,
  'top speed': inSpeed,
}

/** The run a word means: its number in the list, a date, or `last` and `first`; undefined where there is none. */
export function runNamed(log: CraftLog, word: string): CraftLogEntry | undefined {
  const runs = runsOf(log)
  if (word === 'last') return runs.at(-1)
  if (word === 'first') return runs[0]
  if (/^\d{1,6}$/.test(word)) return runs.find((r) => r.number === Number(word))
  const onDay = runs.filter((r) => r.entry.at.startsWith(word))
  return /^\d{4}-\d{2}-\d{2}/.test(word) ? onDay.at(-1) : undefined
}

/** The numbers of a run that runs are compared by, SI: pull N, engine speed rev/s, top speed m/s. */
export function comparable(run: CraftLogEntry): Partial<Record<ComparedNumber['name'], number>> {
  const { values } = numbersOf(run.entry)
  const out: Partial<Record<ComparedNumber['name'], number>> = {}
  const rotation = rotationOf(values)
  if (values['pull'] !== undefined) out.pull = values['pull']
  if (rotation !== undefined) out['engine speed'] = rotation
  if (values['top speed'] !== undefined) out['top speed'] = values['top speed']
  return out
}

/** Compares two runs, the older one first whichever way they are handed in. */
export function compareRuns(log: CraftLog, one: CraftLogEntry, other: CraftLogEntry): Compared {
  const [a, b] = one.number <= other.number ? [one, other] : [other, one]
  const changes = changesBetween(log, a.number, b.number)
  const before = comparable(a)
  const after = comparable(b)
  const numbers = (['pull', 'engine speed', 'top speed'] as const).flatMap((name): ComparedNumber[] => {
    const was = before[name]
    const is = after[name]
    if (was === undefined || is === undefined) return []
    const part = is / was - 1
    return [
      {
        name,
        before: was,
        after: is,
        part,
        beyondChance: Math.abs(part) > beyond * Math.SQRT2 * scatter[name],
      },
    ]
  })
  return { a, b, changes, numbers, says: comparedSays(changes, numbers) }
}

function comparedSays(changes: readonly CraftLogEntry[], numbers: readonly ComparedNumber[]): Sentence {
  const what =
    changes.length === 0
      ? 'Nothing was changed between them'
      : changes.length === 1
        ? `Between them one thing changed (${entrySays(changes[0]!)})`
        : `Between them ${changes.length} things changed, so no single one can be blamed or praised`
  if (numbers.length === 0) return say`${what}; they have no number in common.`
  const moved = numbers.map(({ name, before, after, part, beyondChance }) => {
    const make = makers[name]
    const how = beyondChance ? '' : ', which chance alone does too'
    return say`${name} ${make(before)} to ${make(after)} (${asChange(inPercent(part))}${how})`
  })
  return say`${what}: ${joined(moved, '; ')}.`
}
