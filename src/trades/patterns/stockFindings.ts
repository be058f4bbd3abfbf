/**
 * Sheet there is against sheet that is wanted: all pieces of one metal and thickness laid on the stock of the file, then on sheets to buy.
 * Sheets of 2 m by 1 m are what dealers keep (common practice, no source); room for the cut and from the edge is judgement.
 */
import { inCount, inMm, inPercent } from '../../base/answers/amounts.ts'
import type { Finding } from '../../base/answers/finding.ts'
import type { FlatPiece, MadePart } from '../../base/answers/madePart.ts'
import { type Sentence, say } from '../../base/answers/sentence.ts'
import { type Nested, nest, outlinesOf, type StockSheet, sameThickness } from '../../shapes/nest.ts'
import type { PatternsInputs } from './patternsFromCraft.ts'
import type { PatternsLimits } from './patternsLimits.ts'

export type SheetMetal = 'steel' | 'aluminium'

/** All pieces of one metal and thickness, and where they go. */
export interface LaidGroup {
  metal: SheetMetal
  /** m */
  thickness: number
  pieces: readonly FlatPiece[]
  nested: Nested
  /** sheets to buy, of `bought` */
  buy: number
  /** what is taken of the one sheet to buy, m: a piece as large will do */
  piece?: { length: number; width: number }
}

/** part of its thickness that rolled sheet may be off, and at least, m: about what EN 10131 and EN 485-4 allow below 3 mm, from memory */
const rolled = { part: 0.06, least: 0.06e-3 } as const

/** The thickness that a measured sheet was sold as: the nearest of those wanted, where it may be that; else as measured. */
function soldAs(measured: number, wanted: readonly number[]): number {
  const nearest = wanted.reduce((a, b) => (Math.abs(b - measured) < Math.abs(a - measured) ? b : a))
  const off = Math.abs(measured - nearest)
  return off <= Math.max(rolled.least, rolled.part * nearest) + 1e-9 ? nearest : measured
}

/** m: what dealers keep */
export const bought = { length: 2, width: 1 } as const
/** m: width of the cut, between pieces, from the edge */
const rules = { kerf: 1e-3, gap: 3e-3, edge: 5e-3 }
const toBuy = 'to buy'

const metalOf = (part: MadePart): SheetMetal => (/aluminium/.test(part.material) ? 'aluminium' : 'steel')

/** Lays every piece of the parts on the stock of the file first. Gaskets and what is no metal are left out. */
export function laidOnStock(parts: readonly MadePart[], stock: PatternsInputs['stock']): LaidGroup[] {
  const groups: { metal: SheetMetal; thickness: number; pieces: FlatPiece[] }[] = []
  for (const part of parts.filter((p) => !p.instead))
    for (const piece of part.flats?.() ?? []) {
      if (/gasket/.test(piece.id)) continue
      const metal = metalOf(part)
      const group = groups.find(
        (g) => g.metal === metal && Math.abs(g.thickness - piece.thickness) < sameThickness,
      )
      if (group) group.pieces.push(piece)
      else groups.push({ metal, thickness: piece.thickness, pieces: [piece] })
    }
  return groups.map((g) => {
    const have = (stock?.sheets ?? [])
      .map((s, k): StockSheet & { metal: string } => ({
        id: `${k} ${s.name}`,
        metal: s.metal,
        width: s.length.value,
        height: s.width.value,
        // a caliper reads what the mill rolled, the patterns are drawn for what it was sold as
        thickness: soldAs(
          s.thickness.value,
          groups.filter((one) => one.metal === g.metal).map((one) => one.thickness),
        ),
        count: Math.round(s.count.value),
      }))
      .filter((s) => s.metal === g.metal)
    const shop: StockSheet = {
      id: toBuy,
      width: bought.length,
      height: bought.width,
      thickness: g.thickness,
      count: 1,
      toBuy: true,
    }
    const nested = nest(g.pieces, [...have, shop], rules)
    const buy = nested.buy[toBuy] ?? 0
    return { ...g, nested, buy, ...(buy === 1 ? { piece: takenOf(nested) } : {}) }
  })
}

/** m: a piece is asked for in whole steps of this, so that laid on it again all still goes */
const step = 0.01

