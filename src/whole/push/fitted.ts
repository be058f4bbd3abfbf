/** A craft whose models were fitted to runs: what is left of the doubt of its answers, and the finding that says so. */
import { inPercent } from '../../base/answers/amounts.ts'
import type { Finding } from '../../base/answers/finding.ts'
import { say } from '../../base/answers/sentence.ts'
import type { Range } from '../../base/answers/solved.ts'
import type { Craft } from '../../craft/index.ts'
import type { AnswerName } from './solveDrawn.ts'

type Fitted = NonNullable<Craft['fitted']>

/** which reading each answer is known by after a fit */
const knownBy: Readonly<Record<AnswerName, 'rotationLeft' | 'pullLeft' | 'speedLeft'>> = {
  rotation: 'rotationLeft',
  judged: 'rotationLeft',
  torque: 'rotationLeft',
  pull: 'pullLeft',
  topSpeed: 'speedLeft',
  hump: 'speedLeft',
  planing: 'speedLeft',
}

/** The range of an answer with only the part of its doubt that a fit left; the same where nothing was fitted. */
export function rangeLeft(fitted: Fitted | undefined, name: AnswerName, range: Range): Range {
  const left = fitted?.[knownBy[name]]?.value ?? 1
  if (left >= 1 || !(range.value > 0)) return range
  const end = (x: number) => (x > 0 ? range.value * (x / range.value) ** left : x)
  return { value: range.value, low: end(range.low), high: end(range.high) }
}

/** Says that the answers are those of the fitted models, and by how much those were moved. */
export function fittedFindings({ fitted }: Craft): Finding[] {
  if (!fitted) return []
  const part = (q: { value: number } | undefined) => inPercent((q?.value ?? 1) - 1)
  const signed = (q: { value: number } | undefined) => ({ ...part(q), change: true as const })
  return [
    {
      id: 'push.fitted',
      question: 'push',
      says: say`All of this is reckoned with models fitted to the runs of ${fitted.runs}: engines over impeller ${signed(fitted.engine)}, thrust ${signed(fitted.thrust)}, drag ${signed(fitted.drag)}.`,
      standing: 'good',
      because: [
        {
          says: 'without it: delete the section from the craft file, or calibrate --forget',
          link: 'fitted.runs',
        },
      ],
      sources: ['Least squares with priors on the readings of trusted runs'],
    },
  ]
}
