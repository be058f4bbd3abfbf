/**
 * Boundaries of a duct, solved with exact wave curves, so strong waves are fine: closed end, port of a
 * cylinder in both directions with choking, open end or plenum, and the junction of two ducts of different bore.
 *
 * Wave curves: E. F. Toro, Riemann Solvers and Numerical Methods for Fluid Dynamics, 3rd ed. (2009), sec. 4.2 and
 * 4.3. Ports: steady isentropic nozzle whose throat pressure is the pipe's ("constant pressure" port),
 * R. S. Benson, The Thermodynamics and Gas Dynamics of Internal-Combustion Engines, vol. 1 (1982). Junction: equal
 * static pressure, no recovery, enthalpy carried by the flow.
 *
 * Over 400 lines because all kinds share one scratch, one residual and one solver.
 *
 * Every velocity w here points INTO the duct, whichever end it is: left end w = u, right end w = -u. The wave
 * that leaves the boundary then obeys w_b = w_i + f(p_b), f rising with p, with i the predicted face state.
 * Each solver writes the flux into `edge` and what crossed into `out`, so that the volume on the other side
 * can book exactly the same amounts.
 */
import type { Ducts } from './arena.ts'

/** What crossed a boundary during a step, all per second and positive INTO the duct. */
export const crossed = {
  mass: 0,
  /** total enthalpy flow, W */
  energy: 1,
  fresh: 2,
  /** state in the boundary plane: pressure, velocity into the duct, temperature */
  p: 3,
  w: 4,
  t: 5,
  /** stagnation temperature of the stream */
  t0: 6,
  /** closed-end pressure: what a wall would feel */
  wallP: 7,
} as const

/** Fresh room for `crossed`. */
export const createCrossing = (): Float64Array => new Float64Array(8)

// scratch of the solver in hand: gas, end state, and what stands beyond
const s = new Float64Array(24)
const PK = 0
const TK = 1
const AK = 2
const WI = 3
const PB = 4 // state on the wave curve at the trial pressure
const TB = 5
const WB = 6
const GAMMA = 7
const GAS_R = 8
const CP = 9
const AREA = 10
const P_OUT = 11
const T_OUT = 12
const G_OUT = 13
const R_OUT = 14
const THROAT = 15
const PK2 = 16
const TK2 = 17
const AK2 = 18
const WI2 = 19
const AREA2 = 20
const T0 = 21
const MDOT = 22

/** Puts the predicted face state of one end into the scratch. */
function loadEnd(g: Ducts, d: number, side: 0 | 1): void {
  const e = 8 * d + 4 * side
  const rho = g.end[e]!
  const p = g.end[e + 2]!
  s[PK] = p
  s[TK] = p / (rho * g.gasConstant)
  s[AK] = Math.sqrt((g.gamma * p) / rho)
  s[WI] = side === 0 ? g.end[e + 1]! : -g.end[e + 1]!
  s[GAMMA] = g.gamma
  s[GAS_R] = g.gasConstant
  s[CP] = (g.gamma * g.gasConstant) / (g.gamma - 1)
}

/** Velocity and temperature behind the wave that brings the end state to pressure p, into WB, TB. */
function alongWave(p: number): void {
  const gamma = s[GAMMA]!
  const pk = s[PK]!
  const ratio = p / pk
  if (ratio > 1) {
    // shock
    const a2 = s[AK]! * s[AK]!
    s[WB] = s[WI]! + ((ratio - 1) * a2) / (gamma * shockSpeed(ratio, gamma, a2))
    const q = (gamma - 1) / (gamma + 1)
    s[TB] = (s[TK]! * ratio * (q * ratio + 1)) / (ratio + q)
  } else {
    // isentropic expansion
    const e = Math.exp(((gamma - 1) / (2 * gamma)) * Math.log(ratio))
    s[WB] = s[WI]! + ((2 * s[AK]!) / (gamma - 1)) * (e - 1)
    s[TB] = s[TK]! * e * e
  }
  s[PB] = p
}

/** speed of a shock of the given pressure ratio into gas of sound speed squared a2 */
function shockSpeed(ratio: number, gamma: number, a2: number): number {
  return Math.sqrt(a2 * (1 + ((gamma + 1) / (2 * gamma)) * (ratio - 1)))
}

/** Pressure at a closed end: w_i + f(p) = 0, both branches in closed form. */
function wallPressure(pk: number, ak: number, wi: number, gamma: number): number {
  if (wi > 0) {
    const e = 1 - ((gamma - 1) / 2) * (wi / ak)
    return e > 0 ? pk * e ** ((2 * gamma) / (gamma - 1)) : 1e-6 * pk
  }
  // (r-1)^2 = (w gamma/a)^2 (1 + (gamma+1)/(2 gamma) (r-1))
  const m2 = ((gamma * wi) / ak) ** 2
  const b = ((gamma + 1) / (4 * gamma)) * m2
  return pk * (1 + b + Math.sqrt(b * b + m2))
}

