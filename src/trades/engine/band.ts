/**
 * How uncertain the curve is from what was measured: six inputs one at a time to both ends of their uncertainty, each
 * with a full curve on a coarse grid; the relative changes add as squares (independent errors, first order).
 */

import { type TwoStrokeSpec, uncoveredHeight, validateSpec } from './engineSpec.ts'
import { clearanceOfTrapped, pistonArea, pistonTravel } from './geometry.ts'
import type { Scavenging } from './scavenge.ts'
import { sweepSpeeds } from './simulate.ts'
import { createState } from './state.ts'

/** Half-ranges of the six inputs; rad, parts, ratio. Scavenging: one kind worse and one better. */
export interface Spread {
  exhaustOpens: number
  transferOpens: number
  /** part of the width */
  exhaustWidth: number
  /** of the trapped compression ratio */
  trappedRatio: number
  exhaustDischarge: number
  scavenging: boolean
}

interface BandPoint {
  rpm: number
  /** factors on torque */
  low: number
  high: number
}

export interface TorqueBand {
  points: BandPoint[]
  /** what moves the curve most, first: mean size of its effect as a part of torque */
  drivers: { input: keyof Spread; effect: number }[]
  cancelled: boolean
}

const scale: readonly Scavenging[] = ['mixing', 'mediocre loop', 'good loop', 'uniflow-like']

/** The spec with one input moved to its low (-1) or high (+1) end. */
export function nudged(s: TwoStrokeSpec, by: Spread, input: keyof Spread, sign: 1 | -1): TwoStrokeSpec {
  const { crank, exhaust, transfers } = s
  const trapped = pistonArea(crank.bore) * pistonTravel(crank, exhaust.opens)
  const ratio = trapped / s.clearance + 1
  switch (input) {
    case 'exhaustOpens': {
      const opens = exhaust.opens + sign * by.exhaustOpens
      const height = Math.min(exhaust.height, uncoveredHeight(crank, opens))
      return { ...s, exhaust: { ...exhaust, opens, height } }
    }
    case 'transferOpens':
      return { ...s, transfers: { ...transfers, opens: transfers.opens + sign * by.transferOpens } }
    case 'exhaustWidth':
      return { ...s, exhaust: { ...exhaust, width: exhaust.width * (1 + sign * by.exhaustWidth) } }
    case 'trappedRatio':
      return { ...s, clearance: clearanceOfTrapped(crank, ratio + sign * by.trappedRatio, exhaust.opens) }
    case 'exhaustDischarge':
      return { ...s, exhaust: { ...exhaust, discharge: exhaust.discharge + sign * by.exhaustDischarge } }
    case 'scavenging': {
      const k = scale.indexOf(transfers.scavenging)
      const kind = scale[Math.min(scale.length - 1, Math.max(0, k + sign))]!
      return { ...s, transfers: { ...transfers, scavenging: kind } }
    }
  }
}

/** Torque at each speed, NaN where it did not settle. */
function torques(s: TwoStrokeSpec, rpms: readonly number[], dx: number): number[] {
  if (validateSpec(s, rpms).length > 0) return rpms.map(() => Number.NaN)
  const e = createState(s, dx)
  return [...sweepSpeeds(s, e, rpms)].map((r) => r.point?.torque ?? Number.NaN)
}

/**
 * Band of torque over the speeds given (rising). Thirteen coarse curves; dx 0.02 m by default, which moves a curve but
 * hardly its sensitivities. Variations that do not settle are left out of the sum at that speed.
 */
export function torqueBand(
  s: TwoStrokeSpec,
  rpms: readonly number[],
  by: Spread,
  options: { dx?: number; progress?: (part: number, says: string) => void; cancelled?: () => boolean } = {},
): TorqueBand {
  const dx = options.dx ?? 0.02
  const inputs = (Object.keys(by) as (keyof Spread)[]).filter((k) => by[k] !== 0 && by[k] !== false)
  const base = torques(s, rpms, dx)
  const up = rpms.map(() => 0)
  const down = rpms.map(() => 0)
  const drivers: TorqueBand['drivers'] = []
  for (const [i, input] of inputs.entries()) {
    if (options.cancelled?.()) return { points: [], drivers, cancelled: true }
    options.progress?.((i + 0.5) / (inputs.length + 0.5), input)
    const both = ([-1, 1] as const).map((sign) => torques(nudged(s, by, input, sign), rpms, dx))
    let effect = 0
    rpms.forEach((_, k) => {
      const moves = both.map((t) => t[k]! / base[k]! - 1).filter(Number.isFinite)
      const high = Math.max(0, ...moves)
      const low = Math.min(0, ...moves)
      up[k] = up[k]! + high * high
      down[k] = down[k]! + low * low
      effect += (high - low) / (2 * rpms.length)
    })
    drivers.push({ input, effect })
  }
  options.progress?.(1, 'done')
  const points = rpms.map((rpm, k) => ({
    rpm,
    low: Math.max(0, 1 - Math.sqrt(down[k]!)),
    high: 1 + Math.sqrt(up[k]!),
  }))
  return {
    // a speed at which the engine itself did not settle has no band
    points: points.filter((_, k) => Number.isFinite(base[k]!)),
    drivers: drivers.sort((a, b) => b.effect - a.effect),
    cancelled: false,
  }
}
