/**
 * Right cones and cylinders of thin sheet, and the flat of every curve on them. Sector of radius s·R/(R − r) and angle 2π(R − r)/s:
 * any handbook of sheet-metal pattern drafting. Written with sin x/x so that a cone that is almost a cylinder keeps all its digits.
 */
import { inDegrees, inMm } from '../base/answers/amounts.ts'
import { say } from '../base/answers/sentence.ts'
import { type Development, developed, type Sheeting } from './development.ts'
import { extremes, mustLie, ShapeFault } from './shapeFault.ts'
import { newStrip, type Strip } from './strip.ts'

/** A cone about z, its start at z = 0: mean radii and height, m. Equal radii are a cylinder. */
export interface ConeShape {
  startRadius: number
  endRadius: number
  height: number
}

/** rulings of a full turn: at one degree each the folded edge of the largest pipe lies within a few hundredths of a millimetre */
export const roundSteps = 360

const sinc = (x: number): number => (Math.abs(x) < 1e-4 ? 1 - (x * x) / 6 : Math.sin(x) / x)

/** Checks a cone: ShapeFault naming startRadius, endRadius or height. One end may be a point. */
export function checkCone({ startRadius, endRadius, height }: ConeShape): void {
  mustLie('startRadius', startRadius, 0, extremes.most)
  mustLie('endRadius', endRadius, 0, extremes.most)
  mustLie('height', height, extremes.least, extremes.most)
  if (startRadius + endRadius < extremes.least)
    throw new ShapeFault(
      'endRadius',
      endRadius,
      extremes.least,
      say`A cone with both ends ${inMm(0)} across does not exist.`,
      say`Give one end a radius of at least ${inMm(extremes.least, 0.1)}.`,
    )
}

/** Sine and cosine of the half-angle; the sine is positive where the cone narrows, and the slant height, m. */
export function coneSlope({ startRadius, endRadius, height }: ConeShape) {
  const slant = Math.hypot(height, startRadius - endRadius)
  return { slant, sine: (startRadius - endRadius) / slant, cosine: height / slant }
}

/**
 * Lays the rulings of a cone between two curves, flat and in space: at turn ψ (rad, from the pattern's middle, −π to π) from slant distance
 * `from(ψ)` to `to(ψ)` (m from the start). `facing` is the turn about z at which the pattern's middle lies.
 */
export function coneStrip(
  cone: ConeShape,
  from: (psi: number) => number,
  to: (psi: number) => number,
  facing = 0,
  steps = roundSteps,
): Strip {
  const { sine, cosine } = coneSlope(cone)
  const strip = newStrip(steps + 1, true)
  for (let i = 0; i <= steps; i++) {
    const psi = Math.PI * ((2 * i) / steps - 1)
    for (const [k, v] of [from(psi), to(psi)].entries()) {
      const r = cone.startRadius - v * sine
      const theta = psi * sine
      strip.flat[4 * i + 2 * k] = r * psi * sinc(theta)
      strip.flat[4 * i + 2 * k + 1] = v + ((r * psi * theta) / 2) * sinc(theta / 2) ** 2
      strip.space[6 * i + 3 * k] = r * Math.cos(psi + facing)
      strip.space[6 * i + 3 * k + 1] = r * Math.sin(psi + facing)
      strip.space[6 * i + 3 * k + 2] = v * cosine
    }
  }
  return strip
}

/** Numbers of a flat cone, m and rad. */
export interface ConeFlat {
  slant: number
  /** radii of the two arcs; infinite on a cylinder */
  outer: number
  inner: number
  /** of the sector */
  angle: number
  /** least width of sheet it takes, across the sector's middle line */
  width: number
  /** m² */
  area: number
}

/** Sector radii, angle, width and area of a right cone, m and rad. ShapeFault as checkCone. */
export function coneFlat(cone: ConeShape): ConeFlat {
  checkCone(cone)
  const { slant, sine } = coneSlope(cone)
  const [big, small] = [
    Math.max(cone.startRadius, cone.endRadius),
    Math.min(cone.startRadius, cone.endRadius),
  ]
  const s = Math.abs(sine)
  const half = Math.PI * s
  return {
    slant,
    outer: s > 0 ? big / s : Number.POSITIVE_INFINITY,
    inner: s > 0 ? small / s : Number.POSITIVE_INFINITY,
    angle: 2 * half,
    // beyond half a turn the sector is widest at its own diameter
    width: half < Math.PI / 2 ? 2 * Math.PI * big * sinc(half) : (2 * big) / s,
    area: Math.PI * (big + small) * slant,
  }
}

/** Pattern of a right cone or a cylinder. ShapeFault naming startRadius, endRadius, height, thickness or the seam. */
export function developCone(cone: ConeShape, sheeting: Sheeting): Development {
  checkCone(cone)
  const { slant, angle } = coneFlat(cone)
  const strip = coneStrip(
    cone,
    () => 0,
    () => slant,
  )
  const said =
    cone.startRadius === cone.endRadius ? [] : [say`sector ${inDegrees(angle)}, slant ${inMm(slant, 0.1)}`]
  return developed(strip, sheeting, said)
}
