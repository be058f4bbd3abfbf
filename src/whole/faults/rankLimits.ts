/** Limits of what a run can say of its causes. */
import { type LimitTable, limit } from '../../base/answers/limit.ts'

const judgement = 'judgement, no source'

export const rankLimits = {
  together: limit(10, 's', 'all engines pulling together for less than this leave the pitch open', judgement),
  named: limit(0.6, '1', 'share from which an engine, a way or a moment is named as such', judgement),
  decided: limit(0.35, '1', 'share of the likeliest cause below which nothing is decided', judgement),
  ahead: limit(1.5, '1', 'times the second cause that the first has to be to be decided', judgement),
  speaks: limit(
    0.25,
    '1',
    'ln of odds from which a piece of evidence is named for or against a cause',
    judgement,
  ),
  fights: limit(
    0.06,
    '1',
    'likelihood of two items together over their likelihoods apart, below which they fight',
    judgement,
  ),
  impossible: limit(
    1.15,
    '1',
    'times the fastest that the engines can turn, above which a speed is no reading of this craft',
    judgement,
  ),
  otherCraft: limit(
    0.45,
    '1',
    'ln of the ratio of speeds, everywhere alike, from which the run may be another craft’s',
    judgement,
  ),
  pullMost: limit(
    2.5,
    '1',
    'times the predicted pull above which a reading of the scale cannot be',
    judgement,
  ),
} as const

export type RankLimits = LimitTable<keyof typeof rankLimits>
