/** Plain SI shapes of the jet. Metres, radians, seconds, kilograms; rotation in rev/s; heads are specific energies in J/kg. */
import type { VapourModel } from './choke.ts'

/** The rotor as a builder can measure it. */
export interface RotorGeometry {
  /** blade tip diameter: bore of the wear ring less two gaps is close enough to the bore; m, 0.04-0.4 */
  tipDiameter: number
  /** hub diameter at the leading edge, m */
  hubDiameter: number
  /** hub diameter at the trailing edge when the hub is coned, m; absent = `hubDiameter` */
  hubDiameterExit?: number
  /** number of blades, 1-8 (any positive real is accepted, for limits) */
  blades: number
  /** +1 right-hand (turns clockwise seen from astern), -1 left-hand; does not change the numbers */
  hand?: 1 | -1
  /** pitch at the leading and trailing edge, m per turn */
  pitchLeading: number
  pitchTrailing: number
  /** angle a blade wraps round the hub from leading to trailing edge, rad */
  wrap: number
  /** thickness of the trailing edge, m */
  trailingEdge: number
  /** radius of the leading edge, m */
  leadingEdgeRadius: number
  /** radial gap between blade tip and ring, m */
  gap: number
  /** arithmetic mean roughness Ra of the blades, m */
  roughness: number
  /** blade thickness at the root, m; used for stress and advice only */
  rootThickness?: number
}

export interface Stator {
  vanes: number
  /** vane angle at its inlet, from the axis, rad; absent = cut to suit the flow */
  inletAngle?: number
}

/** Everything round the rotor: intake, duct, nozzle, shaft. */
export interface JetSystem {
  nozzleDiameter: number
  /** contraction of the jet behind the nozzle, 0.9-1 */
  contraction: number
  /** loss of the nozzle, of the jet's kinetic energy, 0.01-0.1 */
  nozzleLoss: number
  /** loss of duct, bend and shaft, of c²/2 at the rotor annulus, 0.05-0.5 */
  ductLoss: number
  /** share of the incoming kinetic energy the intake wastes, 0.05-0.4 */
  ramLoss: number
  /** loss of the grate, of V_i²/2 in the opening */
  grateLoss: number
  /** separation at the lip when the craft stands still, of V_i²/2; fades as the craft moves */
  lipLoss: number
  /** area of the intake opening, m² */
  intakeArea: number
  /** width of the opening, m */
  intakeWidth: number
  /** wetted length of hull ahead of the opening, m; 0 = no boundary layer counted */
  runUp: number
  /** unevenness of the flow into the rotor, (c_max - c_min)/c_mean, 0-0.7; flush intakes have 0.3-0.7 */
  distortion: number
  /** nozzle centre above the still water, m */
  nozzleHeight: number
  /** top of the rotor below the still water, m; negative above it */
  rotorDepth: number
  /** angle of the jet to the direction of travel, rad */
  nozzleAngle: number
  /** thrust deduction fraction, -0.05 to 0.05 */
  thrustDeduction: number
  stator: Stator | null
  /** of the shaft between the power given and the rotor, 0.9-1 */
  mechanicalEfficiency: number
  /** constant drag of bearing and seal, N·m */
  bearingDrag: number
}

export interface JetWater {
  /** kg/m³ */
  density: number
  /** dynamic viscosity, Pa·s */
  viscosity: number
  /** saturation pressure, Pa absolute */
  vapourPressure: number
  /** pressure on the water's surface, Pa absolute */
  atmosphere: number
  /** share of the volume that is air, 0-0.1 */
  airFraction?: number
}

/** Constants of the model that a measurement on the water may move. */
export interface JetModel {
  /** viscous share of the lattice's ideal turning, 0.75-0.95 */
  turning: number
  /** 0 = uniform outflow, 1 = full radial equilibrium */
  equilibrium: number
  /** work lost per gap over span */
  gapWork: number
  /** strips from hub to tip */
  strips: number
}

export interface JetSpec {
  rotor: RotorGeometry
  system: JetSystem
  water: JetWater
  model?: Partial<JetModel>
  vapour?: Partial<VapourModel>
}

/** Where the rotor's work goes, J/kg each. */
interface PumpLosses {
  profile: number
  secondary: number
  gap: number
  endWall: number
  /** separated flow in a stalled strip */
  stall: number
  stator: number
  /** rotation left in the jet when there is no stator */
  swirl: number
}

/** One flow of the pump by itself. */
export interface PumpPoint {
  /** m³/s */
  flow: number
  /** useful head, J/kg */
  head: number
  /** work the blades do on the water, J/kg */
  work: number
  losses: PumpLosses
  /** flow per screw advance, J' = c_m/(nP) */
  advance: number
  /** largest diffusion factor over the span, and the share of span past a stall limit */
  diffusion: number
  stalledShare: number
  tipStalled: boolean
  /** incidence at hub and tip, rad from the axis, positive loads the blade */
  incidenceHub: number
  incidenceTip: number
  /** blade cavitation number at which the first bubbles show at the tip */
  inception: number
  /** largest equivalent diffusion ratio (hub, as a rule) */
  equivalentDiffusion: number
  /** the outflow march closed the flow */
  converged: boolean
  /** axial velocity behind the rotor at hub and tip, m/s */
  axialHub: number
  axialTip: number
}

export type JetState = 'wet' | 'cavitating' | 'choked' | 'ram exceeds pump' | 'no flow' | 'lost prime'

export type JetFlagCode =
  | 'stall'
  | 'cavitation'
  | 'choked'
  | 'ram exceeds pump'
  | 'no flow'
  | 'lost prime'
  | 'deep stall'
  | 'not converged'

/** One steady state of the jet at rotation n and speed V. */
export interface JetPoint {
  /** impeller rotation, rev/s */
  n: number
  /** boat speed, m/s */
  V: number
  /** flow, m³/s */
  Q: number
  /** head the pump gives to the water, J/kg */
  gH: number
  /** torque at the impeller shaft including shaft loss, N·m */
  T: number
  /** net thrust, N */
  F: number
  /** pump efficiency ρ Q gH /(2π n T) */
  eta: number
  /** thrust power over shaft power */
  etaOverall: number
  jetVelocity: number
  /** losses inside the pump, J/kg; only from the full model */
  losses?: PumpLosses
  /** flow per screw advance */
  advance: number
  diffusion: number
  /** suction specific speed */
  Nss: number
  /** blade cavitation number, at 3 % head loss and at breakdown */
  Ka: number
  K3: number
  Kbd: number
  /** mean velocity in the throat of the intake (a full circle of the rotor's diameter) over boat speed; Infinity at rest */
  IVR: number
  /** momentum wake fraction */
  wake: number
  state: JetState
  /** more than 3 % of the head lost to vapour */
  cavitating: boolean
  confidence: 'ok' | 'low'
  flags: JetFlagCode[]
  converged: boolean
}

export const standardModel: JetModel = { turning: 0.85, equilibrium: 0.5, gapWork: 2, strips: 11 }
