/** What others found out before the fuel is judged: plain numbers, SI. */
import type { Range } from '../../base/answers/solved.ts'
import type { SpeedCurve } from './chipInJet.ts'

/** Trims (rad, bow up positive) and accelerations (m/s², forward) under way. */
export interface RunAttitudes {
  /** acceleration setting off */
  start: number
  hump: { trim: number; forward: number }
  /** trim flat out */
  top: number
  /** how it slows when the throttle is shut flat out */
  braking: number
}

/** How the craft leans and speeds up; without a balance, nothing of the run is known. */
export interface Attitudes {
  /** trim at rest as ridden, and with the rider right aft */
  rest: number
  aft: number
  /** m: a place on the water at rest, near the middle of the hull; absent where it does not float */
  afloat?: { x: number; z: number }
  run?: RunAttitudes
}

export interface FuelSetting {
  attitudes: Attitudes
  /** absent without a balance */
  shaft?: {
    /** W of each engine: the most it gives, and flat out */
    most: number
    flatOut: number
    /** rev/s flat out */
    rotation: number
    /** engines on one shaft */
    together: number
    curve: SpeedCurve
  }
  /** K in tank and lines, where it was worked out; assumed from the air where it is absent */
  temperature?: Range
}
