/**
 * Rectangular plate with clamped edges under a patch load, by superposition: the supported plate under the load, and moments along its
 * four edges that turn every edge back to level. The moments are sines along each edge; what they do to the plate is known in closed form,
 * so nothing swings however small the patch.
 * Source: S. Timoshenko and S. Woinowsky-Krieger, Theory of Plates and Shells, 2nd ed. (1959), §§ 41–44; the two sums over m² / (m² + c²)²
 * that close the slopes are of any table of series.
 */
import { Matrix, solve } from 'ml-matrix'
import { type Patch, type Plate, patchWaves, plateStiffness } from '../src/trades/strength/loadedPlate.ts'

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

/** Slopes that one edge's sine of moment 1 gives: at its own edge, and at the one across (both inwards); β wave number, span across. */
function ownSlopes(beta: number, span: number, D: number): { own: number; across: number } {
  const alpha = beta * span
  const scale = 1 / (2 * D * beta)
  // past this the far edge feels nothing, and sinh overflows further on
  if (alpha > 300) return { own: scale, across: 0 }
  const sh = Math.sinh(alpha)
  return {
    own: scale * (1 / Math.tanh(alpha) - alpha / (sh * sh)),
    across: scale * ((alpha * Math.cosh(alpha)) / (sh * sh) - 1 / sh),
  }
}

/** Deflection and its second slope in the middle of the span, of a sine of moment 1 on both edges. */
function inMiddle(beta: number, span: number, D: number): { value: number; bend: number } {
  const half = (beta * span) / 2
  if (half > 300) return { value: 0, bend: 0 }
  const turn = half * Math.tanh(half)
  const scale = 1 / (2 * D * Math.cosh(half))
  return { value: (scale * turn) / (beta * beta), bend: scale * (turn - 2) }
}

/** Inward slopes at the edges x = 0 and x = a (then y = 0 and y = b) of the supported plate, as sines along each edge. */
function loadSlopes(plate: Plate, patch: Patch, count: number, D: number): Float64Array {
  const out = new Float64Array(4 * count)
  const { a, b } = plate
  // the sums over the other wave fall off as its fourth power once it is short against the patch
  const highest = 6 * count + 120
  const { along, across } = patchWaves(plate, patch, highest)
  for (let m = 1; m <= highest; m++)
    for (let n = 1; n <= highest; n++) {
      if (m > count && n > count) break
      const km = (Math.PI * m) / a
      const kn = (Math.PI * n) / b
      const w = (along[m]! * across[n]!) / (D * (km * km + kn * kn) ** 2)
      if (n <= count) {
        out[n - 1]! += w * km
        out[count + n - 1]! += w * km * (m % 2 === 0 ? -1 : 1)
      }
      if (m <= count) {
        out[2 * count + m - 1]! += w * kn
        out[3 * count + m - 1]! += w * kn * (n % 2 === 0 ? -1 : 1)
      }
    }
  return out
}

/** Middle of the same plate with supported edges: Navier's series. */
function supportedMiddle(plate: Plate, patch: Patch, D: number) {
  const { a, b, poisson } = plate
  const highest = 199
  const { along, across } = patchWaves(plate, patch, highest)
  const out = { deflection: 0, middleX: 0, middleY: 0 }
  for (let m = 1; m <= highest; m += 2)
    for (let n = 1; n <= highest; n += 2) {
      const kx = ((Math.PI * m) / a) ** 2
      const ky = ((Math.PI * n) / b) ** 2
      const w = ((m + n) % 4 === 2 ? 1 : -1) * ((along[m]! * across[n]!) / (D * (kx + ky) ** 2))
      out.deflection += w
      out.middleX += D * w * (kx + poisson * ky)
      out.middleY += D * w * (ky + poisson * kx)
    }
  return out
}

/** Clamped plate under a patch load, with `count` sines along each edge. RangeError when the patch does not fit. */
export function clampedPlate(plate: Plate, patch: Patch, count = 24): ClampedResult {
  const { a, b } = plate
  const D = plateStiffness(plate.modulus, plate.t, plate.poisson)
  const slopes = loadSlopes(plate, patch, count, D)
  // unknown moments in the order x = 0, x = a, y = 0, y = b; each row: the inward slope of one edge's sine is nothing
  const rows = Matrix.zeros(4 * count, 4 * count)
  for (let i = 1; i <= count; i++) {
    const ofX = ownSlopes((Math.PI * i) / b, a, D)
    const ofY = ownSlopes((Math.PI * i) / a, b, D)
    for (const [first, s] of [
      [0, ofX],
      [2 * count, ofY],
    ] as const) {
      const near = first + i - 1
      const far = near + count
      rows.set(near, near, s.own)
      rows.set(far, far, s.own)
      rows.set(near, far, s.across)
      rows.set(far, near, s.across)
    }
    for (let j = 1; j <= count; j++) {
      // sine i along x = 0 or a, sine j along y = 0 or b
      const km = (Math.PI * j) / a
      const kn = (Math.PI * i) / b
      const shared = (2 * km * kn) / (D * (km * km + kn * kn) ** 2)
      const flipX = j % 2 === 0 ? -1 : 1
      const flipY = i % 2 === 0 ? -1 : 1
      for (const [x, signX] of [
        [i - 1, 1],
        [count + i - 1, flipX],
      ] as const)
        for (const [y, signY] of [
          [2 * count + j - 1, 1],
          [3 * count + j - 1, flipY],
        ] as const) {
          rows.set(x, y, (shared / b) * signX * signY)
          rows.set(y, x, (shared / a) * signX * signY)
        }
    }
  }
  const moments = solve(rows, Matrix.columnVector(Array.from(slopes, (s) => -s))).getColumn(0)
  const out = { ...supportedMiddle(plate, patch, D), edgeX: 0, edgeY: 0 }
  const { poisson } = plate
  for (let i = 1; i <= count; i += 2) {
    const sign = i % 4 === 1 ? 1 : -1
    const ofX = inMiddle((Math.PI * i) / b, a, D)
    const ofY = inMiddle((Math.PI * i) / a, b, D)
    const [x0, x1] = [moments[i - 1]!, moments[count + i - 1]!]
    const [y0, y1] = [moments[2 * count + i - 1]!, moments[3 * count + i - 1]!]
    const mx = (sign * (x0 + x1)) / 2
    const my = (sign * (y0 + y1)) / 2
    out.edgeX += sign * x0
    out.edgeY += sign * y0
    out.deflection += mx * ofX.value + my * ofY.value
    const wxx = mx * ofX.bend - my * ofY.value * ((Math.PI * i) / a) ** 2
    const wyy = my * ofY.bend - mx * ofX.value * ((Math.PI * i) / b) ** 2
    out.middleX -= D * (wxx + poisson * wyy)
    out.middleY -= D * (wyy + poisson * wxx)
  }
  return out
}
