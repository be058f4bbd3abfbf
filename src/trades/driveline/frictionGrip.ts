/**
 * What holds a coupling or a hub against torque. Friction of a flange and of a split hub: J. E. Shigley, Mechanical Engineering Design (uniform
 * pressure; a hub that grips along two lines carries least); keys: DIN 6885 sizes, from memory, flank and shear by elementary mechanics; splines: four
 * fifths of their height on three quarters of the teeth, common practice, no source.
 */

/** Radius at which a ring-shaped face rubs, m, pressed evenly from its inside to its outside radius. */
export function rubRadius(inside: number, outside: number): number {
  if (!(outside > inside && inside >= 0))
    throw new RangeError(`outside: ${outside} m must be above inside, ${inside} m`)
  return ((2 / 3) * (outside ** 3 - inside ** 3)) / (outside ** 2 - inside ** 2)
}

/** Torque a bolted flange carries by friction, N·m: friction, faces that rub, pull of all bolts N, radius m. */
export const flangeTorque = (friction: number, faces: number, pull: number, radius: number): number =>
  friction * faces * pull * radius

/** Torque a split hub carries, N·m: gripping along two lines, and evenly all round. `pull` of all its screws, N; shaft diameter m. */
export function clampTorque(
  friction: number,
  pull: number,
  diameter: number,
): { lines: number; even: number } {
  return { lines: friction * pull * diameter, even: (Math.PI / 2) * friction * pull * diameter }
}

/** Width and height of the parallel key for a shaft, m. Shaft 6 to 44 mm; thinner or thicker ones take the nearest. */
export function keyFor(diameter: number): { width: number; height: number } {
  const mm = 1e3 * diameter
  const row =
    mm <= 8
      ? [2, 2]
      : mm <= 10
        ? [3, 3]
        : mm <= 12
          ? [4, 4]
          : mm <= 17
            ? [5, 5]
            : mm <= 22
              ? [6, 6]
              : mm <= 30
                ? [8, 7]
                : mm <= 38
                  ? [10, 8]
                  : [12, 8]
  return { width: 1e-3 * row[0]!, height: 1e-3 * row[1]! }
}

/** Pressure on the flank of a key and shear through it, Pa, at a torque (N·m). Lengths m; half of the key stands in the hub. */
export function keyStress(
  torque: number,
  diameter: number,
  length: number,
  key = keyFor(diameter),
): { flank: number; shear: number } {
  return {
    flank: (2 * torque) / (diameter * 0.45 * key.height * length),
    shear: (2 * torque) / (diameter * key.width * length),
  }
}

/** Pressure on the flanks of splines, Pa: teeth, their height and length and the diameter at their middle, m. */
export const splinePressure = (
  torque: number,
  teeth: number,
  height: number,
  length: number,
  diameter: number,
): number => (2 * torque) / (0.75 * teeth * height * length * diameter)

/** A cross pin through hub and shaft: shear in its two sections and pressure in the hub's walls, Pa. Lengths m. */
export function crossPin(
  torque: number,
  pin: number,
  diameter: number,
  wall: number,
): { shear: number; flank: number } {
  const force = torque / diameter
  return {
    shear: force / ((Math.PI / 4) * pin ** 2),
    flank: torque / ((diameter + wall) * pin * wall),
  }
}

/**
 * Torque that set screws with cup points hold by biting, N·m: `pull` of all of them N, shaft diameter m. They hold 0.57 of their pull along the
 * shaft (J. E. Shigley, table of holding power of socket set screws: No. 10 at 36 lbf·in 540 lbf, 1/4 in at 87 lbf·in 1000 lbf; from memory).
 */
export const setScrewTorque = (pull: number, diameter: number): number => 0.57 * pull * (diameter / 2)
