import { styleText } from 'node:util'
import { printed, type Sentence } from '../../base/answers/sentence.ts'
import type { DisplaySystem } from '../../base/units/format.ts'
import type { Look } from '../../whole/look.ts'
import { decisionLine, screenOf } from '../../whole/lookScreen.ts'

/** A look on one screen of a terminal: thirty lines at most, a line a decision, numbered. */
export function lookScreenText(look: Pick<Look, 'findings' | 'decisions'>, units: DisplaySystem): string {
  const screen = screenOf(look)
  const text = (s: Sentence) => printed(s, units)
  const lines: string[] = screen.answer.map((s, i) => (i === 0 ? styleText('bold', text(s)) : text(s)))
  let number = 0
  for (const section of screen.sections) {
    const left = section.left > 0 ? ` (${section.left} more with --all)` : ''
    lines.push(styleText('bold', `${section.head}${left}`))
    for (const d of section.decisions) lines.push(`${String(++number).padStart(3)}. ${text(decisionLine(d))}`)
  }
  lines.push(...screen.whatIf.map(text))
  if (screen.measure) lines.push(`Measure next: ${text(screen.measure)}.`)
  const { stop, watch, unknown, good } = screen.counts
  lines.push(
    `Found: ${stop} to stop for, ${watch} to watch, ${unknown} not known yet, ${good} good; --all tells all of it.`,
  )
  return lines.join('\n')
}
