/**
 * Hours, tacks and the order of welding thin sheet. Speeds of hand work, tack pitch and shrinkage of thin butt seams (0.1 to 0.4 mm across a seam in 1 mm
 * sheet): common practice, no source; each is given as a range.
 */
import { inCount, inMm } from '../../base/answers/amounts.ts'
import type { MadePart, Work } from '../../base/answers/madePart.ts'
import { type Sentence, say } from '../../base/answers/sentence.ts'

/** What there is to do on a part: m of cut and weld, pieces to roll, folds, rivets. */
export interface Job {
  thickness: number
  cut: number
  weld: number
  rolls: number
  folds: number
  rivets: number
}

/** seconds a metre, a roll, a fold, a tack, a rivet: quick and slow hands. Judgement. */
const pace = {
  cut: { low: 240, high: 900 },
  roll: { low: 240, high: 900 },
  fold: { low: 120, high: 480 },
  tack: { low: 15, high: 60 },
  weld: { low: 300, high: 1200 },
  rivet: { low: 20, high: 60 },
} as const

/** Tacks stand so many thicknesses apart, within these ends, m. Common practice, no source. */
export const tackPitch = (thickness: number): number => Math.min(0.05, Math.max(0.02, 30 * thickness))

/** Seconds of each kind of work, least and most. */
export function hoursOf(job: Job): MadePart['hours'] {
  const amounts: [Work, keyof typeof pace, number][] = [
    ['cut', 'cut', job.cut],
    ['roll', 'roll', job.rolls],
    ['fold', 'fold', job.folds],
    ['tack', 'tack', job.weld > 0 ? Math.ceil(job.weld / tackPitch(job.thickness)) : 0],
    ['weld', 'weld', job.weld],
    ['rivet', 'rivet', job.rivets],
  ]
  return amounts.flatMap(([work, key, n]) =>
    n > 0 ? [{ work, low: n * pace[key].low, high: n * pace[key].high }] : [],
  )
}

/** Shrinkage across one seam over the thickness: 0.1 to 0.4 at 1 mm. */
const shrink = { low: 0.1, high: 0.4 }

/** The order of work on a rolled or folded part of thin sheet. */
export function weldSteps({ thickness, weld, rolls }: Job, pieces: number): Sentence[] {
  if (!(weld > 0)) return []
  const pitch = tackPitch(thickness)
  return [
    rolls > 0
      ? say`Roll each piece along its lines over a pipe, the marked face outward, until its edges meet by themselves.`
      : say`Fold along the lines, in the order that leaves room for the brake.`,
    say`Tack the long seam at both ends, then in the middle, then halve the gaps down to ${inMm(pitch)}.`,
    ...(pieces > 1
      ? [
          say`Set piece on piece, tick on tick, and tack each joint at four places across from each other; sight the whole before you weld.`,
        ]
      : []),
    say`Clamp the seam on a bar of copper or aluminium, weld a few tacks at a time, and go to the far side while it cools.`,
    say`Expect each seam to draw in by ${inMm(shrink.low * thickness, 0.05)} to ${inMm(shrink.high * thickness, 0.05)} across; offer the next part up before you cut it to length.`,
    ...(thickness < 1e-3
      ? [say`Sheet of ${inMm(thickness, 0.1)} burns through easily: lap or rivet what does not get hot.`]
      : []),
  ]
}

/** What a riveted panel takes. */
export const rivetSteps = (count: number, pitch: number): Sentence[] => [
  say`Drill the first hole at each corner, hold the panel with screws or grips, and drill on from the middle outward.`,
  say`Set ${inCount(count)} rivets at ${inMm(pitch)}, every fourth first.`,
]

export const weldCautions: readonly string[] = [
  'Weld outdoors or with the fumes drawn off; never weld or heat galvanised or plated sheet, nor anything cleaned with a chlorinated solvent.',
  'Cut edges are sharp and hot metal looks cold: gloves, long sleeves, eyes covered, an extinguisher at hand, nothing that burns under the work.',
]
