/**
 * What the balance is made of, on a small grid: torque and thrust of the jet over rotation and boat speed, drag over speed,
 * torque over the rotation of each engine. Each is smooth in the doubts where the answers are not (a shaft that just comes on
 * its pipe, or does not), so doubts are followed here and the balance is struck anew for each draw. The jet is followed in water
 * that cannot boil, with how near it is to boiling beside it: what vapour takes has a corner, and is put in afterwards (vapourTable.ts).
 */
import { linspace } from '../../base/numerics/interpolate.ts'
import { torqueAt } from '../../trades/engine/curve.ts'
import { wetPoint } from '../../trades/jet/pumpMap.ts'
import type { Table } from './operatingTable.ts'
import { type CraftModel, dragOf, idleOf, mostOf } from './propulsionModel.ts'
import { engineShare } from './shaft.ts'

/** Where the parts are sampled. */
export interface Grid {
  /** m/s, rising from rest; close where the hump is */
  speeds: Float64Array
  /** m/s, the same and `finer` - 1 between each two: the hump of the drag is narrower than the rest */
  fine: Float64Array
  /** impeller rotations, rev/s, evenly spaced */
  rotations: Float64Array
  /** engine rotations, rev/s, evenly spaced from nought */
  engine: Float64Array
}

/** m/s, as far as the operating table looks */
const mostSpeed = 18
export const speedCount = 13
const finer = 4
export const fineCount = finer * (speedCount - 1) + 1
/** doubts move the jet so evenly over the speed that every second one is enough */
export const doubtSpeedCount = 7
export const rotationCount = 8
const engineCount = 192

/** A grid for a solved craft and for what its doubts make of it. */
export function gridOf(model: CraftModel, table: Table): Grid {
  const reach = table.beyondHump ?? table.top?.speed ?? mostSpeed
  const end = Math.min(mostSpeed, 1.4 * reach + 1.5)
  const unit = model.units[0]!
  const ratio = unit.shaft.ratio
  const most = Math.max(...model.units.map(mostOf))
  const speeds = linspace(0, 1, speedCount).map((part) => end * part ** 1.25)
  return {
    speeds,
    fine: Float64Array.from({ length: fineCount }, (_, j) => between(speeds, j)),
    rotations: linspace(0.95 * Math.min(...model.units.map(idleOf)), 1.06 * most, rotationCount),
    engine: linspace(0, 1.1 * most * ratio, engineCount),
  }
}

/** Scales below which numbers count as near nought, over the square of the rotation and in N. */
export interface Scales {
  torque: number
  thrust: number
  drag: number
}

/** numbers of the jet at one place: torque and thrust over the square of the rotation, both bent, and ln of the onset */
export const jetParts = 3

/**
 * The jet without vapour, part by part, speed by speed, rotation by rotation: with `every` 2 at every second speed of the grid.
 * Scales of one give torque and thrust bent by nothing, for finding the scales.
 */
export function jetSurface(
  model: CraftModel,
  { speeds, rotations }: Grid,
  every: 1 | 2,
  scales: Scales,
): Float64Array {
  const { map, spec } = model.units[0]!
  const rows = every === 1 ? speedCount : doubtSpeedCount
  const plane = rows * rotationCount
  const out = new Float64Array(jetParts * plane)
  for (let row = 0; row < rows; row++) {
    const V = speeds[row * every]!
    // from fast to slow, so that a place where ram runs the pump can go by its neighbour
    for (let k = rotationCount - 1; k >= 0; k--) {
      const n = rotations[k]!
      const at = row * rotationCount + k
      const wet = wetPoint(map, spec, n, V)
      out[at] = bent(wet.T / (n * n), scales.torque)
      out[plane + at] = bent(wet.F / (n * n), scales.thrust)
      const beside = k + 1 < rotationCount ? out[2 * plane + at + 1]! : 1
      out[2 * plane + at] = Number.isFinite(wet.onset)
        ? Math.log(Math.max(wet.onset, 0.02))
        : beside + 2 * Math.log((rotations[k + 1] ?? n) / n)
    }
  }
  return out
}

/** Scales of a craft's parts: a tenth of what is usual; above it effects multiply. */
export function scalesOf(model: CraftModel, { rotations }: Grid, drag: Float64Array): Scales {
  const { map, spec } = model.units[0]!
  const tied = Array.from(rotations, (n) => {
    const { T, F } = wetPoint(map, spec, n, 0)
    return [Math.abs(T) / (n * n), Math.abs(F) / (n * n)] as const
  })
  return {
    torque: 0.1 * Math.max(...tied.map(([T]) => T), 1e-9),
    thrust: 0.1 * Math.max(...tied.map(([, F]) => F), 1e-9),
    drag: 0.1 * Math.max(...drag.slice(0, speedCount).map(Math.abs), 1),
  }
}

