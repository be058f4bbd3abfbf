/**
 * Drag of a small jet-driven board or sled from rest to full plane.
 * Parts: friction, transom and a wave tail below Fv = 1, the Mercier–Savitsky regression to Fv = 1.6, Savitsky's equilibrium from 2.4, blended
 * between; air, appendages and whisker spray added. How the parts are joined, the mis-trim penalty and the band are this
 * project's judgement, see the comments where they stand. Sources of the parts: their own files.
 */

import type { Flag, Solved } from '../../base/answers/solved.ts'
import type { RestForm } from '../../hull/afloat/restForm.ts'
import { gravity } from '../../physics/fluid/water.ts'
import { hullDragArea } from './air.ts'
import { blountFoxMultiplier } from './corrections.ts'
import { chineHalfBreadth, deadriseAt, floatAtRest } from './dragForm.ts'
import {
  type Conditions,
  type HullSpec,
  type Loading,
  smoothStep,
  type ThrustLine,
  volumetricFroude,
} from './hullSpec.ts'
import { planingAt, planingState } from './planing.ts'
import { planingCase } from './planingCase.ts'
import { porpoisingBand, porpoisingLimit, porpoisingNumber } from './porpoising.ts'
import { prepareSlow, type SlowModel, slowDrag, type WaveTail } from './slow.ts'
import { type Balance, easiestLambda, lambdaWindow, settle, settleBest, trimRange } from './trimBalance.ts'
import { blendRange, flagsAt, formFlags, intakeWidth, pointFlags, shallowAt } from './validity.ts'

type Regime = 'displacement' | 'hump' | 'planing'

export interface DragPoint {
  /** m/s */
  speed: number
  /** N, best estimate and the band it likely lies in */
  drag: number
  low: number
  high: number
  /** rad, bow up */
  trim: number
  /** m, mean wetted length, and over the planing beam */
  wettedLength: number
  lambda: number
  /** m, wetted length of the keel */
  wettedKeel: number
  /** m forward of the transom, rider's centre; NaN with nobody aboard */
  riderAt: number
  regime: Regime
  balance: Balance
  parts: { friction: number; pressure: number; spray: number; air: number; appendage: number }
  /** N, what each method says by itself (NaN where it does not speak), and the planing method's share in `drag` */
  methods: { slow: number; planing: number; share: number }
  /** rad, critical trim less trim; NaN below the plane. Under 1.5° it may porpoise, under −1.5° it likely will */
  porpoiseMargin: number
  flags: readonly Flag[]
}

export interface DragOptions {
  /** m forward of the transom; the best place in the range when left out */
  riderAt?: number
  thrustLine?: ThrustLine
}

/** Everything that does not depend on speed, worked out once. */
export interface DragModel {
  spec: HullSpec
  loading: Loading
  conditions: Required<Omit<Conditions, 'depth'>> & { depth: number }
  /** N */
  weight: number
  /** kg, all aboard */
  mass: number
  /** m above the keel, centre of all mass */
  centreHeight: number
  /** m, chine beam where the hull planes, less what a round rail gives away */
  beam: number
  /** rad, bottom where it planes: mean over the after half */
  deadrise: number
  /** floating at rest with the rider where the hull sits most level */
  rest: Solved<RestForm>
  /** m, rider's place for that */
  restRiderAt: number
  /** rad a metre: trim at rest for the rider's step aft */
  restTrimPerMetre: number
  /** drag below the plane, made ready */
  slow: SlowModel
  /** m², drag area of rider and hull above water */
  dragArea: number
  flags: readonly Flag[]
}

/** Centre of all mass forward of the transom, m, with the rider's centre at `riderAt`. */
export function centreOf(loading: Loading, riderAt: number): number {
  const total = loading.mass + loading.riderMass
  return (loading.mass * loading.x + (loading.riderMass > 0 ? loading.riderMass * riderAt : 0)) / total
}

/** Rider's place that puts the centre of all mass at `centre`. */
function riderFor(loading: Loading, centre: number): number {
  return (centre * (loading.mass + loading.riderMass) - loading.mass * loading.x) / loading.riderMass
}

export interface PrepareOptions {
  /** floats the hull with the centre of all mass at x, z (m): from a mesh, say; strips of the few numbers when left out */
  float?: (mass: number, x: number, z: number, density: number) => Solved<RestForm>
  tail?: WaveTail
}

