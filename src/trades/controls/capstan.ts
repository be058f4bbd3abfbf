/**
 * Cords and cables led round things.
 * Capstan: T₂/T₁ = e^{μθ} (L. Euler, 1762; any mechanics text). Friction: bare metal 0.3, plastic 0.2, a sheave that turns as 1.03 a
 * bend; a lined control cable 0.15, wire on wire 0.25: common practice, no source. Stretch: nylon 8 % at a tenth of its breaking force,
 * polyester 3 %, aramid 0.6 %; breaking force of braided cord as stress over its full circle: cordage makers' tables, from memory.
 */

export type Over = 'sheave' | 'plastic' | 'metal'

const friction: Readonly<Record<Over, number>> = { sheave: 0, plastic: 0.2, metal: 0.3 }
/** what a sheave on a plain pin costs a right angle, and a full turn no more than four of them */
const perSheave = 1.03

/** Force at the far end over force at the near one for a wrap of θ rad at friction μ. RangeError below nought. */
export function capstan(mu: number, wrap: number): number {
  if (!(mu >= 0)) throw new RangeError(`friction: ${mu}, expected 0 or more`)
  if (!(wrap >= 0)) throw new RangeError(`wrap: ${wrap} rad, expected 0 or more`)
  return Math.exp(mu * wrap)
}

export interface Bend {
  /** rad */
  angle: number
  over: Over
  /** m, diameter it bends round */
  across: number
}

/** What all bends of a cord multiply the pull by. */
export function overBends(bends: readonly Bend[]): number {
  return bends.reduce(
    (all, b) =>
      all *
      (b.over === 'sheave' ? perSheave ** (b.angle / (Math.PI / 2)) : capstan(friction[b.over], b.angle)),
    1,
  )
}

export type CordMaterial = 'nylon' | 'polyester' | 'aramid'

/** Pa over the full circle of a braided cord; part it is longer at a tenth of that */
const cords: Readonly<Record<CordMaterial, { breaks: number; gives: number }>> = {
  nylon: { breaks: 240e6, gives: 0.08 },
  polyester: { breaks: 210e6, gives: 0.03 },
  aramid: { breaks: 700e6, gives: 0.006 },
}

/** N at which a cord of `thickness` m breaks, new and without a knot. */
export const breakingForce = (material: CordMaterial, thickness: number): number =>
  cords[material].breaks * (Math.PI / 4) * thickness ** 2

/** m that a cord of `length` m gives under F newtons; straight up to a fifth of its breaking force. */
export function cordStretch(material: CordMaterial, thickness: number, length: number, F: number): number {
  return (length * cords[material].gives * F) / (0.1 * breakingForce(material, thickness))
}
