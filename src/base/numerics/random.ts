/**
 * Seeded random numbers, so that every run can be repeated.
 * The 32-bit generator is "mulberry32" (T. Ettinger, 2017, public domain); normal deviates by
 * G. Marsaglia and T. Bray, SIAM Review 6 (1964) 260, the polar method.
 */
export interface Random {
  /** uniform in [0, 1) */
  next: () => number
  /** uniform in [low, high) */
  between: (low: number, high: number) => number
  /** normal with mean 0 and standard deviation 1 */
  normal: () => number
  /** an independent stream with its own name */
  fork: (name: number) => Random
}

/** A stream of random numbers that depends on `seed` alone (any integer). */
export function seededRandom(seed: number): Random {
  let state = seed >>> 0
  let spare = Number.NaN
  const next = () => {
    state = (state + 0x6d2b79f5) >>> 0
    let t = state
    t = Math.imul(t ^ (t >>> 15), t | 1)
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61)
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296
  }
  const normal = () => {
    if (!Number.isNaN(spare)) {
      const kept = spare
      spare = Number.NaN
      return kept
    }
    let u = 0
    let v = 0
    let s = 0
    do {
      u = 2 * next() - 1
      v = 2 * next() - 1
      s = u * u + v * v
    } while (s >= 1 || s === 0)
    const scale = Math.sqrt((-2 * Math.log(s)) / s)
    spare = v * scale
    return u * scale
  }
  return {
    next,
    normal,
    between: (low, high) => low + (high - low) * next(),
    fork: (name) =>
      seededRandom((Math.imul(seed ^ 0x9e3779b9, 0x85ebca6b) ^ Math.imul(name + 1, 0xc2b2ae35)) >>> 0),
  }
}
