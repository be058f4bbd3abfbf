/**
 * The pull that turns a two-stroke over compression.
 * Crank and rod: exact slider-crank. Compression from the closing of the exhaust, p V^n constant with n 1.25 to 1.35 (slow turning leaks
 * and cools; J. B. Heywood, Internal Combustion Engine Fundamentals, 1988, sec. 9, from memory); torque = (p − p₀) A dx/dθ. Friction and
 * pumping as mean pressures of 0.6 to 1.2 bar idle, p V_d/(2π) a cylinder. What a quick pull feels is the work of half a turn spread over
 * its cord, as the flywheel carries the crank over; what a slow one feels is the highest torque.
 */

export interface StarterCylinder {
  /** m */
  bore: number
  stroke: number
  rod: number
  /** rad after top dead centre where the exhaust opens, and before it where it closes */
  exhaust: number
  /** trapped compression ratio */
  ratio: number
}

const air = 101325

/** Travel from top dead centre, m, at crank angle a. */
function travel(c: StarterCylinder, a: number): number {
  const r = c.stroke / 2
  const s = r * Math.sin(a)
  return r * (1 - Math.cos(a)) + c.rod - Math.sqrt(c.rod * c.rod - s * s)
}

/** dx/da, m/rad. */
function lever(c: StarterCylinder, a: number): number {
  const r = c.stroke / 2
  const s = r * Math.sin(a)
  return s + (r * s * Math.cos(a)) / Math.sqrt(c.rod * c.rod - s * s)
}

/** Torque against the hand, N·m, `a` rad before top dead centre; nought while the exhaust is open. `exponent` of the compression. */
export function compressionTorque(c: StarterCylinder, a: number, exponent = 1.3): number {
  if (!(a > 0) || a >= c.exhaust) return 0
  const area = (Math.PI / 4) * c.bore ** 2
  const closed = travel(c, c.exhaust)
  const clearance = closed / (c.ratio - 1)
  const p = air * ((clearance + closed) / (clearance + travel(c, a))) ** exponent
  return (p - air) * area * lever(c, a)
}

export interface Turning {
  /** N·m: the highest of a slow pull, and the mean over half a turn of a quick one */
  peak: number
  mean: number
  /** rad before top dead centre of the highest */
  at: number
}

/** Highest and mean torque of one cylinder, friction and pumping of `drag` Pa in it. RangeError names a bad measure. */
export function turnOver(c: StarterCylinder, drag = 0.9e5, exponent = 1.3): Turning {
  for (const key of ['bore', 'stroke', 'rod'] as const)
    if (!(c[key] > 0)) throw new RangeError(`${key}: ${c[key]} m, expected above 0`)
  if (!(c.rod > c.stroke / 2)) throw new RangeError(`rod: ${c.rod} m, expected above half the stroke`)
  if (!(c.ratio > 1)) throw new RangeError(`ratio: ${c.ratio}, expected above 1`)
  const friction = (drag * (Math.PI / 4) * c.bore ** 2 * c.stroke) / (2 * Math.PI)
  const steps = 180
  let peak = 0
  let at = 0
  let work = 0
  for (let i = 1; i < steps; i++) {
    const a = (Math.PI * i) / steps
    const torque = compressionTorque(c, a, exponent)
    work += (torque * Math.PI) / steps
    if (torque > peak) {
      peak = torque
      at = a
    }
  }
  return { peak: peak + friction, mean: work / Math.PI + friction, at }
}

/** A cylinder known by its volume alone, m³: as wide as long, a rod of twice the stroke, exhaust open 95° after the top. */
export function cylinderOf(volume: number, ratio: number): StarterCylinder {
  const side = (volume / (Math.PI / 4)) ** (1 / 3)
  return { bore: side, stroke: side, rod: 2 * side, exhaust: (95 * Math.PI) / 180, ratio }
}
