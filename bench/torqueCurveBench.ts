/**
 * Speed of a torque curve: thirteen speeds of the reference engine to cyclic convergence, in two halves as two workers
 * would take them; the slower half is what a machine with two free cores waits for. Run: npx tsx bench/torqueCurveBench.ts
 */
import { referenceEngine } from '../src/trades/engine/engineReference.ts'
import { simulateCurve } from '../src/trades/engine/simulate.ts'

const rpms = [6000, 6500, 7000, 7500, 8000, 8250, 8500, 8750, 9000, 9500, 10000, 10500, 11000]
/** runs of neighbours for two workers, lowest first; each run warms up on its own */
const halves = [rpms.slice(0, 7), rpms.slice(7)]

/** Seconds of processor time of the slower half, best of a few rounds, and whether every speed settled. */
export function benchTorqueCurve(
  dx = 0.01,
  rounds = 3,
): { seconds: number; whole: number; settled: boolean } {
  let best = Infinity
  let whole = Infinity
  let settled = true
  for (let k = 0; k < rounds; k++) {
    const times = halves.map((half) => {
      const t0 = process.cpuUsage()
      const curve = simulateCurve(referenceEngine(), half, { dx })
      settled &&= curve.points.every((p) => p.converged)
      const { user, system } = process.cpuUsage(t0)
      return (user + system) / 1e6
    })
    best = Math.min(best, Math.max(...times))
    whole = Math.min(whole, times[0]! + times[1]!)
  }
  return { seconds: best, whole, settled }
}

if (process.argv[1] && import.meta.filename === process.argv[1]) {
  for (const dx of [0.02, 0.01, 0.005]) {
    const r = benchTorqueCurve(dx)
    console.log(
      `13 speeds, cells of ${dx * 1000} mm: ${r.seconds.toFixed(2)} s on two cores, ${r.whole.toFixed(2)} s on one${r.settled ? '' : ' (not all settled)'}${dx === 0.01 ? ' (wanted: 3 s or less on two)' : ''}`,
    )
  }
}
