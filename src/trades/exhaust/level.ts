/**
 * How loud an outlet is, from the mass flow it breathes out.
 * Source: monopole of strength dṁ/dt, p' = (dṁ/dt)/(4πr) in free space, doubled over water or hard ground
 * (A. P. Dowling and J. E. Ffowcs Williams, Sound and Sources of Sound, 1983); A-weighting: IEC 61672-1:2013,
 * Annex E analytic form. Holds for ka well below 1.
 */
import { harmonicSums } from '../../base/numerics/harmonic.ts'

/** 20 µPa */
const reference = 20e-6

/** Sound pressure level, dB, of a root-mean-square pressure, Pa. */
export function levelOf(pressure: number): number {
  return 20 * Math.log10(pressure / reference)
}

/** A-weighting, dB, at f Hz. */
export function aWeight(f: number): number {
  const f2 = f * f
  const a =
    (12194 ** 2 * f2 * f2) /
    ((f2 + 20.6 ** 2) * Math.sqrt((f2 + 107.7 ** 2) * (f2 + 737.9 ** 2)) * (f2 + 12194 ** 2))
  return 20 * Math.log10(a) + 2
}

/** Root-mean-square pressure, Pa, at distance r (m) of one harmonic of mass flow (amplitude kg/s) at f Hz. */
export function harmonicPressure(amplitude: number, f: number, r: number, overWater: boolean): number {
  return (2 * Math.PI * f * amplitude) / (Math.SQRT2 * (overWater ? 2 : 4) * Math.PI * r)
}

/** What no muffler takes away: jet noise, shell, intake, hull; at 1 m, dB(A). Common practice, no source. */
export const floorAtOneMetre = 90

export interface OutletLevel {
  /** dB(A) at the distance asked for; never below the floor carried there */
  level: number
  /** dB(A) of the outlet alone */
  outlet: number
  /** true when the floor, not the outlet, sets the figure */
  onFloor: boolean
  harmonics: { frequency: number; level: number }[]
}

/**
 * Level at distance r (m) of one cycle of outlet mass flow (kg/s, evenly spaced over one turn) at rotation n
 * (rev/s), over water. `loss` gives what a silencer beyond that point takes off, dB at f.
 */
export function outletLevel(
  massFlow: ArrayLike<number>,
  n: number,
  r: number,
  loss: (f: number) => number = () => 0,
): OutletLevel {
  const count = massFlow.length
  const harmonics: { frequency: number; level: number }[] = []
  let energy = 0
  // harmonics up to 5 kHz, or what the samples hold
  const most = Math.min(Math.floor(count / 2) - 1, Math.floor(5000 / n))
  for (let h = 1; h <= most; h++) {
    const { re, im } = harmonicSums(massFlow, h)
    const f = h * n
    const amplitude = (2 * Math.hypot(re, im)) / count
    const level = levelOf(harmonicPressure(amplitude, f, r, true)) - loss(f) + aWeight(f)
    if (Number.isFinite(level)) {
      harmonics.push({ frequency: f, level })
      energy += 10 ** (level / 10)
    }
  }
  const outlet = 10 * Math.log10(energy)
  const floor = floorAtOneMetre - 20 * Math.log10(r)
  const level = 10 * Math.log10(energy + 10 ** (floor / 10))
  return { level, outlet, onFloor: outlet < floor, harmonics }
}

/**
 * Published pass-by limits at 25 m to compare with, dB(A): engine power W, engines of the craft
 * (Directive 2013/53/EU, Annex I part C: 67 to 10 kW, 72 to 40 kW, 75 above, 3 more for two or more engines;
 * measured by EN ISO 14509).
 */
export function passByLimit(power: number, engines: number): number {
  const base = power <= 10e3 ? 67 : power <= 40e3 ? 72 : 75
  return base + (engines > 1 ? 3 : 0)
}

/** Levels of incoherent sources together, dB. */
export function sumOfLevels(levels: readonly number[]): number {
  return 10 * Math.log10(levels.reduce((sum, l) => sum + 10 ** (l / 10), 0))
}
