import type { Sentence } from '../../base/answers/sentence.ts'
import type { Flag, Range } from '../../base/answers/solved.ts'
import type { HeatCurve } from '../../trades/engine/curve.ts'

/** Everything that the main job answers. SI throughout; rotation in rev/s except where a name says rpm. */
export interface Balance {
  /** the operating table, one entry a speed */
  curve: BalanceCurve
  /** tied to a post */
  tiedUp: OperatingPoint
  /** every equilibrium tied up, lowest first */
  tiedUpRoots: Root[]
  /** steady top speed; absent when the craft cannot reach a steady state the model covers */
  top?: OperatingPoint
  /** ranges are 2.5 to 97.5 % of the draws of all doubts, their value is the median; without ranges it is the one solution's */
  topSpeed: Range
  pull: Range
  tiedUpRotation: Range
  /** at the first impeller, N·m */
  tiedUpTorque: Range
  /** least thrust over drag on the hump */
  humpMargin: Range
  /** s from rest to planing; Infinity where it does not get there */
  timeToPlane: Range
  /** what holds the top speed down, in one word and one sentence */
  limitedBy: {
    code: 'engine' | 'hump' | 'cavitation' | 'impeller' | 'air' | 'hull' | 'unknown'
    says: Sentence
  }
  matching: Matching
  run: RunUp
  hump: Hump
  verdict: Verdict
  changes: Change[]
  /** with two or more engines running */
  oneDead?: OneDead
  /** where the heat of each engine goes, by its place in the file; null for one that was not simulated, absent where none was */
  heat?: readonly (HeatCurve | null)[]
  /** inputs whose doubt widens the answers most, largest first; empty until ranges are computed */
  drivers: Driver[]
  /** share of each answer's variance that the drivers' own effects explain; the rest is their interplay */
  explained: Shares
  /** false for a quick answer: every `low` and `high` is NaN, and changes and drivers are empty */
  ranged: boolean
  flags: Flag[]
}

/** A part of one for each of the three answers. */
export interface Shares {
  rotation: number
  pull: number
  topSpeed: number
}

/** How much one input's own doubt moves each answer: the larger of the moves to its two bounds (SI). */
export interface Driver {
  /** craft path, or `model.` and a constant of the models */
  path: string
  says: string
  source: 'measured' | 'maker' | 'guess' | 'assumed' | 'model'
  rotation: number
  pull: number
  topSpeed: number
  /** share of the answer's variance that this input carries by itself */
  share: Shares
}

/** Parallel arrays over boat speed. NaN where there is no steady point. */
export interface BalanceCurve {
  speed: number[]
  /** engine speed, rev/min */
  rpm: number[]
  thrust: number[]
  drag: number[]
  dragLow: number[]
  dragHigh: number[]
  /** drag with the rider kept where the file puts them, instead of the best place at each speed */
  dragRiderStill: number[]
  /** at the impeller shaft, N·m */
  torque: number[]
  /** of all engines on that shaft together, at the crankshaft, N·m */
  engineTorque: number[]
  flow: number[]
  trim: number[]
  /** rider's best place, metres forward of the transom */
  riderAt: number[]
  cavitating: boolean[]
}

export interface OperatingPoint {
  speed: number
  /** engine rotation, rev/s */
  rotation: number
  /** impeller rotation, rev/s */
  impellerRotation: number
  thrust: number
  /** at the impeller shaft, N·m */
  torque: number
  /** of all engines on that shaft together, at the crankshaft, N·m */
  engineTorque: number
  flow: number
  power: number
  pumpEfficiency: number
  /** engine rotation over its power peak */
  ofPowerPeak: number
  flags: Flag[]
}

export interface Root {
  rotation: number
  torque: number
  stable: boolean
  reachable: boolean
}

/** Engine against impeller, both at the engine shaft, over engine rotation. */
export interface Matching {
  rotation: number[]
  engineTorque: number[]
  engineLow: number[]
  engineHigh: number[]
  /** impeller torque referred to the engine shaft, tied up and at top speed */
  impellerTiedUp: number[]
  impellerAtTop: number[]
  /** impeller torque at the pitch that would do best */
  impellerAtBestPitch: number[]
  powerPeakRotation: number
  /**
   * most of the engines' torque that the impeller takes in a valley of their curve below where they settle, and the engine rotation
   * there, rev/s; NaN where the curve has none. From 0.95 they hardly climb out of it.
   */
  bogRatio: number
  bogRotation: number
  /** the impeller holds the engines below a valley that they would run on beyond */
  held: boolean
  comesOnPipe: boolean
}

export interface RunUp {
  time: number[]
  speed: number[]
  distance: number[]
  timeToPlane?: number
  timeTo95?: number
  stuck: boolean
  stuckAt?: number
  /** thrust lacking at the worst speed, N */
  deficit?: number
}

export interface Hump {
  speed: number
  drag: number
  thrust: number
  /** thrust over drag at the hump */
  margin: number
}

export interface Verdict {
  code: 'too steep' | 'right' | 'too shallow' | 'unknown'
  says: Sentence
  /** where it was judged, and the boat speed there */
  judged: 'tied up' | 'at the hump' | 'at top speed'
  designSpeed: number
  /** engine rotation there, rev/s */
  rotation: Range
  /** the pitch of these blades that does best on the whole balance, and the pitches that do about as well */
  bestPitch: Range
  pitchNow: number
}

/** What one single change would do, against now. */
export interface Change {
  id: string
  says: Sentence
  path: string
  from: number | string
  to: number | string
  /** other values that go with it, by path, SI: fitting one without them is another change */
  also: Readonly<Record<string, number>>
  rotation: Range
  pull: Range
  topSpeed: Range
}

/** What the living engines still do. Ends are NaN in a quick answer. */
export interface LeftWithOneDead {
  /** they settle below idle, or not at all: then the pull and the top speed are nought and the rotation NaN */
  stalls: boolean
  /** part of the draws of all doubts in which they do, 0 to 1 */
  stallShare: number
  /** over the hump, still */
  planes: boolean
  /** engine rotation tied up, rev/s */
  rotation: Range
  pull: Range
  topSpeed: Range
  /** engine rotations it would be heard at from tied up to its top speed, rev/s; absent when it stalls in every draw */
  band?: { low: number; high: number }
}

export interface OneDead extends LeftWithOneDead {
  /** index of the engine that is taken as dead: the one that leaves least */
  engine: number
  place: 'dragged' | 'standing still' | 'its own jet'
  /** torque that the dead one takes there, N·m at its crank; only where it is dragged */
  drag?: Range
  dragFrom?: 'file' | 'motored' | 'law'
  /** the same with a one-way clutch; only where it is dragged without one */
  withClutch?: LeftWithOneDead
}
