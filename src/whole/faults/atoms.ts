/** One thing that may be wrong: a cause in one of its ways, at one engine or all, from one moment on, with what it does to each item. */
import type { Cause, ModelChange, Signs, Way } from './causeTypes.ts'
import type { Item, StateItem } from './evidence.ts'
import { observables } from './observables.ts'
import { at, type RootTable, severities } from './roots.ts'

export interface Atom {
  cause: number
  way: number
  /** places of the engines it reaches */
  engines: readonly number[]
  /** index of the episode it begins with; 0 from the start */
  onset: number
  /** index of the episode from which it is gone again after a rest; Infinity where it stays until it is mended */
  until: number
  /** it comes and goes: in any later stretch it may be at work or not */
  turns: boolean
  /** ln of its weight beforehand, over all weights */
  prior: number
  dead: number
  open: number
  /** ln of the speed's ratio by severity; undefined where it moves no speed */
  shift: Float64Array | undefined
  /** the same of the pull at a speed of the engines, and of the speed that goes with a pull */
  thrust: Float64Array | undefined
  pace: Float64Array | undefined
  /** by state item: its states' shares over the usual ones; undefined where it does not touch them */
  touches: readonly (Float64Array | undefined)[]
}

/** Least share of a state: no sign is ever impossible. */
const floor = 0.02

/** A row of shares brought to the length of its observable (states left out are as usual), floored, summing to 1. */
export function rowOf(row: readonly number[], usual: readonly number[]): Float64Array {
  const n = usual.length
  const rest = usual.slice(row.length).reduce((a, b) => a + b, 0)
  const sum = row.reduce((a, b) => a + b, 0)
  return Float64Array.from(usual, (u, i) => {
    const p = i < row.length ? (row[i]! / sum) * (1 - rest) : u
    return (1 - floor) * p + floor / n
  })
}

export const signsOf = (cause: Cause, way: Way): Signs => ({ ...cause.signs, ...way.signs })

/** share of "in turns" from which a fault is one that comes and goes */
const comesAndGoes = 0.1

const lastedAt = observables.findIndex((o) => o.id === 'lasted')

/** Shares of "when did it begin" for a fault whose beginning the story itself says. */
function lastedGiven(row: Float64Array, onset: number): Float64Array {
  const out = Float64Array.from(row)
  if (onset === 0) {
    const late = 1 - row[0]!
    out[0] = 0.85
    for (let s = 1; s < row.length; s++) out[s] = (0.15 * row[s]!) / Math.max(late, 1e-9)
  } else {
    out[0] = 0.1
    for (let s = 1; s < row.length; s++) out[s] = (0.9 * row[s]!) / Math.max(1 - row[0]!, 1e-9)
  }
  return out
}

function touchOf(
  item: StateItem,
  signs: Signs,
  onset: number,
  until: number,
  timed: boolean,
): Float64Array | undefined {
  const o = observables[item.observable]!
  const own = signs[o.id]
  const active = item.at < 0 || (onset <= item.at && item.at < until)
  if (!active) return undefined
  const lasted = item.observable === lastedAt && timed
  if (!own && !lasted) return undefined
  const base = rowOf(own ?? o.usual, o.usual)
  const row = lasted ? lastedGiven(base, onset) : base
  return row.map((p, s) => p / o.usual[s]!)
}

export interface AtomSetting {
  causes: readonly Cause[]
  items: readonly Item[]
  /** places of the running engines */
  engines: readonly number[]
  /** indices of episodes a fault may begin with, without 0 */
  onsets: readonly number[]
  /** indices of episodes of rest, long enough for what heat and pressure did to pass */
  pauses: readonly number[]
  roots: RootTable | undefined
  /** factor on the weight of a cause, or of one of its ways */
  moved: (cause: string, way: string) => number
  weightOf: (cause: Cause) => number
}

const bits = (places: readonly number[]) => places.reduce((a, i) => a | (1 << i), 0)

function shiftsOf(
  roots: RootTable | undefined,
  change: ModelChange,
  engines: readonly number[],
): Float64Array | undefined {
  const moves = change.torque || change.rotation || change.load
  if (!roots || !moves) return undefined
  return Float64Array.from(severities, (s) => roots.shift(change, engines, s))
}

const logsOf = (of: (severity: number) => number) => Float64Array.from(severities, (s) => Math.log(of(s)))

/** Every atom of a craft and session. */
export function atomsOf({
  causes,
  items,
  engines,
  onsets,
  pauses,
  roots,
  moved,
  weightOf,
}: AtomSetting): Atom[] {
  const states = items.filter((i): i is StateItem => i.kind === 'state')
  const total = causes.reduce((a, c) => a + weightOf(c), 0) + noneWeight
  const out: Atom[] = []
  const timed = onsets.length > 0
  causes.forEach((cause, c) => {
    cause.ways.forEach((way, w) => {
      const signs = signsOf(cause, way)
      const change = way.change ?? cause.change
      const reach = way.reach ?? cause.reach
      const targets = reach === 'one' ? engines.map((e) => [e]) : [engines]
      const row = rowOf(signs['lasted'] ?? observables[lastedAt]!.usual, observables[lastedAt]!.usual)
      const begins = [0, ...onsets]
      const weight = weightOf(cause) * way.share * moved(cause.id, way.id)
      for (const target of targets) {
        const shift = shiftsOf(roots, change, target)
        const thrust = change.thrust && logsOf((s) => at(change.thrust, s))
        const pace =
          change.drag || change.pace
            ? logsOf((s) => at(change.pace, s) / Math.sqrt(at(change.drag, s)))
            : undefined
        for (const onset of begins) {
          const until = cause.rests
            ? (pauses.find((r) => r >= onset) ?? Number.POSITIVE_INFINITY)
            : Number.POSITIVE_INFINITY
          const share = !timed ? 1 : onset === 0 ? row[0]! : (1 - row[0]!) / onsets.length
          out.push({
            cause: c,
            way: w,
            engines: target,
            onset,
            until,
            turns: row[3]! >= comesAndGoes,
            prior: Math.log((weight * share) / (targets.length * total)),
            dead: change.dead ? bits(target) : 0,
            open: change.open === undefined ? 0 : reach === 'one' ? bits(target) : change.open,
            shift,
            thrust,
            pace,
            touches: states.map((i) => touchOf(i, signs, onset, until, timed)),
          })
        }
      }
    })
  })
  return out
}

/** weight of "none of these" beside the causes' */
export const noneWeight = 4
