/**
 * A hole in a deck: what must be put back round it.
 * Source: replacement of cut area and cut stiffness, corner radius 0.125 to 0.2 of the short side (stress concentration about 3 falls to 1.6),
 * practice of small-craft and aircraft structures (Bruhn; class rules for small craft), from memory.
 */
export interface HatchOpening {
  /** m, along and across */
  length: number
  width: number
  /** deck thickness, m */
  t: number
  cornerRadius: number
  /** stringers cut through, and the second moment of one with its skin, m⁴ */
  cut: number
  stringerInertia: number
}

export interface HatchNeeds {
  /** m² of section to put back on each side of the hole */
  doubler: number
  /** m, corner radius from and to */
  radiusFrom: number
  radiusTo: number
  /** likely stress concentration with the radius given */
  concentration: number
  /** m⁴ for each of the two sides of the coaming */
  coamingInertia: number
}

/** Needs of a hatch opening. RangeError when a side is not positive. */
export function hatchNeeds(h: HatchOpening): HatchNeeds {
  if (!(h.length > 0 && h.width > 0))
    throw new RangeError(`hatch: ${h.length} by ${h.width} m, expected above 0`)
  const short = Math.min(h.length, h.width)
  const part = h.cornerRadius / short
  return {
    doubler: (h.t * h.width) / 2,
    radiusFrom: 0.125 * short,
    radiusTo: 0.2 * short,
    // straight between a sharp corner and a radius of an eighth of the short side
    concentration: 3 - (3 - 1.6) * Math.min(1, part / 0.125),
    coamingInertia: (h.cut * h.stringerInertia) / 2,
  }
}
