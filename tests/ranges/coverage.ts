/**
 * How often a fresh draw of all doubts, solved by the whole balance, falls inside the range that is printed. An answer is a
 * name, what a drawn craft makes of it, and the range printed for the craft as written: others may be added to the list.
 */
import type { Range } from '../../src/base/answers/solved.ts'
import { seededRandom } from '../../src/base/numerics/random.ts'
import type { Craft } from '../../src/craft/index.ts'
import { deckBay } from '../../src/trades/strength/deckBay.ts'
import { marginRange } from '../../src/trades/strength/deckDoubts.ts'
import { strengthFromCraft } from '../../src/trades/strength/strengthFromCraft.ts'
import { MapStore, modelFromCraft } from '../../src/whole/push/craftModel.ts'
import { doubtsOf, leantBy } from '../../src/whole/push/draws.ts'
import { probe } from '../../src/whole/push/probe.ts'
import { solveBalance } from '../../src/whole/push/solveBalance.ts'
import type { CoveredCraft } from './crafts.ts'

/** One draw: the craft with its values drawn, and what the whole balance makes of it. */
export interface DrawnOnce {
  craft: Craft
  sums: ReturnType<typeof probe>
  /** margin of the bay that is weakest as written; NaN without a deck */
  deck: number
}

export interface CoveredAnswer {
  name: string
  unit: string
  of: (drawn: DrawnOnce) => number
  /** undefined where nothing is printed for this craft */
  range: (covered: CoveredCraft) => Range | undefined
}

export interface Coverage {
  craft: string
  answer: string
  range: Range
  median: number
  /** shares of the draws */
  inside: number
  below: number
  above: number
}

const balances = new WeakMap<CoveredCraft, ReturnType<typeof solveBalance>>()

function balanceOf(c: CoveredCraft): ReturnType<typeof solveBalance> {
  let known = balances.get(c)
  if (!known) {
    known = solveBalance(c.craft, c.solved ? { solved: c.solved } : {})
    balances.set(c, known)
  }
  return known
}

const printed = (r: Range) => (Number.isFinite(r.low) && Number.isFinite(r.high) ? r : undefined)

/** The bay that decides, its margin as drawn: sizes, rider and sheet of a draw as the strength trade takes them. */
function weakestBay(craft: Craft) {
  const inputs = strengthFromCraft(craft)
  const margins = inputs.bays.map((b) => deckBay(b, inputs.rider, undefined, 21).margin)
  const index = margins.indexOf(Math.min(...margins))
  return { of: inputs.doubtful[index], margin: margins[index] ?? Number.NaN }
}

/** The answers of the balance, and the deck's margin. */
export const coveredAnswers: readonly CoveredAnswer[] = [
  {
    name: 'pull',
    unit: 'N',
    of: (d) => (Number.isNaN(d.sums.pull) ? 0 : d.sums.pull),
    range: (c) => printed(balanceOf(c).pull),
  },
  {
    name: 'rotation',
    unit: 'rev/s',
    of: (d) => d.sums.rotation,
    range: (c) => printed(balanceOf(c).tiedUpRotation),
  },
  {
    name: 'torque',
    unit: 'N·m',
    of: (d) => d.sums.torque,
    range: (c) => printed(balanceOf(c).tiedUpTorque),
  },
  {
    name: 'top speed',
    unit: 'm/s',
    // a draw that runs past the speeds looked at is faster than any that does not
    of: (d) => (Number.isNaN(d.sums.topSpeed) ? (d.sums.pull > 0 ? 18 : 0) : d.sums.topSpeed),
    range: (c) => printed(balanceOf(c).topSpeed),
  },
  {
    name: 'deck margin',
    unit: '1',
    of: (d) => d.deck,
    range: (c) => {
      const { of, margin } = weakestBay(c.craft)
      return of && printed(marginRange(of, margin))
    },
  },
]

/** Coverage of every answer on one craft by `draws` draws that no range was made from. */
export function coverageOf(
  c: CoveredCraft,
  answers: readonly CoveredAnswer[],
  draws: number,
  seed: number,
): Coverage[] {
  const random = seededRandom(seed)
  const doubts = doubtsOf(c.craft, c.solved)
  const maps = new MapStore(1)
  const drawn: DrawnOnce[] = []
  const bay = weakestBay(c.craft).of
  const deckDrawn = () => {
    if (!bay) return Number.NaN
    const at = bay.at(bay.doubts.map((d) => random.between(d.low, d.high)))
    return deckBay(at.bay, at.rider, undefined, 21).margin
  }
  for (let i = 0; i < draws; i++) {
    const { craft, leeway } = leantBy(
      c.craft,
      doubts,
      doubts.map(() => random.next()),
    )
    try {
      drawn.push({ craft, sums: probe(modelFromCraft(craft, maps, leeway, c.solved), 30), deck: deckDrawn() })
    } catch (error) {
      // values drawn together that make no geometry are no craft
      if (!(error instanceof RangeError)) throw error
    }
  }
  return answers.flatMap((answer) => {
    const range = answer.range(c)
    if (!range) return []
    const all = drawn
      .map(answer.of)
      .filter((y) => !Number.isNaN(y))
      .sort((a, b) => a - b)
    const share = (is: (y: number) => boolean) => all.filter(is).length / all.length
    return [
      {
        craft: c.name,
        answer: answer.name,
        range,
        median: all[all.length >> 1]!,
        inside: share((y) => y >= range.low && y <= range.high),
        below: share((y) => y < range.low),
        above: share((y) => y > range.high),
      },
    ]
  })
}
