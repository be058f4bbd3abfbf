/** Every limit that the judgement of a simulated engine knows. */
import { type LimitTable, limit } from '../../base/answers/limit.ts'

const practice = 'common practice, no source'
const books = 'judgement: what the sums of a settled run of this model close to'
const blair = 'G. P. Blair, Design and Simulation of Two-Stroke Engines (1996)'

export const engineLimits = {
  booksMass: limit(0.005, '1', 'mass in against mass out of a settled cycle, as a share', books),
  booksEnergy: limit(0.01, '1', 'energy that a settled cycle does not account for, as a share', books),
  booksGas: limit(0.03, '1', 'difference of the two gas models, as a share of what they close', books),
  booksFresh: limit(0.02, '1', 'fresh charge not accounted for, as a share', books),
  cycleToCycle: limit(0.01, '1', 'change from one settled cycle to the next, as a share', books),
  closing: limit(
    0.7,
    '1',
    'share of speeds whose books close below which a curve is not to be trusted',
    books,
  ),
  backflow: limit(0.15, '1', 'share of the charge pushed back down the transfers', blair),
  scavenging: limit(0.5, '1', 'share of fresh gas shut in below which it four-strokes', blair),
  exhaustHot: limit(923.15, 'K', 'reading of an exhaust thermometer above which pistons seize', practice),
  trappedRatio: limit(7.5, '1', 'compression from exhaust closing that pump petrol bears', practice),
  endGas: limit(900, 'K', 'temperature of the last charge to burn above which to listen for knock', practice),
  peakPressure: limit(45e5, 'Pa', 'peak pressure that goes with it', practice),
  pistonSpeed: limit(18, 'm/s', 'mean piston speed of an unmodified utility engine', practice),
  pistonSpeedAny: limit(22, 'm/s', 'mean piston speed of any engine of this kind', practice),
  reedFlutter: limit(0.8, '1', 'share of a reed petal’s own frequency above which it flutters', practice),
  portsHold: limit(
    0.85,
    '1',
    'share of the power peak below which the slowest port holds the engine',
    'judgement, no source',
  ),
} as const satisfies LimitTable

export type EngineLimits = LimitTable<keyof typeof engineLimits>
