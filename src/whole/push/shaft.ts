/**
 * Engines on one impeller shaft: what torque reaches the impeller.
 * M = (sum of running engines - drag of dead ones) x ratio x efficiency; a one-way clutch lets a dead
 * engine stand still. Torque balance on a rigid shaft (elementary mechanics).
 */
import { knownAt, type TorqueCurve, torqueAt } from '../../trades/engine/curve.ts'
import { type DeadDrag, dragAt } from '../../trades/engine/deadDrag.ts'

export interface ShaftEngine {
  name: string
  curve: TorqueCurve
  /** m³; zero for a motor */
  displacement: number
  running: boolean
  /** throttle, 0 to 1 */
  throttle: number
  /** what it takes when it is dead and turned; absent for a motor, which turns freely */
  dead?: DeadDrag
  /** rev/s below which it dies */
  idle: number
}

export interface Shaft {
  engines: ShaftEngine[]
  /** engine turns per impeller turn */
  ratio: number
  /** of belt, chain or gears, 0 to 1 */
  efficiency: number
  oneWayClutch: boolean
  /** where in their ranges the drags of dead engines lie: -1 low, 0 likely, 1 high */
  deadLean?: number
}

/** Torque a dead engine takes from the shaft it sits on at `n` rev/s, N·m, below nought; nought behind a one-way clutch. */
export const engineShare = (shaft: Shaft, dead: ShaftEngine, n: number): number =>
  shaft.oneWayClutch || !dead.dead ? 0 : -dragAt(dead.dead, n, shaft.deadLean)

/** Torque of all engines at the crankshafts, N·m, at engine rotation n, rev/s. */
export function engineTorque(shaft: Shaft, n: number): number {
  let sum = 0
  for (const e of shaft.engines) {
    if (e.running) sum += torqueAt(e.curve, n, e.throttle)
    else sum += engineShare(shaft, e, n)
  }
  return sum
}

/** Torque at the impeller, N·m, at impeller rotation n, rev/s. */
export function impellerDrive(shaft: Shaft, n: number): number {
  const torque = engineTorque(shaft, n * shaft.ratio)
  // losses work against whichever way the torque runs
  return torque * shaft.ratio * (torque >= 0 ? shaft.efficiency : 1 / shaft.efficiency)
}

/** Highest redline that matters: the lowest of the running engines', rev/s of the engine. */
export function shaftRedline(shaft: Shaft): number {
  const alive = shaft.engines.filter((e) => e.running)
  return Math.min(...(alive.length > 0 ? alive : shaft.engines).map((e) => e.curve.redline))
}

/** Where running engines together give most power: engine rotation rev/s, power W. */
export function shaftPowerPeak(shaft: Shaft): { rotation: number; power: number } {
  const alive = shaft.engines.filter((e) => e.running)
  if (alive.length === 0) return { rotation: Number.NaN, power: 0 }
  const peaks = alive.map((e) => e.curve.powerPeak.rotation)
  const low = 0.7 * Math.min(...peaks)
  const high = 1.2 * Math.max(...peaks)
  // engines alike share one peak; unlike ones need a look between and around their peaks
  let best = low
  const power = (n: number) => n * engineTorque(shaft, n)
  for (let i = 0; i <= 400; i++) {
    const n = low + ((high - low) * i) / 400
    if (power(n) > power(best)) best = n
  }
  if (alive.every((e) => e.curve.powerPeak.rotation === peaks[0])) best = peaks[0]!
  return { rotation: best, power: 2 * Math.PI * power(best) }
}

/** True where any running engine's torque is read beyond its table. */
export function beyondTable(shaft: Shaft, n: number): boolean {
  return shaft.engines.some((e) => e.running && knownAt(e.curve, n) === 'beyond')
}
