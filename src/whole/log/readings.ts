/** Numbers of a run as a builder types them, to SI: `pull: 230 N`, `rpm A: 5200`, `top speed: 21 km/h`. */
import {
  type AmountMaker,
  inLitres,
  inMinutes,
  inNewtons,
  inRpm,
  inSpeed,
} from '../../base/answers/amounts.ts'
import { formatQuantity } from '../../base/units/format.ts'
import type { Kind } from '../../base/units/kinds.ts'
import { isQuantityProblem, parseQuantity } from '../../base/units/parse.ts'
import type { LogEntry } from './logTypes.ts'

/** One number a run may leave behind. */
export interface ReadingKind {
  name: string
  kind: Kind
  /** unit of a bare number */
  unit: string
  /** least and most that can be true of any such craft, SI */
  least: number
  most: number
  make: AmountMaker
  gloss: string
}

const rpm = (name: string, gloss: string): ReadingKind => ({
  name,
  kind: 'rotation',
  unit: 'rpm',
  least: 5,
  most: 400,
  make: inRpm,
  gloss,
})

/** Names a run's numbers go by; any other name is kept as it is and not reckoned with. */
export const readingKinds: readonly ReadingKind[] = [
  {
    name: 'pull',
    kind: 'force',
    unit: 'kgf',
    least: 1,
    most: 5000,
    make: inNewtons,
    gloss: 'tied up at full throttle, the middle of the scale’s readings',
  },
  rpm('rpm', 'of the shaft, tied up at full throttle'),
  rpm('rpm A', 'of the first engine'),
  rpm('rpm B', 'of the second engine'),
  {
    name: 'top speed',
    kind: 'speed',
    unit: 'km/h',
    least: 0.2,
    most: 40,
    make: inSpeed,
    gloss: 'best mean over five seconds, both ways',
  },
  {
    name: 'time',
    kind: 'time',
    unit: 'min',
    least: 1,
    most: 360_000,
    make: inMinutes,
    gloss: 'engines running',
  },
  {
    name: 'fuel',
    kind: 'volume',
    unit: 'L',
    least: 1e-6,
    most: 0.2,
    make: inLitres,
    gloss: 'burnt',
  },
]

/** What the readings of an entry say, SI by name; and what of them cannot be read or cannot be. */
export interface RunNumbers {
  values: Readonly<Record<string, number>>
  faults: readonly string[]
}

/** a luggage scale's kilograms are kilograms of force */
const onScale = (text: string) => text.replace(/(\d\s*)(kg|lb)s?\b(?!f)/gi, '$1$2f')

/** One reading in SI, or what is wrong with it in words that follow its name; undefined for a name nothing is reckoned with. */
export function readingOf(name: string, text: string): number | string | undefined {
  const of = readingKinds.find((r) => r.name === name)
  if (!of) return undefined
  const asked = of.kind === 'force' ? onScale(text) : text
  const bare = /^\s*[+-]?[\d.,]+\s*$/.test(asked) ? `${asked.trim()} ${of.unit}` : asked
  const q = parseQuantity(bare, of.kind, of.unit)
  if (isQuantityProblem(q)) return `"${text}" ${q.problem}; expected ${q.expected}`
  if (q.value < of.least || q.value > of.most)
    return `is "${text}"; no such craft does that: expected ${shownIn(of, of.least)} to ${shownIn(of, of.most)}`
  return q.value
}

const shownIn = (of: ReadingKind, si: number) => formatQuantity(si, of.kind, of.unit)

export function numbersOf(entry: LogEntry): RunNumbers {
  const values: Record<string, number> = {}
  const faults: string[] = []
  for (const [name, text] of Object.entries(entry.readings ?? {})) {
    const read = readingOf(name, text)
    if (typeof read === 'number') values[name] = read
    else if (read !== undefined) faults.push(`${name} ${read}`)
  }
  return { values, faults }
}

/** Rotation of the shaft or of the only engine, rev/s: the reading itself, or the mean of both engines'; undefined without one. */
export function rotationOf(values: Readonly<Record<string, number>>): number | undefined {
  const { rpm: one, 'rpm A': a, 'rpm B': b } = values
  if (one !== undefined) return one
  return a !== undefined && b !== undefined ? (a + b) / 2 : (a ?? b)
}
