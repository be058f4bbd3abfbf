import { findUnit, kindInWords, kindsKnowing, scaled, spellings, unitNames } from './convert.ts'
import { ambiguous, type Kind, type Unit } from './kinds.ts'
import { nearest } from './near.ts'

/** Where a written value comes from. */
export const writtenSources = ['measured', 'maker', 'guess'] as const
export type WrittenSource = (typeof writtenSources)[number]

/** A quantity as written in a file or typed in a form; numbers are SI. */
export interface ParsedQuantity {
  value: number
  /** half width of the likely range, SI; a temperature's is a step in K */
  uncertainty?: number
  source?: WrittenSource
  /** name of the unit it was written in, '' for a bare ratio or count */
  unit: string
  text: string
}

/** Why a text is not a quantity of the kind asked for. */
export interface QuantityProblem {
  problem: string
  found: string
  expected: string
}

export function isQuantityProblem(q: ParsedQuantity | QuantityProblem): q is QuantityProblem {
  return 'problem' in q
}

const decimal = String.raw`(?:\d+(?:[\u202F\u2009]\d{3})+(?:\.\d*)?|\d+\.?\d*|\.\d+)(?:[eE][+-]?\d+)?`
const mixed = /^([+-]?)(\d+)(?:\s+|-)(\d+)\s*\/\s*(\d+)(?!\d)/
const fraction = /^([+-]?)(\d+)\s*\/\s*(\d+)(?!\d)/
const plain = new RegExp(`^[+-]?${decimal}`)

interface Leading {
  value: number
  rest: string
}

/** every way the start of a text can be read as a number, the most telling first */
function leadingNumbers(text: string): Leading[] {
  const ways: Leading[] = []
  const m = mixed.exec(text)
  if (m && Number(m[4]) > 0) {
    const size = Number(m[2]) + Number(m[3]) / Number(m[4])
    ways.push({ value: m[1] === '-' ? -size : size, rest: text.slice(m[0].length) })
  }
  const f = fraction.exec(text)
  if (f && Number(f[3]) > 0) {
    const size = Number(f[2]) / Number(f[3])
    ways.push({ value: f[1] === '-' ? -size : size, rest: text.slice(f[0].length) })
  }
  const p = plain.exec(text)
  if (p) ways.push({ value: Number(p[0].replace(/[\u202F\u2009]/g, '')), rest: text.slice(p[0].length) })
  return ways
}

interface Amount {
  value: number
  unit: Unit
}

/** one number and unit, or several of one kind added up ("5 ft 9 in") */
function amount(text: string, kind: Kind): Amount | undefined {
  for (const way of leadingNumbers(text)) {
    const unit = findUnit(kind, way.rest)
    if (unit) return { value: way.value, unit }
    const sum = compound(way, kind)
    if (sum) return sum
  }
  return undefined
}