/** Does all one-off work: static float, regression, tail. Speeds are then quick. */
export function prepareDrag(
  spec: HullSpec,
  loading: Loading,
  conditions: Conditions,
  options: PrepareOptions = {},
): DragModel {
  const mass = loading.mass + loading.riderMass
  const weight = mass * gravity
  const centreHeight = (loading.mass * loading.z + loading.riderMass * loading.riderHeight) / mass
  const [aft, fore] = loading.riderRange
  const float = options.float ?? ((...given) => floatAtRest(spec, ...given))
  const floatWith = (riderAt: number) =>
    float(mass, centreOf(loading, riderAt), centreHeight, conditions.density)
  // rider where the hull lies most level: trim at rest is close to linear in the place
  const ends = [floatWith(aft), floatWith(fore)] as const
  let slope = fore > aft ? (ends[1].value.trim - ends[0].value.trim) / (fore - aft) : 0
  const clamp = (at: number) => Math.min(fore, Math.max(aft, at))
  let restRiderAt = clamp(slope < 0 ? aft - ends[0].value.trim / slope : 0.5 * (aft + fore))
  let rest = floatWith(restRiderAt)
  for (let i = 0; i < 3 && slope < 0 && Math.abs(rest.value.trim) > 1e-4; i++) {
    const next = clamp(restRiderAt - rest.value.trim / slope)
    if (Math.abs(next - restRiderAt) < 1e-5) break
    const better = floatWith(next)
    slope = Math.min(-1e-3, (better.value.trim - rest.value.trim) / (next - restRiderAt))
    restRiderAt = next
    rest = better
  }
  const form = rest.value
  const slow = prepareSlow(spec, form, weight, conditions, options.tail)
  return {
    spec,
    loading,
    conditions: {
      density: conditions.density,
      kinematicViscosity: conditions.kinematicViscosity,
      depth: conditions.depth ?? Number.POSITIVE_INFINITY,
      airDensity: conditions.airDensity ?? 1.225,
      wind: conditions.wind ?? 0,
    },
    weight,
    mass,
    centreHeight,
    beam: planingBeam(spec),
    deadrise: deadriseAt(spec, 0.25 * spec.length),
    rest,
    restRiderAt,
    restTrimPerMetre: -slope,
    slow,
    dragArea: loading.dragArea + hullDragArea(spec.chineBeam, Math.max(0, spec.depth - form.draft)),
    flags: formFlags(rest, spec, slow.floored),
  }
}

/** Mean chine beam aft of the widest station, less 0.8 of the rail radius: water slips round a soft edge. */
function planingBeam(spec: HullSpec): number {
  const back = 2 * chineHalfBreadth(spec, 0)
  return 0.5 * (back + spec.chineBeam) - 0.8 * (spec.railRadius ?? 0)
}

const before = planingState()
const easiest = planingState()

