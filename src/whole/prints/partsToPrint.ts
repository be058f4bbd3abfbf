/** The parts to print for a craft, with what other trades found of them: the roots of the blades are judged where the jet is solved, the
 * discs of couplings where the drive line is. */
import type { Finding } from '../../base/answers/finding.ts'
import type { MadePart } from '../../base/answers/madePart.ts'
import type { Craft } from '../../craft/index.ts'
import { printedParts } from '../../trades/prints/printedParts.ts'
import { printsTrade } from '../../trades/prints/printsTrade.ts'
import { solveTrade } from '../../trades/trade.ts'

/** `findings`: those of a look at the craft. */
export function partsToPrint(craft: Craft, findings: readonly Finding[]): MadePart[] {
  const root = findings.find((f) => f.id === 'jet.root')
  const pitch = pitchLookedFor(craft, findings)
  const parts = printedParts(craft, solveTrade(printsTrade, craft, undefined), {
    ...(root ? { root } : {}),
    ...(pitch ? { pitch } : {}),
  })
  return parts.map((part) => {
    const joint = jointOf(part, findings)
    return joint ? { ...part, findings: [...part.findings, joint] } : part
  })
}

/**
 * The pitch that the search over the whole balance looks for, with the pitches that do as well: the file's own comes first where it is among
 * those, the best one where it is not.
 */
export function pitchLookedFor(
  craft: Craft,
  findings: readonly Finding[],
): { value: number; low: number; high: number } | undefined {
  const found = findings.find((f) => f.id === 'push.pitch')
  if (found?.value === undefined || !(found.value > 0)) return undefined
  const { value, low = value, high = value } = found
  const own = craft.jet.rotor.pitch
  const first = found.act === undefined ? own.value : value
  return { value: first, low: Math.min(first, low), high: Math.max(first, high) }
}

/** What the drive line found of the joint that a coupling's disc is clamped in: it is judged there, bolts and all. */
function jointOf(part: MadePart, findings: readonly Finding[]): Finding | undefined {
  const link = part.of.find((path) => /^shaft\.\d+$/.test(path))
  return link === undefined
    ? undefined
    : findings.find(
        (f) => /^driveline\.joint\./.test(f.id) && f.because.some((b) => b.link?.startsWith(`${link}.`)),
      )
}
