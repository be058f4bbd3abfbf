/** A design's numbers over joint draws: ranges, differences, and what a drawn line says at one pitch. */
import type { Range } from '../../base/answers/solved.ts'
import { curveOf, type DrawnLine } from './designSearch.ts'
import type { Tried } from './designTrials.ts'

const point = (value: number): Range => ({ value, low: value, high: value })

/** 95 % of the draws, widened to hold the value itself. */
export function spread(value: number, draws: readonly number[]): Range {
  const known = draws.filter(Number.isFinite).sort((a, b) => a - b)
  if (known.length < 4 || !Number.isFinite(value)) return point(value)
  const at = (part: number) => {
    const x = part * (known.length - 1)
    const i = Math.min(known.length - 2, Math.floor(x))
    return known[i]! + (x - i) * (known[i + 1]! - known[i]!)
  }
  return { value, low: Math.min(value, at(0.025)), high: Math.max(value, at(0.975)) }
}

export interface OnDraws {
  pull: number[]
  topSpeed: number[]
  rotation: number[]
  merit: number[]
}

export const none: OnDraws = { pull: [], topSpeed: [], rotation: [], merit: [] }

/** no pull where the engines cannot turn it */
const positive = (x: number) => (Number.isFinite(x) && x > 0 ? x : 0)

/** A single's numbers over the draws; no pull and no speed where the engines cannot turn it. */
export function onDraws(tried: readonly Tried[]): OnDraws {
  const runs = (t: Tried) => t.pull > 0
  return {
    pull: tried.map((t) => positive(t.pull)),
    topSpeed: tried.map((t) => (runs(t) ? t.topSpeed : 0)),
    rotation: tried.map((t) => t.rotation),
    merit: tried.map((t) => t.merit),
  }
}

/** A drawn line's numbers at one pitch. */
export function alongLine(line: DrawnLine, pitch: number): OnDraws {
  const over = (pick: (t: Tried) => number) =>
    line.tried.map((tried) => curveOf(line.pitches, tried, pick)(pitch))
  const pull = over((t) => positive(t.pull))
  return {
    pull,
    topSpeed: over((t) => (t.pull > 0 ? t.topSpeed : 0)),
    rotation: over((t) => t.rotation),
    merit: over((t) => t.merit),
  }
}
