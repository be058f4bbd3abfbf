/**
 * Other ways to a plate's answers, to hold the solvers against: Westergaard's interior formula and his point load on a bed of springs
 * (Public Roads 7, 1926), membranes, Roark's disc (table 11.4 case 1b), Navier's series away from the middle, an evenly loaded sandwich strip.
 */
import { kelvin } from '../../base/numerics/kelvin.ts'
import { type Patch, type Plate, plateStiffness } from './loadedPlate.ts'
import type { SheetOnFoam } from './onFoam.ts'
import { type Sandwich, type SandwichBeam, sandwichShear, sandwichStiffness } from './sandwich.ts'

/** Stress by Westergaard's interior formula, Pa; holds for c below 0.8 reaches only (NaN beyond). */
export function westergaardStress(s: SheetOnFoam, load: number, c: number): number {
  const reach = (plateStiffness(s.modulus, s.t, s.poisson) / s.bed) ** 0.25
  if (!(c > 0 && c < 0.8 * reach)) return Number.NaN
  return ((3 * load * (1 + s.poisson)) / (2 * Math.PI * s.t * s.t)) * (Math.log(reach / c) + 0.6159)
}

/** Deflection (m) at a distance r from a point load, −P l²/(2πD) kei(r/l); for summing the bed's pressure. r above 0. */
export function pointDeflectionAt(s: SheetOnFoam, load: number, r: number): number {
  const stiffness = plateStiffness(s.modulus, s.t, s.poisson)
  const reach = (stiffness / s.bed) ** 0.25
  return r / reach > 10 ? 0 : ((-load * reach * reach) / (2 * Math.PI * stiffness)) * kelvin(r / reach).kei
}

/** Middle deflection of a long strip of breadth b held at its edges, membrane alone, m: b (3 q b (1 − ν²)/64 E t)^⅓. Timoshenko and Woinowsky-Krieger, § 3, membrane limit. */
export function stripMembrane(q: number, b: number, t: number, modulus: number, poisson: number): number {
  return b * Math.cbrt((3 * q * b * (1 - poisson * poisson)) / (64 * modulus * t))
}

/**
 * Plate with supported edges under a load W spread over a small disc of radius r0 in the middle: stress by Roark's table 11.4 case 1b,
 * with r0' for discs smaller than half the thickness. b the short side; beta from the table.
 */
export function discStress(
  load: number,
  b: number,
  t: number,
  r0: number,
  beta: number,
  poisson = 0.3,
): number {
  const r = r0 < 0.5 * t ? Math.sqrt(1.6 * r0 * r0 + t * t) - 0.675 * t : r0
  return ((3 * load) / (2 * Math.PI * t * t)) * ((1 + poisson) * Math.log((2 * b) / (Math.PI * r)) + beta)
}

/** sin(mπx) for m up to `highest` */
const sines = (highest: number, x: number): Float64Array =>
  Float64Array.from({ length: highest + 1 }, (_, m) => Math.sin(Math.PI * m * x))

/** Deflection (m) at any place of a plate in bending under a patch load: for shapes, and for Maxwell's reciprocity. */
export function deflectionAt(p: Plate, patch: Patch, x: number, y: number, highest = 199): number {
  const D = plateStiffness(p.modulus, p.t, p.poisson)
  const lx = sines(highest, (patch.x ?? p.a / 2) / p.a)
  const ly = sines(highest, (patch.y ?? p.b / 2) / p.b)
  const su = sines(highest, patch.u / (2 * p.a))
  const sv = sines(highest, patch.v / (2 * p.b))
  const px = sines(highest, x / p.a)
  const py = sines(highest, y / p.b)
  const scale = (16 * patch.load) / (Math.PI ** 2 * patch.u * patch.v * D)
  let w = 0
  for (let m = 1; m <= highest; m++) {
    const km = (Math.PI * m) ** 2 / (p.a * p.a)
    const fm = (lx[m]! * su[m]! * px[m]!) / m
    for (let n = 1; n <= highest; n++) {
      const k = km + (Math.PI * n) ** 2 / (p.b * p.b)
      w += (fm * ly[n]! * sv[n]! * py[n]!) / (n * k * k)
    }
  }
  return scale * w
}

/** The same strip under an even load q, N/m. */
export function sandwichBeamEven(s: Sandwich, b: number, L: number, q: number): SandwichBeam {
  const D = sandwichStiffness(s, b)
  const S = sandwichShear(s, b)
  const d = s.core + s.face
  return {
    D,
    S,
    bending: (5 * q * L ** 4) / (384 * D),
    shear: (q * L * L) / (8 * S),
    faceStress: (q * L * L) / 8 / (b * s.face * d),
    coreStress: (q * L) / 2 / (b * d),
  }
}
