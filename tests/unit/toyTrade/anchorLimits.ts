/** Limits of the toy trade. */
import { type LimitTable, limit } from '../../../src/base/answers/limit.ts'

export const anchorLimits = {
  ofWeight: limit(0.02, '1', 'anchor mass over all-up mass below which it drags', 'invented for this test'),
} as const satisfies LimitTable
