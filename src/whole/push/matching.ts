/** Engine against impeller at the engine shaft, over engine rotation: the picture that shows why. */

import { linspace } from '../../base/numerics/interpolate.ts'
import type { Craft } from '../../craft/index.ts'
import { jetPoint } from '../../trades/jet/pumpMap.ts'
import type { Matching } from './balanceTypes.ts'
import { type Bog, hardlyClimbs } from './bog.ts'
import type { MapStore } from './craftModel.ts'
import type { Table } from './operatingTable.ts'
import type { CraftModel } from './propulsionModel.ts'
import { engineTorque, shaftPowerPeak, shaftRedline } from './shaft.ts'
import { withPitch } from './verdict.ts'

/** `bestShare` is the pitch factor of the best pitch, NaN when there is none. */
export function matchingOf(
  craft: Craft,
  model: CraftModel,
  maps: MapStore,
  table: Table,
  bestShare: number,
  bog: Bog,
  points = 72,
): Matching {
  const unit = model.units[0]!
  const { shaft } = unit
  const trust = Math.max(0, ...craft.engines.map((e) => e.curveTrust.value))
  const rotation = linspace(0.15 * shaftRedline(shaft), 1.12 * shaftRedline(shaft), points)
  const gives = Array.from(rotation, (n) => engineTorque(shaft, n))
  /** impeller torque as the engine feels it */
  const felt = (spec: typeof unit.spec, V: number) => {
    const map = maps.of(spec)
    return Array.from(
      rotation,
      (n) => jetPoint(map, spec, n / shaft.ratio, V).T / (shaft.ratio * shaft.efficiency),
    )
  }
  const topSpeed = table.top?.speed
  return {
    rotation: Array.from(rotation),
    engineTorque: gives,
    engineLow: gives.map((t) => t * (1 - trust)),
    engineHigh: gives.map((t) => t * (1 + trust)),
    impellerTiedUp: felt(unit.spec, 0),
    impellerAtTop: topSpeed === undefined ? [] : felt(unit.spec, topSpeed),
    impellerAtBestPitch: Number.isFinite(bestShare) ? felt(withPitch(unit.spec, bestShare), 0) : [],
    powerPeakRotation: shaftPowerPeak(shaft).rotation,
    bogRatio: bog.ratio,
    bogRotation: bog.rotation,
    held: bog.held,
    comesOnPipe:
      Number.isFinite(table.rows[0]!.propulsion.states[0]!.rotation) &&
      !bog.held &&
      !(bog.ratio > hardlyClimbs),
  }
}
