/** What strength has to say about a craft's deck and foam: bay by bay, edges, pops in the sun, heat, a lighter deck. */
import { inKg, inKgPerM2, inKpa, inMm, inMpa, inNewtons, inTimes } from '../../base/answers/amounts.ts'
import type { Because, Finding, Standing } from '../../base/answers/finding.ts'
import { say } from '../../base/answers/sentence.ts'
import { searchFor } from './deckAnswer.ts'
import { type DeckAnswer, deckBay } from './deckBay.ts'
import { edges, joined, pops } from './edgeFindings.ts'
import { frames, hatches } from './frameFindings.ts'
import { heat } from './heatFindings.ts'
import { buildSays, lightestDeck } from './lightest.ts'
import type { StrengthInputs } from './strengthFromCraft.ts'
import { type StrengthLimits, strengthLimits } from './strengthLimits.ts'
import {
  bearWord,
  berger,
  factors,
  foamTables,
  loadWord,
  partWord,
  plates,
  yieldLines,
} from './strengthSay.ts'

/** The same from plain inputs. */
export function strengthFindingsOf(
  inputs: StrengthInputs,
  limits: StrengthLimits = strengthLimits,
): Finding[] {
  const answers = inputs.bays.map((b) => deckBay(b, inputs.rider, undefined, undefined, limits))
  return [
    ...(answers.length === 0 ? [noBays()] : answers.map((a, i) => bayFinding(a, i, inputs, limits))),
    ...edges(answers, inputs, limits),
    ...pops(inputs.bays, limits),
    ...joined(answers, inputs, limits),
    ...frames(answers, inputs, limits),
    ...hatches(answers, limits),
    ...lighter(answers, inputs, limits),
    ...inputs.hot.map((h, i) => heat(h, i, limits)),
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

/** Standing comes first, as it is what was asked; then a hard step, then a jump. */
function bayFinding(a: DeckAnswer, i: number, inputs: StrengthInputs, limits: StrengthLimits): Finding {
  const g = a.governs
  const heavy = deckBay(a.bay, inputs.riderHigh, undefined, undefined, limits)
  const [stand, step, jump] = a.loads as [DeckLoad, DeckLoad, DeckLoad]
  const soft = stand.deflection > limits.soft.value * Math.min(a.bay.length, a.bay.width)
  const fails =
    stand.margin < limits.standing.value ||
    jump.margin < limits.jump.value ||
    step.margin < limits.overloaded.value
  const standing: Standing = fails ? 'stop' : step.margin < limits.step.value || soft ? 'watch' : 'good'
  const asks = (l: DeckLoad) =>
    l.margin >= 1
      ? say`${loadWord[l.load]} is held ${inTimes(l.margin, 0.1)} times over`
      : say`${loadWord[l.load]} asks ${inTimes(1 / l.margin, 0.1)} times what the ${bearWord(l.weakest)}${
          l.load === 'step' && l.weakest === 'skin'
            ? say` without a dish deeper than ${inMm(limits.stepDish.value, 0.1)}`
            : ''
        }`
  const hard = jump.margin < Math.min(1, step.margin) ? jump : step
  const because: Because[] = [
    {
      says: say`${loadWord[g.load]}: ${inNewtons(g.force)}, elastic ${inMpa(g.stress)} in the sheet at its worst place, which yields at ${inMpa(g.allowed)}`,
      link: `deck.bays.${i}.skin`,
    },
    ...(g.foam
      ? [
          {
            says: say`${inKpa(g.foam.pressure)} on the foam of ${inKpa(g.foam.allowed)} it may have`,
            link: `deck.bays.${i}.foam`,
          },
        ]
      : []),
    ...(g.stringer
      ? [
          {
            says: say`${inMpa(g.stringer.stress)} in the stringers, which give a ${inTimes(1 / g.stringer.ofSpan, 1)}th of their span`,
          },
        ]
      : []),
    ...(g.core ? [{ says: say`${inKpa(g.core.stress)} shear in the core of ${inKpa(g.core.allowed)}` }] : []),
    { says: say`${inKgPerM2(a.massPerArea)}, ${inKg(a.mass, 0.01)} for the bay` },
  ]
  if (a.bay.support.kind === 'alone' && stand.bendingOnly > a.bay.t / 2)
    because.push({
      says: say`bending alone would say ${inMm(stand.bendingOnly, 0.1)}: not to be believed above half the sheet’s thickness, the sheet hangs like a net instead`,
    })
  return {
    id: `deck.bay.${i}`,
    question: 'strength',
    says: say`${a.bay.name}: ${asks(stand)} and gives ${inMm(stand.deflection, 0.1)}; ${asks(hard)}.`,
    ...(standing === 'good' ? {} : { act: actOf(a, g, soft) }),
    harm: fails ? 'before the water' : 'comfort',
    twin: 'deck.bay',
    value: a.margin,
    low: Math.min(a.margin, heavy.margin) * 0.8,
    high: a.margin * 1.2,
    unit: '1',
    standing,
    because,
    sources: [plates, yieldLines, berger, ...(g.foam ? [foamTables] : []), factors],
  }
}

type DeckLoad = DeckAnswer['loads'][number]

/** What would help the part that gives first; strength of a sheet goes with its thickness squared. */
function actOf(a: DeckAnswer, g: DeckLoad, soft: boolean) {
  const thicker = a.bay.t / Math.sqrt(Math.min(1, g.skin))
  if (g.margin >= 1 && soft)
    return say`foam under it, or a frame across, stiffens it from ${inMm(a.deflection, 0.1)}`
  switch (g.weakest) {
    case 'skin':
      return say`sheet of ${inMm(thicker, 0.1)} instead of ${inMm(a.bay.t, 0.1)}, or supports closer together`
    case 'foam':
      return say`firmer foam, or sheet above ${inMm(a.bay.t, 0.1)} that spreads the foot further`
    case 'stringer':
      return say`stringers higher, or ${inTimes(1 / g.margin, 0.1)} times as many`
    case 'core':
      return say`a core ${inTimes(1 / g.margin, 0.1)} times as thick, or a firmer one`
  }
}

/** A lighter build for the bay that weighs most, if there is one. */
function lighter(answers: readonly DeckAnswer[], inputs: StrengthInputs, limits: StrengthLimits): Finding[] {
  const worst = answers.reduce<DeckAnswer | undefined>(
    (a, b) => (a === undefined || b.mass > a.mass ? b : a),
    undefined,
  )
  if (worst === undefined) return []
  const { bay } = worst
  const found = lightestDeck(searchFor(bay, inputs.riderHigh, inputs.hot, inputs.bayAir))
  const best = found.holding[0]
  if (
    best === undefined ||
    (best.massPerArea > limits.lighter.value * worst.massPerArea && worst.margin >= 1)
  )
    return []
  return [
    {
      id: 'deck.lighter',
      question: 'strength',
      says:
        worst.margin >= 1
          ? say`${bay.name} could be lighter: ${buildSays(best.bay)} holds at ${inKgPerM2(best.massPerArea)} against ${inKgPerM2(worst.massPerArea)} now.`
          : say`The lightest build found that holds ${bay.name}: ${buildSays(best.bay)}, ${inKgPerM2(best.massPerArea)}.`,
      value: best.massPerArea,
      unit: 'kg/m²',
      standing: 'good',
      because: found.compared.map((c) => ({
        says: say`${buildSays(c.bay)}: ${inKgPerM2(c.massPerArea)}, ${inMm(c.deflection, 0.1)} underfoot, ${c.margin >= 1 ? 'holds' : say`${inTimes(1 / c.margin, 0.1)} times too much on the ${partWord[c.governs.weakest]}`}`,
      })),
      sources: [plates, 'H. G. Allen, Analysis and Design of Structural Sandwich Panels (1969)', foamTables],
    },
  ]
}
