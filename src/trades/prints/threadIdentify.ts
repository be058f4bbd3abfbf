/**
 * Which thread is it? A caliper over the crests and a count of pitches, by Bayes: how common each known thread is, times how well it gives
 * the readings; against them stands "none of these", a thread of any diameter and pitch. Crests are taken as anywhere within their limits
 * (ISO 965-1, ASME B1.1, ISO 228-1), readings as normal about the truth. How common, and how often it is none: judgement, no source.
 * Error function: Abramowitz and Stegun (1964), 7.1.26, good to 1.5e-7. Lengths m.
 */
import { say } from '../../base/answers/sentence.ts'
import { lengthOf } from './misfit.ts'
import { threadLimits } from './threadFits.ts'
import { type Thread, threadError } from './threadForms.ts'
import type { ThreadSide } from './threadProfile.ts'
import { type KnownThread, knownThreads } from './threadSizes.ts'

export interface ThreadReading {
  side: ThreadSide
  /** across the crests: over an outside thread, between the crests of an inside one; m */
  across: number
  /** its doubt, one standard deviation, m; 0.05 mm of a caliper where left out */
  acrossDoubt?: number
  /** along so many pitches (one less than crests), m */
  span: number
  pitches: number
  /** doubt of the span, one standard deviation, m; 0.1 mm where left out */
  spanDoubt?: number
  /** between the flanks, rad, where a gauge or a photograph told: 60° or 55° */
  flanks?: number
  /** crests are worn or printed: they may be this much below their limits, m on the diameter */
  worn?: number
}

export interface ThreadGuess {
  thread: Thread
  /** odds that it is this one, 0 to 1 */
  odds: number
  /** pitch read less its own, m, and crests read beyond its limits (0 within), m */
  pitchOff: number
  acrossOff: number
}

export interface Identified {
  /** likeliest first */
  guesses: readonly ThreadGuess[]
  /** odds that it is a thread of no table */
  none: number
  pitch: number
  pitchDoubt: number
  /** what would tell the first two apart, where anything would */
  next?: TellApart
  /** basic size of a thread of one's own that fits what was read, 60° */
  free: { d: number; pitch: number }
}

/** How the likeliest two are told apart. */
export interface TellApart {
  by: 'pitches' | 'across' | 'flanks'
  /** pitches: count so many; the two spans, m. across: the two diameters, m. flanks: the two angles, rad */
  pitches?: number
  first: number
  second: number
}

/** odds before any reading that a thread is in no table: bottle necks, makers’ own */
const noneBefore = 0.08
/** none of these: any pitch and any diameter between these ends alike on a log scale, m */
const anyPitch = [0.3e-3, 10e-3] as const
const anyAcross = [2e-3, 250e-3] as const

function erf(x: number): number {
  const t = 1 / (1 + 0.3275911 * Math.abs(x))
  const poly =
    t * (0.254829592 + t * (-0.284496736 + t * (1.421413741 + t * (-1.453152027 + t * 1.061405429))))
  return Math.sign(x) * (1 - poly * Math.exp(-x * x))
}
const below = (x: number) => 0.5 * (1 + erf(x / Math.SQRT2))
const bell = (x: number, doubt: number) =>
  Math.exp(-0.5 * (x / doubt) ** 2) / (doubt * Math.sqrt(2 * Math.PI))

/** Density of reading `m` from something anywhere between two ends, read with a doubt. */
const within = (m: number, low: number, high: number, doubt: number) =>
  high - low < 1e-9
    ? bell(m - low, doubt)
    : Math.max(0, below((m - low) / doubt) - below((m - high) / doubt)) / (high - low)

interface Crests {
  known: KnownThread
  low: number
  high: number
}

const crestsOf = (side: ThreadSide): readonly Crests[] =>
  knownThreads.flatMap((known) => {
    const { thread } = known
    const engaged = known.ownLength === false ? 9 * thread.pitch : thread.d
    const limits = threadLimits(thread, thread.form === 'unified' ? { engaged } : {})
    const span = side === 'external' ? limits.external.major : limits.internal.minor
    return [{ known, ...span }]
  })
const crests: Partial<Record<ThreadSide, readonly Crests[]>> = {}
const crestsFor = (side: ThreadSide) => {
  crests[side] ??= crestsOf(side)
  return crests[side]
}

/** Ends a reading may have, m: named in the errors. */
const ends = { across: [0.8e-3, 0.25], span: [0.2e-3, 0.3], pitches: [1, 200] } as const

