/** The exhaust and the air intake of one engine of the craft file as plain SI inputs of this trade. */
import type { Craft } from '../../craft/index.ts'
import { siteOf } from '../../hull/site/site.ts'
import type { Snorkel } from './airIntake.ts'
import type { MufflerBox } from './muffler.ts'

export interface ExhaustInputs {
  name: string
  /** craft path of the engine */
  at: string
  cylinders: number
  /** m³, one cylinder */
  swept: number
  /** excess-air ratio */
  lambda: number
  /** m³ from the piston face to the end of the stinger */
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
  const { exhaust, snorkel } = engine
  const last = exhaust.pipe[exhaust.pipe.length - 1]!
  const stinger = {
    bore: exhaust.stinger?.bore.value ?? last.to.value,
    length: exhaust.stinger?.length.value ?? 0,
  }
  const area = Math.PI / 4
  const pipeVolume =
    exhaust.pipe.reduce((sum, s) => {
      const [a, b] = [s.from.value, s.to.value]
      return sum + (area / 3) * s.length.value * (a * a + a * b + b * b)
    }, 0) +
    area * stinger.bore ** 2 * stinger.length
  const site = siteOf(craft)
  const inputs: ExhaustInputs = {
    name: engine.name ?? `engine ${index + 1}`,
    at: `engines.${index}`,
    cylinders: engine.cylinders.value,
    swept: area * engine.bore.value ** 2 * engine.stroke.value,
    lambda: engine.mixture.lambda.value,
    pipeVolume,
    stinger,
    finish: exhaust.finish,
    air: { p: site.air.pressure, t: site.air.temperature },
    waterT: site.water.temperature,
    waterDensity: site.water.density,
  }
  const box = exhaust.muffler
  const outlet = exhaust.outlet
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
