/** The trade patterns: what is cut from sheet, rolled, folded and welded, and the way of each pipe in space. */
import { inCount, inMetres, inMm } from '../../base/answers/amounts.ts'
import type { Finding } from '../../base/answers/finding.ts'
import type { MadePart } from '../../base/answers/madePart.ts'
import { say } from '../../base/answers/sentence.ts'
import { defineTrade, type NumberTable, type Solved } from '../trade.ts'
import { deckParts } from './deckParts.ts'
import { type DeckAsks, deckWork } from './deckWork.ts'
import { exhaustParts } from './exhaustParts.ts'
import { type PatternsAnswer, patternsAnswer } from './patternsAnswer.ts'
import { patternsFindings } from './patternsFindings.ts'
import { type PatternsInputs, patternsFromCraft } from './patternsFromCraft.ts'
import { type PatternsLimits, patternsLimits } from './patternsLimits.ts'
import { patternReckoners } from './patternsReckoners.ts'
import { type LaidGroup, laidOnStock, stockFindings } from './stockFindings.ts'
import { tankParts } from './tankParts.ts'
import { weldCautions } from './workPlan.ts'

type Now = Solved<PatternsInputs, PatternsAnswer>

const kept = new WeakMap<object, readonly MadePart[]>()

/** The parts of a craft, drawn once for each answer. */
function partsOf({ inputs, answer }: Now): readonly MadePart[] {
  const known = kept.get(answer)
  if (known) return known
  const made = [
    ...inputs.pipes.flatMap((pipe) =>
      exhaustParts(pipe, answer.ways.find((w) => w.pipe === pipe)?.route.frames),
    ),
    ...tankParts(inputs),
    ...deckParts(inputs),
    ...deckWork(inputs, inputs.asks),
  ]
  kept.set(answer, made)
  return made
}

const laid = new WeakMap<object, readonly LaidGroup[]>()

/** Where the pieces go, laid once for each answer. */
export function laidOf(now: Now): readonly LaidGroup[] {
  const known = laid.get(now.answer)
  if (known) return known
  const groups = laidOnStock(partsOf(now), now.inputs.stock)
  laid.set(now.answer, groups)
  return groups
}

/** What is wanted of each sheet, and to buy. */
const sheetTable = (groups: readonly LaidGroup[]): NumberTable => ({
  caption: 'Sheet that is wanted, laid on what there is first',
  heads: ['Metal', 'Thickness', 'Pieces', 'Cut', 'Sheets opened', 'To buy'],
  rows: groups.map((g) => [
    g.metal,
    inMm(g.thickness, 0.1),
    inCount(g.pieces.reduce((n, p) => n + p.count, 0)),
    inMetres(
      g.nested.sheets.reduce((sum, s) => sum + s.cutLength, 0),
      0.1,
    ),
    inCount(g.nested.sheets.length),
    inCount(g.buy),
  ]),
})

/** One finding that counts what there is to make. */
function headline(now: Now): Finding {
  const parts = partsOf(now).filter((p) => !p.instead)
  const mass = parts.reduce((sum, p) => sum + (p.mass ?? 0), 0)
  const none = parts.length === 0
  return {
    id: 'patterns.headline',
    question: 'make',
    says: none
      ? 'The file names nothing to cut from sheet: no pipe, no deck.'
      : say`${inCount(parts.length)} parts of sheet stand in the file, ${{ value: mass, kind: 'mass', unit: 'kg', step: 0.1 }} in all.`,
    standing: none ? 'unknown' : 'good',
    because: [{ says: 'pipes, muffler, flanges and deck of the file', link: 'engines' }],
    sources: ['exact geometry'],
  }
}

export const patternsTrade = defineTrade<PatternsInputs, PatternsAnswer, DeckAsks | undefined>({
  id: 'patterns',
  question: 'make',
  title: 'Sheet: patterns to cut and weld',
  reads: ['engines', 'foam', 'tanks', 'deck', 'stock'],
  inputs: (craft, asks) => patternsFromCraft(craft, asks),
  answer: patternsAnswer,
  limits: patternsLimits,
  judge: (now, limits) => [
    ...patternsFindings(now.inputs, now.answer, limits as PatternsLimits),
    ...partsOf(now).flatMap((p) => p.findings),
    // without stock in the file nobody asks what it lacks
    ...(now.inputs.stock ? stockFindings(now.inputs, laidOf(now), limits as PatternsLimits) : []),
  ],
  headline,
  parts: partsOf,
  numbers: (now) => [
    ...(partsOf(now).length > 0 ? [sheetTable(laidOf(now))] : []),
    ...now.answer.ways.map(({ pipe, route }) => ({
      caption: `The way of the pipe of ${pipe.name}, to build it on a board`,
      heads: ['At', 'From the flange', 'Forward', 'To port', 'Up', 'Outside'],
      rows: route.points.map((p) => [
        pipe.parts[p.leg]!.name,
        inMetres(p.along, 1e-3),
        ...p.at.map((v) => inMm(v)),
        inMm(2 * p.radius),
      ]),
    })),
  ],
  reckoners: patternReckoners,
  cautions: weldCautions,
  method: [
    'Patterns are drawn for the middle of the sheet, which keeps its length when it is rolled; diameters of the file are inside ones.',
    'A bend is straight pieces between joints, cut from one cone; the way in space runs along those straight pieces, so that drawing and pipe end at the same place.',
    'What closes a way on its hole is the set of three changes that alters least, tried by laying the changed way again. Gaps are measured from the outside of the pipe every few millimetres.',
  ],
})
