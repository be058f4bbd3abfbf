/** What a simulated two-stroke has to say: its curve, how far to trust it, its ports, and what is wrong with its inputs. */
import type { Because, Finding, Standing } from '../../base/answers/finding.ts'
import type { TorqueBand } from './band.ts'
import type { SpecFault, TwoStrokeSpec } from './engineSpec.ts'
import { meanPistonSpeed } from './geometry.ts'
import { type EngineClass, type Health, healthOf, notModelled, plausibility, uncalibrated } from './health.ts'
import { blowdownTimeArea, portFigures } from './portFigures.ts'
import type { CurveResult } from './simulate.ts'
import { peaksOf } from './torqueFromSimulation.ts'

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
}

const method =
  'Simulation of cylinder, crankcase and pipe: Toro (2009) for the pipe, Benson (1982) and Blair (1996) for the engine'
const timeAreas = 'G. Jennings, Two-Stroke Tuner’s Handbook (1973) and articles, quoted second-hand'

const rpmText = (x: number): string => `${Math.round(x / 10) * 10} rpm`.replace(/\B(?=(\d{3})+ rpm)/g, ' ')
const kW = (x: number): string => `${(x / 1000).toFixed(1)} kW`

/** Findings for one engine, in no particular order. */
export function twoStrokeFindings(v: EngineView): Finding[] {
  const out: Finding[] = v.faults.map((f, i) => faultOf(v, f, i))
  if (!v.spec) {
    out.push(notKnown(v, v.missing ?? 'its inputs contradict each other'))
    return out
  }
  if (v.faults.length > 0) return out
  out.push(portsOf(v, v.spec))
  if (!v.curve) return out
  const peaks = peaksOf(v.curve)
  if (!peaks) {
    out.push(notKnown(v, v.curve.points[0]?.says ?? 'no speed settled'))
    return out
  }
  out.push(
    curveOf(v, peaks.torque.point!.torque, peaks.torque.rpm, peaks.power.point!.power, peaks.power.rpm),
  )
  out.push(trustOf(v, v.spec, v.curve))
  out.push(...warningsOf(v, v.spec, v.curve))
  return out
}

function faultOf(v: EngineView, f: SpecFault, i: number): Finding {
  return {
    id: `breath.${v.at}.fault.${i}`,
    question: 'breath',
    says: `${v.name}: ${f.says}.`,
    standing: 'stop',
    because: [{ says: f.says, link: f.path }],
    sources: ['The craft file'],
  }
}

