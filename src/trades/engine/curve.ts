/**
 * Full-throttle torque of an engine or motor against rotation, at the output shaft.
 * Sources: power = 2 pi n T (definition); permanent-magnet motor T = k (U - k w)/R, current limited
 * (e.g. A. Hughes, Electric Motors and Drives, 3rd ed. 2006, ch. 3). Shapes of the peak estimate:
 * normalised from this project's own simulated 125 cm³ engine (tuned) and from common practice, no
 * source (mild, flat).
 */
import { type Cubic, cubicAt, pchip } from '../../base/numerics/interpolate.ts'
import type { DeadDrag } from './deadDrag.ts'

/** How a torque was known: inside the builder's table, or carried on beyond it. */
export type Known = 'table' | 'beyond'

export interface TorqueCurve {
  /** lowest and highest rotation of the table, rev/s */
  readonly from: number
  readonly to: number
  /** rotation above which the torque has fallen to nothing, rev/s */
  readonly end: number
  readonly redline: number
  /** torque at standstill, N·m */
  readonly atRest: number
  readonly powerPeak: { rotation: number; power: number; torque: number }
  readonly torquePeak: { rotation: number; torque: number }
  readonly cubic: Cubic
  /** how far off the whole curve may be, where its maker says; see `CurveDoubts` */
  readonly doubts?: CurveDoubts
  /** what the engine takes when it is dead and dragged, where that was simulated with it */
  readonly dead?: DeadDrag
  /** where its heat goes and what it draws in, where that was simulated with it */
  readonly heat?: HeatCurve
  /** highest pressure in the cylinder, Pa, over rotation, rev/s, where it was simulated */
  readonly peaks?: PressurePeaks
}

/** Heat, air and fuel of the whole engine over rotation, by simulation. Parallel arrays, rotation rising. */
export interface HeatCurve {
  /** rev/s */
  readonly rotation: readonly number[]
  /** W: cylinder walls and friction, crankcase, pipe skins, muffler box */
  readonly cylinder: readonly number[]
  readonly case: readonly number[]
  readonly pipe: readonly number[]
  readonly box: readonly number[]
  /** kg/s */
  readonly air: readonly number[]
  readonly fuel: readonly number[]
  /** K, where an exhaust thermometer would sit */
  readonly exhaustT: readonly number[]
}

export interface PressurePeaks {
  readonly rotation: readonly number[]
  readonly pressure: readonly number[]
}

/** Doubts that a curve carries with it, as half widths in parts, for ranges to sample. */
export interface CurveDoubts {
  /** of every torque */
  torque: number
  /** of the rotations of its peaks */
  speed: number
  reasons: readonly string[]
}

export interface TablePoint {
  rotation: number
  torque: number
}

/** Share of the first table torque that is left at standstill: crank-case pumping is poor at low speed. */
const standstillShare = 0.5
/** Torque dies over this share of the redline beyond the table. */
const fadeShare = 0.1

/**
 * Curve from points at rising rotation (rev/s, N·m, at least two, torque not negative).
 * RangeError names the offending point. `redline` (rev/s) defaults to the last point.
 */
export function curveFromTable(
  points: readonly TablePoint[],
  redline?: number,
  atRest?: number,
): TorqueCurve {
  if (points.length < 2) throw new RangeError(`a torque curve needs two or more points, got ${points.length}`)
  points.forEach((p, i) => {
    if (!(p.rotation > 0) || !(p.torque >= 0) || !Number.isFinite(p.torque))
      throw new RangeError(
        `torque curve point ${i + 1}: rotation ${p.rotation} rev/s and torque ${p.torque} N·m`,
      )
  })
  const cubic = pchip(
    points.map((p) => p.rotation),
    points.map((p) => p.torque),
  )
  const from = points[0]!.rotation
  const to = points[points.length - 1]!.rotation
  const limit = redline ?? to
  const end = Math.max(to, limit) + fadeShare * Math.max(to, limit)
  const bare = { from, to, end, redline: limit, atRest: atRest ?? standstillShare * points[0]!.torque, cubic }
  return { ...bare, ...peaks(bare) }
}

type Bare = Omit<TorqueCurve, 'powerPeak' | 'torquePeak'>

/** Peaks of power and torque on the table, by a fine walk and a parabola through the best three. */
function peaks(curve: Bare): Pick<TorqueCurve, 'powerPeak' | 'torquePeak'> {
  const power = (n: number) => 2 * Math.PI * n * torqueAt(curve, n)
  const n = topOf(power, curve.from, curve.to)
  const m = topOf((r) => torqueAt(curve, r), curve.from, curve.to)
  return {
    powerPeak: { rotation: n, power: power(n), torque: torqueAt(curve, n) },
    torquePeak: { rotation: m, torque: torqueAt(curve, m) },
  }
}

function topOf(f: (x: number) => number, low: number, high: number): number {
  const steps = 200
  let best = low
  for (let i = 0; i <= steps; i++) {
    const x = low + ((high - low) * i) / steps
    if (f(x) > f(best)) best = x
  }
  // golden-section search inside the neighbouring cells
  let a = Math.max(low, best - (high - low) / steps)
  let b = Math.min(high, best + (high - low) / steps)
  const g = (Math.sqrt(5) - 1) / 2
  for (let i = 0; i < 40; i++) {
    const c = b - g * (b - a)
    const d = a + g * (b - a)
    if (f(c) > f(d)) b = d
    else a = c
  }
  return 0.5 * (a + b)
}

/**
 * Torque, N·m, at rotation n (rev/s) and throttle 0..1 (a plain share of the torque). Below the table
 * it runs in a straight line to `atRest`, half the first point unless given; above it in a straight line to
 * zero at `end`; negative n gives the standstill value. NaN in, NaN out.
 */
