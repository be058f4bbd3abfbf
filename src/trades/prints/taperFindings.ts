/** What a neck with a taper thread wants instead of a printed cap, and when to measure for a taper. */
import { inCount, inMm, inPercent } from '../../base/answers/amounts.ts'
import type { Finding } from '../../base/answers/finding.ts'
import { joined, say } from '../../base/answers/sentence.ts'
import type { NeckAnswer } from './printsAnswer.ts'
import { findingsBy, fine } from './printsFinding.ts'
import type { PrintsLimits } from './threadLimits.ts'

const finding = findingsBy([
  'ISO 7-1 and ASME B1.20.1: taper pipe threads, from memory',
  'How often a neck is tapered: judgement, no source',
])

/** A neck that counts as tapered: no cap is drawn for it. */
export const isTapered = (
  { taper }: Pick<NeckAnswer, 'taper'>,
  limits: Pick<PrintsLimits, 'tapered'>,
): boolean => taper !== undefined && taper.odds >= limits.tapered.value

/** Findings of the taper of a neck. */
export function taperFindings(answer: NeckAnswer, limits: PrintsLimits): Finding[] {
  const { neck, taper, taperWrong, named } = answer
  const id = `taper.${neck.path}`
  const link = `${neck.path}.further up`
  const readAgain = {
    what: 'measure across the crests once more, as far from the mouth as the thread goes',
    with: 'caliper',
    minutes: 2,
    path: link,
  }
  if (taperWrong !== undefined)
    return [
      finding(id, {
        says: say`Whether the neck of ${neck.name} is tapered cannot be told: ${taperWrong}.`,
        standing: 'unknown',
        because: [{ says: say`${fine(neck.further!)} across further up`, link }],
        measureNext: readAgain,
      }),
    ]
  if (taper && isTapered(answer, limits)) {
    const [best] = taper.guesses
    const most = taper.guesses.slice(0, 3).map((g) => say`${g.thread.name} by ${inPercent(g.odds)}`)
    return [
      finding(id, {
        says:
          most.length > 0
            ? say`The neck of ${neck.name} is a taper pipe thread: ${joined(most)}. It seals on its flanks, and a printed cap with a parallel thread bites on one turn of it alone and leaks.`
            : say`The neck of ${neck.name} is tapered, and of no table: a printed cap with a parallel thread bites on one turn of it alone and leaks.`,
        value: taper.odds,
        unit: '1',
        standing: 'watch',
        because: [
          {
            says: say`${fine(neck.further! - neck.reading.across)} wider over ${fine(neck.reading.span)} of thread; pipe threads gain ${fine(neck.reading.span / 16)} there`,
            link,
          },
        ],
        act: best
          ? say`screw a metal cap of ${best.thread.name} on with sealant that bears petrol, ${inCount(3)} turns by hand and no more than ${inCount(2)} by wrench`
          : say`take the fitting out and put in one with a flat seat and a parallel thread, ${inMm(neck.reading.across)} across`,
        harm: 'before the water',
      }),
    ]
  }
  const best = named?.guesses[0]
  // parallel and taper pipe threads have the same pitches and nearly the same crests
  if (neck.further === undefined && best && best.odds >= named.none && best.thread.form === 'pipe')
    return [
      finding(id, {
        says: say`Whether the neck of ${neck.name} is ${best.thread.name} or its taper twin is not known: both have ${inMm(best.thread.pitch, 0.001)} of pitch, and only the parallel one takes a printed cap.`,
        standing: 'unknown',
        because: [{ says: 'its crests were measured at one place alone', link: `${neck.path}.over crests` }],
        measureNext: readAgain,
      }),
    ]
  return []
}
