import { useMemo } from 'react'
import type { SolvedCurves } from '../../../../trades/engine/enginesFromCraft.ts'
import type { Balance } from '../../../../whole/push/balanceTypes.ts'
import { MapStore, NotBalanced } from '../../../../whole/push/craftModel.ts'
import { filledIn, isOpen } from '../../../../whole/push/designChoice.ts'
import { solveBalance } from '../../../../whole/push/solveBalance.ts'
import { trialsOf } from '../../parts/tryChanges.ts'
import type { Craft } from '../../state/craftFile.ts'
import { firstOf, lookedOf, triedCraftOf, useApp, useAppLater } from '../../state/hooks.ts'
import type { First, Looked } from '../../state/store.ts'

/** A balance, or why there is none. */
type Answer = { balance: Balance } | { balance?: undefined; says: string; path?: string }

/** pump maps of the session: while something else is tried they stay */
const maps = new MapStore()
const known = new WeakMap<Craft, Answer>()
let timed = 0

/** The quick answer, without ranges, worked out here and now; `measure` entries named "balance" time it. */
function quickAnswer(craft: Craft, tried: boolean, solved: SolvedCurves | undefined): Answer {
  const before = known.get(craft)
  // without a simulated curve there was no answer; with one there may be
  if (before && (before.balance || !solved)) return before
  const start = performance.now()
  let answer: Answer
  try {
    // the pitch that suits the engines takes several more impellers: while trying it waits for the full answer
    const pitch = tried ? { pitches: false as const } : {}
    answer = {
      balance: solveBalance(craft, {
        maps,
        ranges: false,
        oneDead: false,
        ...(solved ? { solved } : {}),
        ...pitch,
      }),
    }
  } catch (error) {
    if (error instanceof NotBalanced) answer = { says: error.message, path: error.path }
    else if (error instanceof RangeError) answer = { says: error.message }
    else throw error
  }
  if (++timed % 500 === 0) performance.clearMeasures('balance')
  performance.measure('balance', { start, end: performance.now() })
  known.set(craft, answer)
  return answer
}

/** The quick answer for a craft that is only asked about: no pitch is looked for. */
export const quickBalance = (craft: Craft, solved: SolvedCurves | undefined): Answer =>
  isOpen(craft) ? toCome : quickAnswer(craft, true, solved)

/** How far the answer is: from a single balance, with ranges from few draws, with good ones from coarsely simulated engines, or all. */
type Stage = 'single' | 'first' | 'coarse' | 'good'

export interface Balances {
  /** the craft with its open choices put where the look put them */
  craft: Craft
  now: Answer
  /** the craft with the tried values, and its answer, while something is tried */
  triedCraft: Craft | undefined
  tried: Answer | undefined
  stage: Stage
  /** the file leaves pitch, blades, nozzle or ratio undecided */
  open: boolean
  /** no answer yet, because engines are simulated or open choices are made first */
  coming: boolean
}

/** Values that the last look put in for what the file leaves open. */
function useFilled(): Readonly<Record<string, number>> {
  const changes = useApp((s) => s.findings.push?.find((f) => f.id === 'push.undecided')?.changes)
  return useMemo(
    () =>
      Object.fromEntries(
        trialsOf(changes ?? [], 'metric').flatMap(([path, value]) =>
          typeof value === 'number' ? [[path, value]] : [],
        ),
      ),
    [changes],
  )
}

const toCome: Answer = { says: 'it is being worked out' }

/** Now and tried: at once without ranges, then with those of few draws, and the good ones when the worker has looked. */
export function useBalances(): Balances | undefined {
  const craft = useApp((s) => s.craft)
  const triedCraft = useAppLater(triedCraftOf)
  const looked = useAppLater(lookedOf)
  const first = useAppLater(firstOf)
  const busy = useApp((s) => s.looking !== undefined || s.looked?.craft !== s.craft)
  const filled = useFilled()
  const full = looked && looked.craft === craft ? looked : undefined
  const early = first && first.craft === craft ? first : undefined
  const shown = useMemo(() => craft && filledIn(craft, filled), [craft, filled])
  const shownTried = useMemo(() => triedCraft && filledIn(triedCraft, filled), [triedCraft, filled])
  if (!craft || !shown) return undefined
  const solved = full?.solved ?? early?.solved
  // what is open is chosen by the look: a balance with stand-ins would be of another craft
  const alone = (at: Craft, trying: boolean, curves: SolvedCurves | undefined) =>
    isOpen(at) ? toCome : quickAnswer(at, trying, curves)
  const known = full?.balance ?? early?.balance
  const now: Answer = known ? { balance: known } : alone(shown, false, solved)
  const ofTried = (at: Looked | First | undefined) =>
    at && at.triedCraft === triedCraft ? at.triedBalance : undefined
  const knownTried = ofTried(full) ?? ofTried(early)
  const tried: Answer | undefined = !shownTried
    ? undefined
    : knownTried
      ? { balance: knownTried }
      : alone(shownTried, true, full?.triedSolved ?? early?.triedSolved ?? solved)
  const good = full?.balance && (!triedCraft || ofTried(full))
  const some = known && (!triedCraft || knownTried)
  const stage = good ? (full?.coarse ? 'coarse' : 'good') : some ? 'first' : 'single'
  return {
    craft: shown,
    now,
    triedCraft: shownTried,
    tried,
    stage,
    open: isOpen(craft),
    coming: busy && !now.balance,
  }
}
