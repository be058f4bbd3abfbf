import type { Finding } from '../../../../base/answers/finding.ts'
import { peakOf, powerOf, simulatedLine } from '../../../../trades/engine/torqueLine.ts'
import { type Look, says, saysRpm } from '../../../../whole/push/shown.ts'
import { answerOf, type PageAnswer } from '../../parts/pageAnswer.ts'
import type { Simulation } from './simulations.ts'
import type { Side } from './useBreath.ts'

/** The torque curve of one side, as far as it is worked out. */
export function lineOf({ view, simulation }: Side) {
  const out = simulation?.output
  return out?.curve && simulatedLine(view.name, out.curve, view.reading?.cylinders ?? 1, out.band)
}

/** The engine's answer as the page's, with a word where it is a first one. */
export function stagedAnswer(answer: Finding, simulation: Simulation | undefined): PageAnswer {
  const rough = simulation?.rough ?? true
  return rough ? { says: answer.says, confidence: roughly } : answerOf(answer)
}

const roughly = 'A rough first answer on coarse cells; the fine one takes a little longer.'

/** What this page's own curve says, which has the band: it stands in place of what the look says of the same. */
export function ownFindings({ view, simulation }: Side): readonly Finding[] {
  return view.findings.length > 0 ? view.findings : (simulation?.output?.findings ?? [])
}

type Line = NonNullable<ReturnType<typeof lineOf>>

/** What the tried values should do, for the log. */
export function expectsOf(now: Line, tried: Line, look: Look): string {
  const step = (name: string, pick: (l: Line) => string) => {
    const [was, is] = [pick(now), pick(tried)]
    return was === is ? '' : `most ${name} ${is}, was ${was}`
  }
  const at = (values: (l: Line) => readonly number[], kind: 'power' | 'torque') => (l: Line) => {
    const peak = peakOf(l, values(l))
    return peak ? `${says(peak.value, kind, look)} at ${saysRpm(peak.rpm / 60)}` : 'nowhere'
  }
  return [
    step('power', at(powerOf, 'power')),
    step(
      'torque',
      at((l) => l.torque, 'torque'),
    ),
  ]
    .filter((s) => s !== '')
    .join('; ')
}
