/**
 * Turning masses in a row with springs between them. Two masses: f = √(k (J1 + J2)/(J1 J2))/2π; a chain by the tridiagonal equations of motion,
 * its own frequencies by Sturm counts and halving, its answer to a torque of one order by elimination with complex springs (J. P. Den Hartog,
 * Mechanical Vibrations, ch. 5).
 */

/** kg·m² of each mass from the front, N·m/rad of each spring between. */
export interface Chain {
  inertia: readonly number[]
  stiffness: readonly number[]
}

/** Hz of two masses on one spring. */
export const twoMass = (j1: number, j2: number, k: number): number =>
  Math.sqrt((k * (j1 + j2)) / (j1 * j2)) / (2 * Math.PI)

/** How many own frequencies lie below ω² (rad²/s²): signs of the pivots of K − ω² J. */
function below({ inertia, stiffness }: Chain, squared: number): number {
  let count = 0
  let pivot = 1
  for (let i = 0; i < inertia.length; i++) {
    const left = stiffness[i - 1] ?? 0
    const right = stiffness[i] ?? 0
    const own = left + right - squared * inertia[i]!
    pivot = own - (i === 0 ? 0 : (left * left) / (pivot === 0 ? 1e-300 : pivot))
    if (pivot < 0) count++
  }
  return count
}

/** Own frequencies of the chain above nought, Hz, lowest first. */
export function chainFrequencies(chain: Chain): number[] {
  const n = chain.inertia.length
  if (n < 2) return []
  const most = 4 * Math.max(...chain.stiffness) * (2 / Math.min(...chain.inertia))
  return Array.from({ length: n - 1 }, (_, mode) => {
    let low = 1e-6 * most
    // the turning as a whole counts as one below any speed
    let high = most
    while (below(chain, low) > mode + 1) low /= 10
    for (let i = 0; i < 90 && high - low > 1e-9 * high; i++) {
      const middle = 0.5 * (low + high)
      if (below(chain, middle) >= mode + 2) high = middle
      else low = middle
    }
    return Math.sqrt(0.5 * (low + high)) / (2 * Math.PI)
  })
}

/** Room for one answer, so that many can be worked out without making arrays. */
export interface ChainWork {
  re: Float64Array
  im: Float64Array
  cr: Float64Array
  ci: Float64Array
}

export const chainWork = (n: number): ChainWork => ({
  re: new Float64Array(n),
  im: new Float64Array(n),
  cr: new Float64Array(n),
  ci: new Float64Array(n),
})

/**
 * Torque in every spring, real and imaginary, N·m, when torques of one frequency (rad/s) work on the masses. `loss` of the springs (part of their
 * stiffness), `drag` on the last mass, N·m·s/rad. Written into `out` from `at` on: re, im a spring.
 */
export function chainAnswer(
  { inertia, stiffness }: Chain,
  omega: number,
  torque: { re: ArrayLike<number>; im: ArrayLike<number> },
  loss: number,
  drag: number,
  work: ChainWork,
  out: Float64Array,
  at = 0,
): void {
  const n = inertia.length
  const { re, im, cr, ci } = work
  // forward: pivots and right sides; row i is  −k θ(i−1) + (k + k' − ω²J) θ(i) − k' θ(i+1) = T(i),  k with its loss
  for (let i = 0; i < n; i++) {
    const left = stiffness[i - 1] ?? 0
    const right = stiffness[i] ?? 0
    let pr = left + right - omega * omega * inertia[i]!
    let pi = loss * (left + right) + (i === n - 1 ? omega * drag : 0)
    let tr = torque.re[i]!
    let ti = torque.im[i]!
    if (i > 0) {
      // add k (1 + iη) times the row before, which reads θ(i−1) = c θ(i) + t
      const kr = left
      const ki = loss * left
      pr -= kr * cr[i - 1]! - ki * ci[i - 1]!
      pi -= kr * ci[i - 1]! + ki * cr[i - 1]!
      tr += kr * re[i - 1]! - ki * im[i - 1]!
      ti += kr * im[i - 1]! + ki * re[i - 1]!
    }
    const size = pr * pr + pi * pi
    const kr = right
    const ki = loss * right
    cr[i] = (kr * pr + ki * pi) / size
    ci[i] = (ki * pr - kr * pi) / size
    re[i] = (tr * pr + ti * pi) / size
    im[i] = (ti * pr - tr * pi) / size
  }
  for (let i = n - 2; i >= 0; i--) {
    const r = cr[i]! * re[i + 1]! - ci[i]! * im[i + 1]!
    const m = cr[i]! * im[i + 1]! + ci[i]! * re[i + 1]!
    re[i] = re[i]! + r
    im[i] = im[i]! + m
  }
  for (let i = 0; i + 1 < n; i++) {
    const dr = re[i]! - re[i + 1]!
    const di = im[i]! - im[i + 1]!
    const k = stiffness[i]!
    out[at + 2 * i] = k * (dr - loss * di)
    out[at + 2 * i + 1] = k * (di + loss * dr)
  }
}
