/** The tanks of a craft file as plain SI, each with what is in it. */
import type { Craft } from '../../craft/schema/craftSchema.ts'
import { tankLiquid } from '../../craft/tankRoom.ts'
import { liquidWeight, type Tank, type TankShape } from './liquids.ts'
import type { Weight } from './masses.ts'

/** made once for each list of tanks: a search that moves other values shares them */
const made = new WeakMap<Craft['tanks'], { tanks: Tank[]; liquids: Weight[] }>()

function madeOf(craft: Craft): { tanks: Tank[]; liquids: Weight[] } {
  let known = made.get(craft.tanks)
  if (!known) {
    const tanks = read(craft)
    known = { tanks, liquids: tanks.flatMap((t) => liquidWeight(t) ?? []) }
    made.set(craft.tanks, known)
  }
  return known
}

/** The tanks with what is in them. */
export function tanksFromCraft(craft: Craft): readonly Tank[] {
  return madeOf(craft).tanks
}

/** What is in them, as weights that do not run. */
export function liquidsFromCraft(craft: Craft): readonly Weight[] {
  return madeOf(craft).liquids
}

function read(craft: Craft): Tank[] {
  return craft.tanks.map((t): Tank => {
    const liquid = tankLiquid(t)
    return {
      name: t.name,
      shape: shapeOf(t),
      foot: [t.foot[0].value, t.foot[1].value, t.foot[2].value],
      volume: liquid.value,
      give: (liquid.high - liquid.low) / 2,
      density: t.density.value,
      sealed: t.sealed,
    }
  })
}

function shapeOf(t: Craft['tanks'][number]): TankShape {
  if (t.kind === 'box')
    return {
      kind: t.kind,
      length: t.length.value,
      width: t.width.value,
      height: t.height.value,
      cells: Math.max(1, Math.round(t.cells.value)),
    }
  if (t.kind === 'lying cylinder')
    return { kind: t.kind, diameter: t.diameter.value, length: t.length.value, lies: t.lies }
  return { kind: t.kind, diameter: t.diameter.value, height: t.height.value }
}
