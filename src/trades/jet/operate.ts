/**
 * Operating point: the flow at which pump and system agree, with cavitation, choking and air.
 * The search comes down from high flow, so that of several crossings the one on the falling branch of the pump curve is found.
 */
import { brent } from '../../base/numerics/roots.ts'
import {
  bladeCavitationNumber,
  breakdownNumber,
  distortionOnCavitation,
  distortionOnHead,
  headFactor,
  onsetOverBreakdown,
  suctionSpecificSpeed,
  torqueFactor,
} from './cavitation.ts'
import { breakdownEnergy, chokedFlow, chokedTorque, standardVapour } from './choke.ts'
import type { JetFlagCode, JetPoint, JetSpec, JetState } from './jetTypes.ts'
import {
  headNeeded,
  jetVelocity,
  type Oncoming,
  oncomingAt,
  suctionAvailable,
  thrustAt,
  wakeAt,
} from './system.ts'

/** What the solve needs to know of a pump at one rotation. Heads J/kg, torque N·m of clean water on the blades. */
export interface PumpCurve {
  annulus: number
  head: (Q: number) => number
  /** hydraulic torque for the given density */
  torque: (Q: number) => number
  diffusion: (Q: number) => number
  stalled: (Q: number) => boolean
  deepStall: (Q: number) => boolean
}

/** The model is sampled between these flows per screw advance; below, head and torque are held. */
export const advanceLow = 0.12
export const advanceHigh = 1.25

/** Head at `x` times the highest flow sampled: there the rotor only resists, and resistance goes with the square. */
export function headBeyond(atHighest: number, x: number): number {
  return atHighest - Math.abs(atHighest) * (x * x - 1)
}

/** Torque at `x` times the highest flow sampled: a rotor driven by the water turns the shaft in proportion, no more. */
export function torqueBeyond(atHighest: number, x: number): number {
  return atHighest < 0 ? atHighest * x : atHighest
}

/** Share of head left at air fraction α: prime is lost at about a tenth of air. */
export function airHeadFactor(airFraction: number): number {
  return Math.max(0, 1 - (Math.max(airFraction, 0) / 0.1) ** 1.5)
}

const scanSteps = 32

/** Highest root of f below `top`, NaN when f stays negative; f(top) > 0 gives NaN too with `above` set. */
function highestRoot(
  f: (Q: number) => number,
  top: number,
): { Q: number; above: boolean; converged: boolean } {
  let upper = top
  if (f(top) > 0) return { Q: Number.NaN, above: true, converged: false }
  for (let i = 1; i <= scanSteps; i++) {
    const Q = (top * (scanSteps - i)) / scanSteps + (i === scanSteps ? 1e-9 * top : 0)
    if (f(Q) > 0) {
      const root = brent(f, Q, upper, { tolerance: 1e-10 * top })
      return { Q: root.value, above: false, converged: root.converged }
    }
    upper = Q
  }
  return { Q: Number.NaN, above: false, converged: true }
}

/** What stands fixed while one point is solved. */
interface Setting {
  at: Oncoming
  annulus: number
  tipSpeed: number
  /** flow of a screw that does not slip, m³/s */
  advanceFlow: number
  /** cavitation numbers of breakdown and of 3 % loss of head */
  Kbd: number
  K3: number
  /** share of the head that air and uneven inflow leave */
  airHead: number
  density: number
  need: (Q: number) => number
  available: (Q: number) => number
  cavitationNumber: (Q: number) => number
  /** torque at the shaft for one on the blades in clean water, N·m */
  shaft: (hydraulic: number) => number
}

function settingOf(spec: JetSpec, curve: PumpCurve, n: number, V: number): Setting {
  const { rotor, system, water } = spec
  const at: Oncoming = oncomingAt(system, water, V)
  const annulus = curve.annulus
  const tipSpeed = Math.PI * rotor.tipDiameter * n
  const Kbd =
    breakdownNumber(rotor, spec.vapour?.breakdown ?? standardVapour.breakdown) *
    distortionOnCavitation(system.distortion)
  const air = water.airFraction ?? 0
  const density = water.density * (1 - air)
  const available = (Q: number) => suctionAvailable(system, water, annulus, at, Q)
  return {
    at,
    annulus,
    tipSpeed,
    advanceFlow: n * rotor.pitchTrailing * annulus,
    Kbd,
    K3: onsetOverBreakdown * Kbd,
    airHead: airHeadFactor(air) * distortionOnHead(system.distortion),
    density,
    need: (Q) => headNeeded(system, annulus, at, Q),
    available,
    cavitationNumber: (Q) => bladeCavitationNumber(available(Q), Q / annulus, tipSpeed),
    shaft: (hydraulic) =>
      (hydraulic * density) / water.density / system.mechanicalEfficiency + system.bearingDrag,
  }
}

/** Flow that the pump curve and the system would settle on without cavitation, and the torque on the blades there. */
interface Wetted {
  state: JetState
  Q: number
  torque: number
  converged: boolean
}

