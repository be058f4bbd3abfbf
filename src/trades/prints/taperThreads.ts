/**
 * Taper pipe threads, which seal on their flanks: is a neck one, and which? ISO 7-1 (R, 55°, sizes and pitches of ISO 228-1, gauge lengths) and
 * ASME B1.20.1 (NPT, 60°, pitch diameter at the small end E0 = D − (0.05 D + 1.1) p in inches, height 0.8 p), both from memory. Both grow by one in
 * sixteen. How often a neck is tapered: judgement, no source. Lengths m.
 */
import { say } from '../../base/answers/sentence.ts'
import { lengthOf } from './misfit.ts'
import { threadError } from './threadForms.ts'
import type { ThreadReading } from './threadIdentify.ts'
import { pipeRows } from './threadSizes.ts'

/** growth of the diameter along the axis, of both standards */
export const pipeTaper = 1 / 16

export interface TaperThread {
  /** "R 3/4", "3/4-14 NPT" */
  name: string
  pitch: number
  /** over the crests of the outside thread at its small end, and how long it is cut, m */
  small: number
  long: number
  /** half of the angle of the flanks, rad */
  half: number
}

const inch = 0.0254
const deg = Math.PI / 180

/** ISO 7-1: size, gauge length and useful length, mm; diameter and pitch are those of the G thread of the size */
const isoRows: readonly (readonly [size: string, gauge: number, useful: number])[] = [
  ['1/16', 4, 6.5],
  ['1/8', 4, 6.5],
  ['1/4', 6, 9.7],
  ['3/8', 6.4, 10.1],
  ['1/2', 8.2, 13.2],
  ['3/4', 9.5, 14.5],
  ['1', 10.4, 16.8],
  ['1 1/4', 12.7, 19.1],
  ['1 1/2', 12.7, 19.1],
  ['2', 15.9, 23.4],
  ['2 1/2', 17.5, 26.7],
  ['3', 20.6, 29.8],
  ['4', 25.4, 35.8],
]
/** ASME B1.20.1: size, outside of the pipe in inches, threads an inch, useful length in inches */
const nptRows: readonly (readonly [size: string, pipe: number, perInch: number, useful: number])[] = [
  ['1/16', 0.3125, 27, 0.2611],
  ['1/8', 0.405, 27, 0.2639],
  ['1/4', 0.54, 18, 0.4018],
  ['3/8', 0.675, 18, 0.4078],
  ['1/2', 0.84, 14, 0.5337],
  ['3/4', 1.05, 14, 0.5457],
  ['1', 1.315, 11.5, 0.6828],
  ['1 1/4', 1.66, 11.5, 0.7068],
  ['1 1/2', 1.9, 11.5, 0.7235],
  ['2', 2.375, 11.5, 0.7565],
  ['2 1/2', 2.875, 8, 1.1375],
  ['3', 3.5, 8, 1.2],
]

/** Pitch diameter of an NPT thread at its small end, m: pipe of outside diameter `pipe` (m), pitch p (m). */
export const nptSmallEnd = (pipe: number, pitch: number): number =>
  pipe - (0.05 * (pipe / inch) + 1.1) * pitch

export const taperThreads: readonly TaperThread[] = [
  ...isoRows.map(([size, gauge, useful]): TaperThread => {
    const row = pipeRows.find(([name]) => name === `G ${size}`)!
    return {
      name: `R ${size}`,
      pitch: inch / row[2],
      small: 1e-3 * (row[1] - gauge * pipeTaper),
      long: 1e-3 * useful,
      half: 27.5 * deg,
    }
  }),
  ...nptRows.map(([size, pipe, perInch, useful]): TaperThread => {
    const pitch = inch / perInch
    return {
      name: `${size}-${perInch} NPT`,
      pitch,
      small: nptSmallEnd(inch * pipe, pitch) + 0.8 * pitch,
      long: inch * useful,
      half: 30 * deg,
    }
  }),
]

export interface TaperReading {
  /** diameter gained along the span over the span, and its doubt (one standard deviation) */
  taper: number
  doubt: number
  /** odds that it is tapered as pipe threads are, and not parallel */
  odds: number
  /** likeliest first: odds among the taper threads */
  guesses: readonly { thread: TaperThread; odds: number }[]
}

/** one neck in ten of a tank of pipe fittings is tapered: judgement */
const taperBefore = 0.1
/** a pipe's end may be cut this much too deep or not deep enough: one turn, of ISO 7-1 and B1.20.1 */
const turnsOff = 1

/**
 * The taper of a neck, from its crests read at both ends of the span (m). RangeError for a second reading that is none, or that differs from
 * the first by more than a taper gives.
 */
export function readTaper(reading: ThreadReading, further: number): TaperReading {
  const { across, span, pitches } = reading
  const doubtAcross = reading.acrossDoubt ?? 0.05e-3
  const most = span / 4 + 1e-3
  if (!(Math.abs(further - across) <= most))
    throw threadError(
      'further',
      lengthOf(further),
      say`${lengthOf(across - most)} to ${lengthOf(across + most)}`,
    )
  const taper = Math.abs(further - across) / span
  const doubt = (Math.SQRT2 * doubtAcross) / span
  const like = (truth: number) => -0.5 * ((taper - truth) / doubt) ** 2
  const odds = 1 / (1 + ((1 - taperBefore) / taperBefore) * Math.exp(like(0) - like(pipeTaper)))
  // an outside thread is read at its small end and further up; the inside one the other way round: both lie on the cone
  const low = Math.min(across, further)
  const pitch = span / pitches
  const pitchDoubt = (reading.spanDoubt ?? 0.1e-3) / pitches
  const bell = (x: number) => Math.exp(-0.5 * x * x)
  const weights = taperThreads.map((t) => {
    const crests = reading.side === 'external' ? t.small : t.small - 1.28 * t.pitch
    const from = crests - turnsOff * t.pitch * pipeTaper
    const to = crests + (t.long + turnsOff * t.pitch) * pipeTaper
    const off = low < from ? from - low : low > to ? low - to : 0
    const angle = reading.flanks === undefined ? 1 : bell((reading.flanks - 2 * t.half) / (2 * deg))
    return bell((pitch - t.pitch) / pitchDoubt) * bell(off / doubtAcross) * angle
  })
  const all = weights.reduce((a, b) => a + b, 0)
  const guesses =
    all > 1e-6
      ? taperThreads
          .map((thread, i) => ({ thread, odds: weights[i]! / all }))
          .filter((g) => g.odds >= 0.01)
          .sort((a, b) => b.odds - a.odds)
      : []
  return { taper, doubt, odds, guesses }
}
