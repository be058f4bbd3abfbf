/** What an engine gives at its peaks, in the words that its finding, the page and the headline share. */
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

/** "11.3 kW at 8580 rpm" */
export const mostOf = (peak: Peak, amount: AmountMaker): Sentence =>
  say`${amount(peak.value)} at ${inRpm(peak.rpm / 60)}`

/**
 * What an engine gives by simulation, without a full stop; undefined where nothing settled. `ends` are parts of the torque at its
 * peak, where its range is to be said.
 */
export function engineGives(line: TorqueLine, ends?: { low: number; high: number }): Sentence | undefined {
  const peaks = peaksOfLine(line)
  if (!peaks) return undefined
  const torque: AmountMaker = (v) =>
    ends ? withEnds(inTorque(v), { low: v * ends.low, high: v * ends.high }) : inTorque(v)
  return say`${line.name} gives ${mostOf(peaks.power, inKw)} and ${mostOf(peaks.torque, torque)} by simulation`
}