function checked(r: ThreadReading): void {
  for (const name of ['across', 'span'] as const) {
    const [low, high] = ends[name]
    if (!(r[name] >= low && r[name] <= high))
      throw threadError(name, lengthOf(r[name]), say`${lengthOf(low)} to ${lengthOf(high)}`)
  }
  if (!(Number.isInteger(r.pitches) && r.pitches >= ends.pitches[0] && r.pitches <= ends.pitches[1]))
    throw threadError(
      'pitches',
      String(r.pitches),
      `whole numbers from ${ends.pitches[0]} to ${ends.pitches[1]}`,
    )
  for (const name of ['acrossDoubt', 'spanDoubt'] as const) {
    const v = r[name]
    if (v !== undefined && !(v >= 0.005e-3 && v <= 2e-3))
      throw threadError(name, lengthOf(v), say`${lengthOf(5e-6)} to ${lengthOf(2e-3)}`)
  }
  if (r.worn !== undefined && !(r.worn >= 0 && r.worn <= 2e-3))
    throw threadError('worn', lengthOf(r.worn), say`0 to ${lengthOf(2e-3)}`)
  const pitch = r.span / r.pitches
  if (!(pitch >= 0.15e-3 && pitch <= 12e-3))
    throw threadError(
      'span',
      lengthOf(r.span),
      say`${lengthOf(0.15e-3 * r.pitches)} to ${lengthOf(12e-3 * r.pitches)}, what ${String(r.pitches)} pitches come to`,
    )
}

/**
 * Ranks every known thread by its odds. RangeError for a reading outside what a caliper gives; nothing is thrown away before the odds are
 * worked out, and those of less than a thousandth are left out of the list.
 */
export function identifyThread(reading: ThreadReading): Identified {
  checked(reading)
  const { side, across, span, pitches, worn = 0 } = reading
  const doubt = reading.acrossDoubt ?? 0.05e-3
  const pitch = span / pitches
  const pitchDoubt = (reading.spanDoubt ?? 0.1e-3) / pitches
  const list = crestsFor(side)
  const total = list.reduce((sum, c) => sum + c.known.common, 0)
  const flankDoubt = 2 * (Math.PI / 180)
  const angle = (own: number) => (reading.flanks === undefined ? 1 : bell(reading.flanks - own, flankDoubt))
  const weights = list.map(({ known, low, high }) => {
    // wear takes from the outside of a plug and widens a nut
    const [from, to] = side === 'external' ? [low - worn, high] : [low, high + worn]
    return (
      (known.common / total) *
      bell(pitch - known.thread.pitch, pitchDoubt) *
      within(across, from, to, doubt) *
      angle(2 * known.thread.half)
    )
  })
  const spread = (x: number, [low, high]: readonly [number, number]) => 1 / (x * Math.log(high / low))
  const anyAngle = reading.flanks === undefined ? 1 : 1 / (60 * (Math.PI / 180))
  const noneWeight = noneBefore * spread(pitch, anyPitch) * spread(across, anyAcross) * anyAngle
  const all = (1 - noneBefore) * weights.reduce((a, b) => a + b, 0) + noneWeight
  const guesses = list
    .map(({ known, low, high }, i): ThreadGuess => {
      const off = across < low ? across - low : across > high ? across - high : 0
      return {
        thread: known.thread,
        odds: ((1 - noneBefore) * weights[i]!) / all,
        pitchOff: pitch - known.thread.pitch,
        acrossOff: off,
      }
    })
    .filter((g) => g.odds >= 1e-3)
    .sort((a, b) => b.odds - a.odds)
  const next = apart(guesses, side, pitchDoubt * pitches)
  return {
    guesses,
    none: noneWeight / all,
    pitch,
    pitchDoubt,
    ...(next ? { next } : {}),
    free: { d: side === 'external' ? across : across + 1.08253 * pitch, pitch },
  }
}

/** What to measure to tell the first two apart: more pitches, else the flanks, else the crests. */
function apart(guesses: readonly ThreadGuess[], side: ThreadSide, spanDoubt: number): TellApart | undefined {
  const [a, b] = guesses
  if (!a || !b) return undefined
  const step = Math.abs(a.thread.pitch - b.thread.pitch)
  const pitches = Math.ceil((4 * spanDoubt) / step)
  if (step > 0 && pitches <= 40) {
    const count = Math.max(pitches, 5)
    return { by: 'pitches', pitches: count, first: count * a.thread.pitch, second: count * b.thread.pitch }
  }
  if (Math.abs(a.thread.half - b.thread.half) > 0.01)
    return { by: 'flanks', first: 2 * a.thread.half, second: 2 * b.thread.half }
  const of = (t: Thread) => (side === 'external' ? t.d : t.d1)
  return { by: 'across', first: of(a.thread), second: of(b.thread) }
}
