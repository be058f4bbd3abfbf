/**
 * How far to trust a simulated point: do its books close, is it inside what such engines have been seen to do, and
 * what the model leaves out. Bands: pressures and exhaust temperatures by class after G. P. Blair, Design and Simulation of
 * Two-Stroke Engines (1996), the rest common practice.
 */
import {
  inBar,
  inCelsius,
  inFlowSpeed,
  inGramsPerKwh,
  inHertz,
  inPercent,
  inRpm,
  inTimes,
} from '../../base/answers/amounts.ts'
import { type Amount, type Sentence, say } from '../../base/answers/sentence.ts'
import { type EngineLimits, engineLimits } from './engineLimits.ts'
import type { TwoStrokeSpec } from './engineSpec.ts'
import { meanPistonSpeed, pistonArea, pistonTravel } from './geometry.ts'
import type { CyclePoint } from './point.ts'
import type { PointResult } from './simulate.ts'

export type EngineClass = 'utility' | 'road' | 'sport' | 'motocross' | 'race'

type Band = readonly [number, number]

/** At the torque peak: Pa, parts, parts, kg/J, K. */
interface Bands {
  bmep: Band
  deliveryRatio: Band
  trapping: Band
  bsfc: Band
  exhaustT: Band
}

const gkWh = 1 / 3.6e9
const band = (b: Band, dr: Band, te: Band, fuel: Band, egt: Band): Bands => ({
  bmep: [b[0] * 1e5, b[1] * 1e5],
  deliveryRatio: dr,
  trapping: te,
  bsfc: [fuel[0] * gkWh, fuel[1] * gkWh],
  exhaustT: [egt[0] + 273.15, egt[1] + 273.15],
})

const plausible: Record<EngineClass, Bands> = {
  utility: band([3.5, 5], [0.5, 0.7], [0.7, 0.92], [420, 600], [450, 650]),
  road: band([5, 6.5], [0.6, 0.85], [0.65, 0.8], [380, 500], [350, 550]),
  sport: band([7, 8.5], [0.8, 1], [0.65, 0.78], [380, 480], [500, 650]),
  motocross: band([9, 10], [0.95, 1.15], [0.7, 0.8], [350, 450], [550, 700]),
  race: band([11, 13], [1.1, 1.3], [0.75, 0.85], [330, 420], [600, 700]),
}

/** A warning of one speed; `path` names the input within the engine. */
export interface EngineFlag {
  code: string
  text: Sentence
  path?: string
}

/** Closing tests of one settled point. */
export interface Health {
  /** every closing sum within its limit */
  closes: boolean
  checks: { name: string; value: number; limit: number; holds: boolean }[]
  flags: EngineFlag[]
}

/** Closing sums of a settled point against what the table of limits allows. */
export function healthOf(s: TwoStrokeSpec, result: PointResult, limits: EngineLimits = engineLimits): Health {
  const p = result.point
  if (!p)
    return { closes: false, checks: [], flags: [{ code: 'not settled', text: result.says ?? 'no result' }] }
  const check = (name: string, value: number, limit: number) => ({
    name,
    value,
    limit,
    holds: Math.abs(value) <= limit,
  })
  const checks = [
    check('mass in against mass out', p.books.mass, limits.booksMass.value),
    check('energy', p.books.energy, limits.booksEnergy.value),
    check('difference of the two gas models', p.books.ledger, limits.booksGas.value),
    check('fresh charge', p.books.fresh, limits.booksFresh.value),
    check('cycle to cycle', result.residual, limits.cycleToCycle.value),
  ]
  return {
    closes: checks.every((c) => c.holds),
    checks,
    flags: [...flagsOf(s, p, limits), ...repeatFlag(result)],
  }
}

function repeatFlag(r: PointResult): EngineFlag[] {
  return r.alternating ? [{ code: 'alternating', text: r.says ?? 'every other cycle differs' }] : []
}

/** what a real probe reads below the gas, by radiation and slowness, K; common practice 20 to 60, no source */
const probeCold = 40

