import { type LimitTable, limit } from '../../base/answers/limit.ts'

/** From where what is left with one engine dead is no longer good, or not even enough. */
export const oneDeadLimits = {
  underWay: limit(
    1,
    'm/s',
    'a top speed above it brings the craft home; below it the craft is adrift like one that stalls',
    'about what a rider makes with a paddle: judgement, no source',
  ),
  mayStall: limit(
    0.1,
    '1',
    'from this part of the draws of all doubts on, it is said that the living engine may stall',
    'judgement, no source',
  ),
  paddleWind: limit(
    5,
    'm/s',
    'a head wind given in the file that a rider with a paddle makes no way against: adrift is then a reason to stop',
    'judgement, no source',
  ),
  clutchGain: limit(
    1.1,
    '1',
    'a one-way clutch is offered when it leaves this many times the pull',
    'judgement, no source',
  ),
} as const satisfies LimitTable

export type OneDeadLimits = LimitTable<keyof typeof oneDeadLimits>
