/** Every limit that the judgement of deck, seams, hatches and foam beside heat knows. */
import { type LimitTable, limit } from '../../base/answers/limit.ts'

const practice = 'common practice, no source'
const judgement = 'judgement, no source'

export const strengthLimits = {
  standingShare: limit(
    0.6,
    '1',
    'share of what leaves a dish that standing still may ask, again and again',
    practice,
  ),
  stepDish: limit(1e-3, 'm', 'dish a hard step may leave: hardly seen, drains by itself', judgement),
  jumpDish: limit(
    2,
    '1',
    'thicknesses a sheet may be dished by a jump, hinges at its breaking strength',
    judgement,
  ),
  standing: limit(
    1,
    '1',
    'margin below which the deck does not hold a rider who stands still',
    'definition of the margin',
  ),
  step: limit(1, '1', 'margin below which a hard step is asked too much', 'definition of the margin'),
  jump: limit(1, '1', 'margin below which a jump breaks through', 'definition of the margin'),
  overloaded: limit(0.55, '1', 'margin of a hard step below which the bay is not to be ridden', judgement),
  soft: limit(
    1 / 50,
    '1',
    'give under a standing rider over the short side, above which it feels like a drum',
    practice,
  ),
  rivets: limit(
    1,
    '1',
    'what rivets carry over what the sheet pulls, below which they slip',
    'definition of the margin',
  ),
  sealPitch: limit(
    6,
    '1',
    'rivet pitch over rivet diameter, above which a sealed seam leaks',
    'FAA AC 43.13-1B, from memory',
  ),
  popRise: limit(25, 'K', 'warming over its frame that flat sheet should take without popping', practice),
  joined: limit(1, '1', 'least margin of all bays as they are joined', 'definition of the margin'),
  frame: limit(1, '1', 'margin a bay should have with a frame across it', 'definition of the margin'),
  sealTakes: limit(2e-3, 'm', 'give of a lid that a soft seal takes up', judgement),
  lighter: limit(0.97, '1', 'mass of a lighter build over the present one’s, to be worth telling', judgement),
  foamBelow: limit(
    10,
    'K',
    'how far below its own limit foam should stay, hot for long',
    'data sheets of EPS and XPS',
  ),
} as const satisfies LimitTable

export type StrengthLimits = LimitTable<keyof typeof strengthLimits>
