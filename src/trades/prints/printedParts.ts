/** All parts to print for a craft, in the order to print them: the gauge of the printer and try-pieces first. */
import { inMm } from '../../base/answers/amounts.ts'
import type { Finding } from '../../base/answers/finding.ts'
import type { MadePart } from '../../base/answers/madePart.ts'
import { say } from '../../base/answers/sentence.ts'
import type { Craft } from '../../craft/schema/craftSchema.ts'
import { gaugeDrawn } from './fitPieces.ts'
import { type PartLimits, partLimits } from './partLimits.ts'
import { type FittingCraft, printedFittings } from './printedFittings.ts'
import { printedHolders } from './printedHolders.ts'
import { printedPart } from './printedPart.ts'
import { printedImpellers, printedStator } from './printedRotor.ts'
import { printedScrews } from './printedScrews.ts'
import type { PrintsAnswer } from './printsAnswer.ts'
import type { PrintsInputs } from './printsFromCraft.ts'

export type PrintedCraft = FittingCraft & Pick<Craft, 'jet' | 'rider' | 'tanks' | 'fuel'>

/** What is found out elsewhere and shapes a part. */
export interface PrintedKnown {
  /** what is found of the roots of the blades where the jet is solved */
  root?: Finding
  /** the pitch looked for, and the ends of its doubt, m; those of the craft file where left out */
  pitch?: { value: number; low: number; high: number }
}

export function printedParts(
  craft: PrintedCraft,
  { inputs, answer }: { inputs: Pick<PrintsInputs, 'printer'>; answer: PrintsAnswer },
  known: PrintedKnown = {},
  limits: PartLimits = partLimits,
): MadePart[] {
  const { printer } = inputs
  const { bars, wide, height } = gaugeDrawn
  const gauge = printedPart(
    {
      id: 'printer-gauge',
      title: 'Gauge for the printer',
      of: ['printer'],
      order: { shape: 'printer gauge', values: {} },
      says: say`Two bars ${inMm(bars)} apart over all, and a hole of ${inMm(gaugeDrawn.hole)}: what they come out like corrects every other part.`,
      material: printer.material,
      volume: bars * wide * 0.6 * height,
      size: [bars, wide, height],
      lies: say`Lay it flat, bars upward.`,
      wall: 3e-3,
      steps: [
        say`Measure across both bars, across the hole, and across its foot; write what comes of it into the printer's section.`,
      ],
      fitting: 5,
    },
    printer,
    limits,
  )
  return [
    gauge,
    ...printedScrews(answer, printer, limits, craft.rider.mass.value),
    ...printedImpellers(craft, printer, limits, known.root, known.pitch),
    ...printedStator(craft, printer, limits),
    ...printedFittings(craft, printer, limits),
    ...printedHolders(craft, printer, limits),
  ]
}