/** The rectangle from a corner of the sheet to buy that holds all that lies on it, m. */
function takenOf({ sheets }: Nested): { length: number; width: number } {
  const fresh = sheets.find((s) => s.stock.id === toBuy)!
  const points = fresh.laid.flatMap((l) => outlinesOf(l.piece, l.turn, l.x, l.y).flat())
  const reach = (k: 0 | 1, most: number) =>
    Math.min(most, step * Math.ceil((Math.max(...points.map((p) => p[k])) + rules.edge + rules.gap) / step))
  return { length: reach(0, bought.length), width: reach(1, bought.width) }
}

/** What is to buy of a group, in words. */
export const toBuySays = ({ buy, piece }: LaidGroup): Sentence =>
  piece
    ? say`a piece of ${inMm(piece.length)} by ${inMm(piece.width)}`
    : say`${inCount(buy)} sheets of ${inMm(bought.length)} by ${inMm(bought.width)}`

const sheetSays = (g: LaidGroup): Sentence => say`${g.metal} of ${inMm(g.thickness, 0.1)}`

/** What of the stock is enough, what is to buy, what goes on no sheet, and what is too tight for the roller. */
export function stockFindings(
  inputs: PatternsInputs,
  groups: readonly LaidGroup[],
  limits: PatternsLimits,
): Finding[] {
  const { stock } = inputs
  if (!stock) return []
  const finding = (id: string, f: Omit<Finding, 'id' | 'question' | 'sources'>): Finding => ({
    id: `patterns.${id}`,
    question: 'make',
    sources: ['exact geometry', 'sheets of dealers: common practice, no source'],
    ...f,
  })
  const sheets = groups.map((g) => {
    const id = `stock.${g.metal}.${Math.round(g.thickness * 1e4)}`
    const because = [{ says: say`${inCount(g.pieces.length)} pieces of it`, link: 'stock.sheets' }]
    const left = g.nested.left[0]
    if (left)
      return finding(id, {
        says: say`${left.piece.title} goes on no sheet: ${left.fault.says}`,
        standing: 'watch',
        harm: 'comfort',
        because,
        act: say`cut it in two with a seam, or buy a sheet longer than ${inMm(bought.length)}`,
      })
    if (g.buy > 0)
      return finding(id, {
        says: say`What there is of ${sheetSays(g)} is not enough: ${toBuySays(g)} more is wanted.`,
        value: g.buy,
        unit: '1',
        standing: 'watch',
        harm: 'comfort',
        twin: 'patterns.stock',
        because,
        act: say`get ${toBuySays(g)} of ${sheetSays(g)}`,
      })
    const used = Math.max(...g.nested.sheets.map((s) => s.used))
    return finding(id, {
      says: say`What there is of ${sheetSays(g)} is enough: its fullest sheet is used to ${inPercent(used)}.`,
      value: used,
      unit: '1',
      standing: 'good',
      because,
    })
  })
  return [...sheets, ...tightFor(inputs, limits, finding)]
}

/** What the builder's roller, or the pipe bent over, is too thick for. */
function tightFor(
  { pipes, stock }: PatternsInputs,
  limits: PatternsLimits,
  finding: (id: string, f: Omit<Finding, 'id' | 'question' | 'sources'>) => Finding,
): Finding[] {
  const roller = stock?.roller?.value
  if (roller === undefined) return []
  return pipes.flatMap((pipe) =>
    pipe.parts.flatMap((part, k) => {
      const inside = 2 * Math.min(part.startRadius, part.endRadius)
      if (inside >= limits.rolls.value * roller) return []
      return [
        finding(`roll.${pipe.engine + 1}.${k + 1}`, {
          says: say`${part.name} is ${inMm(inside)} across where it is narrowest: what you roll over is ${inMm(roller)}.`,
          value: inside,
          unit: 'm',
          standing: 'watch',
          harm: 'comfort',
          twin: 'patterns.roll',
          because: [
            { says: say`least roll ${inMm(roller)}`, link: 'stock.roller' },
            { says: part.name, link: part.path },
          ],
          act: say`bend ${part.name} over a pipe or bar of ${inMm(0.9 * inside)} or less, or take a drawn tube where it is straight`,
        }),
      ]
    }),
  )
}
