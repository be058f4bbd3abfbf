/**
 * A blade cut off an impeller, and the hole in its hub that puts it in balance again: moments of mass about the axis, exact; grades of balance are
 * those of ISO 21940-11, from memory: e ω, so a rotor of grade 16 has 16 mm/s. The hole lies over the middle of the hub's wall, opposite to
 * what was cut off. SI.
 */
export interface BladeCut {
  blades: number
  /** next to one another, or evenly round where that goes out even */
  cut: number
  /** of one blade: its mass and how far its middle of mass lies from the axis */
  bladeMass: number
  bladeArm: number
  /** what is left of the rotor, kg, and rev/s it runs at */
  mass: number
  rotation: number
  density: number
  /** the hole: across, how far its middle lies from the axis, and how deep it may go */
  hole: number
  holeArm: number
  deepest: number
}

export interface CutBalance {
  /** kg m, before any hole and with it */
  before: number
  after: number
  /** m */
  deep: number
  /** m/s, grade of what is left */
  grade: number
}

/** How far the middle of mass of blades next to one another lies from that of one: 1 for one, 0 where they go all round. */
const together = (cut: number, step: number) => Math.abs(Math.sin((cut * step) / 2) / Math.sin(step / 2))

/** RangeError where no blade would be left, or where a hole cannot be where it is wanted. */
export function cutBlades(c: BladeCut): CutBalance {
  if (!(Number.isInteger(c.cut) && c.cut >= 1 && c.cut < c.blades))
    throw new RangeError(`cut: ${c.cut} is outside 1 to ${c.blades - 1}, one less than there are blades`)
  if (!(c.hole < 2 * c.holeArm))
    throw new RangeError(`hole: ${c.hole} m is outside 0 to ${2 * c.holeArm} m, where it would meet the axis`)
  // what stays is even round the axis where the number left divides the number there was
  const even = c.blades % (c.blades - c.cut) === 0 && c.blades - c.cut > 1
  const before = even ? 0 : c.bladeMass * c.bladeArm * together(c.cut, (2 * Math.PI) / c.blades)
  const aMetre = c.density * (Math.PI / 4) * c.hole ** 2 * c.holeArm
  const deep = Math.min(c.deepest, before / aMetre)
  const after = before - deep * aMetre
  return { before, after, deep, grade: (2 * Math.PI * c.rotation * after) / c.mass }
}
