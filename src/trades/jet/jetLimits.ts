/** Every limit that the judgement of the jet knows. */
import { type LimitTable, limit } from '../../base/answers/limit.ts'
import { indexAllowed } from './printed.ts'

const practice = 'common practice, no source'
const judgement = 'judgement, no source'
const sp36 = 'NASA SP-36, Aerodynamic Design of Axial-Flow Compressors (1965)'

export const jetLimits = {
  diffusionRated: limit(0.6, '1', 'diffusion factor at which a blade section is at its limit', sp36),
  diffusionRough: limit(
    0.7,
    '1',
    'diffusion factor above which pull and torque are rough figures',
    judgement,
  ),
  bladesGain: limit(
    0.03,
    '1',
    'thrust that another number of blades must buy to be worth a print',
    judgement,
  ),
  surfaceGain: limit(0.05, '1', 'pull that smooth blades must buy to be worth an evening', judgement),
  rootUsual: limit(
    indexAllowed,
    '1',
    'share of what a print bears for a season above which a blade root is to watch',
    judgement,
  ),
  rootSure: limit(
    1,
    '1',
    'the same, at the low end of the doubt, above which it is not to be run',
    judgement,
  ),
  grateCost: limit(0.03, '1', 'pull a clean grate may cost', judgement),
  grateCover: limit(0.35, '1', 'share of the opening that bars may cover', practice),
  gapWide: limit(0.6e-3, 'm', 'tip gap past which a ring is due', practice),
  gapTight: limit(0.25e-3, 'm', 'tip gap that still turns free, warm and wet', practice),
  onsetShare: limit(1, '1', 'rotation tied up over that where cavitation starts to cost head', judgement),
  chokedPull: limit(
    0.5,
    '1',
    'share of its best pull below which a choked jet is not worth launching',
    judgement,
  ),
  topMargin: limit(
    1,
    '1',
    'cavitation number under way over that where 3 % of the head goes',
    'NASA SP-8052 (1971)',
  ),
  intakeSlow: limit(0.5, '1', 'intake velocity ratio below which water spills over the lip', practice),
  intakeFast: limit(1.5, '1', 'intake velocity ratio above which it breaks away from the ramp', practice),
} as const satisfies LimitTable

export type JetLimits = LimitTable<keyof typeof jetLimits>
