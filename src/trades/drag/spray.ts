/**
 * Whisker spray: the sheet of spray on the bottom ahead of the stagnation line.
 * Source: D. Savitsky, M. F. DeLorme and R. Datla (2007), Inclusion of whisker spray drag in performance prediction method for
 * high-speed planing hulls, Marine Technology 44(1), eqs. 6 and 7 (areas read there and derived again from the triangle; direction and
 * friction from memory).
 */
import { laminarPlate, transitionalPlate } from '../../physics/fluid/friction.ts'

export interface Spray {
  /** rad, between keel and spray edge seen from below */
  angle: number
  /** m², both sides, true area on the bottom, and its projection on the keel plane */
  area: number
  projected: number
  /** N, negative when the spray is thrown forward */
  drag: number
}

const least = (5 * Math.PI) / 180
const most = (80 * Math.PI) / 180

/** Projected area of both spray sheets, m²: beam m, angle rad between keel and spray edge. */
export function sprayProjectedArea(beam: number, angle: number): number {
  return (beam * beam) / (4 * Math.sin(2 * angle))
}

/**
 * Spray area and drag: speed m/s, beam m, deadrise and trim rad, density kg/m³, viscosity m²/s.
 * No spray sheet is counted below 5° of deadrise or beyond an angle of 80°, where the geometry loses meaning; the drag fades in over 3°.
 */
export function whiskerSpray(
  speed: number,
  beam: number,
  deadrise: number,
  trim: number,
  density: number,
  viscosity: number,
): Spray {
  if (deadrise < least) return { angle: Math.PI / 2, area: 0, projected: 0, drag: 0 }
  const angle = Math.atan(((Math.PI / 2) * Math.tan(trim)) / Math.tan(deadrise))
  if (angle > most) return { angle, area: 0, projected: 0, drag: 0 }
  const projected = sprayProjectedArea(beam, angle)
  const area = projected / Math.cos(deadrise)
  const length = (0.25 * beam) / (Math.sin(2 * angle) * Math.cos(deadrise))
  const Re = (speed * length) / viscosity
  const CF = Re < 1.5e6 ? laminarPlate(Re) : transitionalPlate(Re)
  const direction = (2 * angle) / Math.cos(deadrise)
  // a drag that stopped dead at the two limits would put steps in the curve
  const fade =
    Math.min(1, (deadrise - least) / (3 * (Math.PI / 180))) *
    Math.min(1, (most - angle) / (3 * (Math.PI / 180)))
  return {
    angle,
    area,
    projected,
    drag: 0.5 * density * speed * speed * CF * area * Math.cos(direction) * fade,
  }
}
