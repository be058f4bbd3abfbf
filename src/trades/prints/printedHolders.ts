/** What holds engines, tanks, hoses and flaps: brackets, cradles, barbs and frames, drawn as thick as their load asks. SI. */
import { inMm, inNewtons } from '../../base/answers/amounts.ts'
import type { MadePart } from '../../base/answers/madePart.ts'
import { say } from '../../base/answers/sentence.ts'
import type { Craft } from '../../craft/schema/craftSchema.ts'
import { tankCapacity } from '../../craft/tankRoom.ts'
import type { PartLimits } from './partLimits.ts'
import { barBending, bears, thickEnough, thickSays, tubeBending } from './partStrength.ts'
import { type PartPlan, printedPart } from './printedPart.ts'
import type { Printer } from './printerOf.ts'

type HolderCraft = Pick<Craft, 'engines' | 'mounts' | 'tanks' | 'fuel'>

const clamp = (x: number, low: number, high: number) => Math.min(high, Math.max(low, x))

export function printedHolders(craft: HolderCraft, printer: Printer, limits: PartLimits): MadePart[] {
  return [
    ...engineBrackets(craft, printer, limits),
    ...cradles(craft, printer, limits),
    ...barbs(craft, printer, limits),
    ...flapFrames(craft, printer),
  ].map((p) => printedPart(p, printer, limits))
}

/** usual sizes of the bracket's shape, m */
const bracket = { foot: 60e-3, wide: 50e-3, high: 55e-3, thick: 8e-3 } as const

/** An angle between engine and each mount; a craft without mounts bolts its engine down hard and wants none. */
function engineBrackets({ mounts }: HolderCraft, printer: Printer, limits: PartLimits): PartPlan[] {
  if (!mounts) return []
  const { material, holeOffset } = printer
  const force = (mounts.mass.value * limits.slam.value) / mounts.number.value
  const way = { across: false, often: true }
  // the two gussets stand in the way of the force, as deep as the foot is long
  const at = (gusset: number) => barBending(force, bracket.high, 2 * gusset, bracket.foot)
  const gusset = thickEnough(at, bears(material, way, limits), 6e-3, 14e-3)
  return [
    {
      id: 'engine-bracket',
      title: 'Engine bracket',
      of: ['mounts'],
      order: { shape: 'engine bracket', values: { ...bracket, gusset, holeOffset } },
      says: say`An angle of ${inMm(bracket.foot)} by ${inMm(bracket.high)} between the engine and a mount, one for each of ${`${mounts.number.value}`}; gussets ${thickSays(gusset)}.`,
      material,
      volume:
        bracket.wide * bracket.thick * (bracket.foot + bracket.high) + bracket.foot * bracket.high * gusset,
      size: [bracket.foot, bracket.high, bracket.wide],
      lies: say`Lay it on its side: layers then run along the angle, not across its corner.`,
      wall: gusset,
      warm: true,
      load: {
        ...way,
        by: say`an engine that pulls with ${inNewtons(force)} on each as the craft slams`,
        stress: at(gusset),
        link: 'mounts.mass',
        instead: say`bend it of steel of ${inMm(4e-3)}`,
      },
      steps: [say`Metal washers under every head, wider than the hole by ${inMm(8e-3)}; nuts that lock.`],
      cautions: ['A loose engine tears its fuel line: look at these before every outing.'],
    },
  ]
}

/** kg/m³ of a tank's sheet and its area, roughly: what an empty tank weighs beside its liquid */
const emptyShare = 0.2

/** Two cradles for a tank that lies as a cylinder; a box stands on its own floor and wants none. */
function cradles({ tanks }: HolderCraft, printer: Printer, limits: PartLimits): PartPlan[] {
  const { material, holeOffset } = printer
  return tanks.flatMap((tank, i): PartPlan[] => {
    if (tank.kind !== 'lying cylinder') return []
    const across = clamp(tank.diameter.value, 50e-3, 0.5)
    const mass = tankCapacity(tank) * tank.density.value * (1 + emptyShare)
    // two cradles with two ears each; it lifts as the craft falls
    const force = (mass * limits.slam.value) / 4
    const [wide, ear] = [40e-3, 2 * 6.4e-3 + 8e-3]
    const way = { across: false, often: true }
    const at = (floor: number) => barBending(force, ear, wide, floor)
    const floor = thickEnough(at, bears(material, way, limits), 8e-3, 30e-3)
    const reach = (across / 2) * Math.sin((40 * Math.PI) / 180)
    const rise = (across / 2) * (1 - Math.cos((40 * Math.PI) / 180))
    return [
      {
        id: `cradle-${i + 1}`,
        title: `Cradle for ${tank.name}`,
        of: [`tanks.${i}`],
        order: { shape: 'tank cradle', values: { across, floor, wide, holeOffset } },
        says: say`A bed for a tank of ${inMm(across)} with slots for its strap; two of them, ${thickSays(floor)}.`,
        material,
        volume: wide * ((2 * reach + 2 * ear) * floor + reach * rise),
        size: [2 * (reach + ear + 10e-3), wide, floor + rise],
        lies: say`Lay it flat on its feet.`,
        wall: 4e-3,
        load: {
          ...way,
          by: say`a full tank that pulls with ${inNewtons(force)} on each ear as the craft slams`,
          stress: at(floor),
          link: `tanks.${i}`,
          instead: say`bed it in a cradle of plywood of ${inMm(18e-3)}`,
        },
        steps: [say`A strip of rubber between tank and cradle, so that sheet does not wear through.`],
        cautions: [
          'A tank that comes loose tears its hoses: the strap goes round tank and hull, not round the cradle alone.',
        ],
      },
    ]
  })
}

