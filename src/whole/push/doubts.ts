/**
 * Ranges: each doubtful input is moved by its own half width, one at a time, and the moves of an answer
 * are added as squares (first order; ISO/IEC Guide 98-3:2008, 5.1.2, inputs taken as independent).
 */
import type { Range } from '../../base/answers/solved.ts'
import type { Craft, Quantity } from '../../craft/index.ts'
import { quantitiesOf, whatIf } from '../../craft/index.ts'
import type { SolvedCurves } from '../../trades/engine/enginesFromCraft.ts'
import { jetDoubts } from '../../trades/jet/jetFromCraft.ts'
import { jetPoint } from '../../trades/jet/pumpMap.ts'
import type { Driver } from './balanceTypes.ts'
import { type Leeway, type MapStore, modelFromCraft } from './craftModel.ts'
import { dragDoubt } from './draws.ts'
import { type Anchor, nudge } from './probe.ts'
import type { CraftModel } from './propulsionModel.ts'
import { impellerDrive } from './shaft.ts'

interface Doubt {
  path: string
  says: string
  source: Driver['source']
  model: () => CraftModel
}

const sections = /^(jet|engines|drive|hull|rider|weights|place)\./

/** Inputs with a range of their own that the balance reads. */
function doubtsOf(craft: Craft, maps: MapStore, solved: SolvedCurves | undefined): Doubt[] {
  const doubts: Doubt[] = []
  const moved = (path: string, value: number) =>
    modelFromCraft(whatIf(craft, { [path]: value }), maps, {}, solved)
  for (const q of quantitiesOf(craft) as Iterable<Quantity>) {
    if (!sections.test(q.path) || !(q.high > q.low)) continue
    // the rider's place is a control: the balance puts it where the drag is least
    if (q.path === 'rider.position' && craft.rider.moves) continue
    const half = (q.high - q.low) / 2
    const up = q.value + half <= q.high + 1e-12 * Math.abs(q.high) ? q.value + half : q.high
    doubts.push({ path: q.path, says: q.path, source: q.source, model: () => moved(q.path, up) })
  }
  const lean = (leeway: Leeway) => () => modelFromCraft(craft, maps, leeway, solved)
  craft.engines.forEach((e, i) => {
    if (e.curveTrust.value > 0)
      doubts.push({
        path: `engines.${i}.curve trust`,
        says: `the torque curve of ${e.name ?? `engine ${i + 1}`}`,
        source: e.curveTrust.source,
        model: lean({ engine: 1 + e.curveTrust.value / craft.engines.length }),
      })
  })
  for (const q of Object.values(jetDoubts))
    doubts.push({
      path: q.path,
      says: q.why ?? q.path,
      source: 'model',
      model: lean({ jet: { [q.path]: q.high } }),
    })
  doubts.push({
    path: 'model.drag',
    says: 'the drag of the hull',
    source: 'model',
    model: lean({ drag: 1 + dragDoubt }),
  })
  return doubts
}

export interface Ranges {
  rotation: Range
  pull: Range
  topSpeed: Range
  /** relative half width of torque surplus at the aim rotation, for the best pitch */
  torqueDoubt: number
  drivers: Driver[]
}

/** Ranges of the three answers and the inputs they come from, largest first. */
export function rangesOf(
  craft: Craft,
  base: CraftModel,
  anchor: Anchor,
  maps: MapStore,
  solved?: SolvedCurves,
): Ranges {
  const now = nudge(base, anchor)
  const n = anchor.tied[0]!
  const surplus = (m: CraftModel) =>
    impellerDrive(m.units[0]!.shaft, n) - jetPoint(m.units[0]!.map, m.units[0]!.spec, n, 0).T
  const load = jetPoint(base.units[0]!.map, base.units[0]!.spec, n, 0).T
  const drivers: Driver[] = []
  let torque2 = 0
  for (const doubt of doubtsOf(craft, maps, solved)) {
    let model: CraftModel
    try {
      model = doubt.model()
    } catch (error) {
      // an input moved past what the geometry allows says nothing about the range
      if (error instanceof RangeError) continue
      throw error
    }
    const moved = nudge(model, anchor)
    torque2 += (surplus(model) / load) ** 2 || 0
    const half = (a: number, b: number) => (Number.isFinite(a - b) ? Math.abs(a - b) : 0)
    drivers.push({
      path: doubt.path,
      says: doubt.says,
      source: doubt.source,
      rotation: half(moved.rotation, now.rotation),
      pull: half(moved.pull, now.pull),
      topSpeed: half(moved.topSpeed, now.topSpeed),
    })
  }
  const width = (pick: (d: Driver) => number) => Math.sqrt(drivers.reduce((sum, d) => sum + pick(d) ** 2, 0))
  const around = (value: number, half: number): Range => ({
    value,
    low: Math.max(0, value - half),
    high: value + half,
  })
  const weight = (d: Driver) =>
    d.rotation / (now.rotation || 1) +
    d.pull / (now.pull || 1) +
    (Number.isFinite(now.topSpeed) ? d.topSpeed / now.topSpeed : 0)
  return {
    rotation: around(
      now.rotation,
      width((d) => d.rotation),
    ),
    pull: around(
      now.pull,
      width((d) => d.pull),
    ),
    topSpeed: around(
      anchor.topSpeed,
      width((d) => d.topSpeed),
    ),
    torqueDoubt: Math.sqrt(torque2),
    drivers: drivers.filter((d) => weight(d) > 1e-5).sort((a, b) => weight(b) - weight(a)),
  }
}
