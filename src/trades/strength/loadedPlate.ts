/**
 * Rectangular plate under a patch load, edges supported: Navier's double series, with three things added term by term: membrane tension
 * where the edges hold, an elastic bed under the plate (Winkler), and none of them when not asked for.
 * Source of the series: S. Timoshenko and S. Woinowsky-Krieger, Theory of Plates and Shells, 2nd ed. (1959), §§ 29–34. The tension is that
 * of H. M. Berger (J. Appl. Mech. 22, 1955), N = (3D/2t²) Σ a²k with k = π²(m²/a² + n²/b²), a the amplitudes, put right by what
 * heldPlate.ts knows of the full large-deflection equations.
 */
import { keptBy } from '../../base/numerics/keep.ts'
import { brent } from '../../base/numerics/roots.ts'
import { heldField } from './heldPlate.ts'

export interface Plate {
  /** sides along x and y, m */
  a: number
  b: number
  /** thickness, m */
  t: number
  /** Pa */
  modulus: number
  poisson: number
}

/** A load spread evenly over a rectangle u by v about (x, y) from a corner. */
export interface Patch {
  /** N */
  load: number
  u: number
  v: number
  /** m; the middle when left out */
  x?: number
  y?: number
}

export interface PlateOptions {
  /** true lets membrane tension carry (edges held in); false is bending alone */
  held?: boolean
  /** Pa/m, stiffness of a bed under the plate; 0 for none */
  bed?: number
  /** highest wave number each way; 79 when left out */
  terms?: number
}

export interface PlateResult {
  /** m, at the load's middle */
  deflection: number
  /** N·m per m, at the same place */
  momentX: number
  momentY: number
  /** N/m, mean membrane tension; 0 when the edges are free to pull in */
  tension: number
  /** Pa: the greatest bending 6M/t² (the middle's, or on a bed what is found towards the patch's rim), membrane in the middle, and their sum */
  bending: number
  membrane: number
  stress: number
  /** N carried by the bed straight under the plate, 0 without one */
  onBed: number
  converged: boolean
}

/** Bending stiffness, N·m: E t³/12(1 − ν²). */
export function plateStiffness(modulus: number, t: number, poisson: number): number {
  return (modulus * t ** 3) / (12 * (1 - poisson * poisson))
}

/** Series terms of a patch load of 1 N: pressures q, wave numbers k, and sin·sin at the load. Only what does not vanish. */
interface Terms {
  m: Uint16Array
  n: Uint16Array
  q: Float64Array
  k: Float64Array
  mx: Float64Array
  my: Float64Array
  shape: Float64Array
  area: Float64Array
  count: number
}

/** sin(mπ·part) for m = 1 … n, by recurrence. */
function sines(n: number, part: number): Float64Array {
  const out = new Float64Array(n + 1)
  const s = Math.sin(Math.PI * part)
  const c = 2 * Math.cos(Math.PI * part)
  out[1] = s
  for (let m = 2; m <= n; m++) out[m] = c * out[m - 1]! - out[m - 2]!
  return out
}

/** A patch load's pressure as waves: `along[m] · across[n]`, Pa, on sin(mπx/a) sin(nπy/b), for m and n from 1 to the highest. */
export function patchWaves(
  p: Plate,
  patch: Patch,
  highest: number,
): { along: Float64Array; across: Float64Array } {
  checkPatch(p, patch)
  const along = sines(highest, (patch.x ?? p.a / 2) / p.a)
  const across = sines(highest, (patch.y ?? p.b / 2) / p.b)
  const su = sines(highest, patch.u / (2 * p.a))
  const sv = sines(highest, patch.v / (2 * p.b))
  const scale = (16 * patch.load) / (Math.PI ** 2 * patch.u * patch.v)
  for (let m = 1; m <= highest; m++) {
    along[m]! *= (scale * su[m]!) / m
    across[m]! *= sv[m]! / m
  }
  return { along, across }
}

/** wave numbers from 1 to the highest whose sine at the load does not vanish: the odd ones alone for a load in the middle */
function wavesOf(at: Float64Array): number[] {
  const waves: number[] = []
  for (let m = 1; m < at.length; m++) if (Math.abs(at[m]!) >= 1e-12) waves.push(m)
  return waves
}

