/** What the findings of the bay are worked out from, and the words they share. */
import { inCelsius, ranged } from '../../base/answers/amounts.ts'
import type { Finding } from '../../base/answers/finding.ts'
import { type Sentence, say } from '../../base/answers/sentence.ts'
import type { Range } from '../../base/answers/solved.ts'
import type { BayAnswer, SteadyState } from './bayAnswer.ts'
import type { BayInputs, BaySpec } from './bayFromCraft.ts'
import { type BayLimits, printedBears } from './bayLimits.ts'
import type { Doubts } from './bayModel.ts'

/** A bay that was worked out. */
export interface BayView {
  inputs: BayInputs
  answer: BayAnswer
  bay: BaySpec
  hottest: SteadyState
  doubts: Doubts
}

export function viewOf(inputs: BayInputs, answer: BayAnswer): BayView | undefined {
  const { bay, hottest, doubts } = answer
  return bay && hottest && doubts ? { inputs, answer, bay, hottest, doubts } : undefined
}

/** K past which a bay is only called too hot: nothing runs in it long enough to get there */
const beyondSense = 423.15

/** "41 °C (35 to 50 °C)", or "past 150 °C" where no engine runs that long. */
export const airSays = (air: Range): Sentence =>
  air.value > beyondSense ? say`past ${inCelsius(beyondSense)}` : say`${ranged(inCelsius, capped(air))}`

const capped = (air: Range): Range => ({ ...air, high: Math.max(air.value, Math.min(air.high, beyondSense)) })

export const finding = (id: string, f: Omit<Finding, 'id' | 'question'>): Finding => ({
  id: `bay.${id}`,
  question: 'fuel',
  ...f,
})

/** What in this bay minds warm air, and the air each may have in K; the softest first. */
export function mindsOf({ inputs, bay }: BayView, limits: BayLimits): { what: string; T: number }[] {
  const { craft } = inputs
  const burns = inputs.engines.some((e) => e.burns && e.running)
  const foam =
    craft.foam.length > 0 || craft.deck.bays.some((b) => b.kind === 'foam' || b.kind === 'sandwich')
  const print = printedBears[bay.printed]
  const byAir = bay.cooling !== 'water' || bay.engineAir === 'bay'
  const list = [
    ...(foam ? [{ what: 'foam', T: limits.foam.value }] : []),
    ...(print === undefined
      ? []
      : [{ what: `printed parts of ${bay.printed}`, T: print - limits.printedBelow.value }]),
    ...(burns ? [{ what: 'petrol in its lines', T: limits.fuel.value }] : []),
    ...(burns && byAir ? [{ what: 'the engine that it cools or feeds', T: limits.engine.value }] : []),
  ]
  return list.sort((a, b) => a.T - b.T)
}

export const method =
  'Heat, air flow and walls of the bay solved together; orifice flow and stack pressure after the ASHRAE Handbook of Fundamentals'
export const balanceSource =
  'Heat of the engines by simulation, or as parts of their power (J. B. Heywood, 1988, from memory, and this project’s own runs)'