export function torqueAt(curve: Bare, n: number, throttle = 1): number {
  const c = curve.cubic
  let torque: number
  if (n < curve.from) {
    torque = curve.atRest + ((c.y[0]! - curve.atRest) * Math.max(n, 0)) / curve.from
  } else if (n > curve.to) {
    const last = c.y[c.y.length - 1]!
    torque = n >= curve.end ? 0 : (last * (curve.end - n)) / (curve.end - curve.to)
  } else torque = cubicAt(c, n)
  return torque * throttle
}

/** Whether a rotation lies inside the table or beyond it. */
export function knownAt(curve: Bare, n: number): Known {
  return n >= curve.from && n <= curve.to ? 'table' : 'beyond'
}

/** How sharply torque gathers round the power peak. */
export type Temper = 'tuned' | 'mild' | 'flat'

/** torque over torque at the power peak, against rotation over rotation at the power peak */
const shapes: Record<Temper, readonly (readonly [number, number])[]> = {
  tuned: [
    [0.35, 0.5],
    [0.5, 0.58],
    [0.65, 0.68],
    [0.76, 0.76],
    [0.86, 0.91],
    [0.93, 0.99],
    [0.97, 1.01],
    [1.02, 0.985],
    [1.08, 0.87],
    [1.15, 0.66],
    [1.25, 0.3],
  ],
  mild: [
    [0.35, 0.72],
    [0.5, 0.85],
    [0.65, 0.97],
    [0.8, 1.06],
    [0.9, 1.06],
    [1.0, 1.0],
    [1.1, 0.88],
    [1.2, 0.71],
    [1.35, 0.4],
  ],
  flat: [
    [0.3, 1.02],
    [0.5, 1.08],
    [0.7, 1.1],
    [0.85, 1.07],
    [1.0, 1.0],
    [1.15, 0.84],
    [1.3, 0.6],
  ],
}

const units = new Map<Temper, TorqueCurve>()

/** the shape as a curve, its peaks found once */
function unitCurve(temper: Temper): TorqueCurve {
  let unit = units.get(temper)
  if (!unit) {
    unit = curveFromTable(shapes[temper].map(([x, y]) => ({ rotation: x, torque: y })))
    units.set(temper, unit)
  }
  return unit
}

/**
 * Curve with its power peak exactly at `power` (W) and `rotation` (rev/s), in the shape of `temper`.
 * An estimate: away from the peak its torque may be 8 (flat) to 15 % (tuned) off, common practice.
 */
export function curveFromPeak(
  power: number,
  rotation: number,
  temper: Temper,
  redline?: number,
): TorqueCurve {
  if (!(power > 0) || !(rotation > 0))
    throw new RangeError(`peak power ${power} W at ${rotation} rev/s: both must be above zero`)
  const unit = unitCurve(temper)
  // the shape's own peak is not exactly at 1: bring it there
  const sx = rotation / unit.powerPeak.rotation
  const sy = power / (2 * Math.PI * rotation) / unit.powerPeak.torque
  return curveFromTable(
    shapes[temper].map(([x, y]) => ({ rotation: x * sx, torque: y * sy })),
    redline,
  )
}

export interface Motor {
  /** N·m/A, which is also V·s/rad */
  torquePerCurrent: number
  maxCurrent: number
  voltage: number
  /** whole circuit: winding, controller, leads, battery, ohm */
  resistance: number
}

/** Torque curve of a permanent-magnet motor on a battery, current limited; no iron loss. */
export function curveFromMotor(motor: Motor): TorqueCurve {
  const k = motor.torquePerCurrent
  for (const [name, value] of Object.entries(motor))
    if (!(value > 0)) throw new RangeError(`motor ${name} is ${value}: it must be above zero`)
  const noLoad = motor.voltage / k / (2 * Math.PI)
  const torque = (n: number) =>
    Math.max(0, k * Math.min(motor.maxCurrent, (motor.voltage - k * 2 * Math.PI * n) / motor.resistance))
  const points = Array.from({ length: 60 }, (_, i) => {
    const n = (noLoad * (i + 1)) / 60
    return { rotation: n, torque: torque(n) }
  })
  return curveFromTable(points, noLoad, torque(0))
}

/** Multiplies every torque; used for throttle trims, wear and uncertainty. */
export function scaleCurve(curve: TorqueCurve, share: number): TorqueCurve {
  const cubic: Cubic = {
    x: curve.cubic.x,
    y: curve.cubic.y.map((v) => v * share),
    slope: curve.cubic.slope.map((v) => v * share),
  }
  const { powerPeak: p, torquePeak: t } = curve
  return {
    ...curve,
    atRest: curve.atRest * share,
    cubic,
    powerPeak: { rotation: p.rotation, power: p.power * share, torque: p.torque * share },
    torquePeak: { rotation: t.rotation, torque: t.torque * share },
  }
}

/** Moves every rotation of the table by a factor, the redline staying: a curve whose peaks lie elsewhere. */
export function stretchCurve(curve: TorqueCurve, factor: number): TorqueCurve {
  const { cubic, powerPeak: p, torquePeak: t } = curve
  return {
    ...curve,
    from: curve.from * factor,
    to: curve.to * factor,
    end: Math.max(curve.to * factor, curve.redline) * (1 + fadeShare),
    cubic: { x: cubic.x.map((n) => n * factor), y: cubic.y, slope: cubic.slope.map((s) => s / factor) },
    powerPeak: { rotation: p.rotation * factor, power: p.power * factor, torque: p.torque },
    torquePeak: { rotation: t.rotation * factor, torque: t.torque },
  }
}
