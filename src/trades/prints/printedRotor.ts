/**
 * The impeller that was solved, in a set of two or three pitches, and the stator with its nozzle: the same values that the jet is solved with, read
 * from the craft file. What the blade's root bears is found where the jet is solved, and handed in. Keys: DIN 6885, from memory. SI.
 */
import { inDegrees, inMm, inPercent } from '../../base/answers/amounts.ts'
import type { Finding } from '../../base/answers/finding.ts'
import type { MadePart } from '../../base/answers/madePart.ts'
import { joined, say } from '../../base/answers/sentence.ts'
import type { Craft } from '../../craft/schema/craftSchema.ts'
import type { PartLimits } from './partLimits.ts'
import { type PartPlan, printedPart } from './printedPart.ts'
import type { Printer, PrintMaterial } from './printerOf.ts'
import { printPlastics } from './printPlastics.ts'
import { axialLength, rootRoom } from './solids/impellerSolid.ts'

/** rounded to half a millimetre, so that a pitch can be told by its name */
const half = (x: number) => Math.round(2e3 * x) / 2e3

/**
 * Pitches of a set that spans the doubt of the one looked for, in the order to test them: the middle first, then the finer, which spares the
 * engine, then the coarser; two where less than 4 % lies between the ends. m.
 */
export function pitchSet(pitch: { value: number; low: number; high: number }): readonly number[] {
  const wide = (pitch.high - pitch.low) / pitch.value
  const down = half(Math.min(pitch.low, 0.96 * pitch.value))
  const up = half(Math.max(pitch.high, 1.04 * pitch.value))
  return wide < 0.04 ? [half(pitch.value), down] : [half(pitch.value), down, up]
}

/** Key width and height in the hub for a shaft, m; none below 8 mm. */
function keyFor(shaft: number): { key: number; keyHigh: number } {
  const rows: readonly (readonly [number, number, number])[] = [
    [8e-3, 0, 0],
    [10e-3, 3e-3, 1.4e-3],
    [12e-3, 4e-3, 1.8e-3],
    [17e-3, 5e-3, 2.3e-3],
    [22e-3, 6e-3, 2.8e-3],
    [30e-3, 8e-3, 3.3e-3],
  ]
  const row = rows.find(([most]) => shaft <= most) ?? rows.at(-1)!
  return { key: row[1], keyHigh: row[2] }
}

/** growth of a tip in water and sun as part of its radius: nylons by usual data, the rest by 20 K of warmth; from memory */
const growthOf = (material: string) =>
  material === 'PA6-CF' ? 0.012 : material.startsWith('PA12') ? 0.003 : 0.0013

export const isPrinted = (material: string): material is PrintMaterial => material in printPlastics

/** Half the root, five millimetres at most, and no more than goes between two blades, m. */
function filletFor({ jet: { rotor } }: Pick<Craft, 'jet'>, pitch: number, growth: number): number {
  const usual = Math.min(5e-3, 0.5 * rotor.rootThickness.value)
  if (rotor.blades.value < 2) return usual
  return Math.max(0, Math.min(usual, 0.49 * (roomFor(rotor, pitch, growth) - rotor.rootThickness.value)))
}

const roomFor = (rotor: Craft['jet']['rotor'], pitch: number, growth: number): number =>
  rootRoom({
    hub: rotor.hub.value,
    hubOut: rotor.hubOut.value,
    blades: rotor.blades.value,
    pitch,
    pitchOut: pitch * growth,
  })

/** Values of the impeller's shape for a craft and a pitch; what the jet is solved with, and the printer's holes. */
export function impellerValues(
  craft: Pick<Craft, 'jet'>,
  printer: Printer,
  pitch: number,
): Record<string, number> {
  const { rotor, duct } = craft.jet
  const growth = rotor.trailingPitch.value / rotor.pitch.value
  const room = Math.min(rotor.hub.value, rotor.hubOut.value) / 2
  const shaft = Math.min(duct.shaft.value, 2 * (room - 6e-3))
  return {
    ring: rotor.bore.value,
    gap: rotor.gap.value,
    growth: (growthOf(rotor.material) * rotor.bore.value) / 2,
    hub: rotor.hub.value,
    hubOut: rotor.hubOut.value,
    blades: rotor.blades.value,
    hand: rotor.hand === 'left' ? -1 : 1,
    pitch,
    pitchOut: pitch * growth,
    wrap: rotor.wrap.value,
    root: rotor.rootThickness.value,
    tip: rotor.tipThickness.value,
    trailing: rotor.trailingEdge.value,
    nose: rotor.leadingEdgeRadius.value,
    fillet: filletFor(craft, pitch, growth),
    shaft,
    ...keyFor(shaft),
    holeOffset: printer.holeOffset,
  }
}

/** Blades that leave nothing between them at the hub. */
const rootsMeet = (plan: Pick<PartPlan, 'id' | 'title'>, root: number, room: number): Finding => ({
  id: `prints.part.${plan.id}.roots`,
  question: 'make',
  says: say`${plan.title} cannot be made: roots of ${inMm(root, 0.1)} meet at the hub, where blades stand ${inMm(room, 0.1)} apart.`,
  standing: 'watch',
  because: [{ says: say`roots ${inMm(root, 0.1)} thick`, link: 'jet.rotor.root thickness' }],
  act: say`take one blade less, or roots below ${inMm(0.9 * room, 0.1)}`,
  harm: 'comfort',
  sources: ['exact geometry'],
})

