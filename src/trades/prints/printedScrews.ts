/** Caps, hatches and try-pieces for the necks and hatches of a craft. SI. */
import { inMm, inNewtons } from '../../base/answers/amounts.ts'
import type { MadePart } from '../../base/answers/madePart.ts'
import { say } from '../../base/answers/sentence.ts'
import type { PartLimits } from './partLimits.ts'
import { bears, discBending, type PartLoad, thickEnough, thickSays } from './partStrength.ts'
import { printedPart } from './printedPart.ts'
import { clearanceFor, type Printer, type PrintMaterial } from './printerOf.ts'
import type { NeckAnswer, PrintsAnswer, SealAnswer } from './printsAnswer.ts'
import { closingForce } from './ringChoice.ts'
import { threadOrder } from './solids/threadParts.ts'
import { isTapered } from './taperFindings.ts'
import { printsLimits } from './threadLimits.ts'

const petrol = (liquid: string) => liquid.startsWith('petrol')

/** The groove of a seated face ring, as the cap is drawn with. */
const groove = (seal: SealAnswer | undefined): Record<string, number> =>
  seal?.seated && seal.seated.gland.kind === 'face'
    ? {
        seat: seal.seated.gland.seat,
        grooveWide: seal.seated.gland.width,
        grooveDeep: seal.seated.gland.depth,
        top: Math.max(5e-3, seal.seated.gland.depth + 2.5e-3),
      }
    : {}

function capOf(found: NeckAnswer, i: number, printer: Printer, limits: PartLimits): MadePart[] {
  const { neck, thread, cap, seal } = found
  // a plug for a neck with its thread inside is another part; only caps that go over are drawn
  if (!thread || !cap || neck.reading.side !== 'external') return []
  if (isTapered(found, printsLimits)) return []
  const wall = 3e-3
  const common = { ...threadOrder(thread), clearance: cap.clearance, line: printer.line }
  const turns = Math.max(2, Math.min(12, Math.round(cap.turns)))
  const seat = groove(seal)
  const top = seat.top ?? 5e-3
  const out = cap.profile.root + wall + 1.5e-3
  const high = top + turns * thread.pitch
  const volume = Math.PI * (out ** 2 * high - cap.profile.mid ** 2 * (high - top))
  const wet = petrol(neck.liquid) ? ({ petrol: true } as const) : {}
  const pressed = seal?.seated ? closingForce(seal.seated) : 0
  // teeth sheared off a cylinder half of which they are; a shear is half the pull it goes with
  const teeth = (2 * pressed) / (Math.PI * 2 * cap.profile.mid * 0.5 * turns * thread.pitch)
  const tryOut = cap.profile.root + 2e-3
  return [
    printedPart(
      {
        id: `try-ring-${i + 1}`,
        title: `Try-rings for ${neck.name}`,
        of: [neck.path],
        order: { shape: 'try-pieces', values: { ...common, side: 'internal' } },
        says: say`Three rings with clearances of ${inMm(Math.max(0.05e-3, cap.clearance - 0.1e-3), 0.01)}, ${inMm(cap.clearance, 0.01)} and ${inMm(cap.clearance + 0.1e-3, 0.01)} to try on the neck; one knob is the tightest.`,
        material: printer.material,
        volume: 3 * Math.PI * (tryOut ** 2 - cap.profile.mid ** 2) * 3 * thread.pitch,
        size: [6 * tryOut, 2 * tryOut, 3 * thread.pitch],
        lies: say`Lay them flat, axis upright.`,
        wall: 2e-3,
        steps: [
          say`Write the clearance of the tightest that turns on by hand into thread clearance of the printer.`,
        ],
        fitting: 5,
      },
      printer,
      limits,
    ),
    printedPart(
      {
        id: `cap-${i + 1}`,
        title: `Cap for ${neck.name}`,
        of: [neck.path],
        order: {
          shape: 'screw cap',
          values: { ...common, ...seat, turns, wall, holeOffset: printer.holeOffset },
        },
        says: say`A cap of ${inMm(2 * out, 0.1)} across for ${thread.name}${seal?.seated ? say`, with a groove for ring ${seal.seated.ring.name}` : ''}.`,
        material: printer.material,
        volume,
        size: [2 * out, 2 * out, high],
        lies: say`Lay its closed end on the bed, axis upright: the ring's floor is then one layer, with no lines across.`,
        wall: Math.min(wall, top - (seat.grooveDeep ?? 0)),
        ...(pressed > 0
          ? {
              load: {
                by: say`its ring, pressed with ${inNewtons(pressed)}, on the teeth of the thread`,
                stress: teeth,
                across: true,
                often: false,
                link: neck.path,
                instead: say`choose a softer or thinner ring`,
              },
            }
          : {}),
        steps: [
          say`Put the ring in with a little grease, fill the tank with water and turn it over for an hour before any fuel.`,
        ],
        cautions: [
          'No flame, no switch, no phone near open petrol; let no petrol stand in a closed car or room.',
        ],
        ...wet,
        fitting: 15,
      },
      printer,
      limits,
    ),
  ]
}

