/**
 * Length of sheet in a bend. Bend allowance θ(Ri + K t), setback (Ri + t) tan(θ/2): Machinery's Handbook, bending sheet metal. K from its three
 * 90° formulas L = (0.55, 0.64, 0.71) t + 1.57 R, and from DIN 6935, K = (0.65 + 0.5 lg(Ri/t))/2 up to Ri/t = 5; both from memory, worked
 * out again. Least radii: handbook tables for sheet of about 1.6 mm across the grain, from memory.
 */
import { inDegrees, inTimes } from '../base/answers/amounts.ts'
import { extremes, mustLie } from './shapeFault.ts'

/** rad, m: the angle turned, the inside radius, the sheet's thickness, where its neutral layer lies (part of t from the inside) */
export interface Bend {
  angle: number
  inside: number
  thickness: number
  k: number
}

function checkBend({ angle, inside, thickness, k }: Bend): void {
  mustLie('angle', angle, 1e-3, Math.PI, inDegrees)
  mustLie('inside', inside, 0, extremes.most)
  mustLie('thickness', thickness, extremes.thinnest, extremes.thickest)
  mustLie('k', k, 0.2, 0.6, inTimes)
}

/** Length of flat sheet that goes into a bend, m. ShapeFault naming angle, inside, thickness or k. */
export function bendAllowance(bend: Bend): number {
  checkBend(bend)
  return bend.angle * (bend.inside + bend.k * bend.thickness)
}

/** What the two outside legs of a bend together are longer than the flat, m; angle below 180°. */
export function bendDeduction(bend: Bend): number {
  mustLie('angle', bend.angle, 1e-3, (Math.PI * 17) / 18, inDegrees)
  return 2 * (bend.inside + bend.thickness) * Math.tan(bend.angle / 2) - bendAllowance(bend)
}

/** K of DIN 6935 for an inside radius and a thickness, m. */
export function neutralLayer(inside: number, thickness: number): number {
  mustLie('thickness', thickness, extremes.thinnest, extremes.thickest)
  mustLie('inside', inside, thickness / 10, extremes.most)
  const ratio = inside / thickness
  return ratio >= 5 ? 0.5 : (0.65 + 0.5 * Math.log10(ratio)) / 2
}

/** K from a strip of a measured length whose legs were measured outside after bending it: m, rad. */
export function neutralMeasured(flat: number, legs: number, bend: Omit<Bend, 'k'>): number {
  const { angle, inside, thickness } = bend
  checkBend({ ...bend, k: 0.4 })
  const allowance = flat - legs + 2 * (inside + thickness) * Math.tan(angle / 2)
  return (allowance / angle - inside) / thickness
}

/**
 * Inside radius (m) a bend springs back to when it was bent round `inside` (m): Ri/Rf = 4 x³ − 3 x + 1, x = Ri Y/(E t), of sheet of a yield stress and a
 * modulus, Pa. S. Kalpakjian, Manufacturing Processes for Engineering Materials, from memory. ShapeFault naming inside where x is above 0.5: it springs
 * back straight.
 */
export function springsTo(inside: number, thickness: number, yieldStress: number, modulus: number): number {
  mustLie('inside', inside, extremes.least, extremes.most)
  mustLie('thickness', thickness, extremes.thinnest, extremes.thickest)
  const x = (inside * yieldStress) / (modulus * thickness)
  mustLie('inside', inside, 0, (0.499 * modulus * thickness) / yieldStress)
  return inside / (4 * x ** 3 - 3 * x + 1)
}

/** Least inside radius over the thickness, across the grain; along it half as much again to twice (common practice). */
export const leastBend: Readonly<Record<string, number>> = {
  '1050-H14': 1,
  '5052-O': 0.5,
  '5052-H32': 1.5,
  '5052-H34': 2,
  '6061-T4': 1.5,
  '6061-T6': 3,
  'mild steel': 1.5,
}
