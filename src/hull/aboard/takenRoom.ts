/** Room inside the hull that machinery and hands need, as boxes where no foam can go. */
import type { Craft } from '../../craft/schema/craftSchema.ts'
import { boxOf, type Taken } from './boxes.ts'
import type { Item } from './items.ts'

/** m to each side of a hatch's edge that a hand and a tool need under it, where no better is known (judgement, no source) */
const reach = 0.16

/** m round the jet's tube for its flanges */
const flange = 0.02

/** Weights that are boxes, the jet and its shaft, the reach under hatches. */
export function takenRoom(
  { jet: { rotor, intake, duct }, openings, hull }: Pick<Craft, 'jet' | 'openings' | 'hull'>,
  items: readonly Item[],
): Taken[] {
  const box = (w: Item): Taken => ({
    name: w.sizeGuessed ? `${w.name} (size guessed)` : w.name,
    ...boxOf(w.at, w.size),
  })
  const boxes = items.filter((w) => w.box)
  const half = Math.max(rotor.bore.value, intake.width.value) / 2 + flange
  const tall = rotor.bore.value + 2 * flange
  const front = intake.front.value
  const nearest = Math.min(...boxes.filter((w) => w.kind === 'engine').map((w) => box(w).low[0]), Infinity)
  const shaft = duct.shaft.value / 2 + flange
  const jet: Taken[] = [{ name: 'jet', low: [0, -half, 0], high: [front, half, tall] }]
  if (nearest > front && Number.isFinite(nearest))
    jet.push({ name: 'shaft', low: [front, -shaft, 0], high: [nearest, shaft, tall] })
  const hatches = openings
    .filter((o) => o.kind === 'hatch')
    .map((o): Taken => {
      const [x, y] = [o.at[0].value, o.at[1].value]
      return {
        name: `reach under ${o.name}`,
        low: [x - reach, y - reach, 0],
        high: [x + reach, y + reach, hull.depth.value + 0.2],
      }
    })
  return [...boxes.map(box), ...jet, ...hatches]
}
