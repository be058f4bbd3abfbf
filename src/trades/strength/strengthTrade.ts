/** The trade strength: the deck under a rider, foam beside hot parts, seams. */
import { inTimes, withEnds } from '../../base/answers/amounts.ts'
import type { Finding } from '../../base/answers/finding.ts'
import { say } from '../../base/answers/sentence.ts'
import type { BayAir } from '../../hull/site/airOfBay.ts'
import { defineTrade } from '../trade.ts'
import { type DeckAnswer, deckBay } from './deckBay.ts'
import { marginRange } from './deckDoubts.ts'
import { strengthFindingsOf } from './deckFindings.ts'
import { type StrengthInputs, strengthFromCraft } from './strengthFromCraft.ts'
import { type StrengthLimits, strengthLimits } from './strengthLimits.ts'
import { strengthReckoners } from './strengthReckoners.ts'
import { bearWord, factors, loadWord, partWord, plates, yieldLines } from './strengthSay.ts'

export const strengthTrade = defineTrade<StrengthInputs, readonly DeckAnswer[], BayAir>({
  id: 'strength',
  question: 'strength',
  title: 'Deck and foam',
  reads: ['deck', 'rider', 'place', 'hotParts'],
  inputs: (craft, bay) => strengthFromCraft(craft, bay),
  answer: (inputs) => inputs.bays.map((b) => deckBay(b, inputs.rider)),
  limits: strengthLimits,
  judge: ({ inputs }, limits) => strengthFindingsOf(inputs, limits as StrengthLimits),
  headline: ({ inputs, answer }, limits) => deckHeadline(inputs, answer, limits as StrengthLimits),
  reckoners: strengthReckoners,
})

/** The whole deck in one sentence: its weakest bay decides. */
function deckHeadline(
  inputs: StrengthInputs,
  answers: readonly DeckAnswer[],
  limits: StrengthLimits,
): Finding {
  const base = {
    id: 'strength.headline',
    question: 'strength' as const,
    sources: [plates, yieldLines, factors],
  }
  const worst = answers.reduce<DeckAnswer | undefined>(
    (a, b) => (a && a.margin <= b.margin ? a : b),
    undefined,
  )
  if (!worst)
    return {
      ...base,
      says: 'Whether the deck holds is not known: the file names no bay of it.',
      standing: 'unknown',
      because: [{ says: 'no bays in the file', link: 'deck.bays' }],
    }
  const g = worst.governs
  const { low, high } = marginRange(inputs.doubtful[answers.indexOf(worst)]!, worst.margin)
  const ends = { low, high }
  const stand = worst.loads[0]!
  const times = withEnds(inTimes(worst.margin, 0.1), ends)
  return {
    ...base,
    says:
      worst.margin >= 1
        ? say`The deck holds you: its weakest bay, ${worst.bay.name}, bears ${times} times what ${loadWord[g.load]} asks of its ${partWord[g.weakest]}.`
        : stand.margin >= limits.standing.value
          ? say`The deck holds you standing, ${inTimes(stand.margin, 0.1)} times over in its weakest bay; in ${worst.bay.name} ${loadWord[g.load]} asks ${inTimes(1 / worst.margin, 0.1)} times what its ${bearWord(g.weakest)}.`
          : say`The deck does not hold you: in ${worst.bay.name} standing still asks ${inTimes(1 / stand.margin, 0.1)} times what its ${bearWord(stand.weakest)}.`,
    value: worst.margin,
    ...ends,
    unit: '1',
    standing: stand.margin < limits.standing.value ? 'stop' : worst.margin < 1 ? 'watch' : 'good',
    because: [
      {
        says: 'loads by common practice: a step is twice, a jump four times the rider’s weight',
        link: 'rider.mass',
      },
      {
        says: 'strengths are the least the standards name; the range takes in what sheet and foam are worth beyond, and the sizes as measured',
        link: 'deck.alloy',
      },
    ],
  }
}
