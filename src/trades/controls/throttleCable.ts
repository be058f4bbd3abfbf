/**
 * A control cable: friction over its bends by the capstan rule, both ways: the finger pulls against the spring and the friction, the
 * spring pulls the lever back against the same friction and the lever's own drag. e^{μθ} with μ 0.15 lined, 0.25 wire on wire: common
 * practice, no source. A spring worth having brings twice what the lever takes.
 */
import { capstan } from './capstan.ts'

export const cableFriction = { plastic: 0.15, none: 0.25 } as const

export interface CableInput {
  /** rad, all bends */
  bends: number
  friction: number
  /** N: of the return spring at the carburettor, and of the lever's own drag at the cable */
  spring: number
  lever: number
  /** finger travel over cable travel */
  ratio: number
}

export interface CableAnswer {
  /** force lost on the way: one end over the other */
  times: number
  /** N at the finger */
  finger: number
  /** what the spring brings to the lever over what the lever takes */
  back: number
  /** N the spring needs to bring twice what the lever takes */
  springWanted: number
}

/** spring's pull at the lever over the lever's drag that shuts a throttle by itself, wet and sandy */
export const backWanted = 2

/** RangeError where the spring pulls nothing. */
export function cablePull(c: CableInput): CableAnswer {
  if (!(c.spring > 0))
    throw new RangeError(`spring: ${c.spring} N, expected above 0: nothing shuts the throttle`)
  if (!(c.ratio > 0)) throw new RangeError(`ratio: ${c.ratio}, expected above 0`)
  const times = capstan(c.friction, c.bends)
  return {
    times,
    finger: (c.spring * times + c.lever) / c.ratio,
    back: c.spring / times / Math.max(1e-9, c.lever),
    springWanted: backWanted * c.lever * times,
  }
}
