/** What a simulated two-stroke has to say: its curve, how far to trust it, its ports, and what is wrong with its inputs. */
import { inCount, inFlowSpeed, inMm, inPercent, inRpm, inTimes } from '../../base/answers/amounts.ts'
import type { Because, Finding, Standing } from '../../base/answers/finding.ts'
import { type Sentence, say, whole } from '../../base/answers/sentence.ts'
import type { TorqueBand } from './band.ts'
import { engineGives, peaksOfLine } from './engineGives.ts'
import { type EngineLimits, engineLimits } from './engineLimits.ts'
import type { SpecFault, TwoStrokeSpec } from './engineSpec.ts'
import { meanPistonSpeed } from './geometry.ts'
import { type EngineClass, type Health, healthOf, notModelled, plausibility, uncalibrated } from './health.ts'
import { blowdownTimeArea, portFigures } from './portFigures.ts'
import type { CurveResult } from './simulate.ts'
import { peaksOf } from './torqueFromSimulation.ts'
import { simulatedLine, strongBand, type TorqueLine } from './torqueLine.ts'

/** What there is to speak of; `at` is the craft path of the engine, `name` what the builder calls it. */
export interface EngineView {
  at: string
  name: string
  class: EngineClass
  cylinders: number
  spec?: TwoStrokeSpec
  missing?: string
  faults: readonly SpecFault[]
  curve?: CurveResult
  band?: TorqueBand
  /** the curve is a first one: few speeds, long cells */
  coarse?: boolean
}

const method =
  'Simulation of cylinder, crankcase and pipe: Toro (2009) for the pipe, Benson (1982) and Blair (1996) for the engine'
const timeAreas = 'G. Jennings, Two-Stroke Tuner’s Handbook (1973) and articles, quoted second-hand'

/** rev/min, as curves have it, to an amount */
const atRpm = (x: number) => inRpm(x / 60)

/** Findings for one engine beside what it gives, in no particular order. */
export function twoStrokeFindings(v: EngineView, limits: EngineLimits = engineLimits): Finding[] {
  const out: Finding[] = v.faults.map((f, i) => faultOf(v, f, i))
  if (!v.spec || v.faults.length > 0) return out
  out.push(portsOf(v, v.spec, limits))
  if (!v.curve || !peaksOf(v.curve)) return out
  out.push(trustOf(v, v.spec, v.curve, limits))
  if (v.coarse) out.push(coarseOf(v, v.curve))
  out.push(...warningsOf(v, v.spec, v.curve, limits))
  return out
}

function faultOf(v: EngineView, f: SpecFault, i: number): Finding {
  return {
    id: `breath.${v.at}.fault.${i}`,
    question: 'breath',
    says: say`${v.name}: ${f.says}.`,
    act: 'mend that in the file: it cannot be built so',
    standing: 'stop',
    because: [{ says: 'these values of the file do not go together', link: f.path }],
    sources: ['The craft file'],
  }
}

/** What a two-stroke gives by its simulation, or why that is not known: the answer to the question of how it breathes. */
export function twoStrokeAnswer(v: EngineView): Finding {
  if (!v.spec) return notKnown(v, v.missing ?? 'its inputs contradict each other')
  if (v.faults.length > 0) return notKnown(v, v.faults[0]!.says)
  if (!v.curve) return notKnown(v, 'it has not been worked out yet')
  const gives = curveOf(v, simulatedLine(v.name, v.curve, v.cylinders))
  return gives ?? notKnown(v, v.curve.points[0]?.says ?? 'no speed settled')
}

function notKnown(v: EngineView, why: Sentence): Finding {
  return {
    id: `breath.${v.at}.unknown`,
    question: 'breath',
    says: whole(say`how ${v.name} breathes is not known: ${why}`),
    standing: 'unknown',
    because: [
      { says: 'worked out from its ports, inlet and exhaust in the file', link: v.faults[0]?.path ?? v.at },
    ],
    sources: ['The craft file'],
  }
}

/** range of the peak: band of the inputs and the accuracy of the method, as squares */
function peakRange(v: EngineView, rpm: number): { low: number; high: number } {
  const near = v.band?.points.reduce<{ rpm: number; low: number; high: number } | undefined>(
    (best, p) => (!best || Math.abs(p.rpm - rpm) < Math.abs(best.rpm - rpm) ? p : best),
    undefined,
  )
  const down = Math.hypot(uncalibrated.bmep, near ? 1 - near.low : 0)
  const up = Math.hypot(uncalibrated.bmep, near ? near.high - 1 : 0)
  return { low: 1 - down, high: 1 + up }
}

