/**
 * The most likely pair of tracks: dynamic programming (A. J. Viterbi, 1967) over labelled pairs of
 * candidates. Joint choice of combinations rather than taking one engine away after the other follows
 * A. Pertusa and J. M. Iñesta, EURASIP J. Adv. Signal Process. 2012:27.
 */
import { CANDIDATES, type FrameStore, PAIR_UNIT, PAIRS } from './frameStore.ts'
import { LOCK_BREAK, type Lock, onLock } from './pathOne.ts'
import type { PathCosts } from './settings.ts'
import { moveCost } from './trackMoves.ts'

/** copied once: some module loaders make every read of an imported number a call */
const MOST = CANDIDATES
const PAIR_ROOM = PAIRS
const PAIR_STEP = PAIR_UNIT
const STATES = 1 + 3 * CANDIDATES + 2 * PAIRS
/** one line shared by both engines costs this a frame more than one engine alone */
const SHARED_COST = 0.3

/** speed ratios at which one engine's own orders look like a second engine */
const RATIONALS = [2 / 3, 3 / 2, 5 / 2, 2 / 5, 2, 3, 4, 5, 6, 7, 8].flatMap((r) => [
  Math.log(r),
  -Math.log(r),
])
export const RATIONAL_WIDTH = 0.012

/** True when two rates stand in a ratio of small whole numbers other than 1. */
export function isRational(ratio: number, width = RATIONAL_WIDTH): boolean {
  const x = Math.log(ratio)
  for (const r of RATIONALS) if (Math.abs(x - r) < width) return true
  return false
}

/** Candidate index of each label in every frame, -1 = silent. */
export interface PairPath {
  first: Int16Array
  second: Int16Array
}

interface Column {
  states: number
  a: Int8Array
  b: Int8Array
  cost: Float64Array
}

const makeColumn = (): Column => ({
  states: 0,
  a: new Int8Array(STATES),
  b: new Int8Array(STATES),
  cost: new Float64Array(STATES),
})

/** Lists the states of frame i in a fixed order, with minus their reward as cost. */
function listStates(store: FrameStore, i: number, costs: PathCosts, out: Column): void {
  const n = store.count[i]!
  const base = i * MOST
  const single = (k: number) => -costs.reward * (store.score[base + k]! - costs.offset)
  let s = 0
  const add = (a: number, b: number, cost: number) => {
    out.a[s] = a
    out.b[s] = b
    out.cost[s++] = cost
  }
  add(-1, -1, 0)
  for (let k = 0; k < n; k++) add(k, -1, single(k))
  for (let k = 0; k < n; k++) add(-1, k, single(k))
  for (let k = 0; k < n; k++) add(k, k, single(k) + SHARED_COST)
  for (let p = 0; p < store.pairCount[i]!; p++) {
    const a = store.pairA[i * PAIR_ROOM + p]!
    const b = store.pairB[i * PAIR_ROOM + p]!
    const orders = isRational(store.rate[base + a]! / store.rate[base + b]!) ? costs.rationalOffset : 0
    const cost =
      -costs.reward *
      (PAIR_STEP * store.pairScore[i * PAIR_ROOM + p]! - costs.offset - costs.pairOffset - orders)
    add(a, b, cost)
    add(b, a, cost)
  }
  out.states = s
}

function lockColumn(store: FrameStore, i: number, column: Column, lock: number, second: boolean): void {
  for (let s = 0; s < column.states; s++) {
    const k = second ? column.b[s]! : column.a[s]!
    const broken = lock > 0 ? k < 0 || !onLock(store.rate[i * MOST + k]!, lock) : k >= 0
    if (broken) column.cost[s]! += LOCK_BREAK
  }
}

/** Best pair of labelled paths; locks for each label as in pathOne. */
export function pathTwo(
  store: FrameStore,
  costs: PathCosts,
  locks: readonly [readonly Lock[], readonly Lock[]] = [[], []],
): PairPath {
  const n = store.frames
  const lockAt = locks.map((list) => new Map(list.map((l) => [l.frame, l.rate])))
  const back = new Uint8Array(n * STATES)
  let before = makeColumn()
  let now = makeColumn()
  const wide = MOST + 1
  const move = new Float64Array(wide * wide)
  for (let i = 0; i < n; i++) {
    listStates(store, i, costs, now)
    for (const [label, map] of lockAt.entries()) {
      const lock = map.get(i)
      if (lock !== undefined) lockColumn(store, i, now, lock, label === 1)
    }
    if (i > 0) {
      fillMoves(store, i, costs, move)
      for (let s = 0; s < now.states; s++) {
        const a = now.a[s]! + 1
        const b = now.b[s]! + 1
        let least = Number.POSITIVE_INFINITY
        let from = 0
        for (let r = 0; r < before.states; r++) {
          const c = before.cost[r]!
          if (c >= least) continue
          const whole = c + move[(before.a[r]! + 1) * wide + a]! + move[(before.b[r]! + 1) * wide + b]!
          if (whole < least) {
            least = whole
            from = r
          }
        }
        now.cost[s]! += least
        back[i * STATES + s] = from
      }
    }
    ;[before, now] = [now, before]
  }
  return trace(store, costs, back, before)
}

/** Cost of every move between the candidates of frame i - 1 and i; row and column 0 are silence. */
function fillMoves(store: FrameStore, i: number, costs: PathCosts, move: Float64Array): void {
  const wide = MOST + 1
  const was = store.count[i - 1]!
  const is = store.count[i]!
  const p = (i - 1) * MOST
  const q = i * MOST
  move[0] = 0
  for (let k = 0; k < is; k++) move[k + 1] = costs.birth
  for (let j = 0; j < was; j++) {
    move[(j + 1) * wide] = costs.death
    const f = Math.log(store.rate[p + j]!)
    for (let k = 0; k < is; k++)
      move[(j + 1) * wide + k + 1] = moveCost(
        Math.log(store.rate[q + k]!) - f,
        store.slope[p + j]!,
        store.slope[q + k]!,
        costs,
      )
  }
}

function trace(store: FrameStore, costs: PathCosts, back: Uint8Array, last: Column): PairPath {
  const n = store.frames
  const first = new Int16Array(n).fill(-1)
  const second = new Int16Array(n).fill(-1)
  if (n === 0) return { first, second }
  let state = 0
  for (let s = 1; s < last.states; s++) if (last.cost[s]! < last.cost[state]!) state = s
  const column = makeColumn()
  for (let i = n - 1; i >= 0; i--) {
    listStates(store, i, costs, column)
    first[i] = column.a[state]!
    second[i] = column.b[state]!
    state = back[i * STATES + state]!
  }
  return { first, second }
}
