/**
 * Whirling of a shaft on two bearings with a mass hung over one end. Uniform shaft: ω = (π/L)² √(EI/ρA). With the overhung mass the shaft as
 * lumps on springs, the lowest frequency by power iteration on flexibility times mass; Dunkerley's sum below it, Rayleigh's quotient of one
 * shape above it: S. P. Timoshenko, Vibration Problems in Engineering, ch. 1 and 4. Gyroscopic stiffening is left out; it raises the
 * speed a little.
 */
import type { Solved } from '../../base/answers/solved.ts'
import { type ShaftMetal, sectionArea, sectionInertia } from './shaftStress.ts'

/** m, kg; `seat` stiffness of each bearing in its housing, N/m. */
export interface WhirlingShaft {
  metal: Pick<ShaftMetal, 'modulus' | 'density'>
  diameter: number
  bore: number
  /** between the bearings, and from the last one to the mass; no span is a cantilever of the overhang */
  span: number
  overhang: number
  mass: number
  seat: number
}

const rootOf = (squared: number): number => Math.sqrt(squared) / (2 * Math.PI)

/** Rev/s at which a uniform shaft whirls; simply held ends, or both built in. */
export function plainWhirl(
  s: Pick<WhirlingShaft, 'metal' | 'diameter' | 'bore' | 'span'>,
  builtIn = false,
): number {
  const area = sectionArea(s.diameter, s.bore)
  const root = Math.sqrt((s.metal.modulus * sectionInertia(s.diameter, s.bore)) / (s.metal.density * area))
  return ((builtIn ? 22.373 : Math.PI ** 2) / s.span ** 2) * (root / (2 * Math.PI))
}

interface Lumps {
  /** m from the first bearing */
  at: Float64Array
  mass: Float64Array
  flexibility: Float64Array[]
}

const inSpan = 8
const inOverhang = 3

/** Deflection at x under one newton at y; bearings at 0 and L (or built in at 0 where L is 0), seats of stiffness k. */
function flexibility(x: number, y: number, L: number, EI: number, k: number): number {
  if (L === 0) {
    const [near, far] = x < y ? [x, y] : [y, x]
    return (near * near * (3 * far - near)) / (6 * EI) + 1 / k
  }
  const seat = ((1 - x / L) * (1 - y / L) + (x / L) * (y / L)) / k
  const [near, far] = x < y ? [x, y] : [y, x]
  if (far <= L) return seat + (near * (L - far) * (L * L - near * near - (L - far) ** 2)) / (6 * EI * L)
  const a = far - L
  if (near <= L) return seat - (a * near * (L * L - near * near)) / (6 * EI * L)
  const b = near - L
  // both beyond the last bearing: turning of the span and bending of the overhang
  return seat + (a * b * L) / (3 * EI) + (b * b * (3 * a - b)) / (6 * EI)
}

function lumpsOf(s: WhirlingShaft): Lumps {
  const perMetre = s.metal.density * sectionArea(s.diameter, s.bore)
  const EI = s.metal.modulus * sectionInertia(s.diameter, s.bore)
  const at: number[] = []
  const mass: number[] = []
  const lay = (from: number, length: number, count: number) => {
    if (length <= 0) return
    for (let i = 0; i < count; i++) {
      at.push(from + (length * (i + 0.5)) / count)
      mass.push((perMetre * length) / count)
    }
  }
  lay(0, s.span, inSpan)
  lay(s.span, s.overhang, inOverhang)
  at.push(s.span + s.overhang)
  mass.push(s.mass)
  return {
    at: Float64Array.from(at),
    mass: Float64Array.from(mass),
    flexibility: at.map((x) => Float64Array.from(at, (y) => flexibility(x, y, s.span, EI, s.seat))),
  }
}

/** Lowest whirling speed, rev/s. `span` and `overhang` not both nought, sizes above nought; residual is the last relative step. */
export function whirlSpeed(s: WhirlingShaft): Solved {
  const { at, mass, flexibility: f } = lumpsOf(s)
  const n = at.length
  let shape = Float64Array.from(at, (x) => (x > s.span ? -1 : 1))
  let value = 0
  let residual = 1
  for (let i = 1; i <= 200; i++) {
    const next = new Float64Array(n)
    for (let r = 0; r < n; r++) {
      const row = f[r]!
      let sum = 0
      for (let c = 0; c < n; c++) sum += row[c]! * mass[c]! * shape[c]!
      next[r] = sum
    }
    let up = 0
    let down = 0
    for (let r = 0; r < n; r++) {
      up += mass[r]! * next[r]! * next[r]!
      down += mass[r]! * shape[r]! * next[r]!
    }
    // the quotient converges twice as fast as the shape
    const now = up / down
    residual = Math.abs(now - value) / now
    value = now
    const size = Math.max(...Array.from(next, Math.abs))
    shape = next.map((x) => x / size)
    if (residual < 1e-9) return { value: rootOf(1 / value), converged: true, iterations: i, residual }
  }
  return { value: rootOf(1 / value), converged: false, iterations: 200, residual }
}

/** Below the lowest speed: every lump by itself, rev/s. */
export function whirlByDunkerley(s: WhirlingShaft): number {
  const { mass, flexibility: f } = lumpsOf(s)
  return rootOf(1 / mass.reduce((sum, m, i) => sum + m * f[i]![i]!, 0))
}

/** Above the lowest speed: the quotient of the shape that its own weight bends it to, the overhang's turned round, rev/s. */
export function whirlByRayleigh(s: WhirlingShaft): number {
  const { at, mass, flexibility: f } = lumpsOf(s)
  const load = Float64Array.from(at, (x, i) => (x > s.span ? -1 : 1) * mass[i]!)
  const bent = f.map((row) => row.reduce((sum, y, c) => sum + y * load[c]!, 0))
  let work = 0
  let motion = 0
  bent.forEach((y, i) => {
    work += load[i]! * y
    motion += mass[i]! * y * y
  })
  return rootOf(work / motion)
}
