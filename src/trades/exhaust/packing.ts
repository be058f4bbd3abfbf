/**
 * Fibrous packing: M. E. Delany and E. N. Bazley, "Acoustical properties of fibrous absorbent materials",
 * Applied Acoustics 3 (1970) 105-116, power laws in X = ρ f/σ, valid for 0.01 < X < 1 (coefficients as widely
 * reprinted). Straight-through silencer as two parallel media for long waves (derived here; Munjal 1987 gives
 * the same limit); hot packing: resistivity as (T/293)^0.7 (gas viscosity).
 */
import {
  type Complex,
  complex,
  cosine,
  divide,
  magnitude,
  multiply,
  scale,
  sine,
  squareRoot,
  subtract,
} from '../../base/numerics/complex.ts'

export interface Medium {
  /** characteristic impedance, Pa·s/m */
  Z: Complex
  /** wave number, 1/m */
  k: Complex
  /** X = ρ f/σ, and whether it lies in the fitted range */
  X: number
  fitted: boolean
}

/** Packing of flow resistivity σ (Pa·s/m²) at frequency f (Hz) in gas of density ρ and sound speed c. */
export function delanyBazley(f: number, resistivity: number, density: number, c: number): Medium {
  const X = (density * f) / resistivity
  const Z0 = density * c
  const k0 = (2 * Math.PI * f) / c
  return {
    Z: scale(complex(1 + 0.0571 * X ** -0.754, -0.087 * X ** -0.732), Z0),
    k: scale(complex(1 + 0.0978 * X ** -0.7, -0.189 * X ** -0.595), k0),
    X,
    fitted: X >= 0.01 && X <= 1,
  }
}

/**
 * Normal-incidence absorption, 0 to 1, of a layer `depth` m on a hard wall. The fitted laws are not quite passive for thin
 * layers at low frequency (Y. Miki, J. Acoust. Soc. Jpn. (E) 11 (1990) 19, from memory): what would be below nought is nought.
 */
export function absorption(medium: Medium, depth: number, density: number, c: number): number {
  const kd = scale(medium.k, depth)
  // Z_s = -j Z cot(kd)
  const surface = multiply(complex(0, -1), multiply(medium.Z, divide(cosine(kd), sine(kd))))
  const Z0 = complex(density * c)
  const r = divide(subtract(surface, Z0), { re: surface.re + Z0.re, im: surface.im })
  return Math.max(0, 1 - magnitude(r) ** 2)
}

/** Resistivity of packing at T (K) from its value cold. */
export function hotResistivity(cold: number, T: number): number {
  return cold * (T / 293) ** 0.7
}

export interface StraightThrough {
  /** m, of the open core and of the packing round it */
  bore: number
  outer: number
  resistivity: number
  density: number
  c: number
}

/**
 * Attenuation, dB/m, of a packed straight-through tube at f (Hz): core and packing as parallel media with one
 * axial wave. Holds below the first cross mode and to about 1 kHz; take half of it in a design.
 */
export function straightThroughLoss(s: StraightThrough, f: number): number {
  const omega = 2 * Math.PI * f
  const medium = delanyBazley(f, s.resistivity, s.density, s.c)
  const S1 = (Math.PI / 4) * s.bore ** 2
  const S2 = (Math.PI / 4) * (s.outer ** 2 - s.bore ** 2)
  const densityA = scale(multiply(medium.Z, medium.k), 1 / omega)
  const bulkA = divide(scale(medium.Z, omega), medium.k)
  const stiff = { re: S1 / (s.density * s.c ** 2), im: 0 }
  const soft = divide(complex(S2), bulkA)
  const heavy = { re: S1 / s.density, im: 0 }
  const light = divide(complex(S2), densityA)
  const ratio = divide({ re: stiff.re + soft.re, im: soft.im }, { re: heavy.re + light.re, im: light.im })
  return (20 / Math.LN10) * Math.abs(scale(squareRoot(ratio), omega).im)
}

/** First cross mode of a round chamber, Hz: the plane-wave answers end here (zero of J1', 1.841). */
export function firstCrossMode(diameter: number, c: number): number {
  return (1.8412 * c) / (Math.PI * diameter)
}
