/**
 * Potential energy of a floating craft and the pond, with exact first and second derivatives in (h, trim, heel).
 *
 *   U = Σ m (n·G − h) − ρ ∫ (n·x − h) dV over the submerged part, divided by g.
 *
 * ∂U/∂h = ρV − m; ∂U/∂θ = (mG − ρVB)·e1; ∂U/∂φ = cos θ (ρVB − mG)·e2. Moving the water plane adds a wedge on the waterplane,
 * so the second derivatives need only the waterplane's area and moments. A resting place is a stationary point of U, a stable one
 * a minimum. A slack liquid adds its own least energy: its weight acts at its present centre, and its surface's own second
 * moment takes away stiffness, which is the free-surface effect of the textbooks in exact form. Derived for this project.
 */
import {
  AREA,
  AREA_P,
  AREA_PP,
  AREA_PQ,
  AREA_Q,
  AREA_QQ,
  addBelow,
  SUMS,
  VOLUME,
  VOLUME_P,
  VOLUME_Q,
  VOLUME_S,
} from '../../physics/solid/below.ts'
import { boundsOf } from '../../physics/solid/mesh.ts'
import { makeFrame, setFrame, type WaterFrame } from '../../physics/solid/waterFrame.ts'
import type { Floater, TankState } from './load.ts'

/** One look at the craft at (h, trim, heel); filled in place. */
export interface EnergyState {
  frame: WaterFrame
  h: number
  energy: number
  /** ∂U/∂h, ∂U/∂θ, ∂U/∂φ; kg, kg·m, kg·m */
  g0: number
  g1: number
  g2: number
  h00: number
  h01: number
  h02: number
  h11: number
  h12: number
  h22: number
  /** mass with liquids, kg */
  mass: number
  /** centre of mass in water axes: forward, to port, above the water; m */
  massP: number
  massQ: number
  massS: number
  /** sums over the submerged part, water axes (see solid/below.ts) */
  sums: Float64Array
  /** how often the bodies were clipped */
  looks: number
}

export function makeState(): EnergyState {
  return {
    frame: makeFrame(),
    h: 0,
    energy: 0,
    g0: 0,
    g1: 0,
    g2: 0,
    h00: 0,
    h01: 0,
    h02: 0,
    h11: 0,
    h12: 0,
    h22: 0,
    mass: 0,
    massP: 0,
    massQ: 0,
    massS: 0,
    sums: new Float64Array(SUMS),
    looks: 0,
  }
}

const liquid = new Float64Array(SUMS)

/** Energy, gradient and second derivatives at an attitude (m, rad, rad); allocates nothing. */
export function lookAt(f: Floater, h: number, trim: number, heel: number, out: EnergyState): EnergyState {
  const frame = setFrame(out.frame, trim, heel)
  const s = out.sums
  s.fill(0)
  for (let i = 0; i < f.bodies.length; i++) addBelow(f.bodies[i]!, frame, h, s)
  out.looks++
  const rho = f.density
  const [gx, gy, gz] = f.centre
  // weights in water axes, heights above the body origin's level first
  let mass = f.mass
  let mp = mass * (frame.e1x * gx + frame.e1y * gy + frame.e1z * gz)
  let mq = mass * (frame.e2y * gy + frame.e2z * gz)
  let ms = mass * (frame.nx * gx + frame.ny * gy + frame.nz * gz)
  // what the liquids' surfaces take away
  let soft11 = 0
  let soft12 = 0
  let soft22 = 0
  for (let i = 0; i < f.tanks.length; i++) {
    const t = f.tanks[i]!
    if (t.volume <= 0) continue
    settleLevel(t, frame)
    const d = t.density
    mass += d * t.volume
    mp += d * liquid[VOLUME_P]!
    mq += d * liquid[VOLUME_Q]!
    ms += d * (liquid[VOLUME_S]! + t.level * t.volume)
    const area = liquid[AREA]!
    if (area > 1e-12) {
      soft11 += d * (liquid[AREA_PP]! - (liquid[AREA_P]! * liquid[AREA_P]!) / area)
      soft12 += d * (liquid[AREA_PQ]! - (liquid[AREA_P]! * liquid[AREA_Q]!) / area)
      soft22 += d * (liquid[AREA_QQ]! - (liquid[AREA_Q]! * liquid[AREA_Q]!) / area)
    }
  }
  const ct = Math.cos(trim)
  const st = Math.sin(trim)
  const gp = mp - rho * s[VOLUME_P]!
  const gq = rho * s[VOLUME_Q]! - mq
  // height moment of weight less buoyancy, about the body origin's level
  const gs = ms - rho * (s[VOLUME_S]! + h * s[VOLUME]!)
  out.h = h
  out.mass = mass
  out.massP = mp / mass
  out.massQ = mq / mass
  out.massS = ms / mass - h
  out.energy = ms - mass * h - rho * s[VOLUME_S]!
  out.g0 = rho * s[VOLUME]! - mass
  out.g1 = gp
  out.g2 = ct * gq
  out.h00 = rho * s[AREA]!
  out.h01 = -rho * s[AREA_P]!
  out.h02 = rho * ct * s[AREA_Q]!
  out.h11 = -gs + rho * s[AREA_PP]! - soft11
  out.h12 = -st * gq - ct * (rho * s[AREA_PQ]! - soft12)
  out.h22 = ct * (-ct * gs + st * gp) + ct * ct * (rho * s[AREA_QQ]! - soft22)
  return out
}

