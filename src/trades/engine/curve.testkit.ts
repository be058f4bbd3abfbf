/** A made-up torque curve for tests: a smooth function, no simulation behind it. */
import type { CurveResult } from './simulate.ts'

/** A curve of thirteen speeds with its peak near `peak` rev/min; speeds in `gaps` did not settle. */
export function madeUpCurve(peak = 9000, gaps: readonly number[] = []): CurveResult {
  const points = Array.from({ length: 13 }, (_, i) => {
    const rpm = 5000 + 500 * i
    const torque = 6 + 6 * Math.exp(-(((rpm - peak) / 1500) ** 2))
    const settled = !gaps.includes(rpm)
    return {
      rpm,
      converged: settled,
      alternating: false,
      cycles: 20,
      residual: settled ? 0.003 : 0.2,
      ...(settled ? { point: { rpm, torque, power: (torque * rpm * 2 * Math.PI) / 60 } } : {}),
    }
  })
  return { points, dx: 0.01, cells: 100, cancelled: false } as unknown as CurveResult
}