/** Dimensionless nozzle flow psi of the pressure ratio down/up, choked where it must be. */
function psi(ratio: number, gamma: number): number {
  const critical = 2 / (gamma + 1)
  let x = Math.exp(((gamma - 1) / gamma) * Math.log(ratio))
  let r = ratio
  if (x < critical) {
    x = critical
    r = critical ** (gamma / (gamma - 1))
  }
  return x >= 1 ? 0 : (r / x) * Math.sqrt(((2 * gamma) / (gamma - 1)) * (1 - x))
}

/** Static temperature of a stream of specific flow z = m' R / (p A) with stagnation temperature t0; then w = z T. */
function staticT(z: number, t0: number, cp: number): number {
  const b = z * z
  // root of T + z^2 T^2 / (2 cp) = t0, written so that z = 0 is no special case
  return (2 * t0) / (1 + Math.sqrt(1 + (2 * b * t0) / cp))
}

/** Pressure at which the stream that leaves the loaded end is just sonic, on its expansion curve. */
function sonicPressure(): number {
  const gamma = s[GAMMA]!
  const e = (2 * s[AK]! - (gamma - 1) * s[WI]!) / (s[AK]! * (gamma + 1))
  return s[PK]! * e ** ((2 * gamma) / (gamma - 1))
}

const OUT = 0
const IN = 1
const DRAW = 2
const JOIN = 3

/** Residuals, each rising with the boundary pressure p; zero where waves and boundary agree. */
function residual(kind: number, p: number): number {
  alongWave(p)
  if (kind === OUT) {
    // cylinder or case blows into the duct
    const mdot = (s[THROAT]! * s[P_OUT]! * psi(p / s[P_OUT]!, s[G_OUT]!)) / Math.sqrt(s[R_OUT]! * s[T_OUT]!)
    const z = (mdot * s[GAS_R]!) / (p * s[AREA]!)
    return s[WB]! - z * staticT(z, s[T_OUT]!, s[CP]!)
  }
  if (kind === IN) {
    // the duct blows into the cylinder
    const w = s[WB]!
    const t = s[TB]!
    const gamma = s[GAMMA]!
    const t0 = t + (w * w) / (2 * s[CP]!)
    const x = (Math.exp(((gamma - 1) / gamma) * Math.log(s[P_OUT]! / p)) * t) / t0
    let mdot = 0
    if (x < 2 / (gamma + 1)) {
      const p0 = p * (t0 / t) ** (gamma / (gamma - 1))
      mdot = (s[THROAT]! * p0 * psi(0, gamma)) / Math.sqrt(s[GAS_R]! * t0)
    } else if (x < 1) {
      mdot = ((s[THROAT]! * s[P_OUT]!) / (s[GAS_R]! * t0 * x)) * Math.sqrt(2 * s[CP]! * t0 * (1 - x))
    }
    return (p / (s[GAS_R]! * t)) * w * s[AREA]! + mdot
  }
  if (kind === DRAW) {
    // a plenum is drawn into the duct through its full section
    const t = s[T_OUT]! * Math.exp(((s[GAMMA]! - 1) / s[GAMMA]!) * Math.log(p / s[P_OUT]!))
    const drop = s[T_OUT]! - t
    return s[WB]! - (drop > 0 ? Math.sqrt(2 * s[CP]! * drop) : 0)
  }
  // junction: the end in hand gives, the second end takes at the same pressure
  const give = -(p / (s[GAS_R]! * s[TB]!)) * s[WB]! * s[AREA]!
  const t0 = s[TB]! + (s[WB]! * s[WB]!) / (2 * s[CP]!)
  const z = (give * s[GAS_R]!) / (p * s[AREA2]!)
  s[T0] = t0
  s[MDOT] = give
  return takerSpeed(p) - z * staticT(z, t0, s[CP]!)
}

/** the wave curve of the second end of a junction */
function takerSpeed(p: number): number {
  const gamma = s[GAMMA]!
  const ratio = p / s[PK2]!
  if (ratio > 1) {
    const a2 = s[AK2]! * s[AK2]!
    return s[WI2]! + ((ratio - 1) * a2) / (gamma * shockSpeed(ratio, gamma, a2))
  }
  const e = Math.exp(((gamma - 1) / (2 * gamma)) * Math.log(ratio))
  return s[WI2]! + ((2 * s[AK2]!) / (gamma - 1)) * (e - 1)
}

/**
 * Root of a rising residual between lo and hi: false position with the Anderson and Bjorck correction (BIT 13
 * (1973) 253), after closing the bracket around the last step's answer, which is nearly right.
 */
