/** How the engines breathe, in one sentence with its range and how sure it is. */
import { uncalibrated } from '../../trades/engine/health.ts'
import { inLook, type Look, plain, says, saysRpm } from '../push/shown.ts'
import { peakOf, powerOf, strongBand, type TorqueLine } from './curveLines.ts'

export interface BreathAnswer {
  says: string
  range?: string
  confidence?: string
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

/** The answer for one engine by simulation. */
export function simulatedAnswer(line: TorqueLine, stage: Stage, look: Look): BreathAnswer {
  const power = powerOf(line)
  const top = peakOf(line, power)
  const pull = peakOf(line, line.torque)
  if (!top || !pull) return { says: `${upper(line.name)} settled at no speed, so there is no curve to give.` }
  const strong = strongBand(line)
  const wide = strong
    ? ` Its power stays within a tenth of that from ${saysRpm(strong.from / 60)} to ${saysRpm(strong.to / 60)}.`
    : ''
  const at = line.rpm.indexOf(top.rpm)
  const down = Math.hypot(uncalibrated.bmep, line.low ? 1 - line.low[at]! / line.torque[at]! : 0)
  const up = Math.hypot(uncalibrated.bmep, line.high ? line.high[at]! / line.torque[at]! - 1 : 0)
  const kW = (v: number) => plain(inLook(v, 'power', look), 1)
  return {
    says: `${upper(line.name)} gives ${says(top.value, 'power', look)} at ${saysRpm(top.rpm / 60)} and ${says(pull.value, 'torque', look)} at ${saysRpm(pull.rpm / 60)}.${wide}`,
    range: `${kW(top.value * (1 - down))} to ${kW(top.value * (1 + up))} ${look.power}, between ${saysRpm((top.rpm * (1 - uncalibrated.rpm)) / 60)} and ${saysRpm((top.rpm * (1 + uncalibrated.rpm)) / 60)}`,
    confidence: confidenceOf(stage),
  }
}

function confidenceOf({ rough, banded, asked, settled }: Stage): string {
  if (rough) return 'A rough first answer on coarse cells; the fine one is on its way.'
  const all = settled === asked ? 'Every speed settled' : `${settled} of ${asked} speeds settled`
  return `${all}. By simulation, not yet calibrated against a run${banded ? '; the range holds the method’s 15 % and what the inputs leave open' : '; the range holds the method’s 15 %, what the inputs leave open follows'}. Two pipes compare better than that.`
}

/** The answer for an engine that the file knows only by its curve. */
export function givenAnswer(line: TorqueLine, kind: string, look: Look): BreathAnswer {
  const top = peakOf(line, powerOf(line))
  const pull = peakOf(line, line.torque)
  if (!top || !pull) return { says: `${upper(line.name)} has no curve.` }
  if (kind === 'electric')
    return {
      says: `${upper(line.name)} is electric: it does not breathe. It gives ${says(top.value, 'power', look)} at ${saysRpm(top.rpm / 60)}.`,
    }
  const at = line.rpm.indexOf(top.rpm)
  const share = (ends: readonly number[] | undefined) => (ends ? ends[at]! / line.torque[at]! : 1)
  const power = (s: number) => plain(inLook(top.value * s, 'power', look), 1)
  return {
    says: `${upper(line.name)} gives ${says(top.value, 'power', look)} at ${saysRpm(top.rpm / 60)}, ${kind === 'peak' ? 'as estimated from its peak' : 'by the curve in the craft file'}; how it breathes is not known yet.`,
    range: `${power(share(line.low))} to ${power(share(line.high))} ${look.power}`,
    confidence: 'With its ports and pipe measured, the curve is worked out and other pipes can be tried.',
  }
}

const upper = (name: string) => name.charAt(0).toUpperCase() + name.slice(1)
