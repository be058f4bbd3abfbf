/**
 * Acoustics of an open pipe end. End correction of an unflanged thin pipe 0.6133 radius: H. Levine and J. Schwinger,
 * Phys. Rev. 73 (1948) 383; flanged 0.8217 radius: Y. Nomura et al., J. Phys. Soc. Japan 15 (1960) 510.
 */

/** Length to add to a pipe for the air that moves with its open end, m. */
export const endCorrection = (radius: number, flanged = false): number => (flanged ? 0.8217 : 0.6133) * radius

/**
 * Size of the pressure reflection of an unflanged end, ka to 1.5: the fit of P. O. A. L. Davies, J. L. Bento Coelho and M. Bhattacharya,
 * J. Sound Vib. 72 (1980) 543 to the exact curve of Levine and Schwinger. RangeError beyond, where the fit does not hold.
 */
export function openEndReflection(ka: number): number {
  if (!(ka >= 0 && ka <= 1.5)) throw new RangeError(`ka is ${ka}: the reflection is known from 0 to 1.5`)
  return Math.min(1, 1 + ka * (0.01336 + ka * (-0.59079 + ka * (0.33576 - 0.06432 * ka))))
}

/** Lowest tone of a pipe closed at one end, Hz; c: sound speed, m/s. */
export const quarterWave = (length: number, radius: number, c: number, flanged?: boolean): number =>
  c / (4 * (length + endCorrection(radius, flanged)))
