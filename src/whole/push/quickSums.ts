/**
 * A craft summed up for a search: pull, top speed, hump and how hard it works, from a dozen settled speeds and a drag curve that
 * is worked out once for all impellers. Within a few thousandths of the whole balance (quickSums.test.ts), which confirms what is offered.
 */
import { type Cubic, cubicAt, pchip } from '../../base/numerics/interpolate.ts'
import { bisect } from '../../base/numerics/roots.ts'
import type { JetPoint, JetSpec } from '../../trades/jet/jetTypes.ts'
import type { PumpMap } from '../../trades/jet/pumpMap.ts'
import { type CraftModel, dragOf, idleOf, propel } from './propulsionModel.ts'
import { shaftRedline } from './shaft.ts'

/** as far as the hull model is asked, m/s: the operating table's own end */
export const fastest = 18
const steps = 30

/** Drag over speed, once for all that is tried on one hull. */
export interface DragTable {
  drag: Cubic
  /** speeds between which the hull climbs its hump, m/s; absent when it has none the model sees */
  hump?: { from: number; to: number }
}

export function dragTableOf(model: CraftModel): DragTable {
  const speed: number[] = []
  const drag: number[] = []
  let from = Number.NaN
  let to = Number.NaN
  for (let i = 0; i <= steps; i++) {
    const v = fastest * (i / steps) ** 1.3
    const point = dragOf(model, v)
    if (!Number.isFinite(point.drag)) continue
    speed.push(v)
    drag.push(point.drag)
    if (point.regime !== 'hump') continue
    if (!(from <= v)) from = v
    to = v
  }
  const curve = speed.length >= 2 ? pchip(speed, drag) : pchip([0, fastest], [Number.NaN, Number.NaN])
  return Number.isFinite(from) ? { drag: curve, hump: { from, to } } : { drag: curve }
}

export interface QuickSums {
  /** N, tied up; NaN when the engines cannot turn the impeller */
  pull: number
  /** m/s, the steady speed reached from rest; NaN when there is none within the hull model */
  topSpeed: number
  /** least thrust over drag while it climbs the hump; NaN where the hull has none */
  hump: number
  /** engine rotations tied up and at the top speed, rev/s */
  rotation: number
  topRotation: number
  /** the faster of the two over the redline */
  ofRedline: number
  /** tied up, for what the blades bear */
  tied?: JetPoint
  /** passages blocked by vapour tied up or at the top speed */
  choked: boolean
}

/** The craft with another jet on every shaft. */
export function fitted(model: CraftModel, spec: JetSpec, map: PumpMap): CraftModel {
  return { ...model, units: model.units.map((u) => ({ ...u, spec, map })) }
}

/** speeds that are settled one after the other, as shares of `fastest` */
const shares = Array.from({ length: 15 }, (_, i) => (i / 14) ** 1.3)

export function quickSums(model: CraftModel, table: DragTable): QuickSums {
  const unit = model.units[0]!
  const { ratio } = unit.shaft
  const speed: number[] = []
  const thrust: number[] = []
  const rotations: number[][] = []
  const jets: (JetPoint | undefined)[] = []
  let from: number[] = model.units.map(idleOf)
  const past = Math.max(table.hump?.to ?? 0, 0)
  for (const share of shares) {
    const v = fastest * share
    const there = propel(model, v, from)
    if (!there.steady) break
    from = there.states.map((s) => s.rotation)
    speed.push(v)
    thrust.push(there.thrust)
    rotations.push(from)
    jets.push(there.states[0]!.jet)
    if (v > past && there.thrust < cubicAt(table.drag, v)) break
  }
  const tied = jets[0]
  const sums: QuickSums = {
    pull: thrust[0] ?? Number.NaN,
    topSpeed: Number.NaN,
    hump: Number.NaN,
    rotation: (rotations[0]?.[0] ?? Number.NaN) * ratio,
    topRotation: Number.NaN,
    ofRedline: Number.NaN,
    choked: tied?.state === 'choked',
    ...(tied ? { tied } : {}),
  }
  if (speed.length >= 2) {
    const curve = pchip(speed, thrust)
    const end = speed.at(-1)!
    sums.hump = humpMargin(curve, table, end)
    const top = topOf(model, curve, table, speed, rotations)
    if (top) {
      sums.topSpeed = top.speed
      sums.topRotation = top.rotation * ratio
      sums.choked ||= top.choked
    }
  }
  const most = Math.max(sums.rotation, Number.isFinite(sums.topRotation) ? sums.topRotation : 0)
  sums.ofRedline = most / shaftRedline(unit.shaft)
  return sums
}

function humpMargin(thrust: Cubic, { drag, hump }: DragTable, end: number): number {
  if (!hump) return Number.NaN
  // thrust that ends before the hump never gets over it
  if (end < hump.from) return 0
  let least = Number.POSITIVE_INFINITY
  for (let k = 0; k <= 12; k++) {
    const v = hump.from + ((hump.to - hump.from) * k) / 12
    if (v <= end) least = Math.min(least, cubicAt(thrust, v) / cubicAt(drag, v))
  }
  return least
}

/** First speed from rest at which thrust falls to the drag, closed in on the curves and put right by one settled point. */
function topOf(
  model: CraftModel,
  thrust: Cubic,
  { drag }: DragTable,
  speed: readonly number[],
  rotations: readonly (readonly number[])[],
): { speed: number; rotation: number; choked: boolean } | undefined {
  const left = (v: number) => cubicAt(thrust, v) - cubicAt(drag, v)
  const end = speed.at(-1)!
  const fine = 48
  for (let k = 1; k <= fine; k++) {
    const a = (end * (k - 1)) / fine
    const b = (end * k) / fine
    if (!(left(a) > 0 && left(b) <= 0)) continue
    const v = bisect(left, a, b, { tolerance: 1e-5 }).value
    const before =
      rotations[
        Math.max(
          0,
          speed.findLastIndex((s) => s <= v),
        )
      ]!
    const there = propel(model, v, before)
    const state = there.states[0]!
    const slope = (left(v + 0.05) - left(v - 0.05)) / 0.1
    const off = there.thrust - cubicAt(thrust, v)
    const step = there.steady && slope < 0 ? -off / slope : 0
    return {
      speed: v + Math.max(-0.3, Math.min(0.3, step)),
      rotation: state.rotation,
      choked: state.jet?.state === 'choked',
    }
  }
  return undefined
}
