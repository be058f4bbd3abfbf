/**
 * Screw threads by their form. ISO 68-1 and ISO 724 (metric), ASME B1.1 (unified, the same 60° form in inches), ISO 228-1 (pipe threads
 * with flats in place of the round crests of the 55° form), all from memory and worked out again from H = P/2 / tan of half the angle.
 * A thread of one's own has a crest and a root of its own choosing. Lengths m, angles rad.
 */
import { type Sentence, say } from '../../base/answers/sentence.ts'
import { lengthOf, Misfit } from './misfit.ts'

export type ThreadForm = 'metric' | 'unified' | 'pipe' | 'own'

/** A parallel thread at its basic size. */
export interface Thread {
  /** as it is written: "M28 × 1.5", "1/4-20 UNC", "G 1/2" */
  name: string
  form: ThreadForm
  /** over the crests of the outside thread, between the flanks, and across the crests of the inside thread; diameters, m */
  d: number
  d2: number
  d1: number
  pitch: number
  /** between a flank and a plane across the axis, rad: 30° metric */
  half: number
}

const deg = Math.PI / 180
const inch = 0.0254

/** A value outside what a thread can be: names the field, the value and the limit. */
export const threadError = (field: string, value: Sentence, limit: Sentence): Misfit =>
  new Misfit(field, value, limit)

const mmText = (x: number): string => String(Math.round(x * 1e6) / 1e3)

/** Basic sizes of the 60° form for a diameter and a pitch, m. */
const sixty = (d: number, pitch: number) => ({
  d,
  d2: d - 0.649519052838 * pitch,
  d1: d - 1.08253175473 * pitch,
  pitch,
  half: 30 * deg,
})

/**
 * Metric thread of ISO 68-1: any diameter and pitch, m, as long as a bolt of it would keep a core; RangeError else. Whether ISO 965-1 has
 * tolerances for it is asked of `threadLimits`.
 */
export function metricThread(d: number, pitch: number): Thread {
  if (!(d > 0 && d <= 1)) throw threadError('d', lengthOf(d), say`0 to ${lengthOf(1)}`)
  if (!(pitch > 0 && pitch < 0.4 * d))
    throw threadError('pitch', lengthOf(pitch), say`0 to ${lengthOf(0.4 * d)}, two fifths of the diameter`)
  return { name: `M${mmText(d)} × ${mmText(pitch)}`, form: 'metric', ...sixty(d, pitch) }
}

/** Unified thread of ASME B1.1: diameter in m, threads an inch; `name` as it is called. */
export function unifiedThread(d: number, perInch: number, name?: string): Thread {
  if (!(perInch >= 3 && perInch <= 80)) throw threadError('perInch', String(perInch), '3 to 80 an inch')
  if (!(d > 2.5 * (inch / perInch) && d <= 0.16))
    throw threadError('d', lengthOf(d), say`${lengthOf(2.5 * (inch / perInch))} to ${lengthOf(0.16)}`)
  return {
    name: name ?? `${Math.round((d / inch) * 1e4) / 1e4}-${perInch} UN`,
    form: 'unified',
    ...sixty(d, inch / perInch),
  }
}

/** Pipe thread of ISO 228-1 by its diameter over the crests (m) and threads an inch: 55°, height 0.640327 P. */
export function pipeThread(name: string, d: number, perInch: number): Thread {
  const pitch = inch / perInch
  const height = 0.640327 * pitch
  return { name, form: 'pipe', d, d2: d - height, d1: d - 2 * height, pitch, half: 27.5 * deg }
}

export interface OwnThread {
  d: number
  pitch: number
  /** of the thread, from crest to root on one side, m */
  height: number
  /** between a flank and a plane across the axis, rad */
  half: number
}

/** A thread of one's own, flanks alike, crest and root as wide as each other; RangeError where the flanks would cross. */
export function ownThread({ d, pitch, height, half }: OwnThread): Thread {
  if (!(half >= 5 * deg && half <= 60 * deg))
    throw threadError('half', `${Math.round(half / deg)}°`, '5 to 60°')
  const most = (0.45 * pitch) / Math.tan(half)
  if (!(height > 0 && height <= most))
    throw threadError(
      'height',
      lengthOf(height),
      say`0 to ${lengthOf(most)}, where crest and root would be sharp`,
    )
  if (!(d > 4 * height))
    throw threadError('d', lengthOf(d), say`more than four heights, ${lengthOf(4 * height)}`)
  return {
    name: `own ${mmText(d)} × ${mmText(pitch)}`,
    form: 'own',
    d,
    d2: d - height,
    d1: d - 2 * height,
    pitch,
    half,
  }
}

/** Angle of the helix on the pitch diameter, rad. */
export const leadAngle = (t: Thread): number => Math.atan(t.pitch / (Math.PI * t.d2))

/** Width of an outside thread's tooth, m, at a radius: half a pitch on the pitch diameter, less outside it. */
export const toothWidth = (t: Pick<Thread, 'd2' | 'pitch' | 'half'>, radius: number): number =>
  t.pitch / 2 - 2 * (radius - t.d2 / 2) * Math.tan(t.half)
