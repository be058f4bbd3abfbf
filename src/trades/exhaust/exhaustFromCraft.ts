/** The exhaust and the air intake of one engine of the craft file as plain SI inputs of this trade. */
import type { Craft } from '../../craft/index.ts'
import { airTube, pipeEnd } from '../../craft/sharing.ts'
import { siteOf } from '../../hull/site/site.ts'
import type { Snorkel } from './airIntake.ts'
import type { MufflerBox } from './muffler.ts'

export interface ExhaustInputs {
  name: string
  /** the same with all engines that share its box, and its air tube: "front and rear" */
  boxName: string
  airName: string
  /** craft path of the engine */
  at: string
  cylinders: number
  /** pipes of running engines that lead into its box, and running engines that draw through its air tube; nought where it leads into, or draws through, another's */
  pipes: number
  intakes: number
  /** m³, one cylinder */
  swept: number
  /** excess-air ratio */
  lambda: number
  /** m³ from the piston face to the end of the stinger, all pipes that lead into its box */
  pipeVolume: number
  stinger: { bore: number; length: number }
  box?: MufflerBox
  /** no outlet tube in the file: the box ends in a hole */
  outlet?: {
    bore: number
    length: number
    /** m over still water: middle of the opening, and highest point inside */
    height: number
    highPoint: number
    /** true where that height is only assumed */
    assumed: boolean
    flap: boolean
    vent: boolean
    drain: boolean
    /** rad */
    fall?: number
  }
  finish: 'bare' | 'wrapped' | 'water-cooled'
  snorkel?: Snorkel & { height: number; heightAssumed: boolean }
  air: { p: number; t: number }
  waterT: number
  waterDensity: number
}

/** Undefined for an engine without an exhaust or a snorkel in the file, or one that burns nothing. */
export function exhaustFromCraft(craft: Craft, index: number): ExhaustInputs | undefined {
  const engine = craft.engines[index]
  if (engine?.kind !== 'two-stroke' || !engine.exhaust) return undefined
  const { exhaust } = engine
  const end = pipeEnd(craft, index)!
  const air = airTube(craft, index)
  const stinger = stingerOf(exhaust)
  const site = siteOf(craft)
  const inputs: ExhaustInputs = {
    name: nameOf(craft, index),
    boxName: namesOf(craft, end.pipes),
    airName: namesOf(craft, air?.engines ?? [index]),
    at: `engines.${index}`,
    cylinders: engine.cylinders.value,
    pipes: end.owner === index ? end.running : 0,
    intakes: air ? (air.owner === index ? air.running : 0) : 1,
    swept: area * engine.bore.value ** 2 * engine.stroke.value,
    lambda: engine.mixture.lambda.value,
    pipeVolume: end.pipes.reduce((sum, i) => sum + pipeVolumeOf(craft, i), 0),
    stinger,
    finish: exhaust.finish,
    air: { p: site.air.pressure, t: site.air.temperature },
    waterT: site.water.temperature,
    waterDensity: site.water.density,
  }
  const { muffler: box, outlet } = end
  const snorkel = air?.tube
  if (box) {
    const [w, h] = [box.width.value, box.height?.value]
    inputs.box = {
      length: box.length.value,
      area: h === undefined ? area * w * w : w * h,
      inletBore: stinger.bore,
      outletBore: outlet?.bore.value ?? 1.1 * stinger.bore,
      inletReach: box.inletReach.value,
      outletReach: box.outletReach.value,
      packing: box.packing.value,
      resistivity: box.packingResistivity.value,
    }
  }
  if (outlet)
    inputs.outlet = {
      bore: outlet.bore.value,
      length: outlet.length.value,
      height: outlet.height.value,
      highPoint: outlet.highPoint.value,
      assumed: outlet.height.source === 'assumed',
      flap: outlet.flap,
      vent: outlet.vent,
      drain: outlet.drain,
      ...(outlet.fall ? { fall: outlet.fall.value } : {}),
    }
  if (snorkel)
    inputs.snorkel = {
      bore: snorkel.bore.value,
      length: snorkel.length.value,
      bends: snorkel.bends.value,
      smoothBends: snorkel.bendShape === 'smooth',
      belledEntry: snorkel.bellMouth,
      roughness: snorkel.inside === 'smooth' ? 1.5e-6 : 2e-3,
      box: snorkel.box.value,
      height: snorkel.height.value,
      heightAssumed: snorkel.height.source === 'assumed',
    }
  return inputs
}

type Exhaust = NonNullable<Extract<Craft['engines'][number], { kind: 'two-stroke' }>['exhaust']>

const area = Math.PI / 4

const nameOf = ({ engines }: Craft, i: number) => engines[i]?.name ?? `engine ${i + 1}`
const namesOf = (craft: Craft, list: readonly number[]) => list.map((i) => nameOf(craft, i)).join(' and ')

function stingerOf({ stinger, pipe }: Exhaust): { bore: number; length: number } {
  return {
    bore: stinger?.bore.value ?? pipe[pipe.length - 1]!.to.value,
    length: stinger?.length.value ?? 0,
  }
}

/** m³ of one engine's pipe and stinger */
function pipeVolumeOf(craft: Craft, index: number): number {
  const engine = craft.engines[index]
  if (engine?.kind !== 'two-stroke' || !engine.exhaust) return 0
  const { bore, length } = stingerOf(engine.exhaust)
  return engine.exhaust.pipe.reduce(
    (sum, s) => {
      const [a, b] = [s.from.value, s.to.value]
      return sum + (area / 3) * s.length.value * (a * a + a * b + b * b)
    },
    area * bore ** 2 * length,
  )
}