/** a heel, m: half of what it stands on */
const heel = 40e-3
/** ring of the frame between opening and thread, as the shape has it, m */
const frame = 4e-3

/** The lid under a foot that is set down on it, drawn as thick as that asks. */
function lidUnder(
  foot: number,
  clear: number,
  material: PrintMaterial,
  limits: PartLimits,
): { top: number; load: PartLoad } {
  const way = { across: false, often: false }
  const at = (thick: number) => discBending(foot, clear / 2 + frame, heel, thick)
  const top = thickEnough(at, bears(material, way, limits), 6e-3, 16e-3)
  return {
    top,
    load: {
      ...way,
      by: say`a foot of ${inNewtons(foot)} in the middle of the lid`,
      stress: at(top),
      link: 'rider.mass',
      instead: say`put a plate of aluminium under the lid`,
    },
  }
}

export function printedScrews(
  answer: PrintsAnswer,
  printer: Printer,
  limits: PartLimits,
  rider: number,
): MadePart[] {
  const foot = limits.foot.value * 9.81 * rider
  const caps = answer.necks.flatMap((n, i) => capOf(n, i, printer, limits))
  const hatches = answer.hatches.flatMap(({ hatch, thread }, i): MadePart[] => {
    if (!hatch.screws || !thread || hatch.clear < 30e-3 || hatch.clear > 0.22) return []
    const clearance = clearanceFor(thread.pitch, printer)
    const out = thread.d / 2 + 6e-3 + 22e-3
    const { top, load } = lidUnder(foot, hatch.clear, printer.material, limits)
    const values = {
      top,
      clear: hatch.clear,
      pitch: thread.pitch,
      height: (thread.d - thread.d1) / 2,
      half: thread.half,
      clearance,
      line: printer.line,
      holeOffset: printer.holeOffset,
    }
    return [
      printedPart(
        {
          id: `hatch-${i + 1}`,
          title: `Screw hatch for ${hatch.name}`,
          of: [hatch.path],
          order: { shape: 'screw hatch', values },
          says: say`A ring and a lid for an opening of ${inMm(hatch.clear)}, ${inMm(2 * out)} across; the lid ${thickSays(top)}.`,
          load,
          material: printer.material,
          volume:
            Math.PI * (out ** 2 - (hatch.clear / 2) ** 2) * 5e-3 +
            Math.PI * (hatch.clear / 2) ** 2 * top +
            Math.PI * thread.d * 10e-3 * 2 * thread.pitch,
          size: [2 * out, 2 * out, 5e-3 + 2 * thread.pitch],
          lies: say`Lay ring and lid flat, threads upward: the flanks of 45° hold themselves up.`,
          wall: 3e-3,
          steps: [say`Bed the ring in sealant, its screws with washers; try the lid with a hose from above.`],
          fitting: 40,
        },
        printer,
        limits,
      ),
    ]
  })
  return [...caps, ...hatches]
}