function flagsOf(s: TwoStrokeSpec, p: CyclePoint, limits: EngineLimits): EngineFlag[] {
  const flags: EngineFlag[] = []
  const flag = (code: string, text: Sentence, path?: string): void => {
    flags.push(path ? { code, text, path } : { code, text })
  }
  if (p.backflow > limits.backflow.value)
    flag(
      'back-flow',
      say`${inPercent(p.backflow)} of the charge is first pushed back down the transfers: the exhaust opens too late or the transfers too early for ${inRpm(p.rpm / 60)}`,
      'ports.transfers.opens',
    )
  if (p.scavenging < limits.scavenging.value)
    flag(
      'misfire',
      say`only ${inPercent(p.scavenging)} of what is shut in is fresh: it will misfire (four-stroke) here`,
    )
  const shown = p.exhaustT - probeCold
  if (shown > limits.exhaustHot.value)
    flag(
      'hot',
      say`an exhaust thermometer would show about ${inCelsius(shown)}, above ${inCelsius(limits.exhaustHot.value)}`,
    )
  const trappedRatio = (pistonArea(s.crank.bore) * pistonTravel(s.crank, s.exhaust.opens)) / s.clearance + 1
  if (trappedRatio > limits.trappedRatio.value)
    flag(
      'knock',
      say`compression from exhaust closing is ${inTimes(trappedRatio, 0.1)}, above the ${inTimes(limits.trappedRatio.value, 0.1)} that pump petrol bears`,
      'combustion',
    )
  else if (p.endGasT > limits.endGas.value && p.pMax > limits.peakPressure.value)
    flag(
      'knock',
      say`the last charge to burn reaches ${inCelsius(p.endGasT)} under ${inBar(p.pMax, 1)}: listen for knock`,
    )
  const speed = meanPistonSpeed(s.crank.stroke, p.rpm)
  if (speed > limits.pistonSpeed.value)
    flag(
      'piston speed',
      say`mean piston speed ${inFlowSpeed(speed)}: above ${inFlowSpeed(limits.pistonSpeed.value, 1)} for an unmodified utility engine${speed > limits.pistonSpeedAny.value ? say`, and above ${inFlowSpeed(limits.pistonSpeedAny.value, 1)} for any` : ''}`,
    )
  if (
    s.inlet.kind === 'reed' &&
    s.inlet.frequency &&
    p.rpm / 60 > limits.reedFlutter.value * s.inlet.frequency
  )
    flag(
      'reed flutter',
      say`${inRpm(p.rpm / 60)} is above ${inTimes(limits.reedFlutter.value)} of the petals’ own ${inHertz(s.inlet.frequency)}: they will flutter`,
    )
  return flags
}

/** Warnings for a peak outside what engines of its class do; path-free, worst first by how far out it lies. */
export function plausibility(kind: EngineClass, p: CyclePoint): EngineFlag[] {
  const b = plausible[kind]
  const rows: [keyof Bands, string, (x: number) => Amount][] = [
    ['bmep', 'mean pressure', (x) => inBar(x, 0.1)],
    ['deliveryRatio', 'delivery ratio', inTimes],
    ['trapping', 'trapping', inTimes],
    ['bsfc', 'fuel per energy', inGramsPerKwh],
    ['exhaustT', 'exhaust', inCelsius],
  ]
  return rows
    .filter(([key]) => p[key] < b[key][0] || p[key] > b[key][1])
    .map(([key, name, show]) => ({
      code: 'implausible',
      text: say`${name} ${show(p[key])} at ${inRpm(p.rpm / 60)} is outside ${show(b[key][0])} to ${show(b[key][1])}, what ${kind} engines show`,
    }))
}

/** What the model leaves out, to be printed with every curve. */
export const notModelled = [
  'crank speed taken as steady within a turn; in some small engines that alone moves mean pressure by more than a tenth',
  'scavenging by a curve, not by the shape of the ports',
  'knock, enrichment of the carburettor by pulsation, oil, condensed water',
] as const

/** Accuracy without calibration: parts of the peak's rpm and of mean pressure. Judgement from sensitivities; no source. */
export const uncalibrated = { rpm: 0.05, bmep: 0.15 } as const
