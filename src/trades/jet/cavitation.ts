/**
 * Cavitation of the rotor.
 * Blade cavitation number and optimum flow coefficient after Brumfield, as in NASA SP-8052, Liquid Rocket Engine
 * Turbopump Inducers (1971), eqs 2-7; ideal flat-plate limit tan²(β/2), real blades 2 to 3 times that (same, §2.1.5).
 * The factor 2.5 (choke.ts), the leading-edge term and the head and torque factors are engineering defaults on that basis.
 */
import { plateChoke, standardVapour } from './choke.ts'
import type { RotorGeometry } from './jetTypes.ts'

/** K_a = (2 g NPSH - c²)/(U_t² + c²); c axial velocity before the rotor, U_t tip speed. */
export function bladeCavitationNumber(gNpsh: number, axial: number, tipSpeed: number): number {
  const c2 = axial * axial
  return (2 * gNpsh - c2) / (tipSpeed * tipSpeed + c2)
}

/** Blade angle of the leading edge at the tip, from the plane of rotation, rad. */
function tipAngle(rotor: Pick<RotorGeometry, 'pitchLeading' | 'tipDiameter'>): number {
  return Math.atan2(rotor.pitchLeading, Math.PI * rotor.tipDiameter)
}

/** Cavitation number of head breakdown (about 13 % lost), `factor` times that of flat plates; grows 0.02 per mm of leading-edge radius. */
export function breakdownNumber(
  rotor: Pick<RotorGeometry, 'pitchLeading' | 'tipDiameter' | 'leadingEdgeRadius'>,
  factor = standardVapour.breakdown,
): number {
  const blade = tipAngle(rotor)
  return factor * plateChoke(blade / 2, blade) + 20 * rotor.leadingEdgeRadius
}

/**
 * Factor on the cavitation numbers a rotor needs when its inflow is uneven: the slow sector raises the incidence once a turn.
 * 1.15 at an unevenness of 0.5, the middle of what flush intakes show; engineering default.
 */
export function distortionOnCavitation(distortion: number): number {
  return 1 + 0.3 * distortion
}

/** Share of the head left by uneven inflow: about two points of efficiency at 0.5; engineering default. */
export function distortionOnHead(distortion: number): number {
  return 1 - 0.05 * distortion
}

/** K at 3 % head loss over K at breakdown. */
export const onsetOverBreakdown = 1.6

/** Share of the wetted head left at x = K_a/K_3; held at 0.87 below breakdown, where the flow chokes instead (choke.ts). */
export function headFactor(x: number): number {
  if (x >= 1.3) return 1
  if (x >= 1) return 1 - 0.03 * ((1.3 - x) / 0.3) ** 2
  const xb = 1 / onsetOverBreakdown
  if (x >= xb) return 0.97 - (0.1 * (1 - x)) / (1 - xb)
  return 0.87
}

/** Share of the wetted torque left when the head has dropped to `head` of its own. */
export function torqueFactor(head: number): number {
  return 1 - 0.6 * (1 - head)
}

/** Suction specific speed ω√Q/(g NPSH)^0.75, dimensionless; ×2733 for rpm, US gpm, ft. n in rev/s. */
export function suctionSpecificSpeed(n: number, Q: number, gNpsh: number): number {
  return (2 * Math.PI * n * Math.sqrt(Math.max(Q, 0))) / Math.max(gNpsh, 1e-9) ** 0.75
}

/** Suction specific speed of a rotor at flow coefficient φ, blade cavitation number K, hub ratio ν (SP-8052 eq. 4). */
export function suctionSpeedOf(phi: number, K: number, hubRatio: number): number {
  const tau = K + K * phi * phi + phi * phi
  // ω√Q/(gNPSH)^¾ with Q = φ U π r²(1-ν²) and g NPSH = τU²/2
  return Math.sqrt(Math.PI * (1 - hubRatio ** 2) * phi) * (2 / tau) ** 0.75
}

/** Flow coefficient with the best suction for blade cavitation number K. */
export function bestFlowCoefficient(K: number): number {
  return Math.sqrt(K / (2 * (1 + K)))
}

/** Tip speed at which the rotor at flow coefficient φ reaches cavitation number K, m/s. */
export function tipSpeedCeiling(gNpsh: number, K: number, phi: number): number {
  return Math.sqrt((2 * gNpsh) / (K + phi * phi * (1 + K)))
}

/** Most suction specific speed of a rotor whose flow coefficient suits its cavitation number (SP-8052 eqs 5-7). */
export function bestSuctionSpeed(phi: number, hubRatio: number): number {
  const K = (2 * phi * phi) / (1 - 2 * phi * phi)
  return suctionSpeedOf(phi, K, hubRatio)
}

/** Share of head left by a tip gap of `gapShare` of the blade height: 1 - √(τ/h), SP-8052 eq. 54; a pessimistic bracket. */
export function inducerGapHead(gapShare: number): number {
  return 1 - Math.sqrt(gapShare)
}

/** The same of suction specific speed: 1 - k√(τ/h), k 0.50 to 0.65, SP-8052 eq. 55. */
export function inducerGapSuction(gapShare: number, k: number): number {
  return 1 - k * Math.sqrt(gapShare)
}
