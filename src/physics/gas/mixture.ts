/**
 * Burnt gas of petrol (as iso-octane, C8H18) and air, frozen: composition, gas constant, heats, speed of sound.
 * Heat capacities: seven-coefficient polynomials of the GRI-Mech 3.0 thermodynamic file (Smith et al., 1999), after
 * B. J. McBride et al., NASA TM-4513 (1993); from memory, 300 to 3500 K. Rich composition: water-gas equilibrium
 * frozen with the constant 3.5, J. B. Heywood, Internal Combustion Engine Fundamentals (1988), sec. 4.9.
 */

/** one species: molar mass kg/mol, cp/R coefficients below and above 1000 K */
interface Species {
  molar: number
  low: readonly number[]
  high: readonly number[]
}

const species = {
  CO2: {
    molar: 0.0440095,
    low: [2.35677352, 8.98459677e-3, -7.12356269e-6, 2.45919022e-9, -1.43699548e-13],
    high: [3.85746029, 4.41437026e-3, -2.21481404e-6, 5.23490188e-10, -4.72084164e-14],
  },
  CO: {
    molar: 0.0280101,
    low: [3.57953347, -6.1035368e-4, 1.01681433e-6, 9.07005884e-10, -9.04424499e-13],
    high: [2.71518561, 2.06252743e-3, -9.98825771e-7, 2.30053008e-10, -2.03647716e-14],
  },
  H2O: {
    molar: 0.01801528,
    low: [4.19864056, -2.0364341e-3, 6.52040211e-6, -5.48797062e-9, 1.77197817e-12],
    high: [3.03399249, 2.17691804e-3, -1.64072518e-7, -9.7041987e-11, 1.68200992e-14],
  },
  H2: {
    molar: 0.00201588,
    low: [2.34433112, 7.98052075e-3, -1.9478151e-5, 2.01572094e-8, -7.37611761e-12],
    high: [3.3372792, -4.94024731e-5, 4.99456778e-7, -1.79566394e-10, 2.00255376e-14],
  },
  N2: {
    molar: 0.0280134,
    low: [3.298677, 1.4082404e-3, -3.963222e-6, 5.641515e-9, -2.444854e-12],
    high: [2.92664, 1.4879768e-3, -5.68476e-7, 1.0097038e-10, -6.753351e-15],
  },
  O2: {
    molar: 0.0319988,
    low: [3.78245636, -2.99673416e-3, 9.84730201e-6, -9.68129509e-9, 3.24372837e-12],
    high: [3.28253784, 1.48308754e-3, -7.57966669e-7, 2.09470555e-10, -2.16717794e-14],
  },
} satisfies Record<string, Species>

type Name = keyof typeof species
/** mole fractions; they add up to 1 */
export type Composition = Partial<Record<Name, number>>

const universalR = 8.314462618

/** Wet products of iso-octane and air at the given air ratio (0.6 to 1.5). */
export function burntPetrol(lambda: number): Composition {
  if (!(lambda >= 0.6 && lambda <= 1.5)) throw new RangeError(`lambda: ${lambda}; must be 0.6 to 1.5`)
  const o2 = 12.5 * lambda
  const n2 = o2 * (0.7905 / 0.2095)
  if (lambda >= 1) return normal({ CO2: 8, H2O: 9, O2: o2 - 12.5, N2: n2 })
  // carbon 8 = CO2 + CO, hydrogen 9 = H2O + H2, oxygen 2 o2 = 2 CO2 + CO + H2O, CO H2O = 3.5 CO2 H2
  const k = 3.5
  const residual = (co2: number): number => {
    const co = 8 - co2
    const h2o = 2 * o2 - 2 * co2 - co
    return co * h2o - k * co2 * (9 - h2o)
  }
  // residual falls as CO2 rises within the range where all four are positive
  let a = Math.max(0, 2 * o2 - 17)
  let b = Math.min(8, 2 * o2 - 8)
  for (let i = 0; i < 80; i++) {
    const m = 0.5 * (a + b)
    if (residual(m) > 0) a = m
    else b = m
  }
  const co2 = 0.5 * (a + b)
  const co = 8 - co2
  const h2o = 2 * o2 - 2 * co2 - co
  return normal({ CO2: co2, CO: co, H2O: h2o, H2: 9 - h2o, N2: n2 })
}

function normal(moles: Composition): Composition {
  const total = Object.values(moles).reduce((s, x) => s + x, 0)
  return Object.fromEntries(Object.entries(moles).map(([k, x]) => [k, x / total])) as Composition
}

function sumOver(mix: Composition, f: (s: Species) => number): number {
  let sum = 0
  for (const [name, x] of Object.entries(mix)) sum += x * f(species[name as Name])
  return sum
}

/** Gas constant of a mixture, J/(kg K). */
export const gasConstantOf = (mix: Composition): number => universalR / sumOver(mix, (s) => s.molar)

/** Ratio of specific heats at temperature t, 300 to 3500 K. */
export function gammaOf(mix: Composition, t: number): number {
  const cp = sumOver(mix, (s) => {
    const c = t < 1000 ? s.low : s.high
    return c[0]! + t * (c[1]! + t * (c[2]! + t * (c[3]! + t * c[4]!)))
  })
  return cp / (cp - 1)
}

/** Speed of sound at temperature t, m/s. */
export const soundSpeedOf = (mix: Composition, t: number): number =>
  Math.sqrt(gammaOf(mix, t) * gasConstantOf(mix) * t)

/** Viscosity of exhaust gas, Pa s; Blair (1996), from memory; 250 to 2500 K. */
export const viscosityOf = (t: number): number => 7.457e-6 + t * (4.1547e-8 - 7.4793e-12 * t)

/** Conductivity of exhaust gas, W/(m K); Blair (1996), from memory; 250 to 2500 K. */
export const conductivityOf = (t: number): number => 6.1944e-3 + t * (7.3814e-5 - 1.2491e-8 * t)
