/** What the craft should have run at in a recording: tied up, or at the boat speeds a GPS track tells. */
import type { SpeedTrace } from '../../trades/sound/gpx.ts'
import type { Prediction } from '../../trades/sound/residuals.ts'
import type { Balance } from '../push/balanceTypes.ts'

/** Full throttle, tied to a post; undefined before ranges are known. */
export function tiedUpPrediction(b: Balance): Prediction | undefined {
  const { value, low, high } = b.tiedUpRotation
  if (!(b.ranged && Number.isFinite(value + low + high))) return undefined
  const oneDead = deadStep(b)
  return {
    time: [0],
    rpm: [60 * value],
    low: [60 * low],
    high: [60 * high],
    ...(oneDead ? { roots: { oneDead } } : {}),
  }
}

/** The shaft's speed with one engine dead and dragged, as a part of that with all firing; undefined where it stalls or has its own jet. */
function deadStep({ oneDead, tiedUpRotation }: Balance): { low: number; high: number } | undefined {
  if (oneDead?.place !== 'dragged' || !(oneDead.rotation.value > 0)) return undefined
  const [low, high] = [oneDead.rotation.low, oneDead.rotation.high].map((r) => r / tiedUpRotation.value)
  // the ends of the ranges need not meet: a step is held against the middle of the whole shaft's speed
  return low! > 0 && high! > 0 ? { low: low!, high: Math.min(1, high!) } : undefined
}

/**
 * Full throttle at the speed over ground of each moment. `lag` s is what a moment's time in the recording is later than in the
 * track. The doubt is taken as large a part as tied up, where it is known. Undefined before ranges are known or without points.
 */
export function underWayPrediction(b: Balance, trace: SpeedTrace, lag: number): Prediction | undefined {
  const tied = tiedUpPrediction(b)
  if (!tied || trace.time.length === 0) return undefined
  const under = tied.low[0]! / tied.rpm[0]!
  const over = tied.high[0]! / tied.rpm[0]!
  const out: Prediction & { [K in 'time' | 'rpm' | 'low' | 'high']: number[] } = {
    time: [],
    rpm: [],
    low: [],
    high: [],
    ...(tied.roots ? { roots: tied.roots } : {}),
  }
  for (let i = 0; i < trace.time.length; i++) {
    const rpm = rpmAt(b, trace.speed[i]!)
    if (!Number.isFinite(rpm)) continue
    out.time.push(trace.time[i]! + lag)
    out.rpm.push(rpm)
    out.low.push(rpm * under)
    out.high.push(rpm * over)
  }
  return out.time.length > 0 ? out : undefined
}

/** Engine speed at a boat speed (m/s) from the operating table, rev/min; its end beyond it. */
export function rpmAt(b: Balance, speed: number): number {
  const { speed: v, rpm } = b.curve
  const known = v.findIndex((x, i) => x >= speed && Number.isFinite(rpm[i]!))
  if (known < 0) return rpm.findLast((r) => Number.isFinite(r)) ?? Number.NaN
  if (known === 0) return rpm[0]!
  const part = (speed - v[known - 1]!) / (v[known]! - v[known - 1]!)
  return rpm[known - 1]! + part * (rpm[known]! - rpm[known - 1]!)
}
