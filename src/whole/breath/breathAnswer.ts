/** How one engine breathes, in one sentence with its range and how sure it is: worded here for the headline and the page alike. */
import { inCount, inKw, inRpm } from '../../base/answers/amounts.ts'
import { type Sentence, say, whole } from '../../base/answers/sentence.ts'
import { engineGives, mostOf, peaksOfLine } from '../../trades/engine/engineGives.ts'
import { uncalibrated } from '../../trades/engine/health.ts'
import { strongBand, type TorqueLine } from '../../trades/engine/torqueLine.ts'
import type { BreathView } from './breathView.ts'

export interface BreathAnswer {
  says: Sentence
  range?: Sentence
  confidence?: Sentence
}

export interface Stage {
  /** coarse cells only so far */
  rough: boolean
  /** the band of the uncertain inputs is in the line */
  banded: boolean
  /** speeds asked for, and how many of them settled */
  asked: number
  settled: number
}

/** What is known of an engine that the file holds by a curve or a peak only, without a full stop; undefined without a curve. */
export function engineGiven(line: TorqueLine, kind: BreathView['kind']): Sentence | undefined {
  const peaks = peaksOfLine(line)
  if (!peaks) return undefined
  const most = mostOf(peaks.power, inKw)
  if (kind === 'electric') return say`${line.name} is electric and does not breathe; it gives ${most}`
  const by = kind === 'peak' ? 'as estimated from its peak' : 'by the curve in the craft file'
  return say`${line.name} gives ${most}, ${by}; how it breathes is not known yet`
}

/** The answer for one engine by simulation. */
export function simulatedAnswer(line: TorqueLine, stage: Stage): BreathAnswer {
  const gives = engineGives(line)
  const peaks = peaksOfLine(line)
  if (!gives || !peaks) return { says: say`${line.name} settled at no speed, so there is no curve to give.` }
  const strong = strongBand(line)
  const wide = strong
    ? say` Its power stays within a tenth of that from ${inRpm(strong.from / 60)} to ${inRpm(strong.to / 60)}.`
    : ''
  const { power } = peaks
  const at = line.rpm.indexOf(power.rpm)
  const down = Math.hypot(uncalibrated.bmep, line.low ? 1 - line.low[at]! / line.torque[at]! : 0)
  const up = Math.hypot(uncalibrated.bmep, line.high ? line.high[at]! / line.torque[at]! - 1 : 0)
  const slow = power.rpm / 60
  return {
    says: say`${whole(gives)}${wide}`,
    range: say`${inKw(power.value * (1 - down))} to ${inKw(power.value * (1 + up))}, between ${inRpm(slow * (1 - uncalibrated.rpm))} and ${inRpm(slow * (1 + uncalibrated.rpm))}`,
    confidence: confidenceOf(stage),
  }
}

function confidenceOf({ rough, banded, asked, settled }: Stage): Sentence {
  if (rough) return 'A rough first answer on coarse cells; the fine one is on its way.'
  const all: Sentence =
    settled === asked ? 'Every speed settled' : say`${inCount(settled)} of ${inCount(asked)} speeds settled`
  const inputs = banded ? 'and what the inputs leave open' : 'what the inputs leave open follows'
  return say`${all}. By simulation, not yet calibrated against a run; the range holds the method’s own doubt${banded ? ' ' : ', '}${inputs}. Two pipes compare better than that.`
}

/** The answer for an engine that the file knows only by its curve; undefined without one. */
export function givenAnswer(line: TorqueLine, kind: BreathView['kind']): BreathAnswer | undefined {
  const given = engineGiven(line, kind)
  if (!given) return undefined
  if (kind === 'electric') return { says: whole(given) }
  const { power } = peaksOfLine(line)!
  const at = line.rpm.indexOf(power.rpm)
  const end = (ends: readonly number[] | undefined) =>
    inKw(power.value * (ends ? ends[at]! / line.torque[at]! : 1))
  return {
    says: whole(given),
    range: say`${end(line.low)} to ${end(line.high)}`,
    confidence: 'With its ports and pipe measured, the curve is worked out and other pipes can be tried.',
  }
}