/** What it gives; undefined where nothing settled. */
function curveOf(v: EngineView, line: TorqueLine): Finding | undefined {
  const peaks = peaksOfLine(line)
  if (!peaks) return undefined
  const { value: t, rpm } = peaks.torque
  const r = peakRange(v, rpm)
  const { from, to } = strongBand(line)!
  const because: Because[] = [
    {
      says: say`its power stays within a tenth of that from ${atRpm(from)} to ${atRpm(to)}, its speeds give or take ${inPercent(uncalibrated.rpm)}`,
      link: v.at,
    },
  ]
  if (v.band?.drivers[0])
    because.push({
      says: `the input that moves it most: ${driverNames[v.band.drivers[0].input]}`,
      link: v.at,
    })
  return {
    id: `breath.${v.at}.curve`,
    question: 'breath',
    says: whole(engineGives(line, { power: peakRange(v, peaks.power.rpm), torque: r })!),
    value: t,
    low: t * r.low,
    high: t * r.high,
    unit: 'N·m',
    standing: 'good',
    because,
    ...(v.band?.drivers[0] ? { measureNext: measureFor(v, v.band.drivers[0].input) } : {}),
    sources: [method],
  }
}

const driverNames = {
  exhaustOpens: 'when the exhaust opens',
  transferOpens: 'when the transfers open',
  exhaustWidth: 'the width of the exhaust port',
  trappedRatio: 'the compression',
  exhaustDischarge: 'how freely the exhaust port flows',
  scavenging: 'how well the charge clears the cylinder',
} as const

function measureFor(v: EngineView, input: keyof typeof driverNames): NonNullable<Finding['measureNext']> {
  const wheel = 'degree wheel and 0.05 mm feeler'
  switch (input) {
    case 'exhaustOpens':
      return { what: 'when the exhaust opens', with: wheel, minutes: 15, path: `${v.at}.ports.exhaust.opens` }
    case 'transferOpens':
      return {
        what: 'when the transfers open',
        with: wheel,
        minutes: 15,
        path: `${v.at}.ports.transfers.opens`,
      }
    case 'exhaustWidth':
      return {
        what: 'the exhaust window, by a rubbing',
        with: 'paper and pencil',
        minutes: 10,
        path: `${v.at}.ports.exhaust.width`,
      }
    case 'trappedRatio':
      return {
        what: 'the combustion space, with oil',
        with: 'syringe',
        minutes: 20,
        path: `${v.at}.combustion.volume`,
      }
    default:
      return {
        what: 'the speed of strongest pull on the water',
        with: 'phone recording and luggage scale',
        minutes: 30,
      }
  }
}

function trustOf(v: EngineView, s: TwoStrokeSpec, curve: CurveResult, limits: EngineLimits): Finding {
  const healths: Health[] = curve.points.map((p) => healthOf(s, p, limits))
  const settled = curve.points.filter((p) => p.converged).length
  const closing = healths.filter((h) => h.closes).length
  const peak = peaksOf(curve)!.torque.point!
  const odd = plausibility(v.class, peak)
  const all = closing === curve.points.length
  const standing: Standing =
    all && odd.length === 0
      ? 'good'
      : closing >= limits.closing.value * curve.points.length
        ? 'watch'
        : 'unknown'
  const worst = Math.max(
    ...healths.flatMap((h) => h.checks.filter((c) => c.name === 'energy').map((c) => Math.abs(c.value))),
  )
  return {
    id: `breath.${v.at}.trust`,
    question: 'breath',
    says: say`How far to trust this: ${inCount(settled)} of ${inCount(curve.points.length)} speeds settled and the books of ${inCount(closing)} close (energy within ${inPercent(worst, 0.1)}); without calibration the peak may lie ${inPercent(uncalibrated.rpm)} off in rpm and ${inPercent(uncalibrated.bmep)} in torque. Differences between two pipes are much better than that.`,
    value: closing / curve.points.length,
    unit: '1',
    standing,
    because: [
      ...odd.map((f) => ({ says: f.text, link: v.at })),
      ...curve.points
        .filter((p) => !p.converged)
        .map((p) => ({ says: p.says ?? `${p.rpm} rpm did not settle` })),
      ...notModelled.map((says) => ({ says: `left out: ${says}` })),
    ],
    measureNext: {
      what: 'the speed of strongest pull, and fuel burnt per minute at full throttle',
      with: 'phone recording, measuring bottle and clock',
      minutes: 30,
    },
    sources: [method],
  }
}

