/**
 * Planing of a prismatic hull.
 * Source: D. Savitsky (1964), Hydrodynamic design of planing hulls, Marine Technology 1(1); lift, wetted length, centre of
 * pressure, friction and the equilibrium of table 1 (coefficients from memory; friction figures of the published example
 * reproduce to 0.1 %). The three-force balance with air drag is derived here from statics.
 *
 * Everything hangs on λ, mean wetted length over beam: at a given speed and weight the trim follows from λ without iteration,
 * and so do all forces, and so does the place the centre of gravity must have. Optimising the rider is then a
 * search over λ alone.
 */
import type { Solved } from '../../base/answers/solved.ts'
import { scanRoots } from '../../base/numerics/roots.ts'
import { ittc57 } from '../../physics/fluid/friction.ts'
import { gravity } from '../../physics/fluid/water.ts'
import { whiskerSpray } from './spray.ts'

const degrees = 180 / Math.PI

/** A planing hull and what presses on it at one speed. */
export interface PlaningCase {
  /** m/s */
  speed: number
  /** N */
  weight: number
  /** m, chine beam at the running waterline */
  beam: number
  /** rad */
  deadrise: number
  density: number
  kinematicViscosity: number
  /** roughness allowance on friction */
  roughness: number
  /** friction line; ITTC-57 when left out */
  line?: (Re: number) => number
  /** m above the keel, centre of all mass */
  centreHeight: number
  /** m above the keel at the transom, and rad from the keel: the thrust line */
  thrustHeight: number
  thrustAngle: number
  /** N, air drag, and m above the keel where it acts */
  airDrag: number
  airHeight: number
  /** N along the keel, drag of fins, plates and guards */
  appendage: number
  /** m², wetted bottom that is an opening */
  opening?: number
  /** count whisker spray; off in the published method */
  spray?: boolean
  /** the thrust's vertical part carries some of the weight; off in the published method */
  thrustLifts?: boolean
}

/** Forces and geometry at one λ; reused from call to call. */
export interface PlaningState {
  lambda: number
  /** rad */
  trim: number
  /** N: bottom friction, spray, pressure drag W tan τ, air and appendages */
  friction: number
  spray: number
  pressure: number
  air: number
  appendage: number
  /** N: normal force, thrust along its line, and its horizontal part, which is the drag */
  normal: number
  thrust: number
  drag: number
  /** m forward of the transom: centre of pressure, and where the centre of gravity must be for balance */
  pressureCentre: number
  neededCentre: number
  /** m, wetted keel and wetted chine (negative: chine dry) */
  wettedKeel: number
  wettedChine: number
  /** lift coefficient on beam squared, with deadrise and without */
  lift: number
  flatLift: number
}

export function planingState(): PlaningState {
  return {
    lambda: 0,
    trim: 0,
    friction: 0,
    spray: 0,
    pressure: 0,
    air: 0,
    appendage: 0,
    normal: 0,
    thrust: 0,
    drag: 0,
    pressureCentre: 0,
    neededCentre: 0,
    wettedKeel: 0,
    wettedChine: 0,
    lift: 0,
    flatLift: 0,
  }
}

/** Lift coefficient of the flat plate that carries as much as a deadrise bottom: CL0 − 0.0065 β° CL0^0.6 = CL. Deadrise rad, 0 to 0.9. */
export function flatPlateLift(lift: number, deadrise: number): number {
  const k = 0.0065 * deadrise * degrees
  if (k <= 0) return lift
  // convex, so Newton from the right goes straight down to the root
  let x = (lift + k) / (1 - k)
  for (let i = 0; i < 40; i++) {
    const power = k * x ** 0.6
    const step = (x - power - lift) / (1 - (0.6 * power) / x)
    x -= step
    if (Math.abs(step) <= 1e-14 * x) break
  }
  return x
}

/** λ and speed coefficient to CL0/τ^1.1, τ in degrees (Savitsky 1964, eq. 15). */
export function liftFunction(lambda: number, speedCoefficient: number): number {
  const root = Math.sqrt(lambda)
  return 0.012 * root + (0.0055 * lambda * lambda * root) / (speedCoefficient * speedCoefficient)
}

/** λ at which a plate with flat lift CL0 runs at trim τ (rad): the inverse of `liftFunction`, by Newton on log λ. */
export function lambdaAtTrim(flatLift: number, trim: number, speedCoefficient: number): number {
  const target = flatLift / (trim * degrees) ** 1.1
  const c2 = 1 / (speedCoefficient * speedCoefficient)
  let u = Math.log(Math.min(50, Math.max(1e-4, (target / 0.02) ** 1.2)))
  for (let i = 0; i < 60; i++) {
    const lambda = Math.exp(u)
    const a = 0.012 * Math.sqrt(lambda)
    const b = 0.0055 * lambda ** 2.5 * c2
    const step = (Math.log(a + b) - Math.log(target)) / ((0.5 * a + 2.5 * b) / (a + b))
    u -= step
    if (Math.abs(step) < 1e-13) break
  }
  return Math.exp(u)
}

/** Centre of pressure forward of the transom over mean wetted length. */
function pressureCentrePart(lambda: number, speedCoefficient: number): number {
  return 0.75 - 1 / ((5.21 * speedCoefficient ** 2) / (lambda * lambda) + 2.39)
}

