/** Small parts that a craft's other sections ask for: the foot of its air tube, cups, the cord's pulley, glands, a jig for its rivets. SI. */
import { inDegrees, inMm, inNewtons } from '../../base/answers/amounts.ts'
import type { MadePart } from '../../base/answers/madePart.ts'
import { say } from '../../base/answers/sentence.ts'
import type { Craft } from '../../craft/schema/craftSchema.ts'
import type { PartLimits } from './partLimits.ts'
import { barBending, bears, thickEnough, thickSays } from './partStrength.ts'
import { type PartPlan, printedPart } from './printedPart.ts'
import type { Printer, PrintMaterial } from './printerOf.ts'

export type FittingCraft = Pick<Craft, 'engines' | 'mounts' | 'cord' | 'openings' | 'deck' | 'shaft'>

const clamp = (x: number, low: number, high: number) => Math.min(high, Math.max(low, x))

/** thickness of a shell round a box, as a rough volume of a hollow part, m³ */
const ring = (outer: number, inner: number, high: number) => Math.PI * (outer ** 2 - inner ** 2) * high

export function printedFittings(craft: FittingCraft, printer: Printer, limits: PartLimits): MadePart[] {
  const { material, holeOffset } = printer
  const plans: PartPlan[] = []
  craft.engines.forEach((engine, i) => {
    if (!('snorkel' in engine) || !engine.snorkel) return
    const { snorkel } = engine
    // a tube of 2 mm wall, as hoses and pipes of this size have
    const tube = clamp(snorkel.bore.value + 4e-3, 16e-3, 0.13)
    const r = tube / 2 + 3e-3
    plans.push({
      id: `air-foot-${i + 1}`,
      title: 'Foot of the air tube',
      of: [`engines.${i}.snorkel`],
      order: {
        shape: 'air tube foot',
        values: { tube, outlet: clamp(tube - 8e-3, 8e-3, 0.1), holeOffset },
      },
      says: say`Holds an air tube of ${inMm(tube)} and lets water that came down it run out by a drain of ${inMm(5e-3)}.`,
      material,
      volume: ring(r, r - 3e-3, tube + 50e-3) + ring(r + 14e-3, r, 4e-3),
      size: [2 * r + 28e-3, 2 * r + 28e-3, tube + 50e-3],
      lies: say`Stand it on its flange.`,
      wall: 3e-3,
      warm: true,
      steps: [
        say`Lead the drain out of the bay, and pour a cup of water down the tube to see that it comes out there.`,
      ],
    })
  })
  const { mounts } = craft
  if (mounts) {
    const across = clamp(mounts.across.value, 8e-3, 0.12)
    const r = across / 2 + 4e-3
    plans.push({
      id: 'mount-cup',
      title: 'Mount cup',
      of: ['mounts'],
      order: {
        shape: 'mount cup',
        values: {
          across,
          high: clamp(0.4 * mounts.height.value, 2e-3, 40e-3),
          bolt: clamp(0.28 * across, 3e-3, across - 5e-3),
          holeOffset,
        },
      },
      says: say`Keeps a rubber mount of ${inMm(across)} in its place; one under each of ${`${mounts.number.value}`}.`,
      material,
      volume: ring(r + 14e-3, 0, 6e-3) + ring(r, r - 4e-3, 0.4 * mounts.height.value),
      size: [2 * r + 28e-3, 2 * r + 28e-3, 6e-3 + 0.4 * mounts.height.value],
      lies: say`Lay its floor on the bed.`,
      wall: 4e-3,
      warm: true,
      load: {
        by: say`a mount that carries ${inNewtons((mounts.mass.value * limits.slam.value) / mounts.number.value)} as the craft slams`,
        stress: (mounts.mass.value * limits.slam.value) / mounts.number.value / ((Math.PI / 4) * across ** 2),
        across: false,
        often: true,
        link: 'mounts.mass',
        instead: say`turn it of aluminium`,
      },
      steps: [say`Put a metal washer under the bolt's head, wider than the hole by ${inMm(8e-3)}.`],
      cautions: ['A loose engine tears its fuel line: check these before every outing.'],
    })
  }
  const { cord } = craft
  if (cord && cord.bends.length > 0) {
    const thick = clamp(cord.thickness.value, 2e-3, 10e-3)
    const across = clamp(Math.max(10 * thick, cord.bends[0]!.across.value), 26e-3, 0.15)
    const rim = across / 2 + 1.5 * thick
    // what the turn of the cord leaves of its two pulls, at the axle, on two cheeks that stand up across their layers
    const turn = Math.max(...cord.bends.map((bend) => bend.angle.value))
    const pull = 2 * limits.tug.value * Math.sin(Math.min(Math.PI, turn) / 2)
    const up = 6e-3 + rim + 2e-3
    const postAt = (cheek: number) => barBending(pull, up, 2 * cheek, 2 * Math.max(10e-3, 0.5 * rim))
    const pulled = { across: true, often: true }
    const cheek = thickEnough(postAt, bears(material, pulled, limits), 5e-3, 15e-3)
    plans.push({
      id: 'cord-pulley',
      title: 'Pulley for the cord',
      of: ['cord'],
      order: { shape: 'cord pulley', values: { across, cord: thick, cheek, holeOffset } },
      says: say`A wheel of ${inMm(across)} in its bracket for a cord of ${inMm(thick, 0.1)}, on an axle of ${inMm(8e-3)} with a metal bush; cheeks ${thickSays(cheek)}.`,
      material,
      volume: Math.PI * rim ** 2 * 5 * thick + 4 * rim * 30e-3 * 6e-3 + 2 * rim * rim * cheek,
      size: [4 * rim + 60e-3, 2 * rim, 2 * rim + 10e-3],
      lies: say`Lay the wheel flat and stand the bracket on its base; cheeks of a hard-pulled bracket are better printed lying.`,
      wall: 3e-3,
      load: {
        ...pulled,
        by: say`a cord pulled with ${inNewtons(limits.tug.value)} and turned by ${inDegrees(turn, 1)}`,
        stress: postAt(cheek),
        link: 'cord',
        instead: say`bend its bracket of steel of ${inMm(3e-3)}`,
      },
      steps: [say`Pull the cord ten times by hand with the plug's cap off before the first start.`],
      cautions: ['A cord that snaps back hurts: stand beside its line, not in it.'],
    })
  }
  craft.openings.forEach((o, i) => {
    if (o.kind !== 'cable') return
    plans.push({
      id: `gland-${i + 1}`,
      title: `Gland for ${o.name}`,
      of: [`openings.${i}`],
      order: { shape: 'cable gland', values: { holeOffset, line: Math.min(0.9e-3, printer.line) } },
      says: say`Lets a cable of ${inMm(6e-3)} through and keeps water out; a rubber ring goes into its mouth.`,
      material,
      volume: 9e-6,
      size: [70e-3, 30e-3, 18e-3],
      lies: say`Stand both pieces on their six-sided ends.`,
      wall: 2.5e-3,
    })
  })
  const { deck } = craft
  if (deck.joined === 'riveted') {
    const drill = clamp(deck.rivetSize.value + 0.1e-3, 1e-3, 13e-3)
    const pitch = clamp(deck.rivetPitch.value, Math.max(8e-3, drill + 4.5e-3), 80e-3)
    const holes = clamp(Math.floor((printer.bed[0] - 20e-3) / pitch) + 1, 1, 6)
    const long = pitch * (holes - 1) + 20e-3
    plans.push({
      id: 'drill-jig',
      title: 'Drill jig for rivets',
      of: ['deck.rivet size', 'deck.rivet pitch'],
      order: {
        shape: 'drill jig',
        values: { drill, pitch, holes, edge: clamp(2.5 * deck.rivetSize.value, 4e-3, 60e-3), holeOffset },
      },
      says: say`${`${holes}`} holes of ${inMm(drill, 0.1)} at ${inMm(pitch, 0.1)}, held off the edge of the sheet by a fence.`,
      material,
      volume: long * (2.5 * deck.rivetSize.value + 12e-3) * 10e-3,
      size: [long, 2.5 * deck.rivetSize.value + 18e-3, 16e-3],
      lies: say`Lay it with the fence upward.`,
      wall: 1.5e-3,
      steps: [say`Drill through it with a sharp drill and light hands: it guides for some hundred holes.`],
      cautions: ['Goggles; swarf of sheet metal cuts.'],
    })
  }
  plans.push(...couplings(craft, holeOffset))
  return plans.map((p) => printedPart(p, printer, limits))
}

