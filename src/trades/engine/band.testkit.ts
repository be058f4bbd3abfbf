import type { Spread } from './band.ts'

const degree = Math.PI / 180

/** Measured with wheel and caliper; guesses are wider. Common practice, no source. */
export const measuredSpread: Spread = {
  exhaustOpens: 1 * degree,
  transferOpens: 1 * degree,
  exhaustWidth: 0.03,
  trappedRatio: 0.3,
  exhaustDischarge: 0.07,
  scavenging: true,
}
