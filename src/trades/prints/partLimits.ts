/** Every limit that the judgement of printed parts knows. */
import { type LimitTable, limit } from '../../base/answers/limit.ts'

export const partLimits = {
  lines: limit(2, '1', 'laid lines that a wall needs at least', 'common practice, no source'),
  root: limit(
    1,
    '1',
    'part of what the root of a printed blade bears for long, with the margin of 1.3 taken off, above which it breaks in time',
    'Goodman line with the margin of NASA SP-8052 (1971) on ultimate loads, rounded down; judgement',
  ),
  warm: limit(
    328.15,
    'K',
    'warmest that a part in the bay gets, at which its plastic must still hold',
    'judgement, no source',
  ),
} as const satisfies LimitTable

export type PartLimits = LimitTable<keyof typeof partLimits>
