/** The Strength page's answer in one sentence, and what the search is asked for a bay. */
import type { BayAir } from '../../hull/site/airOfBay.ts'
import { type DeckAnswer, type DeckBay, deckBay } from './deckBay.ts'
import { type Foam, foams } from './foams.ts'
import type { HotPart } from './guards.ts'
import { faceAt, foamLimit } from './guards.ts'
import { hatSheet, type LightestInput } from './lightest.ts'
import type { StrengthInputs } from './strengthFromCraft.ts'
import { bearWord, loadWord, partWord } from './strengthSay.ts'

export interface DeckSays {
  says: string
  range?: string
  confidence: string
}

/** Sentence about the whole deck: its weakest bay decides. */
export function deckSays(inputs: StrengthInputs, answers: readonly DeckAnswer[]): DeckSays {
  const worst = answers.reduce<DeckAnswer | undefined>(
    (a, b) => (a && a.margin <= b.margin ? a : b),
    undefined,
  )
  if (!worst)
    return {
      says: 'Whether the deck holds is not known: the file names no bay of it.',
      confidence: 'Measure the field of deck you stand on, its sheet, and what holds it up.',
    }
  const g = worst.governs
  const dish = g.weakest === 'skin' && g.load === 'step' ? ', and leaves a lasting dish' : ''
  const says =
    worst.margin >= 1
      ? `The deck holds you: its weakest bay, ${worst.bay.name}, bears ${worst.margin.toFixed(1)} times what ${loadWord[g.load]} asks of its ${partWord[g.weakest]}.`
      : `Not everywhere: in ${worst.bay.name} ${loadWord[g.load]} asks ${(1 / worst.margin).toFixed(1)} times what its ${bearWord(g.weakest)}${dish}.`
  const heavy = deckBay(worst.bay, inputs.riderHigh)
  return {
    says,
    range: `${(0.8 * Math.min(worst.margin, heavy.margin)).toFixed(1)} to ${(1.2 * worst.margin).toFixed(1)} times what is asked, in the weakest bay`,
    confidence:
      'Loads by common practice: a step is twice, a jump four times the rider’s weight; strengths are the least the standards name.',
  }
}

/** Foams a builder can buy as boards, as the search tries them. */
const searched = ['EPS 22', 'EPS 29', 'XPS 25', 'XPS 29', 'XPS 35']

/** The foam outlives the hottest part whose own foam lies in the bay: the engine's bay melts what the next finding would condemn. */
function bearsHeat(foam: Foam, bay: DeckBay, hot: readonly HotPart[], air: BayAir | undefined): boolean {
  if (air?.known && /engine|hatch|lid/i.test(bay.name) && air.value > foamLimit({ foam })) return false
  return hot.every((h) => {
    const shares =
      bay.name.toLowerCase().includes('engine') || /engine|pipe|stinger|muffler|exhaust/i.test(h.name)
    if (!shares || !/engine|hatch|lid/i.test(bay.name)) return true
    const face = faceAt(h.spot, h.guard)
    return Number.isFinite(face) && face <= foamLimit({ foam })
  })
}

/** The search for one bay, with its own sheet, edges and room below. */
export function searchFor(
  bay: DeckBay,
  rider: number,
  hot: readonly HotPart[] = [],
  air?: BayAir,
): LightestInput {
  return {
    length: bay.length,
    width: bay.width,
    rider,
    alloy: bay.alloy,
    welded: bay.welded,
    held: bay.held,
    foams: foams.filter((f) => searched.includes(f.id) && bearsHeat(f, bay, hot, air)),
    foamDepth: bay.support.kind === 'foam' ? bay.support.depth : 0.1,
  }
}

/** The craft values that make a bay another build: path below the bay, SI number or word; the kind first where it changes. */
export function valuesOf(from: DeckBay, to: DeckBay): readonly (readonly [string, number | string])[] {
  const kind = from.support.kind === to.support.kind ? [] : [['kind', to.support.kind] as const]
  const skin = ['skin', to.t] as const
  const b = to.support
  switch (b.kind) {
    case 'alone':
      return [...kind, skin]
    case 'stringers':
      return [
        ...kind,
        skin,
        ['spacing', b.spacing],
        ['stringer height', b.section.height],
        ['stringer sheet', hatSheet],
      ]
    case 'foam':
      return [...kind, skin, ['foam', b.foam.id], ['depth', b.depth]]
    case 'sandwich':
      return [...kind, skin, ['foam', b.foam.id], ['core', b.core], ['lower skin', b.inner]]
  }
}
