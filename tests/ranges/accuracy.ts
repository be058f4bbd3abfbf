/** How far the balance that draws are solved with, and the pump maps made near another, are off the whole thing. */
import { jetPoint } from '../../src/trades/jet/pumpMap.ts'
import { MapStore, modelFromCraft } from '../../src/whole/push/craftModel.ts'
import { drawable } from '../../src/whole/push/doubts.ts'
import { doubtsOf, leantBy } from '../../src/whole/push/draws.ts'
import { operatingTable } from '../../src/whole/push/operatingTable.ts'
import { probe } from '../../src/whole/push/probe.ts'
import { runFromRest } from '../../src/whole/push/runUp.ts'
import type { CoveredCraft } from './crafts.ts'

/** misses as parts of the answer: the middle one and the largest */
export interface Misses {
  middle: number
  most: number
}

const missesOf = (all: readonly number[]): Misses => {
  const sorted = all.filter(Number.isFinite).sort((a, b) => a - b)
  return { middle: sorted[sorted.length >> 1] ?? Number.NaN, most: sorted.at(-1) ?? Number.NaN }
}

export function accuracyOf(
  c: CoveredCraft,
  draws: number,
): Record<'map' | 'rotation' | 'pull' | 'topSpeed', Misses> {
  const maps = new MapStore(1)
  const model = modelFromCraft(c.craft, maps, {}, c.solved)
  const near = new MapStore(1, model.units[0]!.map)
  const table = operatingTable(model, { steps: 44 })
  const row = table.rows[table.humpRow]!
  const sums = probe(model, 44)
  const exact = {
    ...sums,
    hump: row.propulsion.thrust / row.drag.drag,
    planing: runFromRest(model, table).timeToPlane ?? Number.POSITIVE_INFINITY,
    judged: sums.rotation,
  }
  const able = drawable({ craft: c.craft, model, table, judgedAt: 0, exact, maps, solved: c.solved })!
  const doubts = doubtsOf(c.craft, c.solved)
  const miss = {
    map: [] as number[],
    rotation: [] as number[],
    pull: [] as number[],
    topSpeed: [] as number[],
  }
  for (let i = 0; i < draws; i++) {
    const u = able.drawAt(i)
    const leant = leantBy(c.craft, doubts, u)
    const whole = modelFromCraft(leant.craft, maps, leant.leeway, c.solved)
    const unit = whole.units[0]!
    const map = near.of(unit.spec)
    const n = sums.rotation / model.units[0]!.shaft.ratio
    for (const V of [0, 6]) {
      const [a, b] = [jetPoint(unit.map, unit.spec, n, V), jetPoint(map, unit.spec, n, V)]
      miss.map.push(Math.abs(b.T / a.T - 1), Math.abs(b.F / a.F - 1))
    }
    const truth = probe(whole, 44)
    const got = able.answersOf(u)
    for (const name of ['rotation', 'pull', 'topSpeed'] as const)
      miss[name].push(Math.abs(got[name] / truth[name] - 1))
  }
  return {
    map: missesOf(miss.map),
    rotation: missesOf(miss.rotation),
    pull: missesOf(miss.pull),
    topSpeed: missesOf(miss.topSpeed),
  }
}
