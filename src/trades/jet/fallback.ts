/**
 * Pump of which only size and duty are known: best point from Cordier's line, curve about it from the slope of a screw.
 * O. Cordier, "Ähnlichkeitsbedingungen für Strömungsmaschinen" (BWK 5, 1953), points as repeated in turbomachinery texts.
 * Efficiency levels and the parabola about the best point are engineering defaults. Efficiency step-up of Ackeret's form.
 */
import { plateFriction } from './skin.ts'

/** specific speed ω_s against specific diameter D(gH)^¼/√Q */
const cordier: readonly (readonly [number, number])[] = [
  [1, 3.01],
  [2, 1.89],
  [3, 1.57],
  [4, 1.4],
  [5, 1.26],
  [6, 1.19],
  [8, 1.04],
  [10, 0.93],
]

/** Specific diameter on Cordier's line at specific speed 1 to 10, straight in log-log; RangeError outside. */
export function cordierDiameter(omegaS: number): number {
  const last = cordier.length - 1
  if (!(omegaS >= cordier[0]![0] && omegaS <= cordier[last]![0]))
    throw new RangeError(`specific speed ${omegaS} is outside 1 to 10, where Cordier's line is tabulated`)
  let i = 0
  while (i < last - 1 && omegaS > cordier[i + 1]![0]) i++
  const [x0, y0] = cordier[i]!
  const [x1, y1] = cordier[i + 1]!
  return y0 * (omegaS / x0) ** (Math.log(y1 / y0) / Math.log(x1 / x0))
}

/** Head coefficient gH/U_t² and flow coefficient Q/(A_disc U_t) of a Cordier pump at specific speed ω_s. */
function cordierCoefficients(omegaS: number): { psi: number; phi: number } {
  const delta = cordierDiameter(omegaS)
  return { psi: 4 / (omegaS * delta) ** 2, phi: 8 / (Math.PI * omegaS * delta ** 3) }
}

type Finish = 'tight metal' | 'sanded print' | 'raw print'
const bestEfficiency: Record<Finish, number> = {
  'tight metal': 0.82,
  'sanded print': 0.75,
  'raw print': 0.68,
}

interface FallbackPump {
  /** best point: Q/(nD³), gH/(nD)², efficiency */
  flow: number
  head: number
  efficiency: number
  /** relative fall of head for a relative rise of flow */
  slope: number
}

/** Pump of unknown blades that was presumably chosen well for specific speed ω_s. `advance` flow per screw advance at the best point. */
export function fallbackPump(omegaS: number, finish: Finish, advance = 0.65): FallbackPump {
  const { psi, phi } = cordierCoefficients(omegaS)
  return {
    flow: (phi * Math.PI ** 2) / 4,
    head: psi * Math.PI ** 2,
    efficiency: bestEfficiency[finish],
    slope: advance / (1 - advance),
  }
}

/** Head and torque coefficients at Q/(nD³) = q; `trusted` false beyond 0.6 to 1.35 of the best flow. */
export function fallbackAt(
  pump: FallbackPump,
  q: number,
): { head: number; torque: number; eta: number; trusted: boolean } {
  const x = q / pump.flow
  const head = pump.head * (1 - pump.slope * (x - 1))
  const eta = pump.efficiency * (1 - 1.4 * (x - 1) ** 2)
  const trusted = x > 0.6 && x < 1.35 && head > 0
  return { head, eta, torque: trusted ? (q * head) / (2 * Math.PI * eta) : Number.NaN, trusted }
}

/** Efficiency of a larger or smoother pump from a measured one: 1 - η₂ = (1 - η₁)(0.3 + 0.7 C_f2/C_f1). */
export function stepUp(
  eta: number,
  from: { chord: number; speed: number; kinematic: number; roughness: number },
  to: { chord: number; speed: number; kinematic: number; roughness: number },
): number {
  const c = (x: typeof from) => plateFriction(x.chord, x.speed, x.kinematic, x.roughness)
  return 1 - (1 - eta) * (0.3 + (0.7 * c(to)) / c(from))
}