export function printedImpellers(
  craft: Pick<Craft, 'jet'>,
  printer: Printer,
  limits: PartLimits,
  root?: Finding,
  doubt: { value: number; low: number; high: number } = craft.jet.rotor.pitch,
): MadePart[] {
  const { rotor } = craft.jet
  const { material } = rotor
  if (!isPrinted(material)) return []
  const set = pitchSet(doubt)
  return set.map((pitch, i) => {
    const values = impellerValues(craft, printer, pitch)
    const long = axialLength({ pitch, pitchOut: values.pitchOut!, wrap: values.wrap! })
    const high = long + 2 * (values.fillet! + values.root! / 2 + 1e-3)
    const [rt, rh] = [rotor.bore.value / 2, rotor.hub.value / 2]
    const thick = (rotor.rootThickness.value + rotor.tipThickness.value) / 2
    const chord = Math.hypot(long, ((rt + rh) / 2) * rotor.wrap.value)
    const beta = Math.atan2(pitch, Math.PI * rotor.bore.value)
    const plan: PartPlan = {
      id: `impeller-${i + 1}`,
      title: `Impeller ${i + 1} of ${set.length}`,
      of: ['jet.rotor'],
      order: { shape: 'impeller', values },
      says: say`An impeller of ${inMm(pitch, 0.5)} pitch, ${inDegrees(beta)} at the tip, to turn in a ring of ${inMm(rotor.bore.value, 0.1)}; ${i === 0 ? 'the one to try first' : i === 1 ? 'finer, for when the engine does not come up to its speed' : 'coarser, for when the engine runs past its speed'}.`,
      material,
      volume:
        0.8 * rotor.blades.value * thick * chord * (rt - rh) +
        Math.PI * (rh ** 2 - (values.shaft! / 2) ** 2) * high,
      size: [2 * rt, 2 * rt, high],
      lies: say`Stand it on its trailing end, axis upright: bending at the roots then runs along the layers; support under the blades.`,
      wall: Math.min(rotor.trailingEdge.value, rotor.tipThickness.value),
      steps: [
        ...(set.length > 1
          ? [
              say`Test them in this order, each over the same stretch: ${joined(set.map((x) => say`${inMm(x, 0.5)}`))}; write pull and speed of the engine with each into the log.`,
            ]
          : []),
        say`Sand the blades and seal them; the gap round the tips is to be ${inMm(rotor.gap.value, 0.1)} all round.`,
        say`Balance it on two level edges: drill the hub on the heavy side, no deeper than ${inPercent(0.7)} of its length.`,
      ],
      cautions: [
        'A printed impeller can burst: run it only inside its ring, with nobody beside or behind it; engine off and kill cord out before any hand goes near.',
        'Never run it dry at speed.',
      ],
      fitting: 60,
    }
    // how near the roots come to breaking is found where the jet is solved
    const found = root ? [root] : []
    const growth = rotor.trailingPitch.value / rotor.pitch.value
    const room = roomFor(rotor, pitch, growth)
    if (rotor.blades.value < 2 || rotor.rootThickness.value < room)
      return printedPart({ ...plan, findings: found }, printer, limits)
    // nothing goes between such blades: it cannot be made, and says what would
    const { solid: _, ...part } = printedPart(
      { ...plan, findings: [...found, rootsMeet(plan, rotor.rootThickness.value, room)] },
      printer,
      limits,
    )
    return part
  })
}

export function printedStator(craft: Pick<Craft, 'jet'>, printer: Printer, limits: PartLimits): MadePart[] {
  const { rotor, stator, nozzle, duct } = craft.jet
  if (stator.vanes.value < 3 || !isPrinted(rotor.material)) return []
  const cone = Math.min(Math.PI / 6, Math.max((4 * Math.PI) / 180, nozzle.cone.value))
  const R = rotor.bore.value / 2
  const room = rotor.hubOut.value - 4.5e-3 - printer.holeOffset
  const values = {
    ring: rotor.bore.value,
    hub: rotor.hubOut.value,
    shaft: Math.max(0, Math.min(duct.shaft.value, room)),
    vanes: Math.min(15, stator.vanes.value),
    chord: Math.min(0.25, Math.max(15e-3, stator.chord.value)),
    nozzle: nozzle.bore.value,
    cone,
    holeOffset: printer.holeOffset,
  }
  const long = values.chord + (R - nozzle.bore.value / 2) / Math.tan(cone) + 0.05 * rotor.bore.value
  const plan: PartPlan = {
    id: 'stator',
    title: 'Stator and nozzle',
    of: ['jet.stator', 'jet.nozzle'],
    order: { shape: 'stator', values },
    says: say`${`${values.vanes}`} vanes behind the impeller and a nozzle down to ${inMm(nozzle.bore.value, 0.1)}, ${inMm(long)} long.`,
    material: rotor.material,
    volume:
      2 * Math.PI * R * 3e-3 * long +
      values.vanes * 3e-3 * values.chord * (R - values.hub / 2) +
      Math.PI * (values.hub / 2) ** 2 * values.chord,
    size: [2 * R + 34e-3, 2 * R + 34e-3, long],
    lies: say`Stand it on its flange, axis upright: water presses it open along the layers' lines, not across them.`,
    wall: 3e-3,
    steps: [say`Bolt it on with metal washers and check the impeller turns free before the first start.`],
    cautions: ['The jet carries stones: nobody stands behind a running nozzle.'],
    fitting: 45,
  }
  return [printedPart(plan, printer, limits)]
}
