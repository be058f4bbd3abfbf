/**
 * Foams: published strengths, stiffness, water uptake, heat.
 * Sources: ASTM C578 table of types (compressive strength at yield or 10 %, density, flexural strength, water absorption);
 * ASTM D6817 (EPS compressive resistance at 1, 5 and 10 %); moduli, creep and temperatures from makers' data sheets; EN 13163 class names.
 * Strengths are minima; only the 1 % column is for loads that come again and again.
 */
export interface Foam {
  /** kind and density in kg/m³ */
  id: string
  /** type of ASTM C578; absent for poured foam */
  type?: string
  kind: 'EPS' | 'XPS' | 'PU'
  /** kg/m³ */
  density: number
  /** Pa at yield or 10 % strain, least */
  crush: number
  /** Pa at 1 % strain where published: the foot-load limit */
  first?: number
  /** Pa, compressed modulus, likely */
  modulus: number
  /** Pa, shear modulus and strength, likely */
  shearModulus: number
  shearStrength: number
  /** fraction of volume that takes up water */
  soaked: number
  /** K, for long; from data sheets */
  hottest: number
}

const kPa = 1e3
const eps = (
  id: string,
  type: string,
  density: number,
  crush: number,
  modulus: number,
  soaked: number,
  first?: number,
): Foam => ({
  id,
  type,
  kind: 'EPS',
  density,
  crush: crush * kPa,
  modulus,
  shearModulus: modulus / 2.4,
  shearStrength: 1.3 * crush * kPa,
  soaked,
  hottest: 348.15,
  ...(first === undefined ? {} : { first: first * kPa }),
})
const xps = (id: string, type: string, density: number, crush: number, modulus: number): Foam => ({
  id,
  type,
  kind: 'XPS',
  density,
  crush: crush * kPa,
  modulus,
  shearModulus: modulus / 2.4,
  shearStrength: 0.9 * crush * kPa,
  soaked: 0.003,
  hottest: 347.15,
})

/** By ASTM C578 type; EPS first columns from ASTM D6817 at the nearest density. */
export const foams: readonly Foam[] = [
  eps('EPS 12', 'XI', 12, 35, 1.0e6, 0.04, 15),
  eps('EPS 15', 'I', 15, 69, 1.35e6, 0.04, 25),
  eps('EPS 18', 'VIII', 18, 90, 1.8e6, 0.03, 40),
  eps('EPS 22', 'II', 22, 104, 2.35e6, 0.03, 50),
  eps('EPS 29', 'IX', 29, 173, 3.3e6, 0.02, 75),
  eps('EPS 38', 'XIV', 38, 276, 4.5e6, 0.02, 103),
  eps('EPS 46', 'XV', 46, 414, 6e6, 0.02),
  xps('XPS 21', 'X', 21, 104, 8e6),
  xps('XPS 25', 'IV', 25, 173, 12e6),
  xps('XPS 29', 'VI', 29, 276, 16e6),
  xps('XPS 35', 'VII', 35, 414, 20e6),
  xps('XPS 48', 'V', 48, 690, 30e6),
  {
    id: 'PU 32',
    kind: 'PU',
    density: 32,
    crush: 200e3,
    modulus: 5e6,
    shearModulus: 2e6,
    shearStrength: 150e3,
    soaked: 0.05,
    hottest: 363.15,
  },
]

export const foamNames: readonly string[] = foams.map((f) => f.id)

/** ASTM D6817 least compressive resistance, kPa at 1, 5 and 10 % strain. */
export const epsResistance: Readonly<Record<string, readonly [number, number, number]>> = {
  EPS12: [15, 35, 40],
  EPS15: [25, 55, 70],
  EPS19: [40, 90, 110],
  EPS22: [50, 115, 135],
  EPS29: [75, 170, 200],
  EPS39: [103, 241, 276],
}

/** The foam of a name; RangeError listing the names. */
export function foamOf(id: string): Foam {
  const found = foams.find((f) => f.id === id)
  if (found === undefined) throw new RangeError(`foam: "${id}", expected one of ${foamNames.join(', ')}`)
  return found
}

export type FoamLoad = 'parked' | 'foot' | 'jump'

/**
 * Pressure a foam may carry, Pa, at a temperature (K): parked loads 0.3 (EPS) or 0.4 (XPS, PU) of the crush strength, feet half of it and
 * not above the 1 % strength, a jump 0.8. Falls straight to 0 between 60 °C and 15 K above the long-term temperature (judgement, no source).
 */
export function foamAllowable(f: Foam, load: FoamLoad, temperature = 293.15): number {
  const cold =
    load === 'jump'
      ? 0.8 * f.crush
      : load === 'parked'
        ? (f.kind === 'EPS' ? 0.3 : 0.4) * f.crush
        : Math.min(0.5 * f.crush, f.first ?? Infinity)
  const from = 333.15
  const to = f.hottest + 15
  return cold * Math.min(1, Math.max(0, (to - temperature) / (to - from)))
}