/** A barb where the first fuel hose leaves a tank. */
function barbs({ tanks, fuel }: HolderCraft, printer: Printer, limits: PartLimits): PartPlan[] {
  const line = fuel?.lines.find((l) => l.from === 'tank')
  if (!line || tanks.length === 0) return []
  const { material, holeOffset } = printer
  const hose = clamp(line.bore.value, 3e-3, 40e-3)
  // long enough for a clamp behind three barbs
  const step = Math.max(2.5e-3, 0.5 * hose)
  const tall = Math.max(0.4e-3, hose / 12)
  const arm = 0.6 * hose + 3e-3 + 3 * (tall + step)
  const way = { across: true, often: true }
  // half a millimetre of bore stays open on each side at the least
  const most = hose / 2 - 0.5e-3
  const at = (wall: number) => tubeBending(limits.knock.value, arm, hose, hose - 2 * wall)
  const wall = Math.min(most, thickEnough(at, bears(material, way, limits), Math.min(1.6e-3, most), most))
  const flange = Math.max(28e-3, 2 * (hose / 2 + tall + 2e-3 + 3.4e-3 + holeOffset + 3e-3) + 1e-3)
  if (wall < 1e-3) return []
  return [
    {
      id: 'hose-barb',
      title: 'Barb for the fuel hose',
      of: ['fuel.lines'],
      order: { shape: 'hose barb', values: { hose, wall, flange, holeOffset } },
      says: say`A flange of ${inMm(flange)} with a barb for a hose of ${inMm(hose, 0.1)}, ${inMm(hose - 2 * wall, 0.1)} open, its wall ${thickSays(wall)}.`,
      material,
      volume: (Math.PI / 4) * (flange ** 2 * 4e-3 + (hose ** 2 - (hose - 2 * wall) ** 2) * arm),
      size: [flange, flange, 4e-3 + arm],
      lies: say`Stand it on its flange, so that the bore is round.`,
      wall,
      petrol: true,
      load: {
        ...way,
        by: say`a hose pulled aside with ${inNewtons(limits.knock.value)} at its end`,
        stress: at(wall),
        link: 'fuel.lines',
        instead: say`buy a barb of brass for this hose`,
      },
      steps: [
        say`A gasket under the flange; then the leak test, with soap water, before any petrol.`,
        say`The hose on warm and dry, a clamp behind the first barb.`,
      ],
      cautions: ['A printed fuel fitting is a trial: where a rule asks for a certified one, buy it.'],
    },
  ]
}

/** Frames of flaps over exhaust outlets: drawn to cut of sheet by, where a print would not stand the heat. */
function flapFrames({ engines }: HolderCraft, printer: Printer): PartPlan[] {
  const { material, holeOffset } = printer
  return engines.flatMap((engine, i): PartPlan[] => {
    const outlet = engine.kind === 'two-stroke' ? engine.exhaust?.outlet : undefined
    if (!outlet?.flap) return []
    const open = clamp(outlet.bore.value + 6e-3, 15e-3, 0.25)
    return [
      {
        id: `flap-frame-${i + 1}`,
        title: 'Frame of the outlet’s flap',
        of: [`engines.${i}.exhaust.outlet`],
        order: { shape: 'flap frame', values: { wide: open, high: open, holeOffset } },
        says: say`A frame for a rubber flap over an outlet of ${inMm(outlet.bore.value)}, its hinge pin ${inMm(2e-3)}.`,
        material,
        volume: ((open + 28e-3) ** 2 - open ** 2) * 6e-3,
        size: [open + 28e-3, open + 28e-3, 13e-3],
        lies: say`Lay it flat, the lip upward.`,
        wall: 3e-3,
        warm: true,
        steps: [
          say`Print it to try the flap on and to drill by; what stays on a dry exhaust is cut of aluminium, as no print within ${inMm(0.1)} of an exhaust lasts without a shield.`,
        ],
        cautions: ['An outlet burns long after the engine is off.'],
      },
    ]
  })
}
