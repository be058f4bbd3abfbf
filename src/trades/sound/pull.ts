/** Readings of a luggage scale in a tied-up pull; how far they may be off stands in soundLimits.ts. */
import type { Range } from '../../base/answers/solved.ts'
import { type SoundLimits, soundLimits } from './soundLimits.ts'

const GRAVITY = 9.80665

export interface Pull {
  /** along the water, N, with its likely range */
  force: Range
  readings: number
}

/**
 * Pull from readings in kg taken one after the other at full throttle; `angle` rad of the rope above level
 * (below pi/4). The median counts. Undefined without a reading above zero.
 */
export function readPull(
  readings: readonly number[],
  angle = 0,
  limits: SoundLimits = soundLimits,
): Pull | undefined {
  if (!(angle >= 0 && angle < Math.PI / 4))
    throw new RangeError(`angle: ${angle} rad; 0 to ${Math.PI / 4} rad`)
  const good = readings.filter((r) => Number.isFinite(r) && r > 0).sort((a, b) => a - b)
  if (good.length === 0) return undefined
  const half = good.length / 2
  const middle = good.length % 2 === 1 ? good[Math.floor(half)]! : (good[half - 1]! + good[half]!) / 2
  const enough = good.length >= limits.pullEnough.value
  const sigma = enough ? limits.pullSpread.value : limits.pullSpreadFew.value
  const value = middle * GRAVITY * Math.cos(angle)
  const error = 1.96 * Math.hypot(sigma * value, limits.pullReading.value * GRAVITY)
  return { force: { value, low: Math.max(0, value - error), high: value + error }, readings: good.length }
}

export interface PullResidual {
  /** read / predicted - 1 */
  part: number
  /** the range of `part` that both ranges allow for */
  low: number
  high: number
  standing: 'within' | 'low' | 'high'
}

/** The pull read on the scale beside the predicted one, N; undefined where the prediction has no range. */
export function pullResidual(read: Range, predicted: Range): PullResidual | undefined {
  const { value: p, low, high } = predicted
  if (!(p > 0 && Number.isFinite(low + high))) return undefined
  const part = read.value / p - 1
  // the two doubts are independent of each other
  const under = Math.hypot(p - low, read.high - read.value) / p
  const over = Math.hypot(high - p, read.value - read.low) / p
  return {
    part,
    low: -under,
    high: over,
    standing: part < -under ? 'low' : part > over ? 'high' : 'within',
  }
}

/** more than any scale that hangs in a rope by hand shows, kg */
const MOST_READING = 500

/** kg */
const pound = 0.45359237
const pounds = /(\d+(?:[.,]\d+)?)\s*(?:lbs?|pounds?)(?![a-z])/gi

/** Readings of a scale in pounds, typed without a unit, with it: "47.2, 48" is "47.2 lb, 48 lb". */
export const inPounds = (text: string): string =>
  /[a-z]/i.test(text) ? text : text.replace(/\d+(?:\.\d+)?/g, (number) => `${number} lb`)

/** What a typed list of readings holds, kg, and the pieces of it that are no reading. */
export interface TypedReadings {
  readings: number[]
  unread: string[]
}

/**
 * Readings in a typed list such as "12.4, 13 kg; 12,8" or "47 lb". A comma between digits is a decimal mark, unless there is a point in
 * the same piece or several commas part equally long numbers ("21,22,23"). A reading is above 0 and at most 500 kg.
 */
export function typedReadings(text: string): TypedReadings {
  const readings: number[] = []
  const unread: string[] = []
  const pieces = text
    .replace(
      pounds,
      (_, number: string) => `${Number((Number(number.replace(',', '.')) * pound).toFixed(4))} `,
    )
    .replace(/(\d)\s*(kilos?|kgf?|kp)(?![a-z])/gi, '$1 ')
    .split(/[;\s]+|,(?=\s)/)
    .filter((piece) => piece !== '' && piece !== ',')
  for (const piece of pieces) {
    const numbers = numbersIn(piece.replace(/^,|,$/g, ''))
    if (numbers?.every((n) => n > 0 && n <= MOST_READING)) readings.push(...numbers)
    else unread.push(piece)
  }
  return { readings, unread }
}

function numbersIn(piece: string): number[] | undefined {
  const parts = piece.split(',')
  if (parts.some((p) => !/^\d+(\.\d+)?$/.test(p))) return undefined
  if (piece.includes('.') || parts.length === 1) return parts.map(Number)
  if (parts.length === 2) return [Number(parts.join('.'))]
  return new Set(parts.map((p) => p.length)).size === 1 ? parts.map(Number) : undefined
}

/** The readings of `typedReadings` alone, kg. */
export const parseReadings = (text: string): number[] => typedReadings(text).readings

/** Why a typed list is refused; undefined when all of it can be read. */
export function readingsFault(text: string): string | undefined {
  const { unread } = typedReadings(text)
  return unread.length > 0
    ? `“${unread[0]}” is no reading in kg (above 0, at most ${MOST_READING}); write 21.4, 22.0`
    : undefined
}

/** Stopwatch speed, m/s, with its likely error from timing (s) and gates (m), one standard deviation each. */
export function timedSpeed(distance: number, seconds: number, timing = 0.2, gates = 0.3): Range {
  if (!(distance > 0 && seconds > 0))
    throw new RangeError(`distance and time must be above 0, got ${distance} m and ${seconds} s`)
  const value = distance / seconds
  const error = 1.96 * value * Math.hypot((timing * Math.SQRT2) / seconds, gates / distance)
  return { value, low: Math.max(0, value - error), high: value + error }
}
