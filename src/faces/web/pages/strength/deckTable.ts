import { inKg, inKgPerM2, inMm, inTimes } from '../../../../base/answers/amounts.ts'
import type { Amount } from '../../../../base/answers/sentence.ts'
import type { DeckAnswer } from '../../../../trades/strength/deckBay.ts'
import { partWord } from '../../../../trades/strength/strengthSay.ts'

/** Columns that every table of builds shares, and a build's cells in them. */
export const bayHead = ['Mass', 'Bay', 'Gives, standing', 'Margin', 'Gives way first']

export const loadWord = { standing: 'standing', step: 'hard step', jump: 'jump' } as const

export const bayCells = (a: DeckAnswer): (string | Amount)[] => [
  inKgPerM2(a.massPerArea),
  inKg(a.mass, 0.01),
  inMm(a.deflection, 0.1),
  inTimes(a.margin),
  `${partWord[a.governs.weakest]}, ${loadWord[a.governs.load]}`,
]
