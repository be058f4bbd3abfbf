import { useMemo } from 'react'
import { type DeckAnswer, deckBay } from '../../../../trades/strength/deckBay.ts'
import { type LoadSweep, loadSweep } from '../../../../trades/strength/deckFigures.ts'
import { type StrengthInputs, strengthFromCraft } from '../../../../trades/strength/strengthFromCraft.ts'
import type { Craft } from '../../state/craftFile.ts'
import { triedCraftOf, useApp, useAppLater } from '../../state/hooks.ts'

/** One craft's deck, every bay answered. */
export interface Deck {
  craft: Craft
  inputs: StrengthInputs
  answers: readonly DeckAnswer[]
  sweeps: Map<number, LoadSweep>
}

const made = new WeakMap<Craft, Deck>()

/** made once a craft, as crafts never change */
function deckOf(craft: Craft): Deck {
  const before = made.get(craft)
  if (before) return before
  const inputs = strengthFromCraft(craft)
  const deck = { craft, inputs, answers: inputs.bays.map((b) => deckBay(b, inputs.rider)), sweeps: new Map() }
  made.set(craft, deck)
  return deck
}

/** The load growing on one bay; kept, as it takes a few looks at the plate. */
export function sweepOf(deck: Deck, bay: number): LoadSweep | undefined {
  const at = deck.inputs.bays[bay]
  if (!at) return undefined
  const known = deck.sweeps.get(bay) ?? loadSweep(at, deck.inputs.rider)
  deck.sweeps.set(bay, known)
  return known
}

/** The deck now and with what is tried, when that touches it. */
export function useDeck(): { now: Deck; tried: Deck | undefined } | undefined {
  const craft = useApp((s) => s.craft)
  const triedCraft = useAppLater(triedCraftOf)
  const now = useMemo(() => craft && deckOf(craft), [craft])
  const other = useMemo(() => triedCraft && deckOf(triedCraft), [triedCraft])
  if (!now) return undefined
  const tried = other && JSON.stringify(other.inputs) !== JSON.stringify(now.inputs) ? other : undefined
  return { now, tried }
}
