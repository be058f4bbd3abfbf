/** The search for a pipe: engine simulation, jet load and room put together. */
import type { Finding } from '../answers/finding.ts'
import type { NextChange, PipeAnswer, Room, StingerRow } from '../exhaust/types.ts'

export interface PipeSearchAnswer {
  /** false for the first answer, given early */
  final: boolean
  now: PipeAnswer
  handbook: PipeAnswer
  /** before and after rounding to what can be made; `found` is the rounded one */
  found: PipeAnswer
  /** part of the score that rounding to makeable sizes cost (negative when it gained) */
  snappingCost: number
  next: NextChange[]
  /** rev/min that the jet holds the engine at, between hump and top */
  band: { from: number; to: number }
  /** m/s whose thrust counts, slowest first; empty when a speed was asked for */
  speeds: number[]
  room: Room
  /** simulated curves so far */
  curves: number
  findings: Finding[]
}

export interface StingerSearchAnswer {
  final: boolean
  /** by rising bore */
  rows: StingerRow[]
  now: StingerRow
  /** the best one whose risk is not 'stop', decided by fine cells */
  best: StingerRow
  band: { from: number; to: number }
  curves: number
  findings: Finding[]
}
