/** The craft file to its shop sketch. */
import type { Craft } from '../../craft/index.ts'
import type { SketchPart, SketchTank } from '../../drawing/craftParts.ts'
import { type CraftShape, craftSketch, type SketchNumber } from '../../drawing/craftSketch.ts'
import type { Sheet } from '../../drawing/sheet.ts'
import { type Carried, carriedOn } from '../../hull/aboard/aboard.ts'
import type { Item } from '../../hull/aboard/items.ts'
import { liquidsOf, type Tank } from '../../hull/aboard/liquids.ts'
import { liquidIn } from '../../hull/afloat/energy.ts'
import { tankState } from '../../hull/afloat/load.ts'
import { makeFrame } from '../../physics/solid/waterFrame.ts'
import { atRest, swampedAlone } from '../../trades/float/atRest.ts'
import { floatFromCraft } from '../../trades/float/floatFromCraft.ts'
import { inLook, type Look, metricLook, plain } from '../push/shown.ts'
import { craftLines } from './craftLines.ts'

/** The picture of a craft with its dimensions, floating at rest where it can be worked out, and with numbers at their places. */
export function craftPicture(
  craft: Craft,
  look: Look = metricLook,
  numbers: readonly SketchNumber[] = [],
  swamped = false,
): Sheet {
  return craftSketch({ ...shapeOf(craft, look, swamped), numbers }, look.width)
}

function shapeOf(craft: Craft, look: Look, swamped: boolean): CraftShape {
  const { jet } = craft
  const all = carriedOn(craft)
  const { rider } = all
  const lines = craftLines(craft)
  const under = swamped ? swampedAttitude(craft, all) : undefined
  const rest = swamped ? under?.attitude : restingAttitude(craft, all)
  const water = rest && {
    aft: rest.h / Math.cos(rest.trim),
    forward: (rest.h - lines.length * Math.sin(rest.trim)) / Math.cos(rest.trim),
  }
  const words = (metres: number) =>
    `${plain(inLook(metres, 'length', look), look.length === 'mm' ? 0 : 1)} ${look.length}`
  const shape: CraftShape = {
    title: `${craft.name}, to scale`,
    says: `${craft.name} from the side, from above and from astern: ${words(lines.length)} long, ${words(lines.beam)} wide, ${words(lines.depth)} deep${water && !swamped ? `, drawing ${words(water.aft)} at the transom` : ''}${under ? `; swamped it ${under.says}` : ''}.`,
    ...lines,
    parts: all.items.map((w) => partOf(w, all.tanks.length > 0)),
    tanks: all.tanks.map((t) => tankOf(t, rest?.trim ?? 0)),
    openings: craft.openings.map((o) => ({
      name: o.name,
      at: [o.at[0].value, o.at[1].value, o.at[2].value] as const,
    })),
    ...(swamped
      ? {}
      : { rider: { at: rider.x, off: rider.y, stature: rider.stature, posture: rider.stance } }),
    jet: {
      bore: jet.rotor.bore.value,
      nozzle: jet.nozzle.bore.value,
      height: (water?.aft ?? 0) + jet.nozzle.height.value,
      intakeFront: jet.intake.front.value,
      intakeLength: jet.intake.length.value,
      intakeWidth: jet.intake.width.value,
      rotorAt: Math.max(0.08, jet.intake.front.value - jet.duct.length.value),
    },
    words,
  }
  return water ? { ...shape, water } : shape
}

/** How it lies with its rider, heel left out of the drawing; nothing when it sinks, goes over, or no weights are known. */
function restingAttitude(craft: Craft, all: Carried): { h: number; trim: number } | undefined {
  if (all.assumed) return undefined
  try {
    const { ridden } = atRest(floatFromCraft(craft).input)
    return ridden.sinks || ridden.over ? undefined : ridden.attitude
  } catch (error) {
    if (error instanceof RangeError) return undefined
    throw error
  }
}

/** How it lies full of water with nobody aboard: where the water then stands, and what becomes of it. */
function swampedAttitude(
  craft: Craft,
  all: Carried,
): { attitude?: { h: number; trim: number }; says: string } | undefined {
  if (all.assumed) return undefined
  try {
    const { input } = floatFromCraft(craft)
    const lies = swampedAlone(input)
    if (lies.sinks) return { says: 'sinks' }
    if (lies.over) return { says: 'rolls over' }
    return { attitude: lies.attitude, says: 'stays afloat' }
  } catch (error) {
    if (error instanceof RangeError) return undefined
    throw error
  }
}

/** A tank as drawn, its liquid level with the water outside. */
function tankOf(t: Tank, trim: number): SketchTank {
  const { shape, foot } = t
  const size: [number, number, number] =
    shape.kind === 'box'
      ? [shape.length, shape.width, shape.height]
      : shape.kind === 'standing cylinder'
        ? [shape.diameter, shape.diameter, shape.height]
        : shape.lies === 'along'
          ? [shape.length, shape.diameter, shape.diameter]
          : [shape.diameter, shape.length, shape.diameter]
  const first = liquidsOf(t)[0]
  const level = first && liquidIn(tankState(first), makeFrame(trim, 0)).level
  return {
    name: t.name,
    at: [foot[0], foot[1], foot[2] + size[2] / 2],
    size,
    ...(shape.kind === 'box' ? {} : { round: shape.kind === 'standing cylinder' ? 'up' : shape.lies }),
    ...(level === undefined
      ? {}
      : {
          surface: {
            height: (level - foot[0] * Math.sin(trim)) / Math.cos(trim),
            rise: -Math.tan(trim),
          },
        }),
  }
}

/** What has no box of its own, or is drawn from its own section, is the place of a weight. */
function drawnAs(w: Item, tanksDrawn: boolean): SketchPart['look'] {
  if (!w.box || w.kind === 'spread' || (w.kind === 'tank' && tanksDrawn)) return 'weight'
  return w.kind === 'gear' ? 'box' : w.kind
}

const partOf = (w: Item, tanksDrawn: boolean): SketchPart => ({
  name: w.name,
  at: w.at,
  size: w.size,
  sizeGuessed: w.sizeGuessed,
  look: drawnAs(w, tanksDrawn),
})
