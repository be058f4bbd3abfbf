/** What an engine gives at its peaks, in words. */
import { type AmountMaker, inKw, inRpm, inTorque, withEnds } from '../../base/answers/amounts.ts'
import { type Sentence, say } from '../../base/answers/sentence.ts'
import { type Peak, peakOf, powerOf, type TorqueLine } from './torqueLine.ts'

export interface LinePeaks {
  /** W and rev/min */
  power: Peak
  /** N·m and rev/min */
  torque: Peak
}

/** The peaks of a whole engine's curve, between the speeds that were worked out too; undefined where nothing settled. */
export function peaksOfLine(line: TorqueLine): LinePeaks | undefined {
  const power = peakOf(line, powerOf(line))
  const torque = peakOf(line, line.torque)
  return power && torque && { power, torque }
}

/** Ends of a peak's range, as parts of it. */
export interface Ends {
  low: number
  high: number
}

/** "11.3 kW (9.6 to 13.0 kW) at 8580 rpm" */
export function mostOf(peak: Peak, amount: AmountMaker, ends: Ends): Sentence {
  const range = { low: peak.value * ends.low, high: peak.value * ends.high }
  return say`${withEnds(amount(peak.value), range)} at ${inRpm(peak.rpm / 60)}`
}

/** What an engine gives by simulation, without a full stop; undefined where nothing settled. */
export function engineGives(line: TorqueLine, ends: { power: Ends; torque: Ends }): Sentence | undefined {
  const peaks = peaksOfLine(line)
  if (!peaks) return undefined
  const { power, torque } = peaks
  return say`${line.name} gives ${mostOf(power, inKw, ends.power)} and ${mostOf(torque, inTorque, ends.torque)} by simulation`
}
