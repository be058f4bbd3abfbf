/**
 * Resistance between displacement and planing of transom-stern hulls.
 * Source: J. A. Mercier and D. Savitsky (1973), Resistance of transom-stern craft in the pre-planing regime, Davidson Laboratory
 * report SIT-DL-73-1667. The coefficients are from memory; they pass a consistency test (smooth in Fv for hulls of
 * very different shape, which a wrong digit would spoil) but want comparing with a library copy.
 */

import { type Cubic, cubicAt, pchip } from '../../base/numerics/interpolate.ts'
import { ittc57 } from '../../physics/fluid/friction.ts'
import { gravity } from '../../physics/fluid/water.ts'

/** Columns A1 A2 A4 A5 A6 A7 A8 A9 A10 A15 A18 A19 A24 A27, one row for each volumetric Froude number 1.0, 1.1 … 2.0. */
// biome-ignore format: a table reads best as a table
const table: readonly (readonly number[])[] = [
  [0.06473, -0.4868, -0.0103, -0.0649, 0, 0.10628, 0.9731, -0.00272, 0.01089, 0, -1.40962, 0.29136, 0.02971, -0.0015],
  [0.10776, -0.88787, -0.01634, -0.13444, 0, 0.18186, 1.8308, -0.00389, 0.01467, 0, -2.46696, 0.47305, 0.05877, -0.00356],
  [0.09483, -0.6372, -0.0154, -0.1358, -0.16046, 0.16803, 1.55972, -0.00309, 0.03481, 0, -2.15556, 1.02992, 0.05198, -0.00303],
  [0.03475, 0, -0.00978, -0.05097, -0.2188, 0.10434, 0.4351, -0.00198, 0.04113, 0, -0.92663, 1.06392, 0.02209, -0.00105],
  [0.03013, 0, -0.00664, -0.0554, -0.19359, 0.09612, 0.5182, -0.00215, 0.03901, 0, -0.95276, 0.97757, 0.02413, -0.0014],
  [0.03163, 0, 0, -0.10543, -0.2054, 0.06007, 0.5823, -0.00372, 0.04794, 0.08317, -0.70895, 1.19737, 0, 0],
  [0.03194, 0, 0, -0.08599, -0.19442, 0.06191, 0.52049, -0.0036, 0.04436, 0.07366, -0.72057, 1.18119, 0, 0],
  [0.04343, 0, 0, -0.13289, -0.18062, 0.05487, 0.78195, -0.00332, 0.04187, 0.12147, -0.95929, 1.01562, 0, 0],
  [0.05036, 0, 0, -0.15597, -0.17813, 0.05099, 0.92859, -0.00308, 0.04111, 0.14928, -1.12178, 0.93144, 0, 0],
  [0.05612, 0, 0, -0.18661, -0.18288, 0.04744, 1.18569, -0.00244, 0.04124, 0.1809, -1.38644, 0.78414, 0, 0],
  [0.05967, 0, 0, -0.19758, -0.20152, 0.04645, 1.30026, -0.00212, 0.04343, 0.19769, -1.55127, 0.78282, 0, 0],
]

/** volumetric Froude numbers of the rows */
export const preplaningNodes: readonly number[] = table.map((_, i) => 1 + i / 10)

/** Shape the regression sees, from the hull floating at rest with everything aboard. */
export interface PreplaningForm {
  /** m³ */
  volume: number
  /** m, waterline */
  length: number
  /** m, waterline beam */
  beam: number
  /** m */
  draft: number
  /** rad, half angle of entrance of the waterline */
  entrance: number
  /** immersed transom over largest immersed section, 0 to 1 */
  transomRatio: number
  /** m² */
  wettedSurface: number
}

/** Fitted ranges, for clamps and warnings. */
export const preplaningRange = {
  slenderness: [3.07, 12.4],
  lengthOverBeam: [2.52, 18.26],
  beamOverDraft: [1.7, 9.8],
  entrance: [(3.7 * Math.PI) / 180, (28.6 * Math.PI) / 180],
  transomRatio: [0, 1],
} as const

/** Wetted surface of the fitted hulls, m², from volume m³ and length, beam, draft m: S/V^⅔ = 2.262 √(L/V^⅓) (1 + 0.046 B/T + 0.00287 (B/T)²). */
export function transomWettedSurface(volume: number, length: number, beam: number, draft: number): number {
  const ratio = beam / draft
  return (
    volume ** (2 / 3) *
    2.262 *
    Math.sqrt(length / Math.cbrt(volume)) *
    (1 + 0.046 * ratio + 0.00287 * ratio * ratio)
  )
}

/** Drag over weight of the 100 000 lb sea-water standard at each node; entrance angle clamped to the fitted range. */
export function standardRatios(form: PreplaningForm): Float64Array {
  const X = Math.cbrt(form.volume) / form.length
  const Z = form.volume / form.beam ** 3
  const clamped = Math.min(preplaningRange.entrance[1], Math.max(preplaningRange.entrance[0], form.entrance))
  const U = Math.sqrt((2 * clamped * 180) / Math.PI)
  const W = Math.min(1, Math.max(0, form.transomRatio))
  const terms = [
    1,
    X,
    U,
    W,
    X * Z,
    X * U,
    X * W,
    Z * U,
    Z * W,
    W * W,
    X * W * W,
    Z * X * X,
    U * W * W,
    W * U * U,
  ]
  return Float64Array.from(table, (row) => row.reduce((sum, a, k) => sum + a * terms[k]!, 0))
}

/** The standard hull's water and size: 100 000 lb in sea water at 15 °C. */
const standard = { volume: 44.21, kinematicViscosity: 1.1883e-6 }

/** Regression made ready for one hull: a shape-preserving cubic through the nodes. */
export interface Preplaning {
  form: PreplaningForm
  ratio: Cubic
  /** length over cube root of volume */
  slenderness: number
  /** wetted surface over volume^⅔ */
  wetness: number
}

export function preparePreplaning(form: PreplaningForm): Preplaning {
  return {
    form,
    ratio: pchip(preplaningNodes, standardRatios(form)),
    slenderness: form.length / Math.cbrt(form.volume),
    wetness: form.wettedSurface / form.volume ** (2 / 3),
  }
}

/**
 * Bare-hull drag over weight at volumetric Froude number Fv (1 to 2; the end values of the standard ratio hold outside),
 * corrected from the standard size to this one by the friction difference. `viscosity` m²/s; `line` is the friction line,
 * `roughness` the allowance on the small hull.
 */
export function preplaningRatio(
  hull: Preplaning,
  Fv: number,
  viscosity: number,
  roughness: number,
  line: (Re: number) => number = ittc57,
): number {
  const speed = (volume: number) => Fv * Math.sqrt(gravity * Math.cbrt(volume))
  const length = (volume: number) => hull.slenderness * Math.cbrt(volume)
  const own = line((speed(hull.form.volume) * length(hull.form.volume)) / viscosity) + roughness
  const big = line((speed(standard.volume) * length(standard.volume)) / standard.kinematicViscosity)
  return cubicAt(hull.ratio, Fv) + (own - big) * 0.5 * hull.wetness * Fv * Fv
}
