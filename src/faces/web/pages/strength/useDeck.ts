import { useMemo } from 'react'
import { type DeckAnswer, deckBay } from '../../../../trades/strength/deckBay.ts'
import { type LoadSweep, loadSweep } from '../../../../trades/strength/deckFigures.ts'
import { type StrengthInputs, strengthFromCraft } from '../../../../trades/strength/strengthFromCraft.ts'
import { bayAirOf } from '../../../../whole/bayAir.ts'
import type { Balance } from '../../../../whole/push/balanceTypes.ts'
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

/** Made once a craft, as crafts never change; made over for its hot parts alone when the balance says how warm the bay gets. */
function deckOf(craft: Craft, balance: Balance | undefined): Deck {
  const bayAir = bayAirOf({ craft, ...(balance ? { balance } : {}) })
  const before = made.get(craft)
  if (before?.inputs.bayAir === bayAir) return before
  const inputs = strengthFromCraft(craft, bayAir)
  const deck: Deck = before
    ? { ...before, inputs }
    : { craft, inputs, answers: inputs.bays.map((b) => deckBay(b, inputs.rider)), sweeps: new Map() }
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
  const looked = useApp((s) => s.looked)
  const balance = looked?.craft === craft ? looked?.balance : undefined
  // until what is tried was looked at, its engines are taken to run as they do now
  const triedBalance = looked?.triedCraft === triedCraft ? looked?.triedBalance : undefined
  const now = useMemo(() => craft && deckOf(craft, balance), [craft, balance])
  const other = useMemo(
    () => triedCraft && deckOf(triedCraft, triedBalance ?? balance),
    [triedCraft, triedBalance, balance],
  )
  if (!now) return undefined
  const tried = other && JSON.stringify(other.inputs) !== JSON.stringify(now.inputs) ? other : undefined
  return { now, tried }
}
