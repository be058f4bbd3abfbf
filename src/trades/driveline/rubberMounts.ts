/**
 * Rubber under an engine. Moduli by hardness: A. N. Gent, Rubber Chemistry and Technology 31 (1958), E = 0.0981 (56 + 7.66 S)/(0.1375 (254 − 2.54 S)) MPa;
 * shape factor and the stiffening of a pressed block, E (1 + 2 S²): P. B. Lindley, Engineering Design with Natural Rubber; what passes
 * through: elementary vibration. Rubber is 1.2 to 1.5 times stiffer shaken than pressed slowly: common practice, no source.
 */

/** Young's modulus of rubber, Pa, by its hardness, degrees Shore A from 20 to 80. */
export const rubberModulus = (shore: number): number =>
  (1e6 * 0.0981 * (56 + 7.66 * shore)) / (0.1375 * (254 - 2.54 * shore))

export interface RubberMount {
  across: number
  height: number
  shore: number
}

/** Stiffness of one round mount pressed along its axis and sheared across it, N/m. */
export function mountStiffness({ across, height, shore }: RubberMount): { pressed: number; sheared: number } {
  const modulus = rubberModulus(shore)
  const area = (Math.PI / 4) * across ** 2
  // loaded face over the skin that may bulge
  const shape = across / (4 * height)
  return {
    pressed: (modulus * (1 + 2 * shape ** 2) * area) / height,
    sheared: ((modulus / 3) * area) / height,
  }
}

/** Hz of a mass (kg) on a stiffness (N/m). */
export const ownFrequency = (stiffness: number, mass: number): number =>
  Math.sqrt(stiffness / mass) / (2 * Math.PI)

/** Hz from how far the mounts sag under the weight, m. */
export const frequencyOfSag = (sag: number): number => Math.sqrt(9.80665 / sag) / (2 * Math.PI)

/** Part of a shaking force that passes at `ratio` of its frequency to the mounts' own; damping as a part of critical. */
export function passes(ratio: number, damping: number): number {
  const d = (2 * damping * ratio) ** 2
  return Math.sqrt((1 + d) / ((1 - ratio ** 2) ** 2 + d))
}
