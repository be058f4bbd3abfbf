/**
 * The weights list: total, centre, inertia, and how sure they are.
 * Source: elementary statics; uncertainties combined as independent (JCGM 100:2008, "Guide to the expression of uncertainty
 * in measurement", 5.1.2); a given ± is read as two standard deviations.
 */
import type { Vec3 } from '../../physics/solid/mesh.ts'

export interface Weight {
  name: string
  /** kg */
  mass: number
  /** centre, m from the transom foot: forward, to port, up */
  at: Vec3
  /** ± on the mass, kg */
  give?: number
  /** ± on each coordinate, m */
  giveAt?: number
  /** sides of the box it fills, m; a point when left out */
  size?: Vec3
  /** density of what it is made of, kg/m³: what it displaces when under water */
  material?: number
}

export interface WeightSum {
  mass: number
  centre: [number, number, number]
  /** ± on the mass, kg, and on the centre, m */
  give: number
  giveCentre: [number, number, number]
  /** inertia about the centre, kg m²: roll, pitch, yaw */
  inertia: [number, number, number]
}

/** Total of a list. A list that weighs nothing has its centre at the origin. RangeError on a negative or non-finite mass. */
export function weightSum(list: readonly Weight[]): WeightSum {
  let mass = 0
  const moment = [0, 0, 0]
  for (const [i, w] of list.entries()) {
    if (!(w.mass >= 0) || !Number.isFinite(w.mass))
      throw new RangeError(`weights[${i}].mass (${w.name}): ${w.mass} kg, expected 0 or more`)
    mass += w.mass
    for (let k = 0; k < 3; k++) {
      if (!Number.isFinite(w.at[k]!))
        throw new RangeError(`weights[${i}].at (${w.name}): ${w.at.join(', ')}, expected three numbers`)
      moment[k]! += w.mass * w.at[k]!
    }
  }
  const centre = moment.map((m) => (mass > 0 ? m / mass : 0)) as [number, number, number]
  let variance = 0
  const spread = [0, 0, 0]
  const inertia: [number, number, number] = [0, 0, 0]
  for (const w of list) {
    const give = w.give ?? 0
    variance += give * give
    const d = [0, 1, 2].map((k) => w.at[k]! - centre[k]!)
    for (let k = 0; k < 3; k++) spread[k]! += (give * d[k]!) ** 2 + (w.mass * (w.giveAt ?? 0)) ** 2
    for (let k = 0; k < 3; k++) {
      const a = (k + 1) % 3
      const b = (k + 2) % 3
      const own = w.size ? (w.mass / 12) * (w.size[a]! ** 2 + w.size[b]! ** 2) : 0
      inertia[k]! += own + w.mass * (d[a]! ** 2 + d[b]! ** 2)
    }
  }
  return {
    mass,
    centre,
    give: Math.sqrt(variance),
    giveCentre: spread.map((s) => (mass > 0 ? Math.sqrt(s) / mass : 0)) as [number, number, number],
    inertia,
  }
}

/** What a home list of weights usually leaves out (common practice, no source). */
export const oftenForgotten: readonly string[] = [
  'rivets, bolts, washers and weld metal',
  'sealant, glue and paint',
  'water soaked into foam and carpet',
  'fuel in the lines and the carburettor bowl',
  'water in the jet and its duct when lifted',
  'the rider’s wet clothes, boots, helmet and buoyancy aid',
  'anchor, line, paddle, tools, phone box',
  'battery leads, switches and the kill cord',
]

/** Centre of mass along a line from two scale readings at two supports, m: (F1 x1 + F2 x2)/(F1 + F2). Readings in any one unit. */
export function centreByTwoScales(x1: number, f1: number, x2: number, f2: number): number {
  return (f1 * x1 + f2 * x2) / (f1 + f2)
}

/** How far off that centre may be, m, for scales that are each off by ± give (same unit as the readings) and tapes by ± giveX. */
export function centreByTwoScalesGive(
  x1: number,
  f1: number,
  x2: number,
  f2: number,
  give: number,
  giveX: number,
): number {
  const f = f1 + f2
  const perForce = (Math.abs(x2 - x1) * Math.hypot(f1, f2)) / (f * f)
  return Math.hypot(perForce * give, (Math.hypot(f1, f2) / f) * giveX)
}

/**
 * Height of the centre above the line through the two supports, m, from the centre found level and found again with the craft
 * tilted by `tilt` (rad, bow up): tilting carries a high centre aft. Both centres are measured along the craft's own length.
 */
export function heightByTilting(level: number, tilted: number, tilt: number): number {
  return (level - tilted) / Math.tan(tilt)
}

/** The luggage-scale procedure in words, for the page and the book. */
export const scaleProcedure: readonly string[] = [
  'Empty the fuel tank: what is in it is counted by itself, and fuel that runs aft spoils the tilted reading.',
  'Hang or prop the craft, otherwise ready to run and without the rider, at two places far apart; keep it level with a spirit level.',
  'Read the scale at each place, and tape the distance of each from the transom. Lift gently and read on the way up and down.',
  'The two readings together are the weight; the weighted mean of the two distances is where the centre is.',
  'Raise the bow by about 15 to 20 degrees, read again: the shift of the mean gives the height of the centre above the line of the hooks.',
  'Nobody stands under a hanging craft.',
]
