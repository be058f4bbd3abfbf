/**
 * Running up to speed: m_e dV/dt = T(V, t) − R(V), ds/dt = V.
 * Classic fourth-order Runge–Kutta at a fixed step; events on the step's cubic. Added mass of surge: 5 to 10 % of the mass at displacement
 * speeds, 2 % planing (common practice, no source).
 */

import { integrate } from '../../base/numerics/quadrature.ts'
import { brent } from '../../base/numerics/roots.ts'
import { gravity } from '../../physics/fluid/water.ts'
import { smoothStep } from './hullSpec.ts'

/** N, thrust at speed V (m/s) and time t (s); it must settle for large t. */
export type Thrust = (speed: number, time: number) => number
/** N, drag at speed V (m/s). */
export type Drag = (speed: number) => number

export interface RunOptions {
  /** s; 0.02 when left out */
  step?: number
  /** s; 60 when left out */
  longest?: number
  /** m/s, where roots are looked for; 30 when left out */
  fastest?: number
  /** added mass over mass, slow and planing */
  added?: readonly [number, number]
  /** s between kept samples; 0.1 when left out */
  keep?: number
  /** m/s at the start */
  from?: number
}

export interface Run {
  time: number[]
  speed: number[]
  distance: number[]
  /** s to the planing speed; absent when it never gets there */
  timeToPlane?: number
  /** s to 95 % of the speed it settles at */
  timeTo95?: number
  distanceTo95?: number
  /** m/s, the steady speed reached from the start; absent when thrust is still above drag at the fastest speed looked at */
  settlesAt?: number
  /** m/s, the highest stable steady speed, reached or not */
  topSpeed?: number
  /** true when the craft settles below planing speed or below a faster steady speed it cannot reach */
  stuck: boolean
  stuckAt?: number
  /** N, the most that thrust falls short of drag between there and planing (or the faster steady speed), and where */
  deficit?: number
  deficitAt?: number
  /** work in less energy out, over work in */
  energyError: number
}

/** A steady speed; `stable` when thrust falls below drag above it. */
export interface Steady {
  speed: number
  stable: boolean
}

/** Every speed above `from` where thrust meets drag, slowest first, looked for in 0.1 m/s steps up to `fastest`. */
export function steadySpeeds(thrust: (V: number) => number, drag: Drag, fastest = 30, from = 0): Steady[] {
  const spare = (V: number) => thrust(V) - drag(V)
  const found: Steady[] = []
  const count = Math.max(2, Math.ceil((fastest - from) / 0.1))
  let v0 = from
  let f0 = spare(from)
  for (let i = 1; i <= count; i++) {
    const v1 = from + ((fastest - from) * i) / count
    const f1 = spare(v1)
    if (f0 > 0 !== f1 > 0 && Number.isFinite(f0) && Number.isFinite(f1)) {
      const root = brent(spare, v0, v1, { tolerance: 1e-9 })
      if (root.converged) found.push({ speed: root.value, stable: f0 > 0 })
    }
    v0 = v1
    f0 = f1
  }
  return found
}

interface Body {
  /** kg, all aboard */
  mass: number
  /** m/s, taken as planing from here */
  planing: number
  /** m/s at which added mass starts to fall */
  slow: number
}

