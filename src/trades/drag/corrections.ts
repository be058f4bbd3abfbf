/**
 * Second opinions on planing lift and drag.
 * Sources, from memory: D. L. Blount and D. L. Fox (1976), Small-craft power prediction, Marine Technology 13(1);
 * C. L. Shuford (1958), A theoretical and experimental study of planing surfaces including effects of cross section and plan form,
 * NACA Report 1355.
 */

/** Blount–Fox multiplier on Savitsky's bare-hull drag through the hump: centre of gravity over beam, volumetric Froude number 1 and up. */
export function blountFoxMultiplier(centreOverBeam: number, Fv: number): number {
  const x = Math.max(0, centreOverBeam)
  const F = Math.max(1, Fv)
  return 0.98 + 2 * x ** 1.45 * Math.exp(-2 * (F - 0.85)) - 3 * x * Math.exp(-3 * (F - 0.85))
}

/** Shuford's lift coefficient on the wetted area, high speed: aspect ratio (beam over mean wetted length), trim and deadrise rad; 4/3 is the crossflow drag of sharp chines. */
export function shufordLift(aspect: number, trim: number, deadrise: number, crossflow = 4 / 3): number {
  const sin = Math.sin(trim)
  const cos = Math.cos(trim)
  return (
    ((0.5 * Math.PI * aspect * trim) / (1 + aspect)) * cos * cos * (1 - Math.sin(deadrise)) +
    crossflow * sin * sin * cos ** 3 * Math.cos(deadrise)
  )
}

/** Savitsky's flat-plate lift on the wetted area at unlimited speed, for the comparison: aspect ratio and trim rad. */
export function savitskyHighSpeedLift(aspect: number, trim: number): number {
  return 0.012 * ((trim * 180) / Math.PI) ** 1.1 * Math.sqrt(aspect)
}
