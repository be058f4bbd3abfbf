/**
 * Pull, top speed and merit over every pitch that makes sense for a bore, on the nominal model: what "too steep" is measured by.
 * Looks at all of them, so that no shape of engine or pump misleads it, and never at the pitch that happens to be in the file.
 */
import { cubicAt, pchip } from '../../base/numerics/interpolate.ts'
import type { Craft } from '../../craft/index.ts'
import { type PumpFan, withLeadingPitch } from '../../trades/jet/pumpFan.ts'
import { meritOf, strengthUse, wantsOf } from './merit.ts'
import type { CraftModel } from './propulsionModel.ts'
import { type DragTable, dragTableOf, fitted, type QuickSums, quickSums } from './quickSums.ts'

/** pitches looked at, over the bore: below, blades hardly push; above, no small engine turns them */
export const pitchShares = { low: 0.34, high: 1.6 }

/** Loss of merit that nobody would notice: pitches within it count as right. */
export const rightWithin = 0.02

export interface PitchPoint extends QuickSums {
  /** m, at the leading edge */
  pitch: number
  merit: number
}

export interface PitchScan {
  /** lowest pitch first */
  points: PitchPoint[]
  /** m; NaN when no pitch runs */
  best: number
  /** pitches round the best that lose no more than `rightWithin` of its merit, m */
  low: number
  high: number
}

/** One pitch on the nominal craft. */
export function pitchPoint(
  craft: Craft,
  model: CraftModel,
  table: DragTable,
  fan: PumpFan,
  pitch: number,
): PitchPoint {
  const spec = withLeadingPitch(model.units[0]!.spec, pitch)
  const sums = quickSums(fitted(model, spec, fan.at(pitch)), table)
  const merit = meritOf(wantsOf(craft), sums, strengthUse(craft.jet.rotor.material, spec, sums))
  return { ...sums, pitch, merit }
}

/** Coarse over everything, then close round the best two places. */
export function scanPitches(
  craft: Craft,
  model: CraftModel,
  fan: PumpFan,
  table = dragTableOf(model),
): PitchScan {
  const D = model.units[0]!.spec.rotor.tipDiameter
  const points = fan
    .sampled(pitchShares.low * D, pitchShares.high * D)
    .map((pitch) => pitchPoint(craft, model, table, fan, pitch))
  // between the samples round the best, twice finer each time
  for (let round = 0; round < 3; round++) {
    const at = bestIndex(points)
    for (const [a, b] of [
      [at, at + 1],
      [at - 1, at],
    ] as const) {
      const left = points[a]
      const right = points[b]
      if (!left || !right) continue
      points.splice(b, 0, pitchPoint(craft, model, table, fan, Math.sqrt(left.pitch * right.pitch)))
    }
  }
  return { points, ...rangeOf(points) }
}

function bestIndex(points: readonly PitchPoint[]): number {
  return points.reduce((b, p, i) => (p.merit > points[b]!.merit ? i : b), 0)
}

/** Best pitch and the stretch round it that is as good, read off the points' curve. */
export function rangeOf(
  points: readonly { pitch: number; merit: number }[],
  within = rightWithin,
): Pick<PitchScan, 'best' | 'low' | 'high'> {
  const most = Math.max(...points.map((p) => p.merit))
  if (points.length < 3 || !(most > 0)) return { best: Number.NaN, low: Number.NaN, high: Number.NaN }
  const x = points.map((p) => Math.log(p.pitch))
  const curve = pchip(
    x,
    points.map((p) => p.merit / most),
  )
  const from = x[0]!
  const to = x.at(-1)!
  const fine = 400
  const at = (k: number) => cubicAt(curve, from + ((to - from) * k) / fine)
  const pitchAt = (k: number) => Math.exp(from + ((to - from) * k) / fine)
  let top = 0
  for (let k = 1; k <= fine; k++) if (at(k) > at(top)) top = k
  let low = top
  let high = top
  while (low > 0 && at(low - 1) >= (1 - within) * at(top)) low--
  while (high < fine && at(high + 1) >= (1 - within) * at(top)) high++
  return { best: vertexOf(points), low: pitchAt(low), high: pitchAt(high) }
}

/** top of the parabola through the best point and its neighbours, in ln of the pitch */
function vertexOf(points: readonly { pitch: number; merit: number }[]): number {
  const i = points.reduce((b, p, k) => (p.merit > points[b]!.merit ? k : b), 0)
  const a = points[i - 1]
  const b = points[i]!
  const c = points[i + 1]
  if (!a || !c) return b.pitch
  const [xa, xb, xc] = [a, b, c].map((p) => Math.log(p.pitch)) as [number, number, number]
  const p = (xb - xa) ** 2 * (b.merit - c.merit) - (xb - xc) ** 2 * (b.merit - a.merit)
  const q = (xb - xa) * (b.merit - c.merit) - (xb - xc) * (b.merit - a.merit)
  const x = q === 0 ? xb : xb - p / (2 * q)
  return Math.exp(Math.min(xc, Math.max(xa, x)))
}
