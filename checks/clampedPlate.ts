/**
 * Rectangular plate with clamped edges, by Ritz's method on twice-integrated Legendre polynomials.
 * φ_k = [(P_{k+2} − P_k)/(2k+3) − (P_k − P_{k−2})/(2k−1)]/(2k+1) has φ = φ′ = 0 at ±1 and φ″ = P_k, so the bending matrix is diagonal and
 * twenty terms are as well behaved as two. Energy: Timoshenko and Woinowsky-Krieger (1959), § 81; for clamped edges the twist
 * term needs no Poisson's ratio.
 */
import { Matrix, solve } from 'ml-matrix'
import { gaussLegendre } from '../src/base/numerics/quadrature.ts'
import { type Patch, type Plate, plateStiffness } from '../src/trades/strength/plate.ts'

export interface ClampedResult {
  /** m, middle of the plate */
  deflection: number
  /** N·m per m in the middle, along x and y */
  middleX: number
  middleY: number
  /** N·m per m at the middles of the edges x = 0 and y = 0; negative */
  edgeX: number
  edgeY: number
}

/** P_0 … P_n at s. */
function legendre(n: number, s: number): Float64Array {
  const p = new Float64Array(n + 1)
  p[0] = 1
  if (n > 0) p[1] = s
  for (let k = 2; k <= n; k++) p[k] = ((2 * k - 1) * s * p[k - 1]! - (k - 1) * p[k - 2]!) / k
  return p
}

interface Basis {
  value: Float64Array
  slope: Float64Array
  bend: Float64Array
}

/** φ_k, φ_k′, φ_k″ for the first `count` k ≥ 2 of the given step, at s in [−1, 1]. */
function basisAt(count: number, step: number, s: number): Basis {
  const p = legendre(2 + step * count + 2, s)
  const out = {
    value: new Float64Array(count),
    slope: new Float64Array(count),
    bend: new Float64Array(count),
  }
  for (let i = 0; i < count; i++) {
    const k = 2 + step * i
    out.value[i] = ((p[k + 2]! - p[k]!) / (2 * k + 3) - (p[k]! - p[k - 2]!) / (2 * k - 1)) / (2 * k + 1)
    out.slope[i] = (p[k + 1]! - p[k - 1]!) / (2 * k + 1)
    out.bend[i] = p[k]!
  }
  return out
}

/** Clamped plate under a patch load. A load in the middle uses even terms only. RangeError when the patch does not fit. */
export function clampedPlate(plate: Plate, patch: Patch, count = 13): ClampedResult {
  const { a, b } = plate
  const x = patch.x ?? a / 2
  const y = patch.y ?? b / 2
  if (!(patch.u > 0 && patch.u <= a * (1 + 1e-9) && patch.v > 0 && patch.v <= b * (1 + 1e-9)))
    throw new RangeError(`patch: ${patch.u} by ${patch.v} m does not fit a plate ${a} by ${b} m`)
  const centred = Math.abs(x - a / 2) < 1e-12 * a && Math.abs(y - b / 2) < 1e-12 * b
  const step = centred ? 2 : 1
  const D = plateStiffness(plate.modulus, plate.t, plate.poisson)
  const { mass, slope, bend } = lineMatrices(count, step)
  const n = count * count
  const stiff = Matrix.zeros(n, n)
  const cx = (2 / a) ** 2
  const cy = (2 / b) ** 2
  const cell = (a * b) / 4
  for (let i = 0; i < count; i++)
    for (let j = 0; j < count; j++)
      for (let k = 0; k < count; k++)
        for (let l = 0; l < count; l++) {
          const e =
            cx * cx * bend[i * count + k]! * mass[j * count + l]! +
            2 * cx * cy * slope[i * count + k]! * slope[j * count + l]! +
            cy * cy * mass[i * count + k]! * bend[j * count + l]!
          if (e !== 0) stiff.set(i * count + j, k * count + l, D * cell * e)
        }
  const lx = loadLine(count, step, (2 * x) / a - 1, patch.u / a)
  const ly = loadLine(count, step, (2 * y) / b - 1, patch.v / b)
  const q = patch.load / (patch.u * patch.v)
  const force = new Float64Array(n)
  for (let i = 0; i < count; i++)
    for (let j = 0; j < count; j++) force[i * count + j] = q * cell * lx[i]! * ly[j]!
  const c = solve(stiff, Matrix.columnVector(Array.from(force))).getColumn(0)
  const at = (bx: Float64Array, by: Float64Array) => {
    let sum = 0
    for (let i = 0; i < count; i++) for (let j = 0; j < count; j++) sum += c[i * count + j]! * bx[i]! * by[j]!
    return sum
  }
  const m = basisAt(count, step, 0)
  const e = basisAt(count, step, -1)
  const wxx = cx * at(m.bend, m.value)
  const wyy = cy * at(m.value, m.bend)
  return {
    deflection: at(m.value, m.value),
    middleX: -D * (wxx + plate.poisson * wyy),
    middleY: -D * (wyy + plate.poisson * wxx),
    edgeX: -D * cx * at(e.bend, m.value),
    edgeY: -D * cy * at(m.value, e.bend),
  }
}

function lineMatrices(
  count: number,
  step: number,
): { mass: Float64Array; slope: Float64Array; bend: Float64Array } {
  const rule = gaussLegendre(step * count + 6)
  const size = count * count
  const out = { mass: new Float64Array(size), slope: new Float64Array(size), bend: new Float64Array(size) }
  for (let g = 0; g < rule.node.length; g++) {
    const f = basisAt(count, step, rule.node[g]!)
    const w = rule.weight[g]!
    for (let i = 0; i < count; i++)
      for (let k = 0; k < count; k++) {
        out.mass[i * count + k]! += w * f.value[i]! * f.value[k]!
        out.slope[i * count + k]! += w * f.slope[i]! * f.slope[k]!
        out.bend[i * count + k]! += w * f.bend[i]! * f.bend[k]!
      }
  }
  return out
}

/** ∫ φ over the patch's run on a side, in the side's own −1 … 1. */
function loadLine(count: number, step: number, middle: number, half: number): Float64Array {
  const rule = gaussLegendre(step * count + 6)
  const out = new Float64Array(count)
  for (let g = 0; g < rule.node.length; g++) {
    const f = basisAt(count, step, Math.max(-1, Math.min(1, middle + half * rule.node[g]!)))
    for (let i = 0; i < count; i++) out[i]! += rule.weight[g]! * half * f.value[i]!
  }
  return out
}