/** terms kept by sides, place of the load and highest wave, at a load of 1 N: one deck asks for the same few over and over */
const keptTerms = keptBy(
  12,
  (of: { p: Plate; patch: Patch; highest: number }) => [
    of.p.a,
    of.p.b,
    of.patch.u,
    of.patch.v,
    of.patch.x ?? of.p.a / 2,
    of.patch.y ?? of.p.b / 2,
    of.highest,
  ],
  ({ p, patch, highest }): Terms => {
    const sx = sines(highest, (patch.x ?? p.a / 2) / p.a)
    const sy = sines(highest, (patch.y ?? p.b / 2) / p.b)
    const { along, across } = patchWaves(p, { ...patch, load: 1 }, highest)
    const [ms, ns] = [wavesOf(sx), wavesOf(sy)]
    const size = ms.length * ns.length
    const t: Terms = {
      m: new Uint16Array(size),
      n: new Uint16Array(size),
      q: new Float64Array(size),
      k: new Float64Array(size),
      mx: new Float64Array(size),
      my: new Float64Array(size),
      shape: new Float64Array(size),
      area: new Float64Array(size),
      count: size,
    }
    let i = 0
    for (const m of ms)
      for (const n of ns) {
        t.m[i] = m
        t.n[i] = n
        t.q[i] = along[m]! * across[n]!
        t.mx[i] = (Math.PI * m) ** 2 / (p.a * p.a)
        t.my[i] = (Math.PI * n) ** 2 / (p.b * p.b)
        t.k[i] = t.mx[i]! + t.my[i]!
        t.shape[i] = sx[m]! * sy[n]!
        // ∫∫ of the term over the plate: only odd waves have any
        t.area[i] = m % 2 === 1 && n % 2 === 1 ? (4 * p.a * p.b) / (Math.PI ** 2 * m * n) : 0
        i++
      }
    return t
  },
)

/**
 * Greatest bending moment under a patch on a bed, N·m per m, along the two middle lines of the patch. A bed carries a wide patch
 * straight through the sheet: the middle then lies flat and the sheet bends about (π/4) √2 reaches inside the rim, as a long
 * beam on springs does (M. Hetényi, Beams on Elastic Foundation, 1946, ch. 2).
 */
function momentToRim(p: Plate, patch: Patch, t: Terms, D: number, tension: number, bed: number): number {
  const { load } = patch
  const highest = t.m.reduce((a, b) => Math.max(a, b), 0)
  const highestAcross = t.n.reduce((a, b) => Math.max(a, b), 0)
  // moments both ways along x with y at the middle, and along y with x there: one sum over the other wave number each
  const alongX = [new Float64Array(highest + 1), new Float64Array(highest + 1)] as const
  const alongY = [new Float64Array(highestAcross + 1), new Float64Array(highestAcross + 1)] as const
  const [x, y] = [patch.x ?? p.a / 2, patch.y ?? p.b / 2]
  const sx = sines(highest, x / p.a)
  const sy = sines(highestAcross, y / p.b)
  for (let i = 0; i < t.count; i++) {
    const k = t.k[i]!
    const a = (D * load * t.q[i]!) / (D * k * k + tension * k + bed)
    const [m, n] = [t.m[i]!, t.n[i]!]
    const mx = a * (t.mx[i]! + p.poisson * t.my[i]!)
    const my = a * (t.my[i]! + p.poisson * t.mx[i]!)
    alongX[0][m]! += mx * sy[n]!
    alongX[1][m]! += my * sy[n]!
    alongY[0][n]! += mx * sx[m]!
    alongY[1][n]! += my * sx[m]!
  }
  const inside = (Math.PI / 4) * Math.SQRT2 * (D / bed) ** 0.25
  let most = 0
  const look = (series: readonly Float64Array[], at: number) => {
    const s = sines(series[0]!.length - 1, at)
    for (const c of series) most = Math.max(most, Math.abs(c.reduce((sum, v, m) => sum + v * s[m]!, 0)))
  }
  for (const part of [0.6, 0.8, 1, 1.2, 1.5]) {
    if (part * inside < patch.u / 2) look(alongX, (x + patch.u / 2 - part * inside) / p.a)
    if (part * inside < patch.v / 2) look(alongY, (y + patch.v / 2 - part * inside) / p.b)
  }
  return most
}

