/** Range of the rotation at which cavitation starts, from the ranges of what it depends on most. */
import type { Range } from '../../base/answers/solved.ts'
import type { Craft } from '../../craft/index.ts'
import { jetFromCraft } from './jetFromCraft.ts'
import type { JetSpec } from './jetTypes.ts'
import { cavitationOnset } from './knee.ts'
import type { PumpMap } from './pumpMap.ts'

/** these move the pressure at the blades or the blades' limit, not the pump curve, so one map serves all */
const drivers = [
  'jet.duct.rotor depth',
  'jet.rotor.leading edge radius',
  'jet.nozzle.bore',
  'jet.duct.shaft',
  'place.altitude',
  'place.water temperature',
  'model.jet.lip loss',
  'model.jet.breakdown',
  'model.jet.distortion',
] as const

/** First order: each driver to both ends of its range, steps added as squares. */
export function rangeOfOnset(
  craft: Craft,
  map: PumpMap,
  spec: JetSpec,
  V: number,
  most: number,
  onset: number,
): Range {
  let up = 0
  let down = 0
  for (const path of drivers) {
    for (const end of ['low', 'high'] as const) {
      const moved = jetFromCraft(craft, (q) => (q.path === path ? q[end] : q.value))
      // the blades' own limit moves with the edge radius; the rest of the rotor stays
      const leadingEdgeRadius = moved.rotor.leadingEdgeRadius
      const tried = { ...moved, rotor: { ...spec.rotor, leadingEdgeRadius } }
      const there = cavitationOnset(map, tried, V, most)
      const step = (Number.isFinite(there) ? there : most) - onset
      if (step > 0) up += step * step
      else down += step * step
    }
  }
  return { value: onset, low: onset - Math.sqrt(down), high: onset + Math.sqrt(up) }
}
