/** What it costs an engine to go from one speed to another between two frames. */
import { type PathCosts, SLOPES } from './settings.ts'

const slopes = Float64Array.from(SLOPES)

/**
 * Cost of a move by `change` in ln f between two frames when the spectra say slopes a and b (indices).
 * The slope found by the warp acts as momentum; beyond the fast limit a fixed charge is added.
 */
export function moveCost(change: number, a: number, b: number, costs: PathCosts): number {
  const rate = change / costs.step
  const off = (rate - 0.5 * (slopes[a]! + slopes[b]!)) / costs.moveSigma
  const cost = Math.min(costs.moveMost, 0.5 * off * off)
  return Math.abs(rate) > costs.fastLimit ? cost + costs.fastCost : cost
}
