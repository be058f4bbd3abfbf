/** A made-up curve, turn and pipe for the tests of figures: smooth functions, no simulation behind them. */
import type { CycleTrace } from '../../trades/engine/trace.ts'
import type { PipeAnswer, StingerRow } from '../../trades/exhaust/exhaustTypes.ts'
import type { DrawnPipe } from './pipeFigure.ts'

const degree = Math.PI / 180

/** One turn with an exhaust at 92° and transfers at 118°: suction before, pressure after the transfers close. */
export function madeUpTrace(late = 0): CycleTrace {
  const [n, cols] = [360, 40]
  const row = (f: (deg: number) => number) =>
    Float64Array.from({ length: n }, (_, i) => f((92 + i + 0.5) % 360))
  const hump = (deg: number, at: number, wide: number) => Math.exp(-(((deg - at) / wide) ** 2))
  const portAt = (deg: number) =>
    101300 + 70e3 * hump(deg, 105, 12) - 45e3 * hump(deg, 190 + late, 25) + 55e3 * hump(deg, 252 + late, 14)
  const pressure = new Float32Array(n * cols)
  for (let i = 0; i < n; i++)
    for (let c = 0; c < cols; c++)
      pressure[i * cols + c] = 101300 + 60e3 * hump((92 + i + 0.5) % 360, 105 + 2 * c, 14)
  return {
    rpm: 9000,
    result: { rpm: 9000, converged: true, alternating: false, cycles: 20, residual: 0.002 },
    angle: Float64Array.from({ length: n }, (_, i) => (92 + i + 0.5) * degree),
    portP: row(portAt),
    cylinderP: row((d) => 101300 + 3e6 * hump(d, 15, 30) + 1e6 * hump(d, 375, 30)),
    caseP: row((d) => 101300 + 30e3 * hump(d, 120, 30) - 20e3 * hump(d, 300, 60)),
    exhaustFlow: row(() => 0),
    transferFlow: row(() => 0),
    outFlow: row((d) => 0.01 + 0.006 * hump(d, 150, 40)),
    x: Float64Array.from({ length: cols }, (_, c) => (c + 0.5) * 0.025),
    pressure,
    exhaustOpens: 92 * degree,
    transferOpens: 118 * degree,
  }
}

/** A pipe with a duct, four cones, a belly, a stinger, a box and an outlet tube, m. */
export function madeUpPipe(longer = 1): DrawnPipe {
  return {
    segments: [
      { length: 0.04, d0: 0.0274, d1: 0.029, inCylinder: true },
      { length: 0.09 * longer, d0: 0.03, d1: 0.033 },
      { length: 0.25 * longer, d0: 0.033, d1: 0.05 },
      { length: 0.16 * longer, d0: 0.05, d1: 0.08 },
      { length: 0.1 * longer, d0: 0.08, d1: 0.08 },
      { length: 0.22 * longer, d0: 0.08, d1: 0.02 },
      { length: 0.2, d0: 0.02, d1: 0.02, name: 'stinger' },
    ],
    muffler: { length: 0.2, width: 0.1 },
    outlet: { length: 0.08, bore: 0.024 },
  }
}

/** A found pipe of six parts, as the search gives it. */
export function madeUpFound(): PipeAnswer['pipe'] {
  return {
    segments: [
      { name: 'header', length: 0.1, d0: 0.03, d1: 0.034, bend: 0.4 },
      { name: 'diffuser 1', length: 0.18, d0: 0.034, d1: 0.046, bend: 0.6 },
      { name: 'diffuser 2', length: 0.12, d0: 0.046, d1: 0.064 },
      { name: 'diffuser 3', length: 0.06, d0: 0.064, d1: 0.078 },
      { name: 'belly', length: 0.11, d0: 0.078, d1: 0.078 },
      { name: 'baffle', length: 0.21, d0: 0.078, d1: 0.019 },
    ],
    stinger: { bore: 0.019, length: 0.19 },
    tunedLength: 0.82,
  }
}

/** Nine stingers from 16 to 24 mm: pull falls, heat falls, risk falls as the bore grows. */
export function madeUpStingers(): StingerRow[] {
  return Array.from({ length: 9 }, (_, i) => {
    const bore = 0.016 + 0.001 * i
    return {
      bore,
      length: 0.2,
      pull: 520 - 4 * i * i,
      thrust: 400 - 3 * i * i,
      pullAt: 7000,
      torque: 12 - 0.1 * i,
      exhaustT: 950 - 12 * i,
      gauge: 4000,
      inside: 32e3 - 2500 * i,
      risk: i < 2 ? 'stop' : i < 4 ? 'watch' : 'good',
      because: 'made up',
      cells: 'coarse',
    }
  })
}
