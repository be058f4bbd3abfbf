/**
 * Two thin sheets on a foam core.
 * Sources: H. G. Allen, Analysis and Design of Structural Sandwich Panels (1969), ch. 2; D. Zenkert, An Introduction to Sandwich Construction
 * (1995); face wrinkling 0.5 (Ef Ec Gc)^⅓, N. J. Hoff and S. E. Mautner, J. Aero. Sci. 12 (1945).
 */
import { type Patch, type Plate, patchOnPlate } from './loadedPlate.ts'

export interface Sandwich {
  /** face and core thickness, m */
  face: number
  core: number
  /** Pa */
  faceModulus: number
  coreModulus: number
  coreShear: number
}

export interface SandwichBeam {
  /** bending stiffness, N·m², and shear stiffness, N, of the width */
  D: number
  S: number
  /** m, by bending and by shear */
  bending: number
  shear: number
  /** Pa in the faces and in the core */
  faceStress: number
  coreStress: number
}

/** Bending stiffness of a width b, N·m²; with no core it is the solid plate's b E (2t)³/12. */
export function sandwichStiffness(s: Sandwich, b: number): number {
  const d = s.core + s.face
  return (
    b *
    ((s.faceModulus * s.face * d * d) / 2 +
      (s.faceModulus * s.face ** 3) / 6 +
      (s.coreModulus * s.core ** 3) / 12)
  )
}

/** Shear stiffness of a width b, N: b G d²/c. */
export function sandwichShear(s: Sandwich, b: number): number {
  const d = s.core + s.face
  return (b * s.coreShear * d * d) / s.core
}

/** Strip of width b on two supports L apart with a load P (N) in the middle. */
export function sandwichBeam(s: Sandwich, b: number, L: number, P: number): SandwichBeam {
  const D = sandwichStiffness(s, b)
  const S = sandwichShear(s, b)
  const d = s.core + s.face
  return {
    D,
    S,
    bending: (P * L ** 3) / (48 * D),
    shear: (P * L) / (4 * S),
    faceStress: (P * L) / 4 / (b * s.face * d),
    coreStress: P / 2 / (b * d),
  }
}

/** Face stress at which a face wrinkles off its core, Pa. */
export function wrinklingStress(s: Sandwich): number {
  return 0.5 * Math.cbrt(s.faceModulus * s.coreModulus * s.coreShear)
}

export interface SandwichPanel {
  deflection: number
  bending: number
  shear: number
  faceStress: number
  coreStress: number
}

/** Supported panel a × b under a patch in its middle: Navier's series with its shear term (Allen 1969, ch. 5; Zenkert 1995). */
export function sandwichPanel(
  s: Sandwich,
  a: number,
  b: number,
  patch: Patch,
  poisson = 0.33,
  highest = 79,
): SandwichPanel {
  const d = s.core + s.face
  // a plate of the same bending stiffness: its thickness only scales the moments back
  const stiff = sandwichStiffness(s, 1) / (1 - poisson * poisson)
  const t = 0.01
  const plate: Plate = { a, b, t, modulus: (12 * stiff * (1 - poisson * poisson)) / t ** 3, poisson }
  const r = patchOnPlate(plate, patch, { terms: highest })
  const shear = shearDeflection(s, a, b, patch, highest)
  const moment = Math.max(r.momentX, r.momentY)
  return {
    bending: r.deflection,
    shear,
    deflection: r.deflection + shear,
    faceStress: moment / (s.face * d),
    // the load leaves the patch through the core round its edge
    coreStress: patch.load / (2 * (patch.u + patch.v) * d),
  }
}

function shearDeflection(s: Sandwich, a: number, b: number, patch: Patch, highest: number): number {
  const S = sandwichShear(s, 1)
  let w = 0
  for (let m = 1; m <= highest; m += 2)
    for (let n = 1; n <= highest; n += 2) {
      const q =
        ((16 * patch.load) / (Math.PI ** 2 * m * n * patch.u * patch.v)) *
        Math.sin((m * Math.PI * patch.u) / (2 * a)) *
        Math.sin((n * Math.PI * patch.v) / (2 * b))
      // sin·sin at the middle squared is 1 for odd waves
      w += q / (S * Math.PI ** 2 * ((m / a) ** 2 + (n / b) ** 2))
    }
  return w
}