/** Fills `out` for a hull planing at mean wetted length λ (over beam). */
export function planingAt(c: PlaningCase, lambda: number, out: PlaningState): PlaningState {
  const { speed, beam, deadrise, weight } = c
  const q = 0.5 * c.density * speed * speed
  const Cv = speed / Math.sqrt(gravity * beam)
  const k = 0.0065 * deadrise * degrees
  const shape = liftFunction(lambda, Cv)
  const tanDeadrise = Math.tan(deadrise)
  const line = c.line ?? ittc57
  out.lambda = lambda
  out.air = c.airDrag
  out.appendage = c.appendage
  let carried = weight
  for (let round = 0; round < 25; round++) {
    const lift = carried / (q * beam * beam)
    const flat = flatPlateLift(lift, deadrise)
    // far below planing speed the formula runs past any trim a hull can take; there it is only held finite
    const trimDegrees = Math.min(60, (flat / shape) ** (1 / 1.1))
    const trim = trimDegrees / degrees
    const sin = Math.sin(trim)
    const cos = Math.cos(trim)
    // mean speed along the bottom, from the dynamic part of the lift
    const dynamicFlat = (0.012 * Math.sqrt(lambda) * flat) / shape
    const dynamic = Math.max(0, k > 0 ? dynamicFlat - k * dynamicFlat ** 0.6 : dynamicFlat)
    const slowed = speed * Math.sqrt(Math.max(0.05, 1 - dynamic / (lambda * cos)))
    const area = Math.max(0, (lambda * beam * beam) / Math.cos(deadrise) - (c.opening ?? 0))
    const CF = line((slowed * lambda * beam) / c.kinematicViscosity) + c.roughness
    out.friction = 0.5 * c.density * slowed * slowed * area * CF
    out.spray = c.spray ? whiskerSpray(speed, beam, deadrise, trim, c.density, c.kinematicViscosity).drag : 0
    const along = out.friction + out.spray + c.appendage
    const turned = trim + c.thrustAngle
    // three forces: normal to the keel, thrust, and what drags along the keel, with weight and air drag
    const cosAngle = Math.cos(c.thrustAngle)
    out.thrust = (along + c.airDrag * cos + weight * sin) / cosAngle
    out.normal =
      ((weight + along * sin) * Math.cos(turned) - (along * cos + c.airDrag) * Math.sin(turned)) / cosAngle
    out.drag = out.thrust * Math.cos(turned)
    out.trim = trim
    out.lift = lift
    out.flatLift = flat
    if (!c.thrustLifts) break
    const next = Math.max(0.2 * weight, weight - out.thrust * Math.sin(turned))
    if (Math.abs(next - carried) < 1e-10 * weight) break
    carried = next
  }
  out.pressure = out.drag - out.friction - out.spray - c.appendage - c.airDrag
  out.pressureCentre = lambda * beam * pressureCentrePart(lambda, Cv)
  const arm = c.centreHeight - 0.25 * beam * tanDeadrise
  const along = out.friction + out.spray + c.appendage
  // moments about the centre of gravity, bow down positive: N (x_G − L_p) + D a − T f − D_air (h − z_G) = 0, f linear in x_G
  out.neededCentre =
    (out.normal * out.pressureCentre -
      along * arm +
      out.thrust * (c.centreHeight - c.thrustHeight) * Math.cos(c.thrustAngle) +
      c.airDrag * (c.airHeight - c.centreHeight)) /
    (out.normal + out.thrust * Math.sin(c.thrustAngle))
  const spread = (beam * tanDeadrise) / (Math.PI * Math.tan(out.trim))
  out.wettedKeel = lambda * beam + 0.5 * spread
  out.wettedChine = lambda * beam - 0.5 * spread
  return out
}

/** The published hand method's inputs: thrust line by its distance f below the centre of gravity, no air drag. */
export interface Savitsky1964 {
  speed: number
  weight: number
  beam: number
  deadrise: number
  centre: number
  centreHeight: number
  thrustAngle: number
  thrustBelow: number
  density: number
  kinematicViscosity: number
  roughness: number
  line?: (Re: number) => number
}

const trimGrid = Float64Array.from({ length: 79 }, (_, i) => (0.5 + i * 0.25) / degrees)

/**
 * Equilibrium by the moment equation of the 1964 paper (its table 1): trim, λ, drag W tan τ + Df/cos τ. The lowest root between 0.5 and
 * 20° is the stable one; not converged when there is none, which means the hull does not plane in this state.
 * `residual` is the moment left over the weight times the beam.
 */
export function savitsky1964(input: Savitsky1964): Solved<PlaningState> {
  const c: PlaningCase = { ...input, thrustHeight: 0, airDrag: 0, airHeight: 0, appendage: 0 }
  const Cv = input.speed / Math.sqrt(gravity * input.beam)
  const state = planingState()
  const flat = flatPlateLift(
    input.weight / (0.5 * input.density * (input.speed * input.beam) ** 2),
    input.deadrise,
  )
  const a = input.centreHeight - 0.25 * input.beam * Math.tan(input.deadrise)
  const f = input.thrustBelow
  const moment = (trim: number) => {
    planingAt(c, lambdaAtTrim(flat, trim, Cv), state)
    const lever = input.centre - state.pressureCentre
    const turned = Math.sin(trim) * Math.sin(trim + input.thrustAngle)
    return (
      input.weight * (((1 - turned) * lever) / Math.cos(trim) - f * Math.sin(trim)) + state.friction * (a - f)
    )
  }
  const root = scanRoots(moment, trimGrid, { tolerance: 1e-12 })[0]
  if (!root) return { value: state, converged: false, iterations: trimGrid.length, residual: Number.NaN }
  const residual = Math.abs(moment(root.value)) / (input.weight * input.beam)
  state.drag = input.weight * Math.tan(state.trim) + state.friction / Math.cos(state.trim)
  state.pressure = state.drag - state.friction
  state.neededCentre = input.centre
  return { value: state, converged: root.converged, iterations: trimGrid.length + root.iterations, residual }
}