/** the first amount carries the sign; each later unit must be smaller than the one before */
function compound(first: Leading, kind: Kind): Amount | undefined {
  const head = /^\s*([A-Za-z'"]+)\s*(?=[\d.])/.exec(first.rest)
  const unit = head && findUnit(kind, head[1]!)
  if (!head || !unit || unit.offset !== undefined) return undefined
  const tail = first.rest.slice(head[0].length)
  const next = amount(tail, kind)
  if (!next || next.value < 0 || next.unit.factor >= unit.factor) return undefined
  // the part in the smaller unit must be less than one of the larger
  const part = (next.value * next.unit.factor) / unit.factor
  if (part >= 1) return undefined
  return { value: first.value + (first.value < 0 || Object.is(first.value, -0) ? -part : part), unit }
}

const asAscii = (text: string) =>
  text
    .replace(/[−–]/g, '-')
    .replace(/(\d)\s*([¼½¾])/g, (_, d, f) => `${d} ${quarters[f]}`)
    .replace(/[¼½¾]/g, (f) => quarters[f]!)
    .replace(/[\u00A0]/g, ' ')
    .replace(/\+\s?\/\s?-|\+-/g, '±')
    .trim()
const quarters: Record<string, string> = { '¼': '1/4', '½': '1/2', '¾': '3/4' }

/** A value that may stand without a unit. */
export function unitless(kind: Kind): boolean {
  return kind === 'ratio' || kind === 'count'
}

/** What a text of this kind should look like, for messages. */
export function expectedText(kind: Kind, unit?: string): string {
  if (kind === 'count') return 'a whole number'
  if (kind === 'ratio') return 'a plain number or a percentage'
  const names = unitNames(kind)
  const sample = unit ?? names[0]!
  return `a number with a unit of ${kindInWords(kind)}, such as "${kind === 'temperature' ? 20 : 10} ${sample}" (${names.join(', ')})`
}

const fail = (problem: string, found: string, kind: Kind, unit?: string): QuantityProblem => ({
  problem,
  found,
  expected: expectedText(kind, unit),
})

/**
 * Reads texts such as `47.0 mm ±0.05 (measured)`, `1 1/4 in`, `5 ft 9 in`, `10 N·m ± 5 %`.
 * The unit is mandatory except for ratios and counts. `unit` names the unit a message should suggest.
 * A ± without a unit is in the value's unit; with % it is a part of the value, except that a value
 * itself written in % takes percentage points. Numbers with a comma are refused: 7,500 is 7500 to one
 * reader and 7.5 to another. Never throws.
 */
export function parseQuantity(text: string, kind: Kind, unit?: string): ParsedQuantity | QuantityProblem {
  if (text.length > 200) return fail('is too long for a quantity', `${text.slice(0, 40)}…`, kind, unit)
  let body = asAscii(text)
  if (body === '') return fail('is empty', '', kind, unit)
  let source: WrittenSource | undefined
  const note = /\s*\(([^()]*)\)$/.exec(body)
  const word = (note?.[1] ?? '').trim().toLowerCase()
  if (note && (writtenSources as readonly string[]).includes(word)) {
    source = word as WrittenSource
    body = body.slice(0, note.index).trim()
  }
  const parts = body.split('±')
  if (parts.length > 2) return fail('has more than one ±', text, kind, unit)
  const read = readParts(parts[0]!.trim(), parts[1]?.trim(), kind)
  if ('problem' in read) {
    if (note && source === undefined && /^[a-z ]+$/i.test(word)) {
      const near = nearest(word, writtenSources)
      const hint = near ? `; "${near}" may be meant` : ''
      return {
        problem: `has the source "${word}", which is not one of ${writtenSources.join(', ')}${hint}`,
        found: text,
        expected: `one of (${writtenSources.join('), (')})`,
      }
    }
    return fail(read.problem, text, kind, unit)
  }
  const { value, uncertainty } = read
  if (kind === 'count' && !Number.isInteger(value)) return fail('is not a whole number', text, kind, unit)
  return {
    value,
    ...(uncertainty === undefined ? {} : { uncertainty }),
    ...(source === undefined ? {} : { source }),
    unit: read.unit.name === '1' ? '' : read.unit.name,
    text,
  }
}

interface Read {
  value: number
  uncertainty?: number
  unit: Unit
}

function readParts(left: string, right: string | undefined, kind: Kind): Read | { problem: string } {
  let main = amount(left, kind)
  let spreadText = right
  if (!main && right !== undefined && plain.test(left) && plain.exec(left)![0] === left) {
    // "47.0 ±0.05 mm": the unit stands once, after the ±
    const after = amount(right, kind)
    if (after && after.unit.name !== '1') {
      main = { value: Number(left), unit: after.unit }
      spreadText = String(after.value)
    }
  }
  if (!main) return { problem: whyNot(left, kind) }
  const { unit } = main
  const value = scaled(main.value, unit.factor) + (unit.offset ?? 0)
  if (!Number.isFinite(value)) return { problem: 'is too large to be a number' }
  if (kind === 'temperature' && value < 0) return { problem: 'is below absolute zero' }
  if (spreadText === undefined) return { value, unit }
  const spread = readSpread(spreadText, kind, value, unit)
  return typeof spread === 'number' ? { value, uncertainty: spread, unit } : spread
}

function readSpread(text: string, kind: Kind, value: number, unit: Unit): number | { problem: string } {
  const bare = plain.exec(text)
  const wrong = { problem: `has "${text}" after the ±, which is not a number, a percentage or an amount` }
  let spread: number
  if (bare && bare[0] === text) spread = scaled(Number(text.replace(/[\u202F\u2009]/g, '')), unit.factor)
  else if (bare && /^\s*%$/.test(text.slice(bare[0].length))) {
    if (kind === 'temperature') return { problem: 'has a ± in %, which means nothing for a temperature' }
    const part = Number(bare[0]) / 100
    spread = unit.name === '%' ? part : part * Math.abs(value)
  } else {
    const own = amount(text, kind)
    if (!own) return wrong
    // no offset: ±2 °C is a step of 2 K
    spread = scaled(own.value, own.unit.factor)
  }
  if (!Number.isFinite(spread)) return wrong
  return spread < 0 ? { problem: 'has a negative ±' } : spread
}

/** says what is wrong with a text that could not be read as an amount of the kind */
function whyNot(text: string, kind: Kind): string {
  if (/^[+-]?\.?(nan|inf(inity)?)$/i.test(text)) return 'is not a number that can be measured'
  const comma = /^[+-]?\d+(,\d+)+/.exec(text)
  if (comma) {
    const joined = comma[0].replaceAll(',', '')
    const dotted = comma[0].replace(',', '.')
    if (!/^[+-]?\d{1,3}(,\d{3})+$/.test(comma[0])) return `has a comma in its number: write ${dotted}`
    const groups = comma[0].split(',').length
    return `has a comma in its number: write ${joined}${groups > 2 ? '' : ` or ${dotted}, whichever is meant`}`
  }
  if (/^\d{1,3}( \d{3})+(?![\d/])/.test(text)) return 'has a space inside its number: write it without'
  if (/^(~|about |ca\.? |approx)/i.test(text))
    return 'is marked as rough: write the number, its unit and (guess)'
  if (/^[\d.]+\s*[^\d\s]*\s*(to|-|\.\.)\s*[\d.]+\s*[^\d\s]*$/.test(text))
    return 'is a range: write the middle and ± half the width'
  const ways = leadingNumbers(text)
  if (ways.length === 0) return 'does not begin with a number'
  const name = ways.at(-1)!.rest.trim()
  if (name === '') return 'has no unit'
  if (Object.hasOwn(ambiguous, name)) return `has the unit "${name}": ${ambiguous[name]}`
  const near = nearest(name, spellings(kind))
  const others = kindsKnowing(name).filter((k) => k !== kind)
  if (others.length > 0 && !(near && near.toLowerCase() === name.toLowerCase()))
    return `has the unit "${name}", which is a unit of ${kindInWords(others[0]!)}`
  const hint = near ? `; "${near}" may be meant` : ''
  return `has the unit "${name}", which is not known for ${kindInWords(kind)}${hint}`
}
