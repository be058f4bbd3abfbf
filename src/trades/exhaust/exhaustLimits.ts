/** Every limit that the judgement of exhaust, silencer and air intake knows. */
import { type LimitTable, limit } from '../../base/answers/limit.ts'

const practice = 'common practice, no source'
const judgement = 'judgement, no source'
const own = 'this project’s own simulation of back pressure against torque'

export const exhaustLimits = {
  behindWatch: limit(8e3, 'Pa', 'pressure behind the pipe above which it costs torque worth having', own),
  behindStop: limit(20e3, 'Pa', 'pressure behind the pipe above which the engine is strangled', own),
  outletOfStinger: limit(1.2, '1', 'outlet area over the stinger’s, less throttles', practice),
  nearChoke: limit(0.95, '1', 'share of what the outlet can pass at all', judgement),
  mouthWake: limit(
    0.1,
    'm',
    'height of the air intake over still water under which a wake goes in',
    practice,
  ),
  mouthSpray: limit(0.25, 'm', 'height of the air intake under which spray goes in', practice),
  chargeWatch: limit(0.015, '1', 'share of the charge an air intake may cost', judgement),
  chargeStop: limit(0.05, '1', 'share of the charge above which the intake strangles the engine', judgement),
  ringNear: limit(
    0.15,
    '1',
    'distance of intake ring from the engine’s own note, as a share, under which it drums',
    judgement,
  ),
  firingLoss: limit(5, 'dB', 'what a box should take off the firing note', judgement),
  boxLeast: limit(1, '1', 'swept volumes a box holds, below which it is no box', judgement),
  boxUsual: limit(10, '1', 'swept volumes a box usually holds, ten to twenty', 'from memory, no source'),
  levelUnder: limit(-3, 'dB', 'level over the published one above which noise is to watch', judgement),
  pipeGain: limit(0.015, '1', 'gain a found pipe must promise to be worth a weekend', judgement),
  madeCost: limit(0.02, '1', 'what rounding to stock may cost of a found pipe', judgement),
  hotter: limit(15, 'K', 'rise of exhaust temperature of a found pipe that is told', judgement),
  roomBeyond: limit(5e-3, 'm', 'how far a pipe may stand out of its room', judgement),
  flapIdle: limit(300, 'Pa', 'what the box has at idle to lift a flap', judgement),
} as const satisfies LimitTable

export type ExhaustLimits = LimitTable<keyof typeof exhaustLimits>