/** What printed couplings are made of, by the names the drive line has for it. */
const plasticOf: Readonly<Record<string, PrintMaterial>> = {
  'printed nylon': 'PA12',
  'printed nylon with carbon': 'PA12-CF',
  PETG: 'PETG',
  ABS: 'ABS',
  ASA: 'ASA',
  PLA: 'PLA',
  PC: 'PC',
  POM: 'POM',
  HDPE: 'HDPE',
}

/** Discs of couplings that are printed, drawn for a metal sleeve round each bolt, which takes its clamp. */
function couplings(craft: FittingCraft, holeOffset: number): PartPlan[] {
  return (craft.shaft ?? []).flatMap((link, i): PartPlan[] => {
    if (link.kind !== 'coupling') return []
    const material = plasticOf[link.made]
    if (!material) return []
    const bolt = clamp(1e-3 * Number.parseFloat(link.bolts.slice(1)), 3e-3, 16e-3)
    const sleeve = 1.5e-3
    const hole = bolt / 2 + sleeve + holeOffset / 2
    const circle = clamp(link.circle.value, 2 * hole + 20e-3, 0.2)
    const bolts = clamp(link.number.value, 3, 16)
    const across = clamp(circle + 2 * hole + 8e-3, 30e-3, 0.22)
    const thick = clamp(link.soft.value, 5e-3, 40e-3)
    const bore = clamp(circle - 2 * hole - 8e-3, 0, 16e-3)
    return [
      {
        id: `coupling-${i + 1}`,
        title: 'Coupling disc',
        of: [`shaft.${i}`],
        order: {
          shape: 'shaft coupling',
          values: { across, thick, bore, bolts, circle, bolt, sleeve, holeOffset },
        },
        says: say`A disc of ${inMm(across)} with ${`${bolts}`} holes on ${inMm(circle)}, each for a metal sleeve of ${inMm(bolt + 2 * sleeve, 0.1)} as long as the disc is thick, ${inMm(thick, 0.1)}.`,
        material,
        volume: (Math.PI / 4) * (across ** 2 - bore ** 2 - bolts * (2 * hole) ** 2) * thick,
        size: [across, across, thick],
        lies: say`Lay it flat: torque then runs along the layers.`,
        wall: 3e-3,
        warm: true,
        steps: [
          say`Press a sleeve into each hole and file it level with the disc: the bolts then clamp metal, not plastic that creeps.`,
          say`No thread-locker on plastic: wedge-locking washers or lock nuts.`,
        ],
        cautions: [
          'A coupling that lets go throws its bolts: a guard goes over it before the engine is started.',
        ],
      },
    ]
  })
}
