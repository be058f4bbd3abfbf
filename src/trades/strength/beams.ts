/**
 * Stringers, frames and coamings: small beams with a strip of skin.
 * Sources: beam formulas of any strength-of-materials handbook (Roark's Formulas, table 8.1); effective width 15 to 20 thicknesses a side,
 * common practice of aluminium design.
 */
export interface BeamSection {
  /** m² */
  area: number
  /** second moment about the beam's own middle, m⁴ */
  inertia: number
  /** height, and middle above the foot, m */
  height: number
  middle: number
}

/** Flat bar on edge. */
export function flatBar(height: number, thickness: number): BeamSection {
  return { area: height * thickness, inertia: (thickness * height ** 3) / 12, height, middle: height / 2 }
}

/** Top-hat or box section, outside sizes. */
export function hatSection(height: number, width: number, thickness: number): BeamSection {
  const webs = { a: 2 * height * thickness, z: height / 2 }
  const crown = { a: (width - 2 * thickness) * thickness, z: thickness / 2 }
  const area = webs.a + crown.a
  const middle = (webs.a * webs.z + crown.a * crown.z) / area
  const inertia =
    (2 * thickness * height ** 3) / 12 +
    webs.a * (webs.z - middle) ** 2 +
    ((width - 2 * thickness) * thickness ** 3) / 12 +
    crown.a * (crown.z - middle) ** 2
  return { area, inertia, height, middle }
}

export interface WithSkin {
  /** m⁴ about the joint middle */
  inertia: number
  /** m³, to the far fibre */
  modulus: number
  area: number
}

/** A section under a skin of thickness t that works over a width (15 to 20 t a side). The section stands foot away from the skin. */
export function withSkin(s: BeamSection, t: number, width: number): WithSkin {
  const skin = { a: t * width, z: s.height + t / 2 }
  const area = s.area + skin.a
  const middle = (s.area * s.middle + skin.a * skin.z) / area
  const inertia =
    s.inertia + s.area * (s.middle - middle) ** 2 + (width * t ** 3) / 12 + skin.a * (skin.z - middle) ** 2
  return { inertia, modulus: inertia / Math.max(middle, s.height + t - middle), area }
}

export interface BeamResult {
  /** N·m, Pa, m */
  moment: number
  stress: number
  deflection: number
  /** deflection over span */
  ofSpan: number
}

/** Load P (N) in the middle of a span; `fixed` 0 for free-turning ends, 1 for built in, between for real ends. */
export function beamMiddleLoad(
  section: WithSkin,
  span: number,
  P: number,
  modulus: number,
  fixed = 0,
): BeamResult {
  const moment = P * span * (1 / 4 - fixed / 8)
  const deflection = (P * span ** 3 * (1 / 48 - fixed * (1 / 48 - 1 / 192))) / (modulus * section.inertia)
  return { moment, stress: moment / section.modulus, deflection, ofSpan: deflection / span }
}

/** Even load w (N/m) over a span. */
export function beamEvenLoad(
  section: WithSkin,
  span: number,
  w: number,
  modulus: number,
  fixed = 0,
): BeamResult {
  const moment = w * span * span * (1 / 8 - fixed * (1 / 8 - 1 / 12))
  const deflection = (w * span ** 4 * (5 / 384 - fixed * (5 / 384 - 1 / 384))) / (modulus * section.inertia)
  return { moment, stress: moment / section.modulus, deflection, ofSpan: deflection / span }
}
