/**
 * A sheet lying on foam: an infinite plate on springs (Winkler's bed) under a disc load.
 * Source: H. M. Westergaard, "Stresses in concrete pavements", Public Roads 7 (1926); the disc solution from the plate's influence function
 * in Kelvin functions (Timoshenko and Woinowsky-Krieger 1959, § 58), derived for this project and checked by summing the bed's pressure.
 */
import { kelvin } from '../../base/numerics/kelvin.ts'
import { plateStiffness } from './plate.ts'

export interface SheetOnFoam {
  /** Pa and 1, sheet */
  modulus: number
  poisson: number
  t: number
  /** Pa/m, foam modulus over its depth */
  bed: number
}

export interface FoamUnderLoad {
  stiffness: number
  /** radius of relative stiffness (D/k)^¼, m: how far the sheet spreads a load */
  reach: number
  /** m, under the middle */
  deflection: number
  /** Pa on the foam under the middle */
  pressure: number
  /** N·m per m and Pa in the sheet under the middle; for a point load they are infinite and NaN is given */
  moment: number
  stress: number
}

/** Bed stiffness of a foam layer, Pa/m: modulus over depth; spreading in shear adds about a fifth and is left out. */
export function bedStiffness(foamModulus: number, depth: number): number {
  return foamModulus / depth
}

/** Load on a disc of radius c (m); c = 0 is a point. Beyond ten reaches the middle no longer feels the rim: foam carries the load straight through. */
export function discOnFoam(s: SheetOnFoam, load: number, c: number): FoamUnderLoad {
  const stiffness = plateStiffness(s.modulus, s.t, s.poisson)
  const reach = (stiffness / s.bed) ** 0.25
  if (c === 0) {
    const deflection = load / (8 * Math.sqrt(s.bed * stiffness))
    return {
      stiffness,
      reach,
      deflection,
      pressure: s.bed * deflection,
      moment: Number.NaN,
      stress: Number.NaN,
    }
  }
  const q = load / (Math.PI * c * c)
  const A = c / reach
  const { kerSlope, keiSlope } = A <= 10 ? kelvin(A) : { kerSlope: 0, keiSlope: 0 }
  const deflection = (q / s.bed) * (1 + A * kerSlope)
  const moment = ((1 + s.poisson) / 2) * q * reach * reach * A * keiSlope
  return {
    stiffness,
    reach,
    deflection,
    pressure: s.bed * deflection,
    moment,
    stress: (6 * moment) / (s.t * s.t),
  }
}

/** Stress by Westergaard's interior formula, Pa; holds for c below 0.8 reaches only (NaN beyond). */
export function westergaardStress(s: SheetOnFoam, load: number, c: number): number {
  const reach = (plateStiffness(s.modulus, s.t, s.poisson) / s.bed) ** 0.25
  if (!(c > 0 && c < 0.8 * reach)) return Number.NaN
  return ((3 * load * (1 + s.poisson)) / (2 * Math.PI * s.t * s.t)) * (Math.log(reach / c) + 0.6159)
}

/** Deflection (m) at a distance r from a point load, −P l²/(2πD) kei(r/l); for summing the bed's pressure. r above 0. */
export function pointDeflectionAt(s: SheetOnFoam, load: number, r: number): number {
  const stiffness = plateStiffness(s.modulus, s.t, s.poisson)
  const reach = (stiffness / s.bed) ** 0.25
  return r / reach > 10 ? 0 : ((-load * reach * reach) / (2 * Math.PI * stiffness)) * kelvin(r / reach).kei
}

/** Radius of the disc with a patch's area, m. */
export const discOf = (u: number, v: number): number => Math.sqrt((u * v) / Math.PI)
