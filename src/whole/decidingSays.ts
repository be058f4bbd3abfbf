/** What trying guesses at both ends gives, and its words; apart from the trying, so that a page can show it without the trades. */
import { inField } from '../base/answers/amounts.ts'
import type { Standing } from '../base/answers/finding.ts'
import { type Sentence, say } from '../base/answers/sentence.ts'
import { type Kind, siUnit } from '../base/units/kinds.ts'
import { fieldAt } from '../craft/index.ts'

/** A decision that is another one at one end of a value's range. */
export interface Turn {
  decision: string
  /** what is said of it there; where it goes away, what was said of it */
  says: Sentence
  from: Standing
  to: Standing
}

export interface DecidingValue {
  path: string
  kind: Kind
  /** its value and bounds, SI, and the ends at which something turns */
  value: number
  low: number
  high: number
  ends: { at: number; turns: Turn[] }[]
}

export interface Deciding {
  /** values that were tried at both ends */
  asked: number
  /** values that are not measured but end in a simulated torque curve, and were not tried one by one */
  inside: number
  /** those that turn a decision, the ones that turn most first */
  values: DecidingValue[]
  final: boolean
}

/** What of it is worth measuring: how many of how many values turn a decision. */
export function decidingSays({ asked, values }: Pick<Deciding, 'asked' | 'values'>): Sentence {
  const n = values.length
  return n === 0
    ? say`None of ${String(asked)} values that are not measured would change a decision within its range.`
    : say`${String(n)} of ${String(asked)} values that are not measured would change a decision within their range; the others need not be measured now.`
}

/** What turns at one end of a value: new, gone, better or worse there. */
export function turnSays(
  { path, kind }: Pick<DecidingValue, 'path' | 'kind'>,
  at: number,
  turn: Turn,
): Sentence {
  const field = fieldAt(path)
  const unit = field?.type === 'quantity' ? field.unit : siUnit(kind)
  return say`at ${inField(at, kind, unit)}${becomes(turn)} ${turn.says}`
}

function becomes({ from, to }: Turn): string {
  if (to === 'good') return ' this falls away:'
  if (from === 'good') return to === 'stop' ? ', not to go out with:' : ':'
  return to === 'stop'
    ? ' this is no more to watch but to stop for:'
    : ' this is no more to stop for but to watch:'
}
