/**
 * Everything but the rotor: what the water asks of the pump, what pressure is left before the blades, what the jet pushes.
 * Momentum and energy bookkeeping of ITTC Recommended Procedures 7.5-02-05-03 (waterjet propulsion); capture width 1.3 times
 * the intake's (same); turbulent boundary layer 0.37 x Re^-0.2 with a 1/7-power profile (Schlichting, Boundary-Layer Theory);
 * the wake fractions follow by integrating that profile, derived.
 */
import { gravity } from '../../physics/fluid/water.ts'
import type { JetSystem, JetWater } from './jetTypes.ts'

/** The oncoming flow at one boat speed. */
export interface Oncoming {
  V: number
  /** boundary-layer thickness at the opening, m */
  delta: number
}

/** Thickness of the boundary layer after `x` metres of hull at speed V, m; 0 at rest. */
export function boundaryLayer(V: number, x: number, kinematic: number): number {
  return V > 0 && x > 0 ? 0.37 * x * ((V * x) / kinematic) ** -0.2 : 0
}

export function oncomingAt(system: JetSystem, water: JetWater, V: number): Oncoming {
  return { V, delta: boundaryLayer(V, system.runUp, water.viscosity / water.density) }
}

/** Depth of water taken into the intake, m; `width` of the capture. Q > 0, V > 0. */
export function captureDepth(Q: number, V: number, width: number, delta: number): number {
  const deep = Q / (width * V) + delta / 8
  if (deep >= delta) return deep
  return ((8 * Q * delta ** (1 / 7)) / (7 * width * V)) ** 0.875
}

/** Momentum wake fraction w: the captured water moves at (1 - w)V on the mean. */
export function momentumWake(depth: number, delta: number): number {
  if (delta === 0) return 0
  if (depth >= delta) return 1 - (depth - (2 * delta) / 9) / (depth - delta / 8)
  return 1 - (8 / 9) * (depth / delta) ** (1 / 7)
}

/** (1 - w_e)²: kinetic energy of the captured water over that of the undisturbed. */
export function energyShare(depth: number, delta: number): number {
  if (delta === 0) return 1
  if (depth >= delta) return (depth - 0.3 * delta) / (depth - delta / 8)
  return 0.8 * (depth / delta) ** (2 / 7)
}

const captureFactor = 1.3

/** Kinetic energy of the water taken in, J/kg, before any loss. */
function ramEnergy(system: JetSystem, at: Oncoming, Q: number): number {
  if (!(at.V > 0)) return 0
  const free = 0.5 * at.V * at.V
  if (at.delta === 0 || !(Q > 0)) return free
  return free * energyShare(captureDepth(Q, at.V, captureFactor * system.intakeWidth, at.delta), at.delta)
}

export function wakeAt(system: JetSystem, at: Oncoming, Q: number): number {
  if (!(at.V > 0) || at.delta === 0 || !(Q > 0)) return 0
  return momentumWake(captureDepth(Q, at.V, captureFactor * system.intakeWidth, at.delta), at.delta)
}

/** Losses between the opening and the rotor, J/kg: grate, lip, duct. `annulus` area at the rotor, m². */
function suctionLoss(system: JetSystem, annulus: number, V: number, Q: number): number {
  const opening = Q / system.intakeArea
  const c = Q / annulus
  // the lip separates when the water must come from all round; ram clears it as the craft moves
  const slack = opening > V ? 1 - V / opening : 0
  return (
    0.5 * opening * opening * (system.grateLoss + system.lipLoss * slack * slack) +
    0.5 * system.ductLoss * c * c
  )
}

/** Speed of the jet at flow Q, m/s. */
export function jetVelocity(system: JetSystem, Q: number): number {
  return Q / (system.contraction * 0.25 * Math.PI * system.nozzleDiameter * system.nozzleDiameter)
}

/** Head the system asks of the pump, J/kg; negative when the ram alone would push more through. */
export function headNeeded(system: JetSystem, annulus: number, at: Oncoming, Q: number): number {
  const vj = jetVelocity(system, Q)
  return (
    0.5 * (1 + system.nozzleLoss) * vj * vj +
    suctionLoss(system, annulus, at.V, Q) -
    (1 - system.ramLoss) * ramEnergy(system, at, Q) +
    gravity * system.nozzleHeight
  )
}

/** Energy above vapour pressure at the top of the rotor, g·NPSH available, J/kg. */
export function suctionAvailable(
  system: JetSystem,
  water: JetWater,
  annulus: number,
  at: Oncoming,
  Q: number,
): number {
  return (
    (water.atmosphere - water.vapourPressure) / water.density +
    gravity * system.rotorDepth +
    (1 - system.ramLoss) * ramEnergy(system, at, Q) -
    suctionLoss(system, annulus, at.V, Q)
  )
}

/** Net thrust, N; `density` of what actually flows. */
export function thrustAt(system: JetSystem, density: number, at: Oncoming, Q: number): number {
  const out = jetVelocity(system, Q) * Math.cos(system.nozzleAngle)
  return (1 - system.thrustDeduction) * density * Q * (out - (1 - wakeAt(system, at, Q)) * at.V)
}
