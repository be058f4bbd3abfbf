import { styleText } from 'node:util'
import { inMinutes, inPercent } from '../../base/answers/amounts.ts'
import { joined, printed, type Sentence, say, whole } from '../../base/answers/sentence.ts'
import type { DisplaySystem } from '../../base/units/format.ts'
import type { RankedCause, RunRanking } from '../../whole/faults/rankingTypes.ts'

/** lines of each part, so that all of it stands on one screen */
const most = { episodes: 8, causes: 3, open: 4, outcomes: 4 } as const

const head = (text: string) => styleText('bold', text)

/** What went wrong, on one screen of a terminal: thirty lines at most. */
export function askText(r: RunRanking, units: DisplaySystem): string {
  const lines: Sentence[] = []
  if (r.episodes.length > 0) {
    lines.push(head('What happened'))
    const shown = r.episodes.slice(0, most.episodes)
    for (const e of shown) lines.push(say`  ${e.id}  ${e.says}`)
    const left = r.episodes.length - shown.length
    if (left > 0) lines.push(`  and ${left} more; --json tells all of it`)
  }
  if (r.stopped) lines.push(stoppedSays(r.stopped))
  for (const d of r.doubts.slice(0, 2)) lines.push(say`! ${d.says}`)
  lines.push(head(r.decided ? 'What went wrong' : 'What may have gone wrong: not decided'))
  for (const c of r.causes.slice(0, most.causes)) lines.push(...causeLines(c))
  lines.push(say`  ${inPercent(r.none)}  none of these`)
  if (r.cannotSay.length > 0) {
    lines.push(head('What this run cannot say'))
    for (const f of r.cannotSay.slice(0, most.open)) lines.push(say`  ${f.says}`)
  }
  const next = r.checks[0]
  if (next) {
    lines.push(head('Next check'))
    lines.push(say`  ${next.act} ${inMinutes(60 * next.minutes)}, as --found ${next.id}=…`)
    const likely = [...next.outcomes].sort((a, b) => b.share - a.share).slice(0, most.outcomes)
    lines.push(say`  Likely: ${joined(likely.map((o) => say`${o.id} ${inPercent(o.share)}`))}.`)
    if (next.cautions.length > 0) lines.push(`  ${next.cautions.join(' ')}`)
  }
  return lines.map((l) => printed(l, units)).join('\n')
}

export const stoppedSays = (s: NonNullable<RunRanking['stopped']>): Sentence =>
  say`  The ${s.engine} engine stopped firing (${inPercent(s.share)}; one of them did: ${inPercent(s.any)}).`

function causeLines(c: RankedCause): Sentence[] {
  const lines: Sentence[] = [say`  ${inPercent(c.share)}  ${c.says}`]
  if (c.for.length > 0) lines.push(say`       for: ${whole(joined(c.for.slice(0, 3), '; '))}`)
  if (c.against.length > 0) lines.push(say`       against: ${whole(joined(c.against.slice(0, 2), '; '))}`)
  return lines
}