/** Drag, trim and the rest at one speed (m/s, 0 and up), with the rider in the best place or at `riderAt`. */
export function dragAt(m: DragModel, speed: number, options: DragOptions = {}): DragPoint {
  if (!m.rest.converged) return unknownPoint(m, speed)
  const { loading } = m
  const alone = !(loading.riderMass > 0)
  const form = m.rest.value
  const Fv = volumetricFroude(speed, form.volume)
  const c = planingCase(m, Math.max(speed, 1e-6), options.thrustLine)
  const slow = slowDrag(m.slow, Math.max(speed, 1e-6))
  const fixed = options.riderAt ?? (alone ? 0 : undefined)
  const restAt = fixed ?? m.restRiderAt
  const restTrim = form.trim + (alone ? 0 : m.restTrimPerMetre * (m.restRiderAt - restAt))
  const preDrag = slow.friction + slow.pressure + c.airDrag + c.appendage
  // a quarter where the wave tail is a guess, 15 % from the hump on
  const doubt = 0.25 - 0.1 * smoothStep(Fv, 0.8, 1.2)
  if (Fv < 0.9) {
    const drag = preDrag
    return {
      speed,
      drag,
      low: drag - doubt * Math.abs(drag),
      high: drag + doubt * Math.abs(drag),
      trim: restTrim,
      wettedLength: form.length,
      lambda: form.length / m.beam,
      wettedKeel: form.length,
      riderAt: alone ? Number.NaN : restAt,
      regime: 'displacement',
      balance: 'balanced',
      parts: {
        friction: slow.friction,
        pressure: slow.pressure,
        spray: 0,
        air: c.airDrag,
        appendage: c.appendage,
      },
      methods: { slow: drag, planing: Number.NaN, share: 0 },
      porpoiseMargin: Number.NaN,
      flags: shallowAt(m, speed) ? pointFlags.shallow : pointFlags.none,
    }
  }

  // planing equilibrium: the easiest state the hull could hold, then the one the rider's place or range allows
  const intake = m.spec.intake
  const open = lambdaWindow(c, m.spec.length)
  // a rider who looks for the least drag still keeps the intake wet, the nose clear and stays out of certain porpoising
  const lift = m.weight / (0.5 * m.conditions.density * (speed * m.beam) ** 2)
  const limit = porpoisingLimit(porpoisingNumber(lift), m.deadrise)
  const window = lambdaWindow(
    c,
    wettable(m.spec, Fv),
    intake?.front ?? 0,
    intake ? intakeWidth(intake.area) : 0,
    Math.min(trimRange[1], limit + porpoisingBand),
  )
  const best = easiestLambda(c, window, before)
  planingAt(c, best, easiest)
  const easy = easiest.drag
  const s = before
  const [aft, fore] = loading.riderRange
  const balance =
    fixed === undefined
      ? settleBest(c, best, centreOf(loading, aft), centreOf(loading, fore), open, s)
      : settle(c, centreOf(loading, fixed), open, s)
  const planingRider = fixed ?? Math.min(fore, Math.max(aft, riderFor(loading, s.neededCentre)))
  const toPlaning = smoothStep(Fv, 0.9, 1.3)
  const riderAt = fixed ?? restAt + toPlaning * (planingRider - restAt)

  // the regression knows only well-trimmed hulls: a hull held at a worse trim pays what the planing theory says it pays more than its own
  // easiest trim, faded in over the hump
  const penalty = smoothStep(Fv, 1, 1.5) * Math.max(0, s.drag - easy)
  const pre = preDrag + penalty
  const part = smoothStep(Fv, blendRange[0], blendRange[1])
  const mix = (a: number, b: number) => a + part * (b - a)
  const drag = mix(pre, s.drag)

  // band: where regression and theory overlap, both of them and the Blount–Fox hump are inside as well
  const overlap = smoothStep(Fv, 1.1, 1.4) * (1 - smoothStep(Fv, 2.3, 2.6))
  const bare = s.drag - s.air - s.appendage
  const hump = s.drag + bare * (blountFoxMultiplier(s.neededCentre / m.beam, Fv) - 1)
  // a following wind can outdo a slow hull: the band then lies about a negative drag
  const [least, most] = [drag - doubt * Math.abs(drag), drag + doubt * Math.abs(drag)]
  const low = least - overlap * Math.max(0, least - Math.min(pre, s.drag))
  const high = most + overlap * Math.max(0, Math.max(pre, s.drag, hump) - most)

  const trim = restTrim + toPlaning * (s.trim - restTrim)
  const lambda = form.length / m.beam + toPlaning * (s.lambda - form.length / m.beam)
  const straight = 0.9 * (m.spec.noseRiseFrom ?? 0.65 * m.spec.length)
  const planing =
    (Fv >= blendRange[1] || (Fv >= blendRange[0] && s.wettedKeel <= straight)) &&
    balance === 'balanced' &&
    s.trim <= (12 * Math.PI) / 180
  const margin = Fv >= blendRange[0] ? limit - s.trim : Number.NaN
  return {
    speed,
    drag,
    low,
    high,
    trim,
    wettedLength: lambda * m.beam,
    lambda,
    wettedKeel: form.length + toPlaning * (s.wettedKeel - form.length),
    riderAt: alone ? Number.NaN : riderAt,
    regime: Fv < 1 ? 'displacement' : planing ? 'planing' : 'hump',
    balance: Fv < 1 ? 'balanced' : balance,
    parts: {
      friction: mix(slow.friction, s.friction),
      pressure: mix(slow.pressure + penalty, s.pressure),
      spray: mix(0, s.spray),
      air: c.airDrag,
      appendage: c.appendage,
    },
    methods: { slow: pre, planing: s.drag, share: part },
    porpoiseMargin: margin,
    flags: flagsAt(m, speed, Fv, s, balance, margin),
  }
}

/** What is said of a craft that does not float: no numbers. */
function unknownPoint(m: DragModel, speed: number): DragPoint {
  const no = Number.NaN
  return {
    speed,
    drag: no,
    low: no,
    high: no,
    trim: no,
    wettedLength: no,
    lambda: no,
    wettedKeel: no,
    riderAt: no,
    regime: 'displacement',
    balance: 'mushing',
    parts: { friction: no, pressure: no, spray: no, air: no, appendage: no },
    methods: { slow: no, planing: no, share: 0 },
    porpoiseMargin: no,
    flags: m.flags,
  }
}

/**
 * Bottom a sensible rider lets get wet, m: all of it in the climb, no more than half of the curved nose when planing. The planing theory
 * knows no curved nose and would send the rider further forward than the bow can bear (judgement).
 */
function wettable(spec: HullSpec, Fv: number): number {
  const curved = spec.length - Math.min(spec.length, spec.noseRiseFrom ?? 0.65 * spec.length)
  return spec.length - 0.5 * curved * smoothStep(Fv, 1.2, 2)
}

/** `dragAt` at each speed. */
export function dragCurve(m: DragModel, speeds: ArrayLike<number>, options: DragOptions = {}): DragPoint[] {
  return Array.from(speeds, (speed) => dragAt(m, speed, options))
}