/** Runs a body up to speed. Times out at `longest`; then the later events are absent. */
export function accelerate(body: Body, thrust: Thrust, drag: Drag, options: RunOptions = {}): Run {
  const dt = options.step ?? 0.02
  const longest = options.longest ?? 60
  const keep = options.keep ?? 0.1
  const [kSlow, kFast] = options.added ?? [0.08, 0.02]
  const from = options.from ?? 0
  const massAt = (V: number) =>
    body.mass * (1 + kSlow + (kFast - kSlow) * smoothStep(V, body.slow, body.planing))
  const rate = (V: number, t: number) => (thrust(V, t) - drag(V)) / massAt(V)
  const settled = (V: number) => thrust(V, 1e6)

  const run: Run = { time: [0], speed: [from], distance: [0], stuck: false, energyError: 0 }
  const fastest = options.fastest ?? 30
  const steady = steadySpeeds(settled, drag, fastest, from)
  const first = steady.find((s) => s.stable)
  const last = steady.findLast((s) => s.stable)
  const held = settled(from) <= drag(from) && from === 0
  const end = held ? 0 : first?.speed
  if (end !== undefined) run.settlesAt = end
  if (last) run.topSpeed = last.speed
  const hope = Math.max(body.planing, last?.speed ?? 0)
  if (end !== undefined && (end < body.planing || end < hope - 1e-6)) {
    run.stuck = true
    run.stuckAt = end
    run.deficit = 0
    for (let V = end; V <= hope; V += 0.02) {
      const lack = drag(V) - settled(V)
      if (lack > run.deficit) {
        run.deficit = lack
        run.deficitAt = V
      }
    }
  }

  let t = 0
  let V = from
  let s = 0
  let workIn = 0
  let workOut = 0
  let nextKept = keep
  const target = end === undefined ? Number.POSITIVE_INFINITY : from + 0.95 * (end - from)
  const steps = Math.ceil(longest / dt)
  for (let i = 0; i < steps; i++) {
    const k1 = rate(V, t)
    const v2 = Math.max(0, V + 0.5 * dt * k1)
    const k2 = rate(v2, t + 0.5 * dt)
    const v3 = Math.max(0, V + 0.5 * dt * k2)
    const k3 = rate(v3, t + 0.5 * dt)
    const v4 = Math.max(0, V + dt * k3)
    const k4 = rate(v4, t + dt)
    const next = Math.max(0, V + (dt / 6) * (k1 + 2 * k2 + 2 * k3 + k4))
    const ds = (dt / 6) * (V + 2 * v2 + 2 * v3 + v4)
    // Simpson on the step for the energy account, with the step's cubic at its middle
    const middle = 0.5 * (V + next) + (dt / 8) * (k1 - rate(next, t + dt))
    const work = (v: number, at: number) => thrust(v, at) * v
    workIn += (dt / 6) * (work(V, t) + 4 * work(middle, t + 0.5 * dt) + work(next, t + dt))
    workOut += (dt / 6) * (drag(V) * V + 4 * drag(middle) * middle + drag(next) * next)
    const cross = (goal: number) => {
      const slope1 = rate(next, t + dt)
      // Hermite cubic of the step
      const at = (u: number) =>
        (1 + 2 * u) * (1 - u) ** 2 * V +
        u * (1 - u) ** 2 * dt * k1 +
        u * u * (3 - 2 * u) * next +
        u * u * (u - 1) * dt * slope1 -
        goal
      const r = brent(at, 0, 1, { tolerance: 1e-10 })
      return r.converged ? r.value : (goal - V) / (next - V)
    }
    if (run.timeToPlane === undefined && V < body.planing && next >= body.planing)
      run.timeToPlane = t + dt * cross(body.planing)
    if (run.timeTo95 === undefined && V < target && next >= target) {
      const u = cross(target)
      run.timeTo95 = t + dt * u
      run.distanceTo95 = s + u * dt * (V + 0.5 * u * (next - V))
    }
    t += dt
    s += ds
    V = next
    if (t >= nextKept - 1e-9) {
      run.time.push(t)
      run.speed.push(V)
      run.distance.push(s)
      nextKept += keep
    }
    if (!Number.isFinite(V) || V > fastest) break
    // done when what is left to gain is a thousandth, or nothing moves
    if (end !== undefined && end - V < 1e-3 * Math.max(end - from, 0.01)) break
  }
  const kinetic = integrate((v) => massAt(v) * v, from, V, 24)
  run.energyError = workIn > 0 ? (workIn - workOut - kinetic) / workIn : 0
  return run
}

/** What `runUp` needs of a drag model. */
export interface RunningCraft {
  mass: number
  rest: { value: { volume: number } }
}

/** Speed at volumetric Froude number `Fv`, m/s: 2.4 is where planing is taken to begin. */
export function speedAtFroude(craft: RunningCraft, Fv: number): number {
  return Fv * Math.sqrt(gravity * Math.cbrt(craft.rest.value.volume))
}

/** Runs a craft up from rest; planing from Fv 2.4. */
export function runUp(craft: RunningCraft, thrust: Thrust, drag: Drag, options: RunOptions = {}): Run {
  const body = { mass: craft.mass, planing: speedAtFroude(craft, 2.4), slow: speedAtFroude(craft, 1) }
  return accelerate(body, thrust, drag, options)
}