/** That a first curve is no more than that, and how to get the fine one. */
function coarseOf(v: EngineView, curve: CurveResult): Finding {
  return {
    id: `breath.${v.at}.coarse`,
    question: 'breath',
    says: say`${v.name}’s curve is a first one, from ${inCount(curve.points.length)} speeds and cells of ${inMm(curve.dx)}: a fine one may differ by ${inPercent(0.03)} in torque and ${inPercent(0.01)} in speed.`,
    standing: 'unknown',
    act: 'run look with --fine once, or breathe: the fine curve takes some seconds and is kept',
    because: [{ says: 'no fine curve of this engine is kept yet', link: v.at }],
    sources: [method],
  }
}

/** Warnings of single speeds, each said once for the speeds it concerns. */
function warningsOf(v: EngineView, s: TwoStrokeSpec, curve: CurveResult, limits: EngineLimits): Finding[] {
  const seen = new Map<string, { text: Sentence; rpms: number[]; path?: string }>()
  for (const p of curve.points)
    for (const f of p.point ? healthOf(s, p, limits).flags : []) {
      const known = seen.get(f.code)
      if (known) known.rpms.push(p.rpm)
      else seen.set(f.code, { text: f.text, rpms: [p.rpm], ...(f.path ? { path: f.path } : {}) })
    }
  return [...seen].map(([code, w]) => {
    const [from, to] = [Math.min(...w.rpms), Math.max(...w.rpms)]
    const where = from === to ? say`at ${atRpm(from)}` : say`from ${atRpm(from)} to ${atRpm(to)}`
    return {
      id: `breath.${v.at}.${code.replaceAll(' ', '-')}`,
      question: 'breath' as const,
      says: say`${v.name}, ${where}: ${w.text}.`,
      twin: `engine.${code}`,
      standing: 'watch' as const,
      because: [
        {
          says: say`so at ${inCount(w.rpms.length)} of ${inCount(curve.points.length)} speeds worked out`,
          link: w.path ? `${v.at}.${w.path}` : v.at,
        },
      ],
      sources: [method],
    }
  })
}

function portsOf(v: EngineView, s: TwoStrokeSpec, limits: EngineLimits): Finding {
  const peak = v.curve && peaksOf(v.curve)?.power.rpm
  const rpm = peak ?? 8000
  const figures = portFigures(s, rpm)
  const slow = figures.reduce((a, b) => (b.suitsTo < a.suitsTo ? b : a))
  const held = peak !== undefined && slow.suitsTo < limits.portsHold.value * peak
  const name = slow.port === 'transfers' ? 'transfers suit' : `${slow.port} suits`
  return {
    id: `breath.${v.at}.ports`,
    question: 'breath',
    says: say`${v.name}: the ${name} the lowest speed, ${atRpm(slow.suitsFrom)} to ${atRpm(slow.suitsTo)}${peak ? say`, for a power peak at ${atRpm(peak)}` : ''}.`,
    ...(held
      ? { act: say`open the ${slow.port} wider or for longer, or seek a pipe for ${atRpm(slow.suitsTo)}` }
      : {}),
    value: slow.suitsTo,
    unit: 'rev/min',
    standing: held ? 'watch' : 'good',
    because: [
      ...figures.map((f) => ({
        says: say`${f.port}: time-area ${inTimes(f.timeArea * 1e2)} against ${inTimes(f.low * 1e2)} to ${inTimes(f.high * 1e2)} (10⁻² s/m) at ${atRpm(rpm)}; suits ${atRpm(f.suitsFrom)} to ${atRpm(f.suitsTo)}`,
        link: `${v.at}.${f.port === 'inlet' ? 'inlet' : `ports.${f.port}`}`,
      })),
      {
        says: say`blowdown ${inTimes(blowdownTimeArea(s, rpm) * 1e4, 0.1)} × 10⁻⁴ s/m; no published target, compare with an engine you know`,
      },
      { says: say`mean piston speed ${inFlowSpeed(meanPistonSpeed(s.crank.stroke, rpm))} at ${atRpm(rpm)}` },
    ],
    sources: [timeAreas],
  }
}
