/**
 * Evenly spread points of any number of dimensions, by index: each coordinate is the base-2 radical inverse (J. G. van der
 * Corput, 1935) of a shuffled index, its digits scrambled in nested fashion (A. B. Owen, "Randomly permuted (t,m,s)-nets and
 * (t,s)-sequences", 1995), both by hashing instead of stored trees (idea: B. Burley, "Practical Hash-based Owen Scrambling",
 * J. Computer Graphics Techniques 9 (4), 2020). Every aligned run of 2^k points has exactly one point in each of 2^k equal
 * slices of every coordinate, and coordinates are paired by chance (their correlation scatters by 1.25/√n): a Latin hypercube that can be gone on with
 * (M. D. McKay, R. J. Beckman, W. J. Conover, Technometrics 21 (1979) 239). What an answer owes to each input by itself is
 * averaged almost without noise, in any number of dimensions and without a table of direction numbers.
 */

/** index bits that take part: points 0 to 2^20 - 1 */
const levels = 20

/** a whole number's bits well mixed (finaliser of the murmur hash, A. Appleby, public domain) */
function mixed(x: number): number {
  let h = Math.imul(x ^ (x >>> 16), 0x85ebca6b)
  h = Math.imul(h ^ (h >>> 13), 0xc2b2ae35)
  return h ^ (h >>> 16)
}

/** One coordinate, in [0, 1), of point `index` (0 to 2^20 - 1); `seed` any whole number. */
export function spreadAt(index: number, dimension: number, seed: number): number {
  const key = mixed(Math.imul(seed, 0x9e3779b1) ^ Math.imul(dimension + 1, 0x632be5ab))
  // which point of the run this is for this coordinate: each bit flipped by a coin that its higher bits choose
  let shuffled = 0
  for (let k = levels - 1; k >= 0; k--) {
    const coin = mixed(key ^ Math.imul((index >> (k + 1)) * 32 + k + 1, 0x9e3779b1))
    shuffled |= (index ^ coin) & (1 << k)
  }
  // the index mirrored at the point, each digit flipped by a coin that the digits before it choose
  let value = 0
  let half = 0.5
  for (let k = 0; k < levels; k++) {
    const before = shuffled & ((1 << k) - 1)
    const coin = mixed(key + 0x2545f491 + Math.imul(before * 32 + k, 0x85ebca77))
    value += half * (((shuffled >> k) ^ (coin >> 7)) & 1)
    half /= 2
  }
  // what lies below the last digit is chance
  return value + (2 * half * (mixed(key ^ Math.imul(index + 1, 0xc2b2ae3d)) >>> 0)) / 4294967296
}

/** Point `index` in [0, 1)^dimensions. */
export function spreadPoint(index: number, dimensions: number, seed: number): Float64Array {
  const point = new Float64Array(dimensions)
  for (let d = 0; d < dimensions; d++) point[d] = spreadAt(index, d, seed)
  return point
}
