/**
 * The h-th harmonic of one turn sampled at equal steps, as sums with cosine and sine: re = Σ x cos, im = Σ x sin. Its
 * amplitude is 2 |(re, im)| / n for 0 < h < n/2. Source: the discrete Fourier transform, one line of it.
 */
export function harmonicSums(turn: ArrayLike<number>, h: number): { re: number; im: number } {
  const n = turn.length
  let re = 0
  let im = 0
  for (let i = 0; i < n; i++) {
    const a = (2 * Math.PI * h * i) / n
    re += turn[i]! * Math.cos(a)
    im += turn[i]! * Math.sin(a)
  }
  return { re, im }
}
