/** Every limit that the judgement of shaft, joints and mounts knows. */
import { type LimitTable, limit } from '../../base/answers/limit.ts'

const practice = 'common practice, no source'
const judgement = 'judgement, no source'

export const driveLimits = {
  slips: limit(
    1,
    '1',
    'what friction holds over the peaks, below which a joint slides at every firing',
    'definition of the margin',
  ),
  keeps: limit(1.3, '1', 'margin after a season below which a joint wants to be built otherwise', practice),
  holds: limit(
    1,
    '1',
    'margin of a hub or shaft below which it is asked too much',
    'definition of the margin',
  ),
  stretches: limit(
    0.9,
    '1',
    'part of its yield stress that tightening may use in a bolt',
    'VDI 2230 part 1 (2015)',
  ),
  strips: limit(
    1.2,
    '1',
    'pull that strips a thread over the pull of its bolt, below which it may strip as it is tightened',
    judgement,
  ),
  whirl: limit(0.75, '1', 'part of its whirling speed that a shaft should stay under', practice),
  crossing: limit(
    0.2,
    '1',
    'part to either side of where it stays within which an order must not meet the chain’s own frequency',
    practice,
  ),
  life: limit(300 * 3600, 's', 'hours that nine in ten bearings should last on a small craft', practice),
  stiffOff: limit(
    0.1e-3,
    'm',
    'how far off its line a crank’s end may move against a coupling bolted face to face',
    practice,
  ),
  softOff: limit(
    0.25e-3,
    'm',
    'how far off its line a coupling with rubber lets a shaft be',
    'usual catalogues of jaw couplings, from memory',
  ),
  shakes: limit(1.5, '1', 'times the shaking that mounts may pass on at idle', judgement),
  cool: limit(0, 'K', 'how far below its highest working temperature a printed part should stay', judgement),
} as const satisfies LimitTable

export type DriveLimits = LimitTable<keyof typeof driveLimits>