function solve(kind: number, lo: number, hi: number, guess: number): number {
  let a = lo
  let b = hi
  let fa = -1
  let fb = 1
  let knownA = false
  let knownB = false
  let x = guess > lo && guess < hi ? guess : 0.5 * (lo + hi)
  let reach = 0.004
  for (let k = 0; k < 60; k++) {
    const fx = residual(kind, x)
    if (fx === 0) return x
    if (fx < 0) {
      if (knownA && knownB) {
        const m = 1 - fx / fa
        fb *= m > 0 ? m : 0.5
      }
      a = x
      fa = fx
      knownA = true
    } else {
      if (knownA && knownB) {
        const m = 1 - fx / fb
        fa *= m > 0 ? m : 0.5
      }
      b = x
      fb = fx
      knownB = true
    }
    if (b - a <= 1e-12 * b) return x
    if (knownA && knownB) {
      const next = b - (fb * (b - a)) / (fb - fa)
      if (Math.abs(next - x) <= 1e-11 * x) return next
      x = next
    } else {
      // one side only so far: step past the root, further each time
      x = knownA ? x * (1 + reach) : x * (1 - reach)
      if (!(x > a && x < b)) x = 0.5 * (a + b)
      reach *= 4
    }
  }
  return x
}

/** Writes flux and crossing for boundary state (p, w, t) and fresh fraction y, with the stream's stagnation temperature. */
function book(
  g: Ducts,
  d: number,
  side: 0 | 1,
  p: number,
  w: number,
  t: number,
  y: number,
  out: Float64Array,
): void {
  const rho = p / (g.gasConstant * t)
  const area = endArea(g, d, side)
  const t0 = t + (w * w) / (2 * s[CP]!)
  const mass = rho * w
  const sign = side === 0 ? 1 : -1
  const e = 8 * d + 4 * side
  g.edge[e] = sign * mass
  g.edge[e + 1] = mass * w + p
  g.edge[e + 2] = sign * mass * s[CP]! * t0
  g.edge[e + 3] = sign * mass * y
  out[crossed.mass] = mass * area
  out[crossed.energy] = mass * area * s[CP]! * t0
  out[crossed.fresh] = mass * area * y
  out[crossed.p] = p
  out[crossed.w] = w
  out[crossed.t] = t
  out[crossed.t0] = t0
}

/** Section of the end face, m2. */
export function endArea(g: Ducts, d: number, side: 0 | 1): number {
  return g.cell[16 * (side === 0 ? g.first[d]! : g.last[d]! + 1) + 5]!
}

const endFresh = (g: Ducts, d: number, side: 0 | 1): number => g.end[8 * d + 4 * side + 3]!

/** Closed end. */
export function closedEnd(g: Ducts, d: number, side: 0 | 1, out: Float64Array): void {
  loadEnd(g, d, side)
  const p = wallPressure(s[PK]!, s[AK]!, s[WI]!, s[GAMMA]!)
  const e = 8 * d + 4 * side
  g.edge[e] = 0
  g.edge[e + 1] = p
  g.edge[e + 2] = 0
  g.edge[e + 3] = 0
  out.fill(0)
  out[crossed.p] = p
  out[crossed.t] = s[TK]!
  out[crossed.t0] = s[TK]!
  out[crossed.wallP] = p
}

/** Transmissive end: the flux of the end's own state, for tubes longer than the wave travels. */
export function passEnd(g: Ducts, d: number, side: 0 | 1, out: Float64Array): void {
  loadEnd(g, d, side)
  book(g, d, side, s[PK]!, s[WI]!, s[TK]!, endFresh(g, d, side), out)
}

/**
 * Port between a duct end and a volume. The volume holds pressure p (Pa) and gives gas of temperature t (K), ratio
 * of heats gamma, constant r (J/kg K) and fresh fraction y through an effective throat (m2, 0 for shut).
 * `guess`: boundary pressure of the step before.
 */
