/** Craft file -> plain SI inputs of the jet. */

import type { Quantity } from '../../craft/craftTypes.ts'
import type { Craft } from '../../craft/schema/craftSchema.ts'
import { readSite, siteOf } from '../../hull/site/site.ts'
import { ductLoss, type Grate, grateLoss } from './intakeFlow.ts'
import type { JetSpec, JetWater } from './jetTypes.ts'

/** How a quantity is read: its value, or one drawn from its range when answers are sampled. */
export type Read = (q: Quantity) => number

const asWritten: Read = (q) => q.value

const doubt = (name: string, value: number, low: number, high: number, why: string): Quantity => ({
  value,
  low,
  high,
  source: 'assumed',
  why,
  kind: 'ratio',
  path: `model.jet.${name}`,
})

/**
 * What no builder can measure with a tape: constants of the model, with the range they may lie in.
 * They carry paths like craft values so that they can be sampled and calibrated with them.
 */
export const jetDoubts = {
  turning: doubt(
    'turning',
    0.85,
    0.78,
    0.92,
    'viscous share of the ideal turning of a blade row; fits Carter’s rule',
  ),
  ramLoss: doubt('ram loss', 0.22, 0.15, 0.3, 'flush intakes waste 15 to 30 % of the incoming energy'),
  nozzleLoss: doubt(
    'nozzle loss',
    0.03,
    0.02,
    0.045,
    'short tapered nozzle, about 98 % velocity coefficient',
  ),
  contraction: doubt('contraction', 0.985, 0.97, 1, 'tapered nozzle with a short straight lip'),
  distortion: doubt('distortion', 0.5, 0.3, 0.7, 'uneven flow behind a flush intake, over its mean'),
  lipLoss: doubt('lip loss', 0.3, 0.2, 0.4, 'separation at the lip when the craft stands still'),
  breakdown: doubt(
    'breakdown',
    2.5,
    2,
    3,
    'cavitation number where vapour chokes the blades, 2 to 3 times the flat-plate limit',
  ),
  chokeFall: doubt(
    'choke fall',
    0.5,
    0,
    1,
    'past choking the flow holds (0) or falls with rotation as in flat plates (1)',
  ),
  thrustDeduction: doubt('thrust deduction', 0, -0.04, 0.04, 'pressure on the hull round the opening'),
} as const

/** The water at the craft's place. */
function waterFromCraft(craft: Craft, read: Read = asWritten): JetWater {
  const { water, air } = read === asWritten ? siteOf(craft) : readSite(craft.place, read)
  const { density, viscosity, vapourPressure } = water
  return { density, viscosity, vapourPressure, atmosphere: air.pressure }
}

export function grateFromCraft(craft: Craft, read: Read = asWritten): Grate | undefined {
  const { grate } = craft.jet
  if (!grate) return undefined
  return { bar: read(grate.bar), gap: read(grate.gap), shape: grate.barShape, angle: read(grate.angle) }
}

/** Duct speed the friction factor is taken at; it hardly varies over the range of a small jet. */
const ductSpeed = 6

function follows(q: Quantity, lead: Quantity, leadNow: number, read: Read): number {
  const value = read(q)
  return q.source === 'assumed' ? (value * leadNow) / lead.value : value
}

/** The jet of the craft. Pass `read` to draw uncertain values from their ranges. */
export function jetFromCraft(craft: Craft, read: Read = asWritten): JetSpec {
  const { rotor, stator, nozzle, intake, duct } = craft.jet
  const water = waterFromCraft(craft, read)
  const bore = read(rotor.bore)
  const gap = read(rotor.gap)
  const grate = grateFromCraft(craft, read)
  const loss = ductLoss(
    {
      length: read(duct.length),
      diameter: bore,
      roughness: read(duct.roughness),
      shaftDiameter: read(duct.shaft),
      ramp: read(intake.ramp),
      lipRadius: read(intake.lipRadius),
    },
    ductSpeed,
    water.viscosity / water.density,
  )
  const vanes = stator.vanes.value
  const pitch = read(rotor.pitch)
  const hub = read(rotor.hub)
  // a default that follows another value goes on following it when that value is drawn or tried
  const trailingPitch = follows(rotor.trailingPitch, rotor.pitch, pitch, read)
  const hubOut = follows(rotor.hubOut, rotor.hub, hub, read)
  // the duct is a full circle, the system counts its loss on the faster flow beside the hub
  const annulusShare = 1 - (hub / bore) ** 2
  return {
    rotor: {
      tipDiameter: bore,
      hubDiameter: hub,
      hubDiameterExit: hubOut,
      blades: rotor.blades.value,
      hand: rotor.hand === 'left' ? -1 : 1,
      pitchLeading: pitch,
      pitchTrailing: trailingPitch,
      wrap: read(rotor.wrap),
      trailingEdge: read(rotor.trailingEdge),
      leadingEdgeRadius: read(rotor.leadingEdgeRadius),
      gap,
      roughness: read(rotor.roughness),
      rootThickness: read(rotor.rootThickness),
    },
    system: {
      nozzleDiameter: read(nozzle.bore),
      contraction: read(jetDoubts.contraction),
      nozzleLoss: read(jetDoubts.nozzleLoss),
      ductLoss: (loss.wall + loss.bend + loss.shaft) * annulusShare ** 2,
      ramLoss: read(jetDoubts.ramLoss),
      grateLoss: grate ? grateLoss(grate) : 0,
      lipLoss: read(jetDoubts.lipLoss),
      intakeArea: read(intake.length) * read(intake.width),
      intakeWidth: read(intake.width),
      // water reaches the opening along the bottom, from where the hull meets the water
      runUp: Math.max(0.1, 0.8 * craft.hull.length.value - read(intake.front)),
      distortion: read(jetDoubts.distortion),
      nozzleHeight: read(nozzle.height),
      rotorDepth: read(duct.rotorDepth),
      nozzleAngle: 0,
      thrustDeduction: read(jetDoubts.thrustDeduction),
      stator: vanes > 0 ? { vanes } : null,
      // losses between engine and impeller are the drive's (drive.efficiency)
      mechanicalEfficiency: 1,
      bearingDrag: 0,
    },
    water,
    model: { turning: read(jetDoubts.turning) },
    vapour: { breakdown: read(jetDoubts.breakdown), chokeFall: read(jetDoubts.chokeFall) },
  }
}
