import type { SolvedCurves } from '../../../../trades/engine/enginesFromCraft.ts'
import type { Balance } from '../../../../whole/push/balanceTypes.ts'
import { MapStore, NotBalanced } from '../../../../whole/push/craftModel.ts'
import { solveBalance } from '../../../../whole/push/solveBalance.ts'
import type { Craft } from '../../state/craftFile.ts'
import { lookedOf, triedCraftOf, useApp, useAppLater } from '../../state/hooks.ts'

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

export interface Balances {
  craft: Craft
  now: Answer
  /** the craft with the tried values, and its answer, while something is tried */
  triedCraft: Craft | undefined
  tried: Answer | undefined
  /** true while ranges are still being worked out */
  waiting: boolean
}

/** Now and tried: at once without ranges, with them when the worker has looked. */
export function useBalances(): Balances | undefined {
  const craft = useApp((s) => s.craft)
  const triedCraft = useAppLater(triedCraftOf)
  const looked = useAppLater(lookedOf)
  if (!craft) return undefined
  const full = looked?.craft === craft ? looked : undefined
  const now: Answer = full?.balance ? { balance: full.balance } : quickAnswer(craft, false, full?.solved)
  const lookedTried = full && full.triedCraft === triedCraft ? full.triedBalance : undefined
  const tried: Answer | undefined = !triedCraft
    ? undefined
    : lookedTried
      ? { balance: lookedTried }
      : quickAnswer(triedCraft, true, full?.triedSolved ?? full?.solved)
  const waiting = !full?.balance || (triedCraft !== undefined && !lookedTried)
  return { craft, now, triedCraft, tried, waiting }
}
