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
  steady: limit(
    4,
    '1',
    'strength of a print over this is what it may be asked for long',
    'common practice, no source',
  ),
  again: limit(
    8,
    '1',
    'strength of a print over this is what it may be asked again and again',
    'common practice, no source',
  ),
  foot: limit(
    2,
    '1',
    'a foot set down asks a lid for this many times the rider’s weight',
    'common practice, no source',
  ),
  tug: limit(300, 'N', 'quick pull at the handle of a cord, as most can', 'judgement, no source'),
  slam: limit(
    49,
    'm/s²',
    'five times its weight: what a tank or an engine asks of what holds it as the craft slams',
    'judgement, no source',
  ),
  knock: limit(30, 'N', 'a hose pulled sideways by a hand that moves it', 'judgement, no source'),
} as const satisfies LimitTable

export type PartLimits = LimitTable<keyof typeof partLimits>
