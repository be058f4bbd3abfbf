/**
 * A sheet lying on foam: an infinite plate on springs (Winkler's bed) under a disc load.
 * Source: H. M. Westergaard, "Stresses in concrete pavements", Public Roads 7 (1926); the disc solution from the plate's influence function
 * in Kelvin functions (Timoshenko and Woinowsky-Krieger 1959, § 58), derived for this project and checked by summing the bed's pressure.
 */
import { kelvin } from '../../base/numerics/kelvin.ts'
import { plateStiffness } from './loadedPlate.ts'

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

/** Radius of the disc with a patch's area, m. */
export const discOf = (u: number, v: number): number => Math.sqrt((u * v) / Math.PI)
