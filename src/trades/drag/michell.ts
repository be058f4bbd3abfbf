/**
 * Wave resistance of a thin ship.
 * Source: J. H. Michell (1898), The wave-resistance of a ship, Philosophical Magazine 45; form as in Wehausen and Laitone (1960), Surface
 * Waves, §20 (from memory): R = 4ρg²/(πU²) ∫₁^∞ |I|² λ²/√(λ²−1) dλ, I = ∬ Y_x e^{kλ²z + ikλx} dx dz, k = g/U², Y the half-breadth, z ≤ 0.
 * With λ = cosh u the integrand is smooth and the trapezoidal rule converges faster than any power. The x- and z-integrals
 * are exact for a half-breadth linear between table points.
 *
 * A sled is not thin (length over beam 3, beam over draft 5): use it for the shape and slope of the slow-speed curve, not its height.
 */
import { gravity } from '../../physics/fluid/water.ts'

/** Half-breadth table: `half[j * z.length + k]` at x[j] (rising) and z[k] (0 at the surface first, falling). Ends must close to 0. */
export interface Offsets {
  x: Float64Array
  z: Float64Array
  half: Float64Array
}

/** Table of the parabolic hull of Wigley (1942): Y = (B/2)(1 − (2x/L)²)(1 − (z/T)²). */
export function wigley(length: number, beam: number, draft: number, nx = 80, nz = 24): Offsets {
  const x = Float64Array.from({ length: nx + 1 }, (_, j) => length * (j / nx - 0.5))
  const z = Float64Array.from({ length: nz + 1 }, (_, k) => (-draft * k) / nz)
  const half = new Float64Array(x.length * z.length)
  for (let j = 0; j <= nx; j++)
    for (let k = 0; k <= nz; k++)
      half[j * (nz + 1) + k] = 0.5 * beam * (1 - ((2 * x[j]!) / length) ** 2) * (1 - (z[k]! / draft) ** 2)
  return { x, z, half }
}

/** Closes a transom: adds a wake aft of the first station that narrows linearly to nothing over `length` m. */
export function closeTransom(hull: Offsets, length: number, steps = 12): Offsets {
  const nz = hull.z.length
  const x = new Float64Array(hull.x.length + steps)
  const half = new Float64Array(x.length * nz)
  for (let j = 0; j < steps; j++) {
    x[j] = hull.x[0]! - length * (1 - j / steps)
    for (let k = 0; k < nz; k++) half[j * nz + k] = (hull.half[k]! * j) / steps
  }
  x.set(hull.x, steps)
  half.set(hull.half, steps * nz)
  return { x, z: hull.z, half }
}

/** Weights that integrate a function linear between the z's against e^{a z}; a > 0, z falling from 0. */
function depthWeights(z: Float64Array, a: number, out: Float64Array): void {
  out.fill(0)
  for (let k = 0; k + 1 < z.length; k++) {
    const h = z[k]! - z[k + 1]!
    const q = a * h
    const top = Math.exp(a * z[k]!)
    // ∫ e^{a z} over the panel, with the upper value's share first; series where the closed form would cancel
    const decay = Math.exp(-q)
    const upper = q > 1e-3 ? (q - 1 + decay) / (q * q) : 0.5 - q / 6 + (q * q) / 24
    const lower = q > 1e-3 ? (1 - decay * (1 + q)) / (q * q) : 0.5 - q / 3 + (q * q) / 8
    out[k]! += h * top * upper
    out[k + 1]! += h * top * lower
  }
}

/** Wave resistance, N, at `speed` m/s in water of `density` kg/m³; `steps` trapezoids over u in [0, `last`]. */
export function michell(hull: Offsets, speed: number, density: number, steps = 400, last = 5): number {
  const { x, z, half } = hull
  const nz = z.length
  const k0 = gravity / (speed * speed)
  const weights = new Float64Array(nz)
  const column = new Float64Array(x.length)
  let sum = 0
  for (let i = 0; i <= steps; i++) {
    const lambda = Math.cosh((last * i) / steps)
    depthWeights(z, k0 * lambda * lambda, weights)
    for (let j = 0; j < x.length; j++) {
      let s = 0
      for (let k = 0; k < nz; k++) s += weights[k]! * half[j * nz + k]!
      column[j] = s
    }
    // slope constant on each panel: ∫ e^{ikλx} dx in closed form
    const kx = k0 * lambda
    let re = 0
    let im = 0
    for (let j = 0; j + 1 < x.length; j++) {
      const slope = (column[j + 1]! - column[j]!) / (x[j + 1]! - x[j]!)
      re += (slope * (Math.sin(kx * x[j + 1]!) - Math.sin(kx * x[j]!))) / kx
      im -= (slope * (Math.cos(kx * x[j + 1]!) - Math.cos(kx * x[j]!))) / kx
    }
    const value = (re * re + im * im) * lambda * lambda
    sum += i === 0 || i === steps ? 0.5 * value : value
  }
  return (4 * density * gravity * k0 * sum * (last / steps)) / Math.PI
}

/** Wetted surface of a Wigley hull over L² for its beam and draft, numerically exact to 1e-6: for wave coefficients. */
export function wigleySurface(length: number, beam: number, draft: number, n = 400): number {
  let sum = 0
  for (let i = 0; i < n; i++)
    for (let k = 0; k < n; k++) {
      const s = (2 * (i + 0.5)) / n - 1
      const t = (k + 0.5) / n
      const yx = ((-2 * beam) / length) * s * (1 - t * t)
      const yz = (-beam / draft) * t * (1 - s * s)
      sum += Math.sqrt(1 + yx * yx + yz * yz)
    }
  return (2 * sum * length * draft) / (n * n)
}
