/**
 * How one engine breathes, as one finding: the page's answer for that engine, and what the trade's headline is made of. It is worded
 * here and nowhere else.
 */
import { inKw } from '../../base/answers/amounts.ts'
import type { Finding } from '../../base/answers/finding.ts'
import { joined, type Sentence, say, whole } from '../../base/answers/sentence.ts'
import type { TorqueBand } from '../../trades/engine/band.ts'
import { twoStrokeAnswer } from '../../trades/engine/engineFindings.ts'
import { type Ends, mostOf, peaksOfLine } from '../../trades/engine/engineGives.ts'
import type { CurveResult } from '../../trades/engine/simulate.ts'
import type { TorqueLine } from '../../trades/engine/torqueLine.ts'
import type { BreathView } from './breathView.ts'

/** What was worked out of an engine, as far as it is. */
export interface WorkedOut {
  curve?: CurveResult | undefined
  band?: TorqueBand | undefined
}

/** The answer for one engine: by simulation, by the curve of the craft file, or what is missing. */
export function engineAnswer(view: BreathView, { curve, band }: WorkedOut = {}): Finding {
  const { reading, given, name, index } = view
  const at = `engines.${index}`
  if (reading && (curve || !given))
    return twoStrokeAnswer({
      at,
      name,
      ...reading,
      ...(curve ? { curve } : {}),
      ...(band ? { band } : {}),
    })
  const says = given && engineGiven(given, view.kind)
  if (!says)
    return answered(at, 'unknown', {
      says: say`how ${name} breathes is not known: the file has neither its curve nor its ports and pipe`,
      because: `the torque curve or the peak of ${name} comes first`,
    })
  if (view.kind === 'electric')
    return answered(at, 'good', { says, because: `the curve or the peak of ${name} in the craft file` })
  return answered(at, 'unknown', {
    says,
    because: `with ports and pipe of ${name} measured, its curve is worked out and other pipes can be tried`,
  })
}

interface Words {
  says: Sentence
  because: Sentence
}

function answered(at: string, standing: Finding['standing'], { says, because }: Words): Finding {
  return {
    id: `breath.${at}.given`,
    question: 'breath',
    says: whole(says),
    standing,
    because: [{ says: because, link: at }],
    sources: ['The craft file'],
  }
}

/** What is known of an engine that the file holds by a curve or a peak only, without a full stop; undefined without a curve. */
function engineGiven(line: TorqueLine, kind: BreathView['kind']): Sentence | undefined {
  const peaks = peaksOfLine(line)
  if (!peaks) return undefined
  const { power } = peaks
  const knot = line.rpm.indexOf(power.rpm)
  const part = (ends: readonly number[] | undefined) => (ends ? ends[knot]! / line.torque[knot]! : 1)
  const ends: Ends = { low: part(line.low), high: part(line.high) }
  const most = mostOf(power, inKw, ends)
  if (kind === 'electric') return say`${line.name} is electric and does not breathe; it gives ${most}`
  const by = kind === 'peak' ? 'as estimated from its peak' : 'by the curve in the craft file'
  return say`${line.name} gives ${most}, ${by}; how it breathes is not known yet`
}

/** What all engines of a craft give: the one engine's answer, or all of them in a row. */
export function headlineOf(each: readonly Finding[]): Finding {
  const [only] = each
  if (only && each.length === 1) return { ...only, id: 'breath.headline' }
  return {
    id: 'breath.headline',
    question: 'breath',
    says: joined(
      each.map((one) => one.says),
      ' ',
    ),
    standing: each.every((one) => one.standing === 'good') ? 'good' : 'unknown',
    because: each.flatMap((one) => one.because),
    sources: [...new Set(each.flatMap((one) => one.sources))],
  }
}
