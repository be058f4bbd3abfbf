/** Every limit by which the float findings stand. Heights of openings are engineering judgement, no rule; see each. */
import { type Limit, limit } from '../../base/answers/limit.ts'
import type { OpeningKind } from './openingHeights.ts'

const judged = 'judgement, no source'
const degree = Math.PI / 180

export const floatLimits = {
  freeboard: limit(0.05, 'm', 'less from the water to the lowest deck edge at rest is to watch', judged),
  awash: limit(0, 'm', 'a deck edge lower than this over the water at rest is a stop', judged),
  stiffGm: limit(
    0.05,
    'm',
    'with a stiff rider and less GM than this it barely stands by itself: to watch',
    'common practice of small craft (0.15 m and more for boats that are not balanced), no source for craft this small',
  ),
  feetGm: limit(
    0,
    'm',
    'with the weight at deck height: a stop where its likely range lies below, to watch where the range reaches below',
    'statics: below nothing it falls over',
  ),
  roomHeel: limit(
    10 * degree,
    'rad',
    'the rider’s room ends where it heels more',
    '33 CFR 183.235 allows a swamped boat the same',
  ),
  roomTrim: limit(6 * degree, 'rad', 'the rider’s room ends where it trims more', judged),
  roomOpening: limit(0, 'm', 'the rider’s room ends where an opening is lower over the water', judged),
  roomOut: limit(0.05, 'm', 'a rider who may not move this far off the middle is to watch', judged),
  hatch: limit(0.05, 'm', 'a hatch lower over the water at rest is to watch', judged),
  airIntake: limit(0.15, 'm', 'an air intake lower over the water at rest is to watch', judged),
  outlet: limit(
    0.1,
    'm',
    'an exhaust outlet whose lip is lower at rest is to watch: splashes go in',
    'this project’s own margin for craft this size; inboard boats keep more (ABYC P-1, as summarised in the boating press)',
  ),
  outletFloods: limit(
    0.02,
    'm',
    'an exhaust outlet whose lip is lower at rest is a stop: any wash floods it',
    judged,
  ),
  vent: limit(0.15, 'm', 'a tank vent lower over the water at rest is to watch', judged),
  cable: limit(0.03, 'm', 'a cable gland lower over the water at rest is to watch', judged),
  floods: limit(0, 'm', 'any other opening lower over the water at rest is a stop', 'water runs in'),
  dips: limit(
    0,
    'm',
    'an air intake or tank vent that comes lower than this as the craft heels, trims or its rider moves is to watch',
    judged,
  ),
  swampedVital: limit(
    0,
    'm',
    'an air intake or tank vent lower than this over the water when swamped is to watch',
    judged,
  ),
  slackShare: limit(0.25, '1', 'liquid that takes more of the GM by running is to watch', judged),
  lessLift: limit(
    1,
    '1',
    'swamped with less lift to spare than so many times the published test weights is to watch',
    '33 CFR 183.105, to compare with',
  ),
} as const satisfies Record<string, Limit>

export type FloatLimits = Readonly<Record<keyof typeof floatLimits, Limit>>

/** The limit of an opening's height at rest below which it is to watch; none for a shaft seal, which is under water by nature. */
export function watchHeight(kind: OpeningKind, limits: FloatLimits): number {
  const name = (
    {
      hatch: 'hatch',
      'air intake': 'airIntake',
      'exhaust outlet': 'outlet',
      'tank vent': 'vent',
      cable: 'cable',
      'shaft seal': undefined,
    } as const
  )[kind]
  return name === undefined ? Number.NEGATIVE_INFINITY : limits[name].value
}