/** Adds sums of effects, known at every second speed, to the whole surface: cubics through four speeds, parabolas at the ends. */
export function spreadOver(still: Float64Array, sums: Float64Array, out: Float64Array): void {
  const count = rotationCount
  for (let part = 0; part < jetParts; part++) {
    const from = part * doubtSpeedCount * count
    const to = part * speedCount * count
    for (let row = 0; row < doubtSpeedCount; row++) {
      const here = from + row * count
      const there = to + 2 * row * count
      for (let k = 0; k < count; k++) out[there + k] = still[there + k]! + sums[here + k]!
      if (row === doubtSpeedCount - 1) continue
      const between = there + count
      for (let k = 0; k < count; k++) {
        const b = sums[here + k]!
        const c = sums[here + count + k]!
        let middle: number
        if (row === 0) middle = (3 * b + 6 * c - sums[here + 2 * count + k]!) / 8
        else if (row === doubtSpeedCount - 2) middle = (3 * c + 6 * b - sums[here - count + k]!) / 8
        else middle = (9 * (b + c) - sums[here - count + k]! - sums[here + 2 * count + k]!) / 16
        out[between + k] = still[between + k]! + middle
      }
    }
  }
}

/** Drag without the doubt of the model, N, speed by speed, and the mass of it all, kg, last. */
export function hullSurface(model: CraftModel, { speeds }: Grid): Float64Array {
  const bare: CraftModel = { ...model, dragShare: 1 }
  const out = new Float64Array(speedCount + 1)
  speeds.forEach((V, i) => {
    out[i] = dragOf(bare, V).drag
  })
  out[speedCount] = model.drag.mass
  return out
}

/** Numbers at the grid's speeds, in a straight line to the j-th fine one. */
const between = (y: Float64Array, j: number): number => {
  const i = Math.min(speedCount - 2, Math.floor(j / finer))
  return y[i]! + ((j - finer * i) / finer) * (y[i + 1]! - y[i]!)
}

/** What the bent drag has at the fine speeds beyond straight lines between the grid's: it goes along with whatever a draw adds there. */
export function hullDetail(
  model: CraftModel,
  { fine }: Grid,
  hull: Float64Array,
  scale: number,
): Float64Array {
  const bare: CraftModel = { ...model, dragShare: 1 }
  return fine.map((V, j) => {
    const own = j % finer === 0 ? Number.NaN : bent(dragOf(bare, V).drag, scale) - between(hull, j)
    return Number.isFinite(own) ? own : 0
  })
}

/** Drag, N, at the fine speeds, of a bent hull surface with its detail. */
export function fineDrag(hull: Float64Array, detail: Float64Array, scale: number, out: Float64Array): void {
  for (let j = 0; j < fineCount; j++) out[j] = straight(between(hull, j) + detail[j]!, scale)
}

/** The same with drags bent; the mass stays as it is. */
export const bentHull = (hull: Float64Array, scale: number): Float64Array =>
  hull.map((y, i) => (i < speedCount ? bent(y, scale) : y))

/** Torque of every engine, of all units in turn, over the grid's engine rotations; a dead one's is below nought. */
export function engineSurface(model: CraftModel, { engine }: Grid): Float64Array[] {
  return model.units.flatMap(({ shaft }) =>
    shaft.engines.map((e) =>
      e.running
        ? Float64Array.from(engine, (n) => torqueAt(e.curve, n, e.throttle))
        : Float64Array.from(engine, (n) => engineShare(shaft, e, n)),
    ),
  )
}

/**
 * Numbers over many orders as sums that behave like logarithms where they are large and like themselves near nought:
 * effects of two doubts multiply on a torque and add on a thrust that is nearly spent.
 */
export const bent = (value: number, scale: number): number => Math.asinh(value / scale)
export const straight = (value: number, scale: number): number => scale * Math.sinh(value)

/** Cubic through the four nodes round place `t` (in nodes) of a row of evenly spaced ones that begins at `from`. */
export function inRow(y: Float64Array, from: number, t: number): number {
  const i = Math.min(rotationCount - 3, Math.max(1, Math.floor(t)))
  const x = t - i
  const at = from + i
  const a = y[at - 1]!
  const b = y[at]!
  const c = y[at + 1]!
  const e = y[at + 2]!
  return (
    (-a * x * (x - 1) * (x - 2)) / 6 +
    (b * (x + 1) * (x - 1) * (x - 2)) / 2 -
    (c * (x + 1) * x * (x - 2)) / 2 +
    (e * (x + 1) * x * (x - 1)) / 6
  )
}
