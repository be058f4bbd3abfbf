/** What flotation has to say about a craft: how it sits, openings, swamped, foam, a leak, guidance to compare with. */
import type { Finding } from '../../base/answers/finding.ts'
import type { FloatAnswer } from './floatAnswer.ts'
import type { FloatLimits } from './floatLimits.ts'
import type { FloatInput } from './input.ts'
import { openingFindings } from './openingFindings.ts'
import { draftFinding, roomFinding, sinksFinding, stabilityFinding } from './sitFindings.ts'
import { slackFindings } from './slackFindings.ts'
import { foamFinding, guidanceFinding, leakFindings, swampedFinding } from './swampedFindings.ts'

/** All findings of an answer; `weightsAssumed` where a usual mass stands in for the list. */
export function floatFindingsOf(
  input: FloatInput,
  a: FloatAnswer,
  weightsAssumed: boolean,
  limits: FloatLimits,
): Finding[] {
  if (a.ridden.sinks) return [sinksFinding(input, a), ...asked(a)]
  return [
    draftFinding(input, a, weightsAssumed, limits),
    stabilityFinding(input, a, limits),
    ...slackFindings(input, a, limits),
    roomFinding(input, limits),
    ...openingFindings(a, limits),
    swampedFinding(input, a),
    foamFinding(input, a),
    ...leakFindings(a.leak),
    guidanceFinding(input, a, limits),
    ...asked(a),
  ]
}

function asked(a: FloatAnswer): Finding[] {
  return a.flags.map((f, i) => ({
    id: f.code === 'mesh not used' ? 'float.mesh' : `float.asked.${i}`,
    question: 'float' as const,
    says: f.says ?? f.text,
    standing: f.code === 'mesh not used' ? ('watch' as const) : ('unknown' as const),
    because: [{ says: f.code, ...(f.path ? { link: f.path } : {}) }],
    sources: ['The craft file'],
  }))
}
