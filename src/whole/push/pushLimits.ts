/** Every limit that the judgement of engines, jet and hull together knows. */
import { type LimitTable, limit } from '../../base/answers/limit.ts'
import { hardlyClimbs } from './bog.ts'
import { humpWanted } from './merit.ts'
import { oneDeadLimits } from './oneDeadLimits.ts'

export const pushLimits = {
  ...oneDeadLimits,
  airMatters: limit(
    0.03,
    '1',
    'part of the power that the air of the place gives or takes above which it is said',
    'judgement, no source',
  ),
  hump: limit(humpWanted, '1', 'thrust over drag wanted at the hump', 'common practice, no source'),
  hang: limit(
    hardlyClimbs,
    '1',
    'share of their torque taken on the way up above which engines hardly climb',
    'judgement, no source',
  ),
  worthOffering: limit(
    0.01,
    '1',
    'worth of a change, a share of now, from which it is offered',
    'judgement, no source',
  ),
} as const satisfies LimitTable

export type PushLimits = LimitTable<keyof typeof pushLimits>
