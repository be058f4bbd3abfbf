import { lazy, Suspense } from 'react'
import { inCm, inMinutes, inMm } from '../../../../base/answers/amounts.ts'
import type { Finding } from '../../../../base/answers/finding.ts'
import { type Sentence, say } from '../../../../base/answers/sentence.ts'
import type { FloatReport } from '../../../../trades/float/floatReport.ts'
import type { Look } from '../../../../whole/push/shown.ts'
import type { FoldPart } from '../../parts/Fold.tsx'
import { Foam, Guidance, Leak, needWords } from './FoamAndFlood.tsx'
import { HullFile } from './HullFile.tsx'
import { Loads } from './Loads.tsx'
import { Openings, Stability } from './Stability.tsx'
import type { Side } from './useFloat.ts'
import { Weights } from './Weights.tsx'

const ThreeD = lazy(async () => ({ default: (await import('./ThreeD.tsx')).ThreeD }))

/** What Float shows besides its stage, in folds; those that take longer work come when it is done. */
export function floatFolds(
  now: Side,
  tried: Side | undefined,
  guidance: Finding | undefined,
  look: Look,
): FoldPart[] {
  const shown = tried ?? now
  return [
    {
      id: 'space',
      title: 'The craft in space',
      says: 'on its waterline, to turn with the hand',
      children: (
        <Suspense fallback={<p className="quiet">Fetching the picture in space…</p>}>
          <ThreeD side={shown} />
        </Suspense>
      ),
    },
    ...reported(now, tried, look),
    ...(guidance
      ? [
          {
            id: 'guidance',
            title: 'Published guidance, to compare with',
            says: 'none was written for a craft like this one',
            children: <Guidance finding={guidance} />,
          },
        ]
      : []),
    {
      id: 'weights',
      title: 'What is aboard',
      says: 'every weight, and two scales that find the true centre',
      children: <Weights side={now} tried={tried} look={look} />,
    },
    hullFold,
  ]
}

export const hullFold: FoldPart = {
  id: 'hull',
  title: 'The hull from a file',
  says: 'STL or 3MF in place of the measures',
  children: <HullFile />,
}

function reported(now: Side, tried: Side | undefined, look: Look): FoldPart[] {
  const report = now.state.report
  const triedReport = tried?.state.report
  if (!report) return []
  const both = { now, report, tried, triedReport }
  const shown = triedReport ?? report
  const over = shown.cases.filter((c) => c.sinks || c.over).length
  const opening = Math.min(...shown.openings.flatMap((o) => [...o.heights]).filter(Number.isFinite))
  return [
    {
      id: 'loads',
      title: 'The loads side by side',
      says:
        over === 0 ? `all ${shown.cases.length} stay up` : `${over} of ${shown.cases.length} do not stay up`,
      children: <Loads {...both} look={look} />,
    },
    {
      id: 'stability',
      title: 'Does it come back?',
      says: say`most righting arm ${inCm(shown.righting.rider.greatest.arm, 0.1)} with the rider balancing`,
      children: <Stability report={report} triedReport={triedReport} look={look} />,
    },
    {
      id: 'openings',
      title: 'Openings above water',
      says: Number.isFinite(opening)
        ? say`the lowest ${inCm(opening, 0.1)}, at the worst`
        : 'none in the file',
      children: <Openings report={report} triedReport={triedReport} look={look} />,
    },
    { id: 'foam', title: 'With water in it', says: needWords(shown), children: <Foam {...both} /> },
    ...(report.leak
      ? [
          {
            id: 'leak',
            title: 'Minutes to flood',
            says: shown.leak ? leakSays(shown.leak) : 'nothing to flood',
            children: <Leak {...both} />,
          },
        ]
      : []),
  ]
}

/** how a small hole ends, and when */
function leakSays({ run, diameter }: NonNullable<FloatReport['leak']>): Sentence {
  const minutes = inMinutes(run.under?.time ?? run.endTime)
  return run.under
    ? say`${run.under.name} goes under after ${minutes}, through a hole ${inMm(diameter)} across`
    : say`${run.end === 'no more comes in' ? 'no more comes in' : `it ${run.end}`} after ${minutes}, through a hole ${inMm(diameter)} across`
}
