/**
 * How far to trust a simulated point: do its books close, is it inside what such engines have been seen to do, and
 * what the model leaves out. Bands: pressures and exhaust temperatures by class after G. P. Blair, Design and Simulation of
 * Two-Stroke Engines (1996), the rest common practice.
 */
import type { Flag } from '../../base/answers/solved.ts'
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

/** Closing tests of one settled point. */
export interface Health {
  /** every closing sum within its limit */
  closes: boolean
  checks: { name: string; value: number; limit: number; holds: boolean }[]
  flags: Flag[]
}

/** Limits of the closing sums: mass 0.5 %, energy 1 %, gas models 3 %, fresh charge 2 % of what they close. */
export function healthOf(s: TwoStrokeSpec, result: PointResult): Health {
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
    check('mass in against mass out', p.books.mass, 0.005),
    check('energy', p.books.energy, 0.01),
    check('difference of the two gas models', p.books.ledger, 0.03),
    check('fresh charge', p.books.fresh, 0.02),
    check('cycle to cycle', result.residual, 0.01),
  ]
  return { closes: checks.every((c) => c.holds), checks, flags: [...flagsOf(s, p), ...repeatFlag(result)] }
}

function repeatFlag(r: PointResult): Flag[] {
  return r.alternating ? [{ code: 'alternating', text: r.says ?? 'every other cycle differs' }] : []
}

/** what a real probe reads below the gas, by radiation and slowness, K; common practice 20 to 60, no source */
const probeCold = 40

function flagsOf(s: TwoStrokeSpec, p: CyclePoint): Flag[] {
  const flags: Flag[] = []
  const say = (code: string, text: string, path?: string): void => {
    flags.push(path ? { code, text, path } : { code, text })
  }
  const percent = (x: number): string => `${(100 * x).toFixed(0)} %`
  if (p.backflow > 0.15)
    say(
      'back-flow',
      `${percent(p.backflow)} of the charge is first pushed back down the transfers: the exhaust opens too late or the transfers too early for ${p.rpm} rpm`,
      'ports.transfers.opens',
    )
  if (p.scavenging < 0.5)
    say(
      'misfire',
      `only ${percent(p.scavenging)} of what is shut in is fresh: it will misfire (four-stroke) here`,
    )
  const shown = p.exhaustT - probeCold
  if (shown > 650 + 273.15)
    say('hot', `an exhaust thermometer would show about ${(shown - 273.15).toFixed(0)} °C, above 650 °C`)
  const trappedRatio = (pistonArea(s.crank.bore) * pistonTravel(s.crank, s.exhaust.opens)) / s.clearance + 1
  if (trappedRatio > 7.5)
    say(
      'knock',
      `compression from exhaust closing is ${trappedRatio.toFixed(1)}, above the 7.5 that pump petrol bears`,
      'combustion',
    )
  else if (p.endGasT > 900 && p.pMax > 45e5)
    say(
      'knock',
      `the last charge to burn reaches ${p.endGasT.toFixed(0)} K under ${(p.pMax / 1e5).toFixed(0)} bar: listen for knock`,
    )
  const speed = meanPistonSpeed(s.crank.stroke, p.rpm)
  if (speed > 18)
    say(
      'piston speed',
      `mean piston speed ${speed.toFixed(1)} m/s: above 18 for an unmodified utility engine${speed > 22 ? ', and above 22 for any' : ''}`,
    )
  if (s.inlet.kind === 'reed' && s.inlet.frequency && p.rpm / 60 > 0.8 * s.inlet.frequency)
    say(
      'reed flutter',
      `${p.rpm} rpm is above 0.8 of the petals' own ${s.inlet.frequency.toFixed(0)} Hz: they will flutter`,
    )
  return flags
}

/** Warnings for a peak outside what engines of its class do; path-free, worst first by how far out it lies. */
export function plausibility(kind: EngineClass, p: CyclePoint): Flag[] {
  const b = plausible[kind]
  const rows: [keyof Bands, string, (x: number) => string][] = [
    ['bmep', 'mean pressure', (x) => `${(x / 1e5).toFixed(1)} bar`],
    ['deliveryRatio', 'delivery ratio', (x) => x.toFixed(2)],
    ['trapping', 'trapping', (x) => x.toFixed(2)],
    ['bsfc', 'fuel per energy', (x) => `${(x / gkWh).toFixed(0)} g/kWh`],
    ['exhaustT', 'exhaust', (x) => `${(x - 273.15).toFixed(0)} °C`],
  ]
  return rows
    .filter(([key]) => p[key] < b[key][0] || p[key] > b[key][1])
    .map(([key, name, show]) => ({
      code: 'implausible',
      text: `${name} ${show(p[key])} at ${p.rpm} rpm is outside ${show(b[key][0])} to ${show(b[key][1])}, what ${kind} engines show`,
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
