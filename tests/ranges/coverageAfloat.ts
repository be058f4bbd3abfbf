/** How often a fresh draw of all that is doubtful afloat, its hull made anew and settled in full, falls inside the range that is printed. */
import { seededRandom } from '../../src/base/numerics/random.ts'
import { quantitiesOf, whatIf } from '../../src/craft/index.ts'
import { atRest, openingsAtRest } from '../../src/trades/float/atRest.ts'
import { floatAnswer } from '../../src/trades/float/floatAnswer.ts'
import { floatFromCraft } from '../../src/trades/float/floatFromCraft.ts'
import { leftOutOfLists } from '../../src/trades/float/restDoubts.ts'
import type { Coverage } from './coverage.ts'
import type { CoveredCraft } from './crafts.ts'

const drawn = /^(weights|rider|hull|tanks|openings)\./

export interface CoverageAfloat extends Coverage {
  /** the least and the most of the draws */
  least: number
  most: number
}

/** Coverage of the draft as ridden and of each exhaust outlet's height at rest, or of the first opening where there is no outlet. */
export function coverageAfloat(
  { name, craft }: Pick<CoveredCraft, 'name' | 'craft'>,
  draws: number,
  seed: number,
): CoverageAfloat[] {
  const { input, weightsAssumed } = floatFromCraft(craft)
  const { rest } = floatAnswer(input)
  if (!rest) return []
  const random = seededRandom(seed)
  const doubts = [...quantitiesOf(craft)].filter((q) => drawn.test(q.path) && q.high > q.low)
  const listed = weightsAssumed ? [] : craft.weights.map((w, i) => [`weights.${i}.mass`, w.mass] as const)
  const outlet = Math.max(
    0,
    input.openings.findIndex((o) => o.kind === 'exhaust outlet'),
  )
  const got = { draft: [] as number[], outlet: [] as number[] }
  for (let i = 0; i < draws; i++) {
    const values: Record<string, number> = Object.fromEntries(
      doubts.map((q) => [q.path, random.between(q.low, q.high)]),
    )
    const left = random.between(leftOutOfLists.low, leftOutOfLists.high)
    for (const [path, q] of listed) values[path] = left * (values[path] ?? q.value)
    try {
      const of = floatFromCraft(whatIf(craft, values)).input
      got.draft.push(atRest(of).ridden.draftAft)
      got.outlet.push(openingsAtRest(of)[outlet] ?? Number.NaN)
    } catch (error) {
      // measures drawn together that make no hull are no craft
      if (!(error instanceof RangeError)) throw error
    }
  }
  return (
    [
      ['draft', got.draft, rest.draft],
      ['outlet height', got.outlet, rest.openings[outlet]],
    ] as const
  ).flatMap(([answer, list, range]) => {
    const all = list.filter(Number.isFinite).sort((a, b) => a - b)
    if (!range || all.length === 0) return []
    const share = (is: (y: number) => boolean) => all.filter(is).length / all.length
    return [
      {
        craft: name,
        answer,
        range,
        median: all[all.length >> 1]!,
        inside: share((y) => y >= range.low && y <= range.high),
        below: share((y) => y < range.low),
        above: share((y) => y > range.high),
        least: all[0]!,
        most: all.at(-1)!,
      },
    ]
  })
}
