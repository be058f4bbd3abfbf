/**
 * Plane waves in silencers by four-pole matrices of pressure and acoustic mass flow v = ρSu.
 * Source: M. L. Munjal, Acoustics of Ducts and Mufflers (Wiley 1987, 2nd ed. 2014), ch. 2-3 (from memory,
 * tested against the closed form of the single chamber of D. D. Davis, G. M. Stokes, D. Moore and
 * G. L. Stevens, NACA Report 1192 (1954)).
 */
import {
  add,
  type Complex,
  complex,
  divide,
  magnitude,
  multiply,
  scale,
} from '../../base/numerics/complex.ts'

/** [A, B, C, D] of  p1 = A p2 + B v2,  v1 = C p2 + D v2 */
export type FourPole = readonly [Complex, Complex, Complex, Complex]

const zero = complex(0)
const one = complex(1)
export const through: FourPole = [one, zero, zero, one]

/** The elements one after the other in the direction of flow. */
export function chain(elements: readonly FourPole[]): FourPole {
  return elements.reduce<FourPole>(
    ([a, b, c, d], [e, f, g, h]) => [
      add(multiply(a, e), multiply(b, g)),
      add(multiply(a, f), multiply(b, h)),
      add(multiply(c, e), multiply(d, g)),
      add(multiply(c, f), multiply(d, h)),
    ],
    through,
  )
}

/** A tube of `length` (m) and `area` (m²) at wave number k (1/m) and sound speed c; `mach` of a steady flow. */
export function tube(length: number, area: number, k: number, c: number, mach = 0): FourPole {
  const kl = (k * length) / (1 - mach * mach)
  const Y = c / area
  const turn = complex(Math.cos(mach * kl), -Math.sin(mach * kl))
  const cos = complex(Math.cos(kl))
  const sin = Math.sin(kl)
  return [
    multiply(turn, cos),
    multiply(turn, complex(0, Y * sin)),
    multiply(turn, complex(0, sin / Y)),
    multiply(turn, cos),
  ]
}

/** A side branch of impedance Z (p over v). */
export function branch(Z: Complex): FourPole {
  return [one, zero, divide(one, Z), one]
}

/** Impedance of a closed side volume `length` deep with cross-section `area`. */
export function closedStub(length: number, area: number, k: number, c: number): Complex {
  const t = Math.tan(k * length)
  return complex(0, -c / area / (t === 0 ? Number.MIN_VALUE : t))
}

/**
 * Transmission loss, dB, of a four-pole between tubes of area S1 and S2 in gas of sound speed c:
 * power sent in over power passed on into an endless tube.
 */
export function transmissionLoss(m: FourPole, S1: number, S2: number, c: number): number {
  const Y1 = c / S1
  const Y2 = c / S2
  const sum = add(add(m[0], scale(m[1], 1 / Y2)), add(scale(m[2], Y1), scale(m[3], Y1 / Y2)))
  return 20 * Math.log10(0.5 * magnitude(sum) * Math.sqrt(Y2 / Y1))
}

/** Closed form of the single expansion chamber: area ratio m, length l (Davis et al. 1954, eq. for one chamber). */
export function chamberLoss(m: number, k: number, length: number): number {
  return 10 * Math.log10(1 + 0.25 * (m - 1 / m) ** 2 * Math.sin(k * length) ** 2)
}
