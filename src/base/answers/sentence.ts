/**
 * Sentences that carry their numbers. A judgement writes `say\`It pulls ${newtons(584)}.\``; whoever shows it prints the numbers in
 * the reader's units and with as many digits as are worth reading. Plain data: it goes through workers and into JSON as it is.
 */
import { findUnit, fromSi, stepFromSi } from '../units/convert.ts'
import { type DisplaySystem, displayUnit } from '../units/format.ts'
import { type Kind, siUnit } from '../units/kinds.ts'

/** A number in a sentence, SI, with how finely it is worth reading. */
export interface Amount {
  readonly value: number
  readonly kind: Kind
  /** the metric unit a builder reads it in */
  readonly unit: string
  /** the least difference worth showing, in `unit` */
  readonly step: number
  /** ends of its likely range, SI */
  readonly low?: number
  readonly high?: number
  /** a difference: with its sign, and without the offset of a temperature */
  readonly change?: true
  /** digits worth showing where the number outgrows the step: 1234 N is 1230 N */
  readonly digits?: number
}

export type Piece = string | Amount

/** Words and numbers in order; a text alone is a sentence without numbers. */
export type Sentence = string | readonly Piece[]

/** A sentence from a template: amounts stay numbers, sentences are taken in, texts are joined. */
export function say(texts: TemplateStringsArray, ...held: readonly (Piece | Sentence)[]): Sentence {
  const pieces: Piece[] = []
  const add = (piece: Piece) => {
    const last = pieces.at(-1)
    if (typeof piece !== 'string') pieces.push(piece)
    else if (typeof last === 'string') pieces[pieces.length - 1] = last + piece
    else if (piece !== '') pieces.push(piece)
  }
  texts.forEach((text, i) => {
    add(text)
    const piece = held[i]
    if (piece === undefined) return
    if (Array.isArray(piece)) for (const part of piece as readonly Piece[]) add(part)
    else add(piece as Piece)
  })
  return pieces.every((p) => typeof p === 'string') ? pieces.join('') : pieces
}

/** Several sentences or parts joined by a text. */
export function joined(parts: readonly Sentence[], between = ', '): Sentence {
  return parts.reduce<Sentence>((all, part, i) => (i === 0 ? part : say`${all}${between}${part}`), '')
}

/** The same with its first letter large and a full stop behind. */
export function whole(sentence: Sentence): Sentence {
  const pieces = typeof sentence === 'string' ? [sentence] : [...sentence]
  const first = pieces[0]
  if (typeof first === 'string') pieces[0] = first.charAt(0).toUpperCase() + first.slice(1)
  const last = pieces.at(-1)
  if (typeof last !== 'string' || !/[.!?]$/.test(last)) pieces.push('.')
  return say`${pieces}`
}

/** The numbers a sentence carries, in order. */
export function amountsIn(sentence: Sentence): Amount[] {
  return typeof sentence === 'string' ? [] : sentence.filter((p): p is Amount => typeof p !== 'string')
}

/** The sentence in words, its numbers in the reader's units. */
export function printed(sentence: Sentence, system: DisplaySystem = 'metric'): string {
  if (typeof sentence === 'string') return sentence
  return sentence.map((p) => (typeof p === 'string' ? p : printedAmount(p, system))).join('')
}

/** Units written against or without their number. */
const unitAfter = (unit: string) => (unit === '1' || unit === '' ? '' : unit === 'deg' ? '°' : ` ${unit}`)

/** One number in words: "584 N", "584 N (446 to 721 N)", "+38 N"; a dash where there is none. */
export function printedAmount(amount: Amount, system: DisplaySystem = 'metric'): string {
  const metric = findUnit(amount.kind, amount.unit)?.name ?? siUnit(amount.kind)
  const unit = displayUnit(amount.kind, system, metric)
  const places = placesFor(amount, metric, unit)
  const show = (si: number) => numberText(si, amount, unit, places)
  // a luggage scale shows a force in the unit of a mass
  const tail = amount.unit === 'kgf' ? ` ${system === 'inch' ? 'lb' : 'kg'}` : unitAfter(unit)
  const own = Number.isFinite(amount.value)
    ? `${amount.change && amount.value > 0 && Number(show(amount.value)) !== 0 ? '+' : ''}${show(amount.value)}${tail}`
    : '—'
  const { low, high } = amount
  if (low === undefined || high === undefined || !Number.isFinite(low) || !Number.isFinite(high)) return own
  return `${own} (${show(low)} to ${show(high)}${tail})`
}

/** Least difference shown, in the unit it is shown in: about as fine as the metric step, a power of ten. */
function placesFor(amount: Amount, metric: string, unit: string): number {
  if (unit === metric) return amount.step
  const ratio = (findUnit(amount.kind, metric)?.factor ?? 1) / (findUnit(amount.kind, unit)?.factor ?? 1)
  const step = amount.step * ratio
  const decade = 10 ** Math.floor(Math.log10(step))
  return step / decade >= 5 ? 10 * decade : decade
}

function numberText(si: number, amount: Amount, unit: string, step: number): string {
  const value = amount.change ? stepFromSi(si, amount.kind, unit) : fromSi(si, amount.kind, unit)
  const digits = amount.digits ?? 4
  const coarse = Math.abs(value) > 0 ? 10 ** (Math.floor(Math.log10(Math.abs(value))) + 1 - digits) : step
  const to = Math.max(step, coarse)
  const rounded = Math.round(value / to) * to
  const places = Math.max(0, -Math.floor(Math.log10(to) + 1e-9))
  // a number that is held to digits alone needs no zeros behind it
  const fixed = Math.abs(rounded).toFixed(places)
  const text = coarse > step && places > 0 ? fixed.replace(/\.?0+$/, '') : fixed
  const grouped = Math.abs(rounded) >= 10_000 ? text.replace(/\B(?=(\d{3})+(?!\d))/g, '\u202F') : text
  return `${rounded < 0 && Number(text) !== 0 ? '−' : ''}${grouped}`
}
