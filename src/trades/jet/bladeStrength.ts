/**
 * Loads on the rotor: blade root bending as a cantilever strip, axial thrust, centrifugal pull, balance grade.
 * Cantilever strip derived; balance grades ISO 21940-11; key dimensions are not dealt with here.
 */
import type { RotorGeometry } from './jetTypes.ts'

export interface BladeLoad {
  /** tangential and axial force on one blade, N */
  tangential: number
  axial: number
  /** bending moment at the root, N·m, and length of the root along its helix, m */
  moment: number
  rootLength: number
  /** bending stress at the root, Pa */
  stress: number
}

/** Share of the head that stands across the rotor as static pressure. */
const rotorShare = 0.9

/** Load on one blade at torque `T` (N·m) and head `gH` (J/kg). ±50 %: the real helical root is stiffer near mid-chord. */
export function bladeLoad(
  rotor: RotorGeometry,
  T: number,
  gH: number,
  density: number,
  rootThickness: number,
): BladeLoad {
  const rt = rotor.tipDiameter / 2
  const rh = rotor.hubDiameter / 2
  const arm = 0.7 * (rt - rh)
  const tangential = T / (rotor.blades * (rh + arm))
  const axial = (rotorShare * density * gH * Math.PI * (rt * rt - rh * rh)) / rotor.blades
  const moment = Math.hypot(tangential, axial) * arm
  const pitch = (rotor.pitchLeading + rotor.pitchTrailing) / 2
  const rootLength = Math.hypot((pitch * rotor.wrap) / (2 * Math.PI), rh * rotor.wrap)
  return { tangential, axial, moment, rootLength, stress: (6 * moment) / (rootLength * rootThickness ** 2) }
}

/** Axial pull of the rotor on its shaft, N, forward. */
export function rotorAxialThrust(rotor: RotorGeometry, gH: number, density: number): number {
  return rotorShare * density * gH * 0.25 * Math.PI * (rotor.tipDiameter ** 2 - rotor.hubDiameter ** 2)
}

/** Pull of a spinning blade at its root, Pa; n rev/s, material density kg/m³. */
export function centrifugalStress(rotor: RotorGeometry, n: number, material: number): number {
  const omega = 2 * Math.PI * n
  return 0.5 * material * omega * omega * ((rotor.tipDiameter / 2) ** 2 - (rotor.hubDiameter / 2) ** 2)
}

/** Factor k of σ = kρu² (hoop stress at the bore, u rim speed) of a flat disc with bore ratio `bore` (0-1) and Poisson's ratio. */
export function discFactor(bore: number, poisson: number): number {
  if (bore === 0) return (3 + poisson) / 8
  return ((3 + poisson) / 4) * (1 + ((1 - poisson) / (3 + poisson)) * bore * bore)
}

/** Residual unbalance allowed, kg·m, for grade G (m/s, 0.016 for G 16), rotor mass (kg) and n (rev/s). */
export function unbalanceAllowed(grade: number, mass: number, n: number): number {
  return (mass * grade) / (2 * Math.PI * n)
}
