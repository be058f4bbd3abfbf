/** The whole chain answered: every part's margin, weakest first, and what whirling, twisting, thrust and mounts have to say. */
import type { Range } from '../../base/answers/solved.ts'
import type { Between, DriveChain, Hold, Joint, Turning } from './driveLinks.ts'
import { type DrivePeaks, drivePeaks, lowestFrequency } from './drivePeaks.ts'
import type { DriveSetting } from './driveSetting.ts'
import { type Mounted, type MountInputs, mountedOf } from './mountAnswer.ts'
import {
  type Carries,
  holdMargins,
  jointLasts,
  type Lasting,
  rangeOfDraws,
  shaftMargins,
} from './partMargins.ts'
import { type ShaftLine, shaftLineOf } from './shaftLine.ts'

export interface DriveInputs {
  /** absent where the file has no chain */
  chain: DriveChain | undefined
  /** engine turns a turn of the impeller */
  ratio: number
  oneWayClutch: boolean
  mounts: MountInputs | undefined
  /** absent where an engine has no torque curve yet */
  setting: DriveSetting | undefined
}

/** One thing that carries torque, answered. */
export interface Part {
  /** 'a' for the first, and so on, as drawn */
  letter: string
  of: Carries
  /** between mass `place` and the next */
  place: number
  /** largest torque through it, N·m, as it turns there, and the mean */
  peak: Range
  mean: number
  /** what it bears over its peak: after a day, for a bolted joint */
  margin: Range
  /** of a bolted joint */
  lasts?: Lasting
  drawn: Float64Array
  /** peaks by draw, N·m, for trying another build of it */
  peaks: Float64Array
  /** its place among the doubts */
  index: number
  /** part of the draws in which it is the weakest of all */
  first: number
}

export interface DriveAnswer {
  /** weakest first */
  parts: readonly Part[]
  /** in the order of the chain */
  inOrder: readonly Part[]
  peaks: DrivePeaks
  /** Hz on the crank's side: the lowest at which the chain swings against itself */
  frequency: Range
  line: ShaftLine | undefined
  mounted: Mounted | undefined
}

const letters = 'abcdefghijklmnopqrstuvwxyz'

/** Ratio that torque is multiplied by at each part of a place: a belt in front of it gears it up. */
function gearing(between: readonly (readonly Between[])[], ratio: number): number[][] {
  let behind = 1
  return between.map((parts) =>
    parts.map((p) => {
      if (p.kind === 'belt') behind = ratio
      return behind
    }),
  )
}

/** Answers a chain; undefined without one or without a state to bear. */
export function driveAnswer({ chain, ratio, mounts, setting }: DriveInputs): DriveAnswer | undefined {
  if (!chain || !setting) return undefined
  const peaks = drivePeaks(chain, ratio, setting)
  if (!peaks) return undefined
  const geared = gearing(chain.between, ratio)
  const found: Part[] = []
  chain.between.forEach((parts, place) => {
    const flexible =
      parts.some((p) => p.kind === 'coupling' && p.rubber) || parts.some((p) => p.kind === 'belt')
    parts.forEach((of, k) => {
      if (of.kind === 'belt') return
      const times = geared[place]![k]!
      found.push(partOf(of, place, found.length, peaks, times, chain, flexible))
    })
  })
  countFirsts(found)
  const parts = [...found].sort((a, b) => a.margin.value - b.margin.value)
  return {
    parts,
    inOrder: found,
    peaks,
    frequency: lowestFrequency(chain, ratio),
    line: shaftLineOf(chain, ratio, setting),
    mounted: mounts && mountedOf(mounts, chain, peaks),
  }
}

function partOf(
  of: Joint | Hold | Turning,
  place: number,
  index: number,
  peaks: DrivePeaks,
  times: number,
  chain: DriveChain,
  flexible: boolean,
): Part {
  const asked = peaks.peak[place]!.map((x) => times * Math.max(x, 1e-6))
  const lasts = of.kind === 'coupling' ? jointLasts(of, asked, index) : undefined
  const drawn =
    lasts?.drawn ??
    (of.kind === 'hold'
      ? holdMargins(of, asked, index)
      : shaftMargins(of as Turning, asked, chain.impeller.mass, flexible, index))
  return {
    letter: letters[index % letters.length]!,
    of,
    place,
    peak: rangeOfDraws(asked),
    mean: times * peaks.mean[place]!,
    margin: rangeOfDraws(drawn),
    ...(lasts ? { lasts } : {}),
    drawn,
    peaks: asked,
    index,
    first: 0,
  }
}

/** How often each part is the weakest. */
function countFirsts(parts: Part[]): void {
  const draws = parts[0]?.drawn.length ?? 0
  for (let i = 0; i < draws; i++) {
    const least = parts.reduce((a, b) => (b.drawn[i]! < a.drawn[i]! ? b : a))
    least.first += 1 / draws
  }
}
