/** Every limit by which the findings of drag and trim stand. */
import { type Limit, limit } from '../../base/answers/limit.ts'
import { porpoisingBand } from './porpoising.ts'

export const dragLimits = {
  placeCost: limit(
    0.1,
    '1',
    'a rider’s place that costs more of the least drag in the climb than this is to watch',
    'judgement, no source',
  ),
  porpoising: limit(
    porpoisingBand,
    'rad',
    'trim closer under the porpoising limit than this, or above it, is to watch',
    'Celano 1998 against the chart of Savitsky 1964: they lie up to 1.8° apart',
  ),
  nosePlaning: limit(
    0,
    '1',
    'a bottom wet to the nose is to watch where planing has more than this part in the drag',
    'judgement, no source',
  ),
  shallow: limit(
    0.5,
    '1',
    'water shallower than this part of the hull’s length is to watch',
    'common practice: depth under half a length is felt in the drag (linear wave theory)',
  ),
} as const satisfies Record<string, Limit>

export type DragLimits = Readonly<Record<keyof typeof dragLimits, Limit>>
