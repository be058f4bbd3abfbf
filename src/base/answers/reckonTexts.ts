import { fromSi } from '../units/convert.ts'
import { siUnit } from '../units/kinds.ts'
import { nearest } from '../units/near.ts'
import { isQuantityProblem, parseQuantity } from '../units/parse.ts'
import type { Port, Reckoned, Reckoner } from './reckoner.ts'

/** What was wrong with what the builder gave; `input` names it. */
export interface ReckonProblem {
  input: string
  says: string
}

export type ReckonAnswer =
  | {
      ok: true
      outputs: Reckoned
      units: Record<string, string>
      inputs: Record<string, number | string>
      sources: readonly string[]
    }
  | { ok: false; problems: ReckonProblem[] }

const show = (value: number, port: Port) =>
  `${Number(fromSi(value, port.kind, port.unit).toPrecision(6))}${port.unit === '1' || port.unit === '' ? '' : ` ${port.unit}`}`

/** The range of an input in words, in the unit a builder would type. */
export function rangeOf(port: Port): string {
  if (port.kind === 'choice') return (port.choices ?? []).join(', ')
  if (port.min !== undefined && port.max !== undefined)
    return `${show(port.min, port)} to ${show(port.max, port)}`
  if (port.min !== undefined) return `${show(port.min, port)} or more`
  if (port.max !== undefined) return `up to ${show(port.max, port)}`
  return 'any'
}

/** One typed text as the number or word an input takes, or what is wrong with it. */
export function readInput(port: Port, text: string): number | string | ReckonProblem {
  if (port.kind === 'choice') {
    if (port.choices?.includes(text)) return text
    const near = nearest(text, port.choices ?? [])
    return {
      input: port.name,
      says: `"${text}" is not one of ${(port.choices ?? []).join(', ')}${near ? `; "${near}" may be meant` : ''}`,
    }
  }
  // a bare number is taken as SI, as in the JSON answers
  const bare = /^[+-]?(\d+\.?\d*|\.\d+)([eE][+-]?\d+)?$/.test(text.trim()) ? Number(text) : undefined
  let value: number
  if (bare !== undefined) value = bare
  else {
    const parsed = parseQuantity(text, port.kind, port.unit)
    if (isQuantityProblem(parsed))
      return { input: port.name, says: `"${text}" ${parsed.problem}; expected ${parsed.expected}` }
    value = parsed.value
  }
  if (!Number.isFinite(value)) return { input: port.name, says: `"${text}" is not a finite number` }
  const low = port.min !== undefined && value < port.min - 1e-12 * Math.abs(port.min)
  const high = port.max !== undefined && value > port.max + 1e-12 * Math.abs(port.max)
  if (low || high) return { input: port.name, says: `${show(value, port)} is outside ${rangeOf(port)}` }
  return value
}

/**
 * Runs a reckoner on typed texts (with units; a bare number is SI). Inputs left out take their assumed
 * value. Every problem is returned at once; an answer that is not finite is a problem, never a number.
 */
export function reckonTexts(reckoner: Reckoner, texts: Readonly<Record<string, string>>): ReckonAnswer {
  const problems: ReckonProblem[] = []
  const names = reckoner.inputs.map((p) => p.name)
  for (const name of Object.keys(texts))
    if (!names.includes(name)) {
      const near = nearest(name, names)
      problems.push({
        input: name,
        says: `${reckoner.id} has no input of this name${near ? `; "${near}" may be meant` : ''} (${names.join(', ')})`,
      })
    }
  const numbers: Record<string, number> = {}
  const words: Record<string, string> = {}
  for (const port of reckoner.inputs) {
    const text = texts[port.name]
    if (text === undefined || text.trim() === '') {
      if (port.kind === 'choice' && port.choices?.[0] !== undefined) words[port.name] = port.choices[0]
      else if (port.assumed !== undefined) numbers[port.name] = port.assumed
      else
        problems.push({
          input: port.name,
          says: `is missing: ${port.says.replace(/\.$/, '')}; expected ${rangeOf(port)}`,
        })
      continue
    }
    const value = readInput(port, text)
    if (typeof value === 'number') numbers[port.name] = value
    else if (typeof value === 'string') words[port.name] = value
    else problems.push(value)
  }
  if (problems.length > 0) return { ok: false, problems }
  let outputs: Reckoned
  try {
    outputs = reckoner.reckon(numbers, words)
  } catch (error) {
    if (!(error instanceof RangeError)) throw error
    return { ok: false, problems: [{ input: reckoner.id, says: error.message }] }
  }
  for (const port of reckoner.outputs)
    if (!Number.isFinite(outputs[port.name]))
      problems.push({
        input: reckoner.id,
        says: `gives no number for ${port.name} (${port.says}) with these inputs`,
      })
  if (problems.length > 0) return { ok: false, problems }
  const units = Object.fromEntries(reckoner.outputs.map((p) => [p.name, siUnit(p.kind)]))
  return { ok: true, outputs, units, inputs: { ...numbers, ...words }, sources: reckoner.sources }
}

/** A reckoner's ports as plain data for lists and other programs. */
export function describeReckoner(r: Reckoner) {
  const port = (p: Port) => ({
    name: p.name,
    says: p.says,
    kind: p.kind,
    unit: siUnit(p.kind),
    shownIn: p.unit,
    ...(p.min === undefined ? {} : { min: p.min }),
    ...(p.max === undefined ? {} : { max: p.max }),
    ...(p.assumed === undefined ? {} : { assumed: p.assumed }),
    ...(p.choices === undefined ? {} : { choices: p.choices }),
    range: rangeOf(p),
  })
  return {
    id: r.id,
    title: r.title,
    trade: r.trade,
    says: r.says,
    inputs: r.inputs.map(port),
    outputs: r.outputs.map(port),
    sources: r.sources,
    cautions: r.cautions ?? [],
  }
}
