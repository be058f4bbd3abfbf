/** The card of try-pieces: what to print first, how to try it, what to write down. */
import { inCount, inMinutes, inMm } from '../../base/answers/amounts.ts'
import { say } from '../../base/answers/sentence.ts'
import type { Card } from '../trade.ts'
import { fitPieces, gaugeDrawn } from './fitPieces.ts'
import type { PrintsAnswer } from './printsAnswer.ts'
import type { PrintsInputs } from './printsFromCraft.ts'

/** One card where a thread is to be printed. */
export function tryCards({ printer }: PrintsInputs, answer: PrintsAnswer): Card[] {
  const neck = answer.necks.find((n) => n.neck.printed && n.cap && n.thread)
  const lid = answer.hatches.find((h) => h.thread)
  const of = neck
    ? { name: `the neck of ${neck.neck.name}`, thread: neck.thread!, side: neck.neck.reading.side }
    : lid
      ? { name: `the frame of ${lid.hatch.name}`, thread: lid.thread!, side: 'internal' as const }
      : undefined
  if (!of) return []
  const pieces = fitPieces(of.thread, of.side, printer)
  const whole = pieces.reduce((sum, p) => sum + p.time, 0)
  const what = of.side === 'external' ? 'ring' : 'plug'
  return [
    {
      id: 'try-pieces',
      title: `Three ${what}s to try on ${of.name}`,
      says: say`${inCount(pieces.length)} ${what}s in about ${inMinutes(whole)} of printing`,
      steps: [
        ...pieces.map(
          (p) =>
            say`Print the ${what} with ${inCount(p.knobs)} ${p.knobs === 1 ? 'knob' : 'knobs'}: ${of.thread.name} with a clearance of ${inMm(p.clearance, 0.01)} on the radius, ${inMm(p.height, 0.1)} high.`,
        ),
        'Let them cool, brush the threads, and turn each on by hand, tightest first; do not force it.',
        'Write the clearance of the tightest one that turns on over its whole length to printer: thread clearance.',
        say`Print the gauge: two bars ${inMm(gaugeDrawn.bars, 0.1)} apart over all, a hole of ${inMm(gaugeDrawn.hole, 0.1)}, a block of ${inMm(gaugeDrawn.wide, 0.1)}.`,
        say`Across both bars over ${inMm(gaugeDrawn.bars, 0.1)} is printer: scale; what the hole lacks is printer: hole offset; half of what the block’s foot is wider than its middle is printer: elephant foot.`,
      ],
    },
  ]
}
