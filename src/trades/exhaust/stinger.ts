/**
 * How kind a stinger is to the piston. Limits: bore against the port's equal-area diameter from this project's own
 * simulations (below 0.55 power falls, and the pressure left in the pipe rises); a narrow or long stinger runs hot and
 * ends in seizure (G. Jennings, Two-Stroke Tuner's Handbook, 1973, from memory); figures of heat and pressure common
 * practice, no source.
 */
import type { Finding } from '../../base/answers/finding.ts'
import type { Risk, StingerRow } from './exhaustTypes.ts'
import { tubeBores } from './pipeShape.ts'

export interface StingerState {
  /** m */
  bore: number
  /** m, equal-area diameter of the uncovered exhaust window */
  port: number
  /** K, and of the present stinger */
  exhaustT: number
  exhaustTNow: number
  /** Pa over the air in the belly */
  inside: number
}

/** Standing of a stinger and the reason that weighs most. */
export function stingerRisk(s: StingerState): { risk: Risk; because: string } {
  const share = s.bore / s.port
  const hotter = s.exhaustT - s.exhaustTNow
  const says = {
    bore: `bore is ${share.toFixed(2)} of the exhaust port's diameter`,
    heat: `exhaust ${Math.round(hotter)} K hotter than now`,
    inside: `${(s.inside / 1000).toFixed(1)} kPa stay in the pipe`,
  }
  if (share < 0.5) return { risk: 'stop', because: says.bore }
  if (hotter > 40) return { risk: 'stop', because: says.heat }
  if (s.inside > 25e3) return { risk: 'stop', because: says.inside }
  if (hotter > 15) return { risk: 'watch', because: says.heat }
  if (share < 0.57) return { risk: 'watch', because: says.bore }
  if (s.inside > 14e3) return { risk: 'watch', because: says.inside }
  return { risk: 'good', because: says.bore }
}

/** Bores worth trying round the present one, m: tube that is sold from 0.48 to 0.85 of the port's diameter, and the present. */
export function boresToTry(port: number, now: number): number[] {
  const list = tubeBores.filter((b) => b >= 0.48 * port && b <= 0.85 * port && Math.abs(b - now) > 2e-4)
  return [...list, now].sort((a, b) => a - b)
}

/** What a search for a stinger has to say; `at` is the craft path of the engine. */
export function stingerFindings(
  v: { final: boolean; rows: readonly StingerRow[]; now: StingerRow; best: StingerRow },
  at: string,
): Finding[] {
  const { now, best } = v
  const mm = (x: number) => `${(1000 * x).toFixed(1).replace(/\.0$/, '')} mm`
  const gain = best.thrust - now.thrust
  const same = best === now || gain < 0.01 * now.thrust
  const out: Finding[] = [
    {
      id: `breath.${at}.stinger`,
      question: 'breath',
      says: same
        ? `The present stinger, ${mm(now.bore)} by ${mm(now.length)}, is within 1 % of the best that was tried.`
        : `A stinger of ${mm(best.bore)} bore, ${mm(best.length)} long, gives ${gain.toFixed(0)} N more thrust than the present ${mm(now.bore)} by ${mm(now.length)}.`,
      value: best.bore,
      unit: 'm',
      standing: v.final ? (now.risk === 'good' ? 'good' : 'watch') : 'unknown',
      because: [
        { says: `the present one: ${now.because}`, link: `${at}.exhaust.stinger.bore` },
        { says: `the best one: ${best.because}, exhaust ${Math.round(best.exhaustT - 273.15)} °C` },
        { says: `worked out with ${best.cells} cells` },
      ],
      sources: [
        'Simulation of cylinder, crankcase and pipe',
        'G. Jennings, Two-Stroke Tuner’s Handbook (1973), from memory',
      ],
    },
  ]
  out.push({
    id: `breath.${at}.stinger-caution`,
    question: 'breath',
    says: 'Change a stinger in small steps, wider first: too narrow a one holds heat in the piston, and the first sign can be a seizure.',
    standing: now.risk === 'good' ? 'good' : 'watch',
    because: [{ says: 'short full-throttle runs, then plug and piston crown (common practice, no source)' }],
    sources: ['common practice, no source'],
  })
  return out
}
