/**
 * Torque of one cylinder over a turn of the crank. Pressure: polytropic compression and expansion (exponents 1.32 and 1.4, usual for small
 * two-strokes: G. P. Blair, Design and Simulation of Two-Stroke Engines (1996), from memory), a smooth rise from 20° before to the peak
 * about 16° after top dead centre, a slower fall while the rest burns to 40°, near ambient while the exhaust is open (angles and fall from this
 * project's own simulations); its peak is that of the cycle simulation where there is one, else the one that gives the mean torque. Moving masses: kinetic energy of piston and small end, mechanics; their mass by bore cubed, judgement.
 */
import { brent } from '../../base/numerics/roots.ts'

/** m, rad after top dead centre; `ratio` of volumes from exhaust closing to top. */
export interface Cylinder {
  bore: number
  stroke: number
  rod: number
  exhaustOpens: number
  ratio: number
}

/** samples a turn, from top dead centre on */
export const turnSamples = 180
export const turnOrders = 12

const ambient = 1.05e5
const inCase = 1.15e5
const trapped = 1.35e5
const degree = Math.PI / 180
const starts = -20 * degree
const peakAngle = 16 * degree
/** burning goes on to here, and the pressure falls by this power of the volume until then */
const burnt = 40 * degree
const burning = 0.75
const compresses = 1.32
const expands = 1.4

/** kg: piston, pin and small end */
const movingMass = (bore: number): number => 1900 * bore ** 3

interface Geometry {
  angle: Float64Array
  travel: Float64Array
  rate: Float64Array
}

function geometryOf(c: Cylinder): Geometry {
  const r = c.stroke / 2
  const angle = new Float64Array(turnSamples).map((_, i) => ((i + 0.5) / turnSamples - 0.5) * 2 * Math.PI)
  const leg = (a: number) => Math.sqrt(c.rod ** 2 - (r * Math.sin(a)) ** 2)
  return {
    angle,
    travel: angle.map((a) => r + c.rod - r * Math.cos(a) - leg(a)),
    rate: angle.map((a) => r * Math.sin(a) * (1 + (r * Math.cos(a)) / leg(a))),
  }
}

/** Pressure at each sample for a peak pressure, Pa. */
function pressureOf(c: Cylinder, g: Geometry, peak: number, exponent: number): Float64Array {
  const r = c.stroke / 2
  const area = (Math.PI / 4) * c.bore ** 2
  const travelAt = (a: number) => r + c.rod - r * Math.cos(a) - Math.sqrt(c.rod ** 2 - (r * Math.sin(a)) ** 2)
  const closed = area * travelAt(c.exhaustOpens)
  const clearance = closed / (c.ratio - 1)
  const squeezed = (v: number) => trapped * ((closed + clearance) / v) ** compresses
  const atPeak = clearance + area * travelAt(peakAngle)
  const atBurnt = clearance + area * travelAt(burnt)
  const left = peak * (atPeak / atBurnt) ** burning
  const before = squeezed(clearance + area * travelAt(starts))
  return g.angle.map((a, i) => {
    const v = clearance + area * g.travel[i]!
    if (a < -c.exhaustOpens) return ambient
    if (a < starts) return squeezed(v)
    if (a < peakAngle) {
      const part = 0.5 - 0.5 * Math.cos((Math.PI * (a - starts)) / (peakAngle - starts))
      return before + part * (peak - before)
    }
    const blown = a < burnt ? peak * (atPeak / v) ** burning : left * (atBurnt / v) ** exponent
    if (a < c.exhaustOpens) return blown
    // blow-down within 30 degrees
    const open = Math.min(1, (a - c.exhaustOpens) / (30 * degree))
    return ambient + (1 - open) * Math.max(0, blown - ambient)
  })
}

function gasTorque(c: Cylinder, g: Geometry, peak: number, exponent = expands): Float64Array {
  const area = (Math.PI / 4) * c.bore ** 2
  return pressureOf(c, g, peak, exponent).map((p, i) => (p - inCase) * area * g.rate[i]!)
}

const meanOf = (x: Float64Array): number => x.reduce((a, b) => a + b, 0) / x.length

/** Torque of the gas and, at one radian a second, of the moving masses, as complex orders 0 to turnOrders. */
export interface TurnOrders {
  /** re, im by order; the gas has its mean at order 0 */
  gas: Float64Array
  /** N·m at 1 rad/s; goes with the square of it */
  masses: Float64Array
  /** peak pressure of it, Pa */
  peak: number
}

/**
 * The orders of one cylinder's torque whose gas does `mean` N·m on average (brake torque and what friction takes). `peak` pressure, Pa, as
 * simulated; without it the one that fits the mean. RangeError for a mean that no pressure up to 20 MPa gives.
 */
export function turnOrdersOf(c: Cylinder, mean: number, peak?: number): TurnOrders {
  const g = geometryOf(c)
  let gas: Float64Array
  let top: number
  if (peak === undefined) {
    const found = brent((p) => meanOf(gasTorque(c, g, p)) - mean, 1e5, 20e6)
    if (!found.converged) throw new RangeError(`mean: no pressure gives ${mean} N·m on this cylinder`)
    top = found.value
    gas = gasTorque(c, g, top)
  } else {
    top = peak
    const found = brent((n) => meanOf(gasTorque(c, g, peak, n)) - mean, 0.2, 4)
    // a mean that this peak cannot give keeps the usual expansion, its mean put right
    const shape = gasTorque(c, g, peak, found.converged ? found.value : expands)
    const off = mean - meanOf(shape)
    gas = shape.map((x) => x + off)
  }
  const m = movingMass(c.bore)
  const step = (2 * Math.PI) / turnSamples
  // −d(½ m x'²)/dθ, at one radian a second
  const energy = g.rate.map((x) => 0.5 * m * x * x)
  const masses = energy.map((_, i) => {
    const next = energy[(i + 1) % turnSamples]!
    const last = energy[(i + turnSamples - 1) % turnSamples]!
    return -(next - last) / (2 * step)
  })
  return { gas: ordersOf(gas, g.angle), masses: ordersOf(masses, g.angle), peak: top }
}

/** Complex amplitudes by order: x(θ) = Σ re cos hθ − im sin hθ. */
function ordersOf(x: Float64Array, angle: Float64Array): Float64Array {
  const out = new Float64Array(2 * (turnOrders + 1))
  for (let h = 0; h <= turnOrders; h++) {
    let re = 0
    let im = 0
    for (let i = 0; i < x.length; i++) {
      re += x[i]! * Math.cos(h * angle[i]!)
      im -= x[i]! * Math.sin(h * angle[i]!)
    }
    const share = (h === 0 ? 1 : 2) / x.length
    out[2 * h] = share * re
    out[2 * h + 1] = share * im
  }
  return out
}

/** Largest torque at the crank of one cylinder at `rotation` rev/s, N·m. */
export function peakAtCrank(o: TurnOrders, rotation: number): number {
  const w2 = (2 * Math.PI * rotation) ** 2
  let most = Number.NEGATIVE_INFINITY
  for (let i = 0; i < turnSamples; i++) {
    const a = (2 * Math.PI * i) / turnSamples
    let sum = 0
    for (let h = 0; h <= turnOrders; h++)
      sum +=
        (o.gas[2 * h]! + w2 * o.masses[2 * h]!) * Math.cos(h * a) -
        (o.gas[2 * h + 1]! + w2 * o.masses[2 * h + 1]!) * Math.sin(h * a)
    most = Math.max(most, sum)
  }
  return most
}