export function portEnd(
  g: Ducts,
  d: number,
  side: 0 | 1,
  throat: number,
  p: number,
  t: number,
  gamma: number,
  r: number,
  y: number,
  guess: number,
  out: Float64Array,
): void {
  if (throat < 1e-9) {
    closedEnd(g, d, side, out)
    return
  }
  loadEnd(g, d, side)
  const wallP = wallPressure(s[PK]!, s[AK]!, s[WI]!, s[GAMMA]!)
  const area = endArea(g, d, side)
  s[AREA] = area
  s[P_OUT] = p
  s[T_OUT] = t
  s[G_OUT] = gamma
  s[R_OUT] = r
  s[THROAT] = Math.min(throat, 0.999 * area) // a port wider than its duct is held back by the duct
  if (p > wallP * (1 + 1e-12)) {
    const pb = solve(OUT, wallP, p, guess)
    // the stream in the duct carries the volume's temperature as its stagnation temperature
    const mdot = (s[THROAT]! * p * psi(pb / p, gamma)) / Math.sqrt(r * t)
    const z = (mdot * s[GAS_R]!) / (pb * area)
    const tb = staticT(z, t, s[CP]!)
    book(g, d, side, pb, z * tb, tb, y, out)
  } else if (p < wallP * (1 - 1e-12)) {
    const pb = solve(IN, sonicPressure(), wallP, guess)
    alongWave(pb)
    book(g, d, side, pb, s[WB]!, s[TB]!, endFresh(g, d, side), out)
  } else {
    closedEnd(g, d, side, out)
  }
  out[crossed.wallP] = wallP
}

/**
 * Open end, or end in a plenum, at pressure p (Pa), temperature t (K), fresh fraction y of what is drawn back.
 * Out: the plenum's pressure, or sonic. In: isentropic through the full section.
 */
export function openEnd(
  g: Ducts,
  d: number,
  side: 0 | 1,
  p: number,
  t: number,
  y: number,
  guess: number,
  out: Float64Array,
): void {
  loadEnd(g, d, side)
  const gamma = s[GAMMA]!
  const own = endFresh(g, d, side)
  const wallP = wallPressure(s[PK]!, s[AK]!, s[WI]!, gamma)
  if (-s[WI]! >= s[AK]!) {
    book(g, d, side, s[PK]!, s[WI]!, s[TK]!, own, out) // leaves faster than sound
  } else if (p <= wallP) {
    alongWave(p)
    if (s[WB]! < -Math.sqrt(gamma * s[GAS_R]! * s[TB]!)) {
      // cannot leave faster than sound
      alongWave(sonicPressure())
    }
    book(g, d, side, s[PB]!, s[WB]!, s[TB]!, own, out)
  } else {
    s[P_OUT] = p
    s[T_OUT] = t
    const sonic = p * (2 / (gamma + 1)) ** (gamma / (gamma - 1))
    let pb = sonic
    if (wallP > sonic || residual(DRAW, sonic) < 0) pb = solve(DRAW, Math.max(wallP, sonic), p, guess)
    const tb = t * (pb / p) ** ((gamma - 1) / gamma)
    book(g, d, side, pb, Math.sqrt(2 * s[CP]! * Math.max(0, t - tb)), tb, y, out)
  }
  out[crossed.wallP] = wallP
}

/**
 * Two duct ends of different bore set against each other: one static pressure, mass and total enthalpy
 * carried across, no pressure recovered. `out` is for the first end. `guess` as above.
 */
export function joinEnds(
  g: Ducts,
  d1: number,
  side1: 0 | 1,
  d2: number,
  side2: 0 | 1,
  guess: number,
  out: Float64Array,
): void {
  loadEnd(g, d1, side1)
  const wall1 = wallPressure(s[PK]!, s[AK]!, s[WI]!, s[GAMMA]!)
  loadEnd(g, d2, side2)
  const wall2 = wallPressure(s[PK]!, s[AK]!, s[WI]!, s[GAMMA]!)
  if (Math.abs(wall1 - wall2) <= 1e-13 * wall1) {
    closedEnd(g, d2, side2, out)
    closedEnd(g, d1, side1, out)
    return
  }
  // the end that would press harder on a wall gives
  const firstGives = wall1 > wall2
  const gd = firstGives ? d1 : d2
  const gs = firstGives ? side1 : side2
  const td = firstGives ? d2 : d1
  const ts = firstGives ? side2 : side1
  loadEnd(g, td, ts)
  s[PK2] = s[PK]!
  s[TK2] = s[TK]!
  s[AK2] = s[AK]!
  s[WI2] = s[WI]!
  s[AREA2] = endArea(g, td, ts)
  loadEnd(g, gd, gs)
  s[AREA] = endArea(g, gd, gs)
  const p = solve(JOIN, firstGives ? wall2 : wall1, firstGives ? wall1 : wall2, guess)
  residual(JOIN, p)
  const y = endFresh(g, gd, gs)
  const z = (s[MDOT]! * s[GAS_R]!) / (p * s[AREA2]!)
  const t = staticT(z, s[T0]!, s[CP]!)
  if (firstGives) {
    book(g, td, ts, p, z * t, t, y, out)
    book(g, gd, gs, p, s[WB]!, s[TB]!, y, out)
  } else {
    book(g, gd, gs, p, s[WB]!, s[TB]!, y, out)
    book(g, td, ts, p, z * t, t, y, out)
  }
  out[crossed.wallP] = firstGives ? wall1 : wall2
}
