/**
 * Trim at which a planing hull starts to porpoise.
 * Sources, both from memory: Celano (1998), The prediction of porpoising inception for modern planing craft, Trident Scholar
 * report 254; cubic readings of the chart in Savitsky (1964) after Day and Haag (1952). They differ by 0.6 to 1.8°.
 */

const degree = Math.PI / 180
/** rad, half width of the band in which the answer is open */
export const porpoisingBand = 1.5 * degree

/** Chart abscissa √(CL/2), CL on beam squared. */
export function porpoisingNumber(liftCoefficient: number): number {
  return Math.sqrt(Math.max(0, liftCoefficient) / 2)
}

/** Critical trim, rad, by Celano's fit; deadrise rad (held at 5° and above), x = √(CL/2). */
export function celanoLimit(x: number, deadrise: number): number {
  const b = Math.max(5, deadrise / degree)
  return 0.1197 * b ** 0.7651 * Math.exp(15.7132 * x * b ** -0.2629) * degree
}

/** Chart cubics at deadrise 0, 10 and 20°, highest power first; degrees. */
const cubics = [
  [-376.37, 329.74, -38.485, 1.3415],
  [-356.05, 314.36, -41.674, 3.5786],
  [-254.51, 239.65, -23.936, 3.0195],
] as const

/** Critical trim, rad, read from the 1964 chart, linear in deadrise between its three curves; x held inside 0.13 to 0.35. */
export function chartLimit(x: number, deadrise: number): number {
  const t = Math.min(0.35, Math.max(0.13, x))
  const value = (k: 0 | 1 | 2) => {
    const c = cubics[k]
    return ((c[0] * t + c[1]) * t + c[2]) * t + c[3]
  }
  const at = Math.min(2, Math.max(0, deadrise / (10 * degree)))
  const k = at < 1 ? 0 : 1
  const part = at - k
  return ((1 - part) * value(k) + part * value((k + 1) as 1 | 2)) * degree
}

/** The lower of the two limits, rad: the one a builder should hold to. */
export function porpoisingLimit(x: number, deadrise: number): number {
  return Math.min(celanoLimit(x, deadrise), chartLimit(x, deadrise))
}
