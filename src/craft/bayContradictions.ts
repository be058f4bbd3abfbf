/** What in the bay and the controls of a craft file contradicts something else in it. */
import { formatQuantity } from '../base/units/format.ts'
import { type Contradiction, failing, shown, type Test } from './contradiction.ts'
import type { Craft } from './schema/craftSchema.ts'

export function inBay({ bay, hull, jet }: Craft): Contradiction[] {
  if (!bay) return []
  const depth = shown(hull.depth, 'mm')
  const box = hull.length.value * hull.beam.value * hull.depth.value
  const volume = bay.volume?.value ?? box
  const plan = volume / (0.9 * hull.depth.value)
  // openings in lid and sides; more than both is no bay any more
  const most = plan + 6 * Math.sqrt(plan / 2) * hull.depth.value
  const tests: Test[] = bay.volume
    ? [
        [
          bay.volume.value > box,
          bay.volume,
          'L',
          `a bay inside the hull, whose length × beam × depth is ${formatQuantity(box, 'volume', 'L', 3)}`,
        ],
      ]
    : []
  let all = 0
  for (const o of bay.openings) {
    all += o.area.value
    tests.push([
      all > most,
      o.area,
      'cm²',
      `openings smaller than the bay they are in: lid and sides have ${formatQuantity(most, 'area', 'cm²', 3)} in all`,
    ])
    const over = o.height.source !== 'assumed' && o.height.value > 1.5 * hull.depth.value
    tests.push([over, o.height, 'mm', `a height within the hull, ${depth} deep`, 'warning'])
  }
  const { water } = bay
  if (water) {
    tests.push([
      water.narrowest.value > water.bore.value,
      water.narrowest,
      'mm',
      `a narrowest place no wider than the hose of ${shown(water.bore, 'mm')}`,
    ])
    tests.push([
      water.bore.value > 0.5 * jet.nozzle.bore.value,
      water.bore,
      'mm',
      `a hose much smaller than the nozzle of ${shown(jet.nozzle.bore, 'mm')}`,
    ])
  }
  return failing(tests)
}

export function inControls({ cable, cord }: Craft): Contradiction[] {
  const tests: Test[] = []
  if (cable)
    tests.push([
      cable.spring.value <= 0,
      cable.spring,
      'N',
      'a spring that pulls: without one nothing shuts the throttle',
    ])
  if (cord)
    tests.push([
      cord.thickness.value > 0.5 * cord.drum.value,
      cord.thickness,
      'mm',
      `a cord that lies on its drum of ${shown(cord.drum, 'mm')}`,
    ])
  return failing(tests)
}
