/** A calibration in words and as the section of the craft file that keeps it. */
import {
  type AmountMaker,
  asChange,
  inNewtons,
  inPercent,
  inRpm,
  inSpeed,
} from '../../base/answers/amounts.ts'
import { joined, type Sentence, say } from '../../base/answers/sentence.ts'
import { type Craft, removeValue, setValue } from '../../craft/index.ts'
import { type CraftLog, isChange, runsOf } from '../log/craftLog.ts'
import { numbersOf, rotationOf } from '../log/readings.ts'
import type { Calibration, FactorName, ReadingOf, TrustedReading } from './calibrate.ts'

const factorWords: Readonly<Record<FactorName, string>> = {
  engine: 'engines over what the impeller takes',
  thrust: 'thrust at an impeller speed',
  drag: 'drag of the hull',
}
const readingWords: Readonly<Record<ReadingOf, string>> = {
  rotation: 'engine speed tied up',
  pull: 'pull',
  topSpeed: 'top speed',
}
const makers: Readonly<Record<ReadingOf, AmountMaker>> = {
  rotation: inRpm,
  pull: inNewtons,
  topSpeed: inSpeed,
}

/** Readings of the runs since the craft last changed: the trusted ones, unless some are named by their numbers in the log. */
export function trustedReadings(log: CraftLog, numbers?: readonly number[]): TrustedReading[] {
  const changed = log.entries.findLast(isChange)?.number ?? 0
  const runs = runsOf(log).filter((r) => (numbers ? numbers.includes(r.number) : r.number > changed))
  return runs.flatMap(({ entry }): TrustedReading[] => {
    const { values } = numbersOf(entry)
    const run = entry.at.slice(0, 10)
    const found: [ReadingOf, number | undefined][] = [
      ['rotation', rotationOf(values)],
      ['pull', values['pull']],
      ['topSpeed', values['top speed']],
    ]
    return found.flatMap(([of, value]) => (value === undefined ? [] : [{ of, value, run }]))
  })
}

/** What moved, how far, and what is left of the doubt; or why the fit is refused. */
export function calibrationSays(c: Calibration): Sentence[] {
  if (c.refused) return [refusalSays(c)]
  const lines = c.factors.map((f): Sentence => {
    const moved = asChange(inPercent(f.factor.value - 1))
    const known = f.measured
      ? say`known to ±${inPercent(1.96 * f.posterior)} instead of ±${inPercent(1.96 * f.prior)}`
      : 'not measured by these readings'
    return say`${factorWords[f.name]}: ${moved}, ${known}`
  })
  return [...lines, ...c.readings.map(readingSays)]
}

const readingSays = (r: Calibration['readings'][number]): Sentence =>
  say`${readingWords[r.of]} of ${r.run}: read ${makers[r.of](r.value)}, ${makers[r.of](r.model)} before the fit, ${makers[r.of](r.fitted)} after`

function refusalSays(c: Calibration): Sentence {
  const { reading, past } = c.refused!
  const impossible =
    past.length > 0
      ? say`the fit would need what cannot be (${joined(past.map((p) => say`${factorWords[p]} ${asChange(inPercent(c.factors.find((f) => f.name === p)!.factor.value - 1))}`))})`
      : 'no fit meets these readings'
  const wrong = reading === undefined ? undefined : c.readings[reading]!
  return wrong
    ? say`Refused: ${impossible}. The ${readingWords[wrong.of]} of ${wrong.run}, ${makers[wrong.of](wrong.value)}, looks wrong: the model makes ${makers[wrong.of](wrong.model)} of it. Read it again, or look for what is broken.`
    : say`Refused: ${impossible}, and no single reading explains it. Was the craft the same in all these runs?`
}

const keys = ['runs', 'engine', 'thrust', 'drag', 'rotation left', 'pull left', 'speed left'] as const

/** What a kept fit writes into the craft file: path and text of each value. */
export function fitValues(c: Calibration): [path: string, text: string][] {
  const plain = (x: number) => `${Number(x.toPrecision(4))} (measured)`
  const factor = (name: FactorName) => plain(c.factors.find((f) => f.name === name)!.factor.value)
  const runs = [...new Set(c.readings.map((r) => r.run))].join(', ')
  const values: Record<(typeof keys)[number], string> = {
    runs: runs.slice(0, 300),
    engine: factor('engine'),
    thrust: factor('thrust'),
    drag: factor('drag'),
    'rotation left': plain(c.left.rotation),
    'pull left': plain(c.left.pull),
    'speed left': plain(c.left.topSpeed),
  }
  return keys.map((key) => [`fitted.${key}`, values[key]])
}

/** The craft file with the fit in it. */
export const withFit = (text: string, c: Calibration): string =>
  fitValues(c).reduce((now, [path, value]) => setValue(now, path, value), text)

/** The craft file without a fit. */
export const withoutFit = (text: string): string => removeValue(text, 'fitted')

/** The craft as filed, its fit left out: what a new fit begins from. */
export function unfitted(craft: Craft): Craft {
  const { fitted: _, ...rest } = craft
  return rest as Craft
}