function notKnown(v: EngineView, why: string): Finding {
  return {
    id: `breath.${v.at}.unknown`,
    question: 'breath',
    says: `How ${v.name} breathes is not known: ${why}.`,
    standing: 'unknown',
    because: [{ says: why, link: v.at }],
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

function curveOf(v: EngineView, torque: number, torqueRpm: number, power: number, powerRpm: number): Finding {
  const r = peakRange(v, torqueRpm)
  const [t, p] = [torque * v.cylinders, power * v.cylinders]
  const because: Because[] = [
    { says: `most torque at ${rpmText(torqueRpm)}, give or take 5 %`, link: 'result:torque curve' },
    { says: `most power ${kW(p)} at ${rpmText(powerRpm)}`, link: 'result:torque curve' },
  ]
  if (v.band?.drivers[0])
    because.push({
      says: `the input that moves it most: ${driverNames[v.band.drivers[0].input]}`,
      link: v.at,
    })
  return {
    id: `breath.${v.at}.curve`,
    question: 'breath',
    says: `${v.name} gives ${t.toFixed(1)} N·m at ${rpmText(torqueRpm)} (${(t * r.low).toFixed(1)} to ${(t * r.high).toFixed(1)}) and ${kW(p)} at ${rpmText(powerRpm)}, by simulation.`,
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

function trustOf(v: EngineView, s: TwoStrokeSpec, curve: CurveResult): Finding {
  const healths: Health[] = curve.points.map((p) => healthOf(s, p))
  const settled = curve.points.filter((p) => p.converged).length
  const closing = healths.filter((h) => h.closes).length
  const peak = peaksOf(curve)!.torque.point!
  const odd = plausibility(v.class, peak)
  const all = closing === curve.points.length
  const standing: Standing =
    all && odd.length === 0 ? 'good' : closing >= 0.7 * curve.points.length ? 'watch' : 'unknown'
  const worst = Math.max(
    ...healths.flatMap((h) => h.checks.filter((c) => c.name === 'energy').map((c) => Math.abs(c.value))),
  )
  return {
    id: `breath.${v.at}.trust`,
    question: 'breath',
    says: `How far to trust this: ${settled} of ${curve.points.length} speeds settled and the books of ${closing} close (energy within ${(100 * worst).toFixed(1)} %); without calibration the peak may lie 5 % off in rpm and 15 % in torque. Differences between two pipes are much better than that.`,
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

/** Warnings of single speeds, each said once for the speeds it concerns. */
function warningsOf(v: EngineView, s: TwoStrokeSpec, curve: CurveResult): Finding[] {
  const seen = new Map<string, { text: string; rpms: number[]; path?: string }>()
  for (const p of curve.points)
    for (const f of p.point ? healthOf(s, p).flags : []) {
      const known = seen.get(f.code)
      if (known) known.rpms.push(p.rpm)
      else seen.set(f.code, { text: f.text, rpms: [p.rpm], ...(f.path ? { path: f.path } : {}) })
    }
  return [...seen].map(([code, w]) => {
    const [from, to] = [Math.min(...w.rpms), Math.max(...w.rpms)]
    const where = from === to ? `at ${rpmText(from)}` : `from ${rpmText(from)} to ${rpmText(to)}`
    return {
      id: `breath.${v.at}.${code.replaceAll(' ', '-')}`,
      question: 'breath' as const,
      says: `${v.name}, ${where}: ${w.text}.`,
      standing: 'watch' as const,
      because: [{ says: w.text, link: w.path ? `${v.at}.${w.path}` : v.at }],
      sources: [method],
    }
  })
}

function portsOf(v: EngineView, s: TwoStrokeSpec): Finding {
  const peak = v.curve && peaksOf(v.curve)?.power.rpm
  const rpm = peak ?? 8000
  const figures = portFigures(s, rpm)
  const slow = figures.reduce((a, b) => (b.suitsTo < a.suitsTo ? b : a))
  const held = peak !== undefined && slow.suitsTo < 0.85 * peak
  const name = slow.port === 'transfers' ? 'transfers suit' : `${slow.port} suits`
  return {
    id: `breath.${v.at}.ports`,
    question: 'breath',
    says: `${v.name}: the ${name} the lowest speed, ${rpmText(slow.suitsFrom)} to ${rpmText(slow.suitsTo)}${peak ? `, for a power peak at ${rpmText(peak)}` : ''}.`,
    value: slow.suitsTo,
    unit: 'rev/min',
    standing: held ? 'watch' : 'good',
    because: [
      ...figures.map((f) => ({
        says: `${f.port}: time-area ${(f.timeArea * 1e2).toFixed(2)} against ${(f.low * 1e2).toFixed(2)} to ${(f.high * 1e2).toFixed(2)} (10⁻² s/m) at ${rpmText(rpm)}; suits ${rpmText(f.suitsFrom)} to ${rpmText(f.suitsTo)}`,
        link: `${v.at}.${f.port === 'inlet' ? 'inlet' : `ports.${f.port}`}`,
      })),
      {
        says: `blowdown ${(blowdownTimeArea(s, rpm) * 1e4).toFixed(1)} × 10⁻⁴ s/m; no published target, compare with an engine you know`,
      },
      { says: `mean piston speed ${meanPistonSpeed(s.crank.stroke, rpm).toFixed(1)} m/s at ${rpmText(rpm)}` },
    ],
    sources: [timeAreas],
  }
}
