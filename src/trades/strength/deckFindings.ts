/** What strength has to say about a craft's deck and foam: bay by bay, edges, pops in the sun, heat, a lighter deck. */
import type { Because, Finding, Standing } from '../../base/answers/finding.ts'
import type { Craft } from '../../craft/schema/craftSchema.ts'
import { searchFor } from './deckAnswer.ts'
import { type DeckAnswer, deckBay } from './deckBay.ts'
import { edges, joined, pops } from './edgeFindings.ts'
import { frames, hatches } from './frameFindings.ts'
import { heat } from './heatFindings.ts'
import { lightestDeck } from './lightest.ts'
import { type StrengthInputs, strengthFromCraft } from './strengthFromCraft.ts'
import {
  bearWord,
  berger,
  factors,
  foamTables,
  kPa,
  loadWord,
  MPa,
  mm,
  partWord,
  plates,
} from './strengthSay.ts'

/** Findings of the question "strength" about deck and foam. */
export function strengthFindings(craft: Craft): Finding[] {
  return strengthFindingsOf(strengthFromCraft(craft))
}

/** The same from plain inputs. */
export function strengthFindingsOf(inputs: StrengthInputs): Finding[] {
  const answers = inputs.bays.map((b) => deckBay(b, inputs.rider))
  return [
    ...(answers.length === 0 ? [noBays()] : answers.map((a, i) => bayFinding(a, i, inputs))),
    ...edges(answers, inputs),
    ...pops(inputs.bays),
    ...joined(answers, inputs),
    ...frames(answers, inputs),
    ...hatches(answers),
    ...lighter(answers, inputs),
    ...inputs.hot.map((h, i) => heat(h, i)),
  ]
}

function noBays(): Finding {
  return {
    id: 'deck.none',
    question: 'strength',
    says: 'Whether the deck holds is not known: the file names no bay of it.',
    standing: 'unknown',
    because: [{ says: 'no bays in the file', link: 'deck.bays' }],
    measureNext: {
      what: 'measure the field of deck you stand on, its sheet, and what holds it up',
      with: 'tape and caliper',
      minutes: 10,
      path: 'deck.bays',
    },
    sources: ['The craft file'],
  }
}

function bayFinding(a: DeckAnswer, i: number, inputs: StrengthInputs): Finding {
  const g = a.governs
  const heavy = deckBay(a.bay, inputs.riderHigh)
  const stand = a.loads[0]!
  const soft = stand.deflection > Math.min(a.bay.length, a.bay.width) / 50
  const standing: Standing =
    a.margin >= 1 ? (soft ? 'watch' : 'good') : g.load === 'jump' && a.margin < 1 ? 'stop' : 'watch'
  const dish = g.load === 'step' && g.weakest === 'skin' ? ' and takes a lasting dish' : ''
  const says =
    a.margin >= 1
      ? `${a.bay.name}: holds, ${a.margin.toFixed(1)} times what ${loadWord[g.load]} asks of the ${partWord[g.weakest]}; it gives ${mm(stand.deflection)} when you stand on it.`
      : `${a.bay.name}: ${loadWord[g.load]} asks ${(1 / a.margin).toFixed(1)} times what the ${bearWord(g.weakest)}${dish}; it gives ${mm(stand.deflection)} when you stand on it.`
  const because: Because[] = [
    {
      says: `${loadWord[g.load]}: ${Math.round(g.force)} N, ${MPa(g.stress)} in the sheet of ${MPa(g.allowed)} it may have`,
      link: `deck.bays.${i}.skin`,
    },
    ...(g.foam
      ? [
          {
            says: `${kPa(g.foam.pressure)} on the foam of ${kPa(g.foam.allowed)} it may have`,
            link: `deck.bays.${i}.foam`,
          },
        ]
      : []),
    ...(g.stringer
      ? [
          {
            says: `${MPa(g.stringer.stress)} in the stringers, which give 1/${Math.round(1 / g.stringer.ofSpan)} of their span`,
          },
        ]
      : []),
    ...(g.core ? [{ says: `${kPa(g.core.stress)} shear in the core of ${kPa(g.core.allowed)}` }] : []),
    { says: `${a.massPerArea.toFixed(1)} kg/m², ${a.mass.toFixed(2)} kg for the bay` },
  ]
  if (a.bay.support.kind === 'alone' && stand.bendingOnly > a.bay.t / 2)
    because.push({
      says: `bending alone would say ${mm(stand.bendingOnly)}: not to be believed above half the sheet’s thickness, the sheet hangs like a net instead`,
    })
  return {
    id: `deck.bay.${i}`,
    question: 'strength',
    says,
    value: a.margin,
    low: Math.min(a.margin, heavy.margin) * 0.8,
    high: a.margin * 1.2,
    unit: '1',
    standing,
    because,
    sources: [plates, berger, ...(g.foam ? [foamTables] : []), factors],
  }
}

/** A lighter build for the bay that weighs most, if there is one. */
function lighter(answers: readonly DeckAnswer[], inputs: StrengthInputs): Finding[] {
  const worst = answers.reduce<DeckAnswer | undefined>(
    (a, b) => (a === undefined || b.mass > a.mass ? b : a),
    undefined,
  )
  if (worst === undefined) return []
  const { bay } = worst
  const found = lightestDeck(searchFor(bay, inputs.riderHigh))
  const best = found.holding[0]
  if (best === undefined || (best.massPerArea > 0.97 * worst.massPerArea && worst.margin >= 1)) return []
  return [
    {
      id: 'deck.lighter',
      question: 'strength',
      says:
        worst.margin >= 1
          ? `${bay.name} could be lighter: ${best.bay.name} holds at ${best.massPerArea.toFixed(1)} kg/m² against ${worst.massPerArea.toFixed(1)} now.`
          : `The lightest build found that holds ${bay.name}: ${best.bay.name}, ${best.massPerArea.toFixed(1)} kg/m².`,
      value: best.massPerArea,
      unit: 'kg/m²',
      standing: 'good',
      because: found.compared.map((c) => ({
        says: `${c.bay.name}: ${c.massPerArea.toFixed(1)} kg/m², ${mm(c.deflection)} underfoot, ${c.margin >= 1 ? 'holds' : `${(1 / c.margin).toFixed(1)} times too much on the ${partWord[c.governs.weakest]}`}`,
      })),
      sources: [plates, 'H. G. Allen, Analysis and Design of Structural Sandwich Panels (1969)', foamTables],
    },
  ]
}