function wetted(spec: JetSpec, curve: PumpCurve, s: Setting): Wetted {
  const { airHead, need, advanceFlow } = s
  let top = 1.2 * advanceFlow + jetVelocity(spec.system, 1) ** -1 * s.at.V
  let wet = highestRoot((q) => airHead * curve.head(q) - need(q), top)
  for (let k = 0; wet.above && k < 30; k++) {
    top *= 1.5
    wet = highestRoot((q) => airHead * curve.head(q) - need(q), top)
  }
  const { converged, Q } = wet
  if (airHead === 0)
    return { state: 'lost prime', Q: 0, torque: 0.15 * curve.torque(advanceLow * advanceFlow), converged }
  if (Number.isNaN(Q))
    return { state: 'no flow', Q: 0, torque: curve.torque(advanceLow * advanceFlow), converged }
  const state = Q >= advanceFlow || curve.head(Q) <= 0 ? 'ram exceeds pump' : 'wet'
  return { state, Q, torque: curve.torque(Q), converged }
}

/** A point in water that cannot boil. */
export interface WetPoint {
  /** flow, m³/s */
  Q: number
  /** shaft torque, N·m, and thrust, N */
  T: number
  F: number
  /** thrust of the same flow drawn from still water, N */
  gross: number
  /** K_a/K_3 there: from 1.3 down vapour takes head; Infinity where it has no say */
  onset: number
}

/** Solves one point without cavitation. n in rev/s (> 0), V in m/s (>= 0). */
export function operateWet(spec: JetSpec, curve: PumpCurve, n: number, V: number): WetPoint {
  const s = settingOf(spec, curve, n, V)
  const { state, Q, torque } = wetted(spec, curve, s)
  return {
    Q,
    T: s.shaft(torque),
    F: thrustAt(spec.system, s.density, s.at, Q),
    gross:
      (1 - spec.system.thrustDeduction) *
      s.density *
      Q *
      jetVelocity(spec.system, Q) *
      Math.cos(spec.system.nozzleAngle),
    onset: state === 'wet' ? s.cavitationNumber(Q) / s.K3 : Number.POSITIVE_INFINITY,
  }
}

/** Solves one point. n in rev/s (> 0), V in m/s (>= 0). */
export function operate(spec: JetSpec, curve: PumpCurve, n: number, V: number): JetPoint {
  const { rotor, system } = spec
  const s = settingOf(spec, curve, n, V)
  const { at, annulus, tipSpeed, Kbd, K3, airHead, density, need, available, cavitationNumber, shaft } = s
  const { advanceFlow } = s
  const fall = spec.vapour?.chokeFall ?? standardVapour.chokeFall
  const flags: JetFlagCode[] = []
  const wet = wetted(spec, curve, s)
  let { state, Q, torque } = wet
  const { converged } = wet
  let headShare = airHead
  if (!converged) flags.push('not converged')
  if (state === 'wet' && cavitationNumber(Q) < 1.3 * K3) {
    // head falls with flow here both by the curve and by cavitation: the crossing is below the wetted one
    const f = (q: number) => airHead * headFactor(cavitationNumber(q) / K3) * curve.head(q) - need(q)
    const cav = highestRoot(f, Q * (1 + 1e-12))
    state = 'cavitating'
    // with the head that vapour leaves there may be no flow at which pump and system agree
    const stalledOut = Number.isNaN(cav.Q) && !cav.above
    if (stalledOut) Q = 0
    else if (!cav.above) Q = cav.Q
    const Ka = cavitationNumber(Q)
    const share = headFactor(Ka / K3)
    headShare = airHead * share
    // the wetted torque is the yardstick: vapour takes load off the blades, whatever the flow does
    torque *= torqueFactor(share)
    if (stalledOut) {
      state = 'no flow'
      torque *= 0.15
    } else if (Ka < Kbd) {
      // passages blocked by vapour: no more flow than the pressure drives in, whatever head the blades could give
      const asked = breakdownEnergy(Kbd, Q / annulus, tipSpeed)
      const choke = chokedFlow(available, Q, asked, fall)
      state = choke > 0 ? 'choked' : 'no flow'
      torque *= chokedTorque(choke > 0 ? need(choke) : 0, need(Q))
      Q = choke
    }
  }
  // above K_3 less than 3 % of the head is gone, which nobody would notice
  const noticeable = state === 'choked' || (state === 'cavitating' && cavitationNumber(Q) < K3)
  if (state === 'cavitating') {
    if (noticeable) flags.push('cavitation')
  } else if (state !== 'wet') flags.push(state)
  const running = state === 'wet' || state === 'cavitating'
  if (running && curve.deepStall(Q)) flags.push('deep stall')
  if (running && curve.stalled(Q)) flags.push('stall')

  const T = shaft(torque)
  const gH = Q > 0 ? (state === 'choked' ? need(Q) : headShare * curve.head(Q)) : 0
  const F = thrustAt(system, density, at, Q)
  const power = 2 * Math.PI * n * T
  return {
    n,
    V,
    Q,
    gH,
    T,
    F,
    eta: power > 0 ? (density * Q * gH) / power : 0,
    etaOverall: power > 0 ? (F * V) / power : 0,
    jetVelocity: jetVelocity(system, Q),
    advance: Q / advanceFlow,
    diffusion: curve.diffusion(Q),
    Nss: suctionSpecificSpeed(n, Q, available(Q)),
    Ka: cavitationNumber(Q),
    K3,
    Kbd,
    IVR: V > 0 ? Q / (0.25 * Math.PI * rotor.tipDiameter ** 2) / V : Number.POSITIVE_INFINITY,
    wake: wakeAt(system, at, Q),
    state,
    cavitating: noticeable,
    confidence:
      running && !flags.includes('stall') && !flags.includes('deep stall') && converged ? 'ok' : 'low',
    flags,
    converged,
  }
}
