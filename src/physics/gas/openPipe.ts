/**
 * Acoustics of an open pipe end. End correction of an unflanged thin pipe 0.6133 radius: H. Levine and J. Schwinger,
 * Phys. Rev. 73 (1948) 383; flanged 0.8217 radius: Y. Nomura et al., J. Phys. Soc. Japan 15 (1960) 510.
 */

/** Length to add to a pipe for the air that moves with its open end, m. */
export const endCorrection = (radius: number, flanged = false): number => (flanged ? 0.8217 : 0.6133) * radius

/** Size of the pressure reflection of an unflanged end, ka below about 0.5 (Levine and Schwinger, low-ka limit). */
export const openEndReflection = (ka: number): number => Math.exp(-0.5 * ka * ka)

/** Lowest tone of a pipe closed at one end, Hz; c: sound speed, m/s. */
export const quarterWave = (length: number, radius: number, c: number, flanged?: boolean): number =>
  c / (4 * (length + endCorrection(radius, flanged)))