/** Deflection and stress under a patch load, at its middle where nothing else is said. RangeError when the patch does not fit the plate. */
export function patchOnPlate(p: Plate, patch: Patch, options: PlateOptions = {}): PlateResult {
  checkPatch(p, patch)
  const t = keptTerms({ p, patch, highest: options.terms ?? 79 })
  const { load } = patch
  const D = plateStiffness(p.modulus, p.t, p.poisson)
  const bed = options.bed ?? 0
  const field = heldField(p, patch, D)
  let tension = 0
  let converged = true
  if (options.held ?? false) {
    const pull = (n: number): number => {
      let sum = 0
      for (let i = 0; i < t.count; i++) {
        const k = t.k[i]!
        const a = (load * t.q[i]!) / (D * k * k + n * k + bed)
        sum += a * a * k
      }
      return ((1.5 * D) / (p.t * p.t)) * field.gain(n) * sum
    }
    // N − pull(N) rises with N; the gain grows far more slowly than N, so ten times the first guess is beyond the root
    const most = 10 * pull(0)
    const found = brent((n) => n - pull(n), 0, most, { tolerance: 1e-10 * Math.max(most, 1e-12) })
    tension = found.value
    converged = found.converged
  }
  let w = 0
  let mx = 0
  let my = 0
  let under = 0
  for (let i = 0; i < t.count; i++) {
    const k = t.k[i]!
    const a = (load * t.q[i]!) / (D * k * k + tension * k + bed)
    const s = a * t.shape[i]!
    w += s
    mx += s * (t.mx[i]! + p.poisson * t.my[i]!)
    my += s * (t.my[i]! + p.poisson * t.mx[i]!)
    under += a * t.area[i]!
  }
  mx *= D
  my *= D
  const toRim = bed > 0 ? momentToRim(p, patch, t, D, tension, bed) : 0
  const bending = (field.bends(tension) * 6 * Math.max(mx, my, toRim)) / (p.t * p.t)
  const membrane = (field.pulls * tension) / p.t
  return {
    deflection: w,
    momentX: mx,
    momentY: my,
    tension,
    bending,
    membrane,
    stress: bending + membrane,
    onBed: bed * under,
    converged,
  }
}

/** Even load q (Pa) over the whole plate. */
export function evenLoadOnPlate(p: Plate, q: number, options: PlateOptions = {}): PlateResult {
  return patchOnPlate(p, { load: q * p.a * p.b, u: p.a, v: p.b }, options)
}

function checkPatch(p: Plate, patch: Patch): void {
  for (const [name, v] of [
    ['a', p.a],
    ['b', p.b],
    ['t', p.t],
    ['modulus', p.modulus],
  ] as const)
    if (!(v > 0)) throw new RangeError(`plate.${name}: ${v}, expected above 0`)
  const x = patch.x ?? p.a / 2
  const y = patch.y ?? p.b / 2
  const slack = 1 + 1e-9
  if (!(patch.u > 0 && x - patch.u / 2 >= -1e-9 * p.a && x + patch.u / 2 <= p.a * slack))
    throw new RangeError(`patch.u: ${patch.u} m at ${x} m does not fit a plate ${p.a} m long`)
  if (!(patch.v > 0 && y - patch.v / 2 >= -1e-9 * p.b && y + patch.v / 2 <= p.b * slack))
    throw new RangeError(`patch.v: ${patch.v} m at ${y} m does not fit a plate ${p.b} m wide`)
}

/** Middle deflection of a square membrane of side 2a under pressure q, m. J. J. Vlassak and W. D. Nix, J. Mater. Res. 7 (1992) 3242. */
export function squareMembrane(q: number, a: number, t: number, modulus: number, poisson: number): number {
  return a * (0.8 + 0.062 * poisson) * Math.cbrt(((1 - poisson) * q * a) / (modulus * t))
}
