import { limit } from '../../base/answers/limit.ts'

/** Every limit that the judgement of patterns reads. */
export const patternsLimits = {
  meets: limit(
    1e-3,
    'm',
    'an end farther from its hole than this is said to miss it',
    'judgement, no source: what a welded tube can be sprung by',
  ),
  foam: limit(
    0.06,
    'm',
    'a pipe nearer to foam or a tank than this is told of',
    'judgement, no source: bare pipes scorch foam at a hand’s breadth; the heat of each place is reckoned under Strength',
  ),
  pipes: limit(
    0.015,
    'm',
    'two pipes nearer to each other than this are told of',
    'judgement, no source: engines shake on rubber by some millimetres each',
  ),
  throat: limit(
    5e-3,
    'm',
    'a piece of a bend shorter than this in the throat is told of',
    'common practice, no source: room for a torch',
  ),
  rolls: limit(
    1,
    '1',
    'diameter over that of what one rolls over, below which sheet cannot be rolled so',
    'a ring is no narrower than what it was rolled over; sheet springs open, never shut',
  ),
} as const

export type PatternsLimits = typeof patternsLimits
