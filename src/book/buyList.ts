/**
 * What to get: sheet that the stock lacks, plastic for the printer, rings, bolts of the drive line, fuel hose. What, how much, grams; no prices and
 * no makers. Masses of bolts are the shank's and a head and nut of the usual proportions; of hose, rubber twice as wide outside as inside: judgement.
 */
import { inCount, inGrams, inKg, inMetres, inMm, inTimes } from '../base/answers/amounts.ts'
import { type Sentence, say } from '../base/answers/sentence.ts'
import type { DriveAnswer } from '../trades/driveline/driveAnswer.ts'
import type { PatternsAnswer } from '../trades/patterns/patternsAnswer.ts'
import type { PatternsInputs } from '../trades/patterns/patternsFromCraft.ts'
import { laidOf } from '../trades/patterns/patternsTrade.ts'
import { toBuySays } from '../trades/patterns/stockFindings.ts'
import type { PrintsAnswer, SealAnswer } from '../trades/prints/printsAnswer.ts'
import type { Solved } from '../trades/trade.ts'
import type { BookSource } from './bookSource.ts'

type Row = readonly (string | Sentence)[]

const density = { steel: 7850, aluminium: 2700 } as const

/** Rows of what, how much, mass, what for. */
export function buyList(source: BookSource): Row[] {
  return [...sheets(source), ...plastics(source), ...rings(source), ...bolts(source), ...hoses(source)]
}

function answerOf<T>({ worked }: BookSource, id: string): T | undefined {
  return worked.find(({ trade }) => trade.id === id)?.now.answer as T | undefined
}

function sheets(source: BookSource): Row[] {
  const own = source.worked.find(({ trade }) => trade.id === 'patterns')
  if (!own) return []
  return laidOf(own.now as Solved<PatternsInputs, PatternsAnswer>).flatMap((g): Row[] => {
    if (g.buy === 0) return []
    const { length, width } = g.piece ?? { length: 2 * g.buy, width: 1 }
    return [
      [
        say`${g.metal} sheet of ${inMm(g.thickness, 0.1)}`,
        toBuySays(g),
        say`${inKg(length * width * g.thickness * density[g.metal], 0.01)}`,
        say`${inCount(g.pieces.reduce((n, p) => n + p.count, 0))} pieces`,
      ],
    ]
  })
}

function plastics({ parts }: BookSource): Row[] {
  const sums = new Map<string, { mass: number; count: number }>()
  for (const { how, material, mass = 0 } of parts) {
    if (how !== 'print') continue
    const sum = sums.get(material) ?? { mass: 0, count: 0 }
    sums.set(material, { mass: sum.mass + mass, count: sum.count + 1 })
  }
  return [...sums].map(
    ([material, { mass, count }]): Row => [
      `${material} for the printer`,
      say`${inGrams(mass)} and what goes into supports`,
      say`${inGrams(mass)}`,
      say`${inCount(count)} parts`,
    ],
  )
}

function rings(source: BookSource): Row[] {
  const answer = answerOf<PrintsAnswer>(source, 'prints')
  if (!answer) return []
  const seals: SealAnswer[] = [
    ...answer.necks.flatMap((n) => (n.seal ? [n.seal] : [])),
    ...answer.hatches.map((h) => h.seal),
  ]
  return seals.flatMap((s): Row[] =>
    s.seated
      ? [
          [
            say`ring ${s.seated.ring.name} of ${s.asked.material}, ${inMm(s.seated.ring.inside, 0.01)} by ${inMm(s.seated.ring.section, 0.01)}`,
            say`${inTimes(2, 1)}, one to spare`,
            '',
            s.name,
          ],
        ]
      : [],
  )
}

function bolts(source: BookSource): Row[] {
  const answer = answerOf<DriveAnswer | undefined>(source, 'driveline')
  return (answer?.inOrder ?? []).flatMap(({ of }): Row[] => {
    if (of.kind !== 'coupling') return []
    const { d } = of.bolt
    const long = of.thickness.value + 2 * d
    // shank, head and nut: cylinders of 1.6 d across, together 1.5 d high
    const each = density.steel * (Math.PI / 4) * (d * d * long + (1.6 * d) ** 2 * 1.5 * d)
    return [
      [
        say`bolt ${of.bolt.size}, class ${of.className}, ${inMm(long)} at least under the head`,
        say`${inCount(of.number)}`,
        say`${inGrams(of.number * each)}`,
        of.name,
      ],
    ]
  })
}

function hoses({ craft }: BookSource): Row[] {
  return (craft.fuel?.lines ?? []).map((line): Row => {
    const { value: bore } = line.bore
    const each = 1300 * Math.PI * bore * bore * line.length.value * 0.75
    return [
      say`fuel hose of ${inMm(bore, 0.1)} bore, for petrol with alcohol`,
      say`${inMetres(line.length.value * 1.1, 0.05)}`,
      say`${inGrams(each)}`,
      `${line.from} to ${line.to}`,
    ]
  })
}
