/**
 * What a supported plate with edges that cannot pull in does beyond Berger's equation.
 *
 * Berger spreads the tension evenly over the plate. Under a foot it gathers where the sheet hangs steepest, the more so the longer the
 * plate is and the smaller the foot: Berger is then up to a third soft, and under an even load 3 % stiff. The full equations (Föppl
 * 1907, von Kármán 1910; Timoshenko and Woinowsky-Krieger 1959, § 100) were solved by Ritz's method outside this code, edges fixed in
 * their plane, for 210 plates: sides 1 : 1 to 3 : 1, patches from 0.15 to 1 of the short side and from half to 2.5 times as long as wide,
 * sagging one to six thicknesses. The three factors below are least squares of those: deflection within 1.5 % (4 % at worst),
 * membrane stress in the middle within 8 %, bending stress within 5 % (standard deviations). The Ritz solution itself meets Levy's
 * clamped square (NACA TN 847, 1942, from memory) within 3 % and the square membrane of Vlassak and Nix within 1 %.
 */
import type { Patch, Plate } from './loadedPlate.ts'

export interface HeldField {
  /** tension over Berger's, at a mean tension (N/m) */
  gain: (tension: number) => number
  /** membrane stress in the middle over the mean */
  pulls: number
  /** bending stress in the middle over that of the series, at a mean tension: 1 at none */
  bends: (tension: number) => number
}

/** sides beyond which a plate is worked out as this long: its ends are too far off to matter */
const longest = 3

/** The factors of a plate and a patch; D its bending stiffness, N·m. */
export function heldField(p: Plate, patch: Patch, D: number): HeldField {
  const [long, short, along, across] =
    p.a >= p.b ? [p.a, p.b, patch.u, patch.v] : [p.b, p.a, patch.v, patch.u]
  const reckoned = Math.min(long, longest * short)
  const beyond = long / reckoned
  const sides = Math.log(reckoned / short)
  const su = Math.min(1, along / reckoned)
  const sv = across / short
  // a long plate spreads a foot's tension thinner still by Berger; one loaded all along is a strip, for which he is right
  const bare = along / long
  const steady = (0.512 + 0.243 * sides - 0.37 * su - 0.038 * sv) * sides + 0.151 * sv - 0.145 * su - 0.138
  const first = steady * (1 - bare + bare / beyond) + (1 - bare) * Math.log(beyond)
  const strain = (tension: number) => Math.log1p((tension * short * short) / (Math.PI ** 2 * D))
  return {
    gain: (tension) => Math.exp(first + 0.114 * (1 - sv) * strain(tension)),
    pulls: Math.exp(0.605 + 0.098 * sides - 0.073 * sv - (0.436 + 0.24 * sides) * su),
    bends: (tension) => Math.exp(-(0.0764 - 0.0689 * sv) * strain(tension)),
  }
}
