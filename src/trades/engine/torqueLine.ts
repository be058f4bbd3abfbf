/** Torque over engine speed as it is drawn: what was worked out, or what the craft file says, by one shape. */

import { cubicAt, linearAt, pchip } from '../../base/numerics/interpolate.ts'
import type { TorqueBand } from './band.ts'
import { type TorqueCurve, torqueAt } from './curve.ts'
import type { CurveResult } from './simulate.ts'

/** One curve of a whole engine (all cylinders). rev/min, N·m; NaN where nothing settled. */
export interface TorqueLine {
  name: string
  rpm: readonly number[]
  torque: readonly number[]
  /** ends of the likely range, where it is known */
  low?: readonly number[]
  high?: readonly number[]
  /** speeds of `rpm` that were worked out or given; the rest lies between them */
  knots: readonly number[]
}

/** points drawn between two that were worked out */
const between = 6

/** A simulated curve, with the shape the balance takes between its points. `cylinders` of the whole engine. */
export function simulatedLine(
  name: string,
  curve: CurveResult,
  cylinders: number,
  band?: TorqueBand,
): TorqueLine {
  const line: { rpm: number[]; torque: number[]; knots: number[] } = { rpm: [], torque: [], knots: [] }
  for (const run of settledRuns(curve)) {
    if (line.rpm.length > 0) {
      line.rpm.push(run.rpm[0]!)
      line.torque.push(Number.NaN)
    }
    const cubic = run.rpm.length > 1 ? pchip(run.rpm, run.torque) : undefined
    run.rpm.forEach((rpm, i) => {
      line.knots.push(rpm)
      line.rpm.push(rpm)
      line.torque.push(run.torque[i]! * cylinders)
      const next = run.rpm[i + 1]
      if (next === undefined || !cubic) return
      for (let k = 1; k < between; k++) {
        const at = rpm + ((next - rpm) * k) / between
        line.rpm.push(at)
        line.torque.push(cubicAt(cubic, at) * cylinders)
      }
    })
  }
  const made: TorqueLine = { name, ...line }
  return band && band.points.length > 1 ? withBand(made, band) : made
}

/** neighbouring speeds that settled, run by run */
function settledRuns(curve: CurveResult): { rpm: number[]; torque: number[] }[] {
  const runs: { rpm: number[]; torque: number[] }[] = []
  let open: { rpm: number[]; torque: number[] } | undefined
  for (const p of curve.points) {
    if (!p.point || !p.converged) {
      open = undefined
      continue
    }
    if (!open) {
      open = { rpm: [], torque: [] }
      runs.push(open)
    }
    open.rpm.push(p.rpm)
    open.torque.push(p.point.torque)
  }
  return runs
}

function withBand(line: TorqueLine, band: TorqueBand): TorqueLine {
  const at = band.points.map((p) => p.rpm)
  const factor = (rpm: number, end: 'low' | 'high') =>
    linearAt(
      at,
      band.points.map((p) => p[end]),
      rpm,
    )
  return {
    ...line,
    low: line.torque.map((t, i) => t * factor(line.rpm[i]!, 'low')),
    high: line.torque.map((t, i) => t * factor(line.rpm[i]!, 'high')),
  }
}

/** The curve the craft file gives, its band the trust (part of the torque) that the file puts in it. */
export function givenLine(name: string, curve: TorqueCurve, trust: number): TorqueLine {
  const rpm: number[] = []
  for (let i = 0; i <= 72; i++) rpm.push(60 * (curve.from + ((curve.to - curve.from) * i) / 72))
  const torque = rpm.map((n) => torqueAt(curve, n / 60))
  return {
    name,
    rpm,
    torque,
    low: torque.map((t) => t * (1 - trust)),
    high: torque.map((t) => t * (1 + trust)),
    knots: Array.from(curve.cubic.x, (n) => n * 60),
  }
}

/** A curve from a search: rev/min and N·m of the whole engine. */
export function searchedLine(name: string, rpm: readonly number[], torque: readonly number[]): TorqueLine {
  if (rpm.length < 2) return { name, rpm, torque, knots: rpm }
  const cubic = pchip(rpm, torque)
  const fine = rpm.flatMap((n, i) => {
    const next = rpm[i + 1]
    return next === undefined
      ? [n]
      : Array.from({ length: between }, (_, k) => n + ((next - n) * k) / between)
  })
  return { name, rpm: fine, torque: fine.map((n) => cubicAt(cubic, n)), knots: rpm }
}

export interface Peak {
  rpm: number
  value: number
}

/** Shaft power of a line, W, point by point. */
export const powerOf = (line: TorqueLine): number[] =>
  line.torque.map((t, i) => (t * line.rpm[i]! * 2 * Math.PI) / 60)

/** The highest of some values over the line's speeds; undefined when none is a number. */
export function peakOf(line: TorqueLine, values: readonly number[]): Peak | undefined {
  let best: Peak | undefined
  values.forEach((value, i) => {
    if (Number.isFinite(value) && (!best || value > best.value)) best = { rpm: line.rpm[i]!, value }
  })
  return best
}

/** Speeds over which the power is at least `part` of its peak, rev/min, in one piece round the peak. */
export function strongBand(line: TorqueLine, part = 0.9): { from: number; to: number } | undefined {
  const power = powerOf(line)
  const peak = peakOf(line, power)
  if (!peak) return undefined
  const middle = line.rpm.indexOf(peak.rpm)
  let [from, to] = [middle, middle]
  while (power[from - 1]! >= part * peak.value) from--
  while (power[to + 1]! >= part * peak.value) to++
  return { from: line.rpm[from]!, to: line.rpm[to]! }
}
