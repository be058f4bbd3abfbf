/** Complex numbers as plain pairs; for curves of a few thousand points, not for inner loops. */
export interface Complex {
  readonly re: number
  readonly im: number
}

export const complex = (re: number, im = 0): Complex => ({ re, im })

export const add = (a: Complex, b: Complex): Complex => ({ re: a.re + b.re, im: a.im + b.im })
export const subtract = (a: Complex, b: Complex): Complex => ({ re: a.re - b.re, im: a.im - b.im })
export const multiply = (a: Complex, b: Complex): Complex => ({
  re: a.re * b.re - a.im * b.im,
  im: a.re * b.im + a.im * b.re,
})
export const scale = (a: Complex, k: number): Complex => ({ re: a.re * k, im: a.im * k })
export const magnitude = (a: Complex): number => Math.hypot(a.re, a.im)

/** a / b, scaled to avoid overflow (R. L. Smith, CACM 5 (1962) 435). */
export function divide(a: Complex, b: Complex): Complex {
  if (Math.abs(b.re) >= Math.abs(b.im)) {
    const r = b.im / b.re
    const d = b.re + b.im * r
    return { re: (a.re + a.im * r) / d, im: (a.im - a.re * r) / d }
  }
  const r = b.re / b.im
  const d = b.re * r + b.im
  return { re: (a.re * r + a.im) / d, im: (a.im * r - a.re) / d }
}

/** Principal square root. */
export function squareRoot(a: Complex): Complex {
  const m = magnitude(a)
  const re = Math.sqrt(0.5 * (m + Math.abs(a.re)))
  const im = re === 0 ? 0 : Math.abs(a.im) / (2 * re)
  if (a.re >= 0) return { re, im: a.im < 0 ? -im : im }
  return { re: im, im: a.im < 0 ? -re : re }
}

export const cosine = (a: Complex): Complex => ({
  re: Math.cos(a.re) * Math.cosh(a.im),
  im: -Math.sin(a.re) * Math.sinh(a.im),
})
export const sine = (a: Complex): Complex => ({
  re: Math.sin(a.re) * Math.cosh(a.im),
  im: Math.cos(a.re) * Math.sinh(a.im),
})
