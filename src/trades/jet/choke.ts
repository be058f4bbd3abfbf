/**
 * A rotor choked with vapour: the flow it still passes and the torque it still takes.
 * At breakdown the cavities reach through the blade passages; less suction pressure then takes head and torque away while the
 * flow stays about what it was: the falling NPSH curves of NASA SP-8052, Liquid Rocket Engine Turbopump Inducers (1971), and of
 * C. E. Brennen, Hydrodynamics of Pumps (1994), ch. 7 (from memory). How the flow it passes falls with the suction pressure lies
 * between two limits: a throat full of vapour passes the square root of it; a cascade of flat plates with endless cavities
 * (J. D. Stripling and A. J. Acosta, "Cavitation in Turbopumps", J. Basic Eng. 84, 1962) the first power, below.
 */
import { bisect } from '../../base/numerics/roots.ts'

/** Constants of the rotor's breakdown that nobody can read off a drawing. */
export interface VapourModel {
  /** cavitation number of breakdown over that of ideal flat plates, 2-3 */
  breakdown: number
  /** past choking, with the pressure kept, flow goes with rotation to minus this: 0 holds its flow, 1 is the flat-plate cascade */
  chokeFall: number
}

export const standardVapour: VapourModel = { breakdown: 2.5, chokeFall: 0.5 }

/**
 * Cavitation number at which flat plates at angle `blade` to the plane of rotation choke at incidence `incidence`, both rad.
 * Momentum along a plate, which a frictionless plate cannot change: √(1 + K) = cos(β/2 - α)/cos(β/2). Its peak, at half the blade
 * angle, is tan²(β/2); for small angles it is φ(β - φ), so that the suction energy asked for is Uβc/2, the first power of flow.
 */
export function plateChoke(incidence: number, blade: number): number {
  return (Math.cos(blade / 2 - incidence) / Math.cos(blade / 2)) ** 2 - 1
}

/** Suction energy at which a rotor of cavitation number K breaks down, J/kg; axial and tip speed m/s. */
export function breakdownEnergy(K: number, axial: number, tipSpeed: number): number {
  return 0.5 * (K * (tipSpeed * tipSpeed + axial * axial) + axial * axial)
}

/**
 * Flow a choked rotor passes, m³/s, at most `knee`: there the blades ask for the energy `asked` (J/kg), at less flow for less of it.
 * `available` gives the suction energy over flow and falls short of `asked` at `knee`. 0 when nothing stands over the rotor.
 */
export function chokedFlow(
  available: (Q: number) => number,
  knee: number,
  asked: number,
  fall: number,
): number {
  const power = 2 / (1 + fall)
  const f = (x: number) => available(x * knee) - asked * x ** power
  const least = 1e-6
  if (!(f(least) > 0)) return 0
  const root = bisect(f, least, 1, { tolerance: 1e-11 })
  return root.converged ? root.value * knee : 0
}

/** of the torque at the knee: skin friction on the faces that stay wet; engineering default */
const frictionShare = 0.15

/**
 * Share of the torque of a rotor just breaking down that is left when the system asks for `head` instead of `atKnee` (J/kg).
 * Pressure pushes square to the blades, so thrust and torque on the shaft go together, and the head left is the thrust over the
 * annulus; friction goes on. 1 at the knee.
 */
export function chokedTorque(head: number, atKnee: number): number {
  const share = atKnee > 0 ? Math.min(1, Math.max(0, head / atKnee)) : 0
  return frictionShare + (1 - frictionShare) * share
}
