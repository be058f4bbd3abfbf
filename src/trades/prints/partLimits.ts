/** Every limit that the judgement of printed parts knows. */
import { type LimitTable, limit } from '../../base/answers/limit.ts'

export const partLimits = {
  lines: limit(2, '1', 'laid lines that a wall needs at least', 'common practice, no source'),
  warm: limit(
    328.15,
    'K',
    'warmest that a part in the bay gets, at which its plastic must still hold',
    'judgement, no source',
  ),
} as const satisfies LimitTable

export type PartLimits = LimitTable<keyof typeof partLimits>
