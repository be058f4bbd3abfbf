/** Every limit that the judgement of starting and control knows. */
import { type LimitTable, limit } from '../../base/answers/limit.ts'

const practice = 'common practice, no source'
const judgement = 'judgement, no source'
const cordage = 'cordage makers’ guidance, from memory'

export const controlsLimits = {
  pull: limit(300, 'N', 'pull at the handle, in one go, that most people manage', judgement),
  pullStop: limit(600, 'N', 'pull that nobody manages: it cannot be started', judgement),
  turns: limit(2, '1', 'turns of the crank in one pull that start an engine', practice),
  cranking: limit(7, 'rev/s', 'rotation at which a flywheel magneto sparks well', practice),
  sheave: limit(8, '1', 'diameter a fibre cord is bent round, over its own', cordage),
  bends: limit(1.5, '1', 'what all bends multiply the pull by', judgement),
  fleet: limit((4 * Math.PI) / 180, 'rad', 'lead-in past which a cord climbs its groove', cordage),
  stretch: limit(0.15, '1', 'part of the pull that the cord’s own stretch may take', judgement),
  cord: limit(5, '1', 'breaking force of a new cord over the pull: knots and wear take half', practice),
  cableBends: limit((270 * Math.PI) / 180, 'rad', 'bends of a throttle cable, added up', practice),
  cableRadius: limit(0.06, 'm', 'tightest bend of a throttle cable', practice),
  cableBack: limit(
    2,
    '1',
    'spring at the lever over the lever’s own drag, for it to shut by itself',
    practice,
  ),
  finger: limit(30, 'N', 'force a finger holds for half an hour', judgement),
  slackLeast: limit(0.5e-3, 'm', 'free travel below which a turned handle opens the throttle', practice),
  slackMost: limit(5e-3, 'm', 'free travel that leaves the throttle short of open', practice),
  tube: limit(0.05, '1', 'part of an air tube that a cable may take', judgement),
  lanyard: limit(1.2, 'm', 'kill cord that does not catch on things', practice),
} as const satisfies LimitTable

export type ControlsLimits = LimitTable<keyof typeof controlsLimits>