/**
 * A liquid as it lies when the water is seen in `frame`: its level along n (m), its centre in body axes (m), and the second moment
 * of its surface across the craft about the surface's own middle (m⁴; 0 when full or empty).
 */
export function liquidIn(
  t: TankState,
  f: WaterFrame,
): { level: number; centre: [number, number, number]; inertia: number; volume: number } {
  settleLevel(t, f)
  const v = liquid[VOLUME]!
  const p = v > 0 ? liquid[VOLUME_P]! / v : 0
  const q = v > 0 ? liquid[VOLUME_Q]! / v : 0
  const s = v > 0 ? liquid[VOLUME_S]! / v + t.level : t.level
  const area = liquid[AREA]!
  return {
    level: t.level,
    centre: [p * f.e1x + s * f.nx, p * f.e1y + q * f.e2y + s * f.ny, p * f.e1z + q * f.e2z + s * f.nz],
    inertia: area > 1e-12 ? liquid[AREA_QQ]! - (liquid[AREA_Q]! * liquid[AREA_Q]!) / area : 0,
    volume: v,
  }
}

/** Finds the level at which a tank holds its volume, with its sums left in `liquid`. */
function settleLevel(t: TankState, frame: WaterFrame): void {
  const { low, high } = rangeAlong(t, frame)
  if (t.volume >= t.capacity * (1 - 1e-12)) {
    // pressed full: no free surface
    t.level = high
    liquid.fill(0)
    addBelow(t.body, frame, high + 1e-6 * (high - low), liquid)
    t.level = high + 1e-6 * (high - low)
    liquid[AREA] = 0
    return
  }
  let a = low
  let b = high
  let level = t.level > low && t.level < high ? t.level : low + ((high - low) * t.volume) / t.capacity
  for (let i = 0; i < 80; i++) {
    liquid.fill(0)
    addBelow(t.body, frame, level, liquid)
    const over = liquid[VOLUME]! - t.volume
    if (Math.abs(over) <= 1e-14 * t.capacity) break
    if (over > 0) b = level
    else a = level
    const step = level - over / liquid[AREA]!
    const next = step > a && step < b ? step : (a + b) / 2
    if (next === level) break
    level = next
  }
  t.level = level
}

const range = { low: 0, high: 0 }
const corners = new WeakMap<object, { low: number[]; high: number[] }>()

/** Least and greatest n·x over the tank's box. */
function rangeAlong(t: TankState, f: WaterFrame): { low: number; high: number } {
  let box = corners.get(t.body)
  if (box === undefined) {
    box = boundsOf(t.body.mesh)
    corners.set(t.body, box)
  }
  range.low = 0
  range.high = 0
  const n0 = f.nx
  const n1 = f.ny
  const n2 = f.nz
  range.low += Math.min(n0 * box.low[0]!, n0 * box.high[0]!)
  range.low += Math.min(n1 * box.low[1]!, n1 * box.high[1]!)
  range.low += Math.min(n2 * box.low[2]!, n2 * box.high[2]!)
  range.high += Math.max(n0 * box.low[0]!, n0 * box.high[0]!)
  range.high += Math.max(n1 * box.low[1]!, n1 * box.high[1]!)
  range.high += Math.max(n2 * box.low[2]!, n2 * box.high[2]!)
  return range
}
