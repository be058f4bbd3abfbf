/** What the bay has to say: how warm it gets and in how many minutes, after a stop, in the sun; then breath, water, vapour, fumes. */
import { inCelsius, ranged } from '../../base/answers/amounts.ts'
import type { Finding } from '../../base/answers/finding.ts'
import { say } from '../../base/answers/sentence.ts'
import { dunkingCard } from './afterDunking.ts'
import { fumes, suction, vapour } from './bayAirFindings.ts'
import type { BayAnswer } from './bayAnswer.ts'
import type { BayInputs } from './bayFromCraft.ts'
import type { BayLimits } from './bayLimits.ts'
import { airSays, balanceSource, finding, method, mindsOf, viewOf } from './bayView.ts'
import { afterWork, airOfWork, inSun } from './bayWarmFindings.ts'
import { coolingWater } from './bayWaterFindings.ts'

export function bayFindings(inputs: BayInputs, answer: BayAnswer, limits: BayLimits): Finding[] {
  const v = viewOf(inputs, answer)
  const own = v
    ? [
        airOfWork(v, limits),
        afterWork(v, limits),
        coolingWater(v, limits),
        suction(v, limits),
        vapour(v, limits),
        fumes(v, limits),
        inSun(v, limits),
      ]
    : [unknown(inputs, answer)]
  return [...own.filter((f) => f !== undefined), dunking(inputs)]
}

/** No bay in the file, or one that no engine was worked out for. */
function unknown({ bay }: BayInputs, { air }: BayAnswer): Finding {
  return finding('unknown', {
    says: bay
      ? say`How warm the engine bay gets is not known, as no engine of the file gives its power yet; foam, prints and petrol are judged at ${ranged(inCelsius, air)}.`
      : say`How warm the engine bay gets is not known, as the file says nothing of it; foam, prints and petrol are judged at ${ranged(inCelsius, air)}.`,
    value: air.value,
    low: air.low,
    high: air.high,
    unit: 'K',
    standing: 'unknown',
    because: [
      { says: air.says, link: air.link },
      {
        says: bay
          ? 'the bay is warmed by what its engines give'
          : 'how the engines are cooled, how pipe and muffler stand, and area and height of each opening are enough',
        link: bay ? 'engines' : 'bay',
      },
    ],
    measureNext: {
      what: 'measure each opening of the engine bay across, and its height over the floor',
      with: 'tape',
      minutes: 5,
      path: 'bay',
    },
    sources: ['The craft file'],
  })
}

function dunking(inputs: BayInputs): Finding {
  const card = dunkingCard(inputs)
  return finding('dunking', {
    says: say`After a dunking: ${card.says}, in this order.`,
    standing: 'good',
    because: card.steps.map((says) => ({ says })),
    sources: ['Common practice of small two-strokes pulled out of the water, no source'],
  })
}

export function bayHeadline(inputs: BayInputs, answer: BayAnswer, limits: BayLimits): Finding {
  const v = viewOf(inputs, answer)
  if (!v) return { ...unknown(inputs, answer), id: 'bay.headline' }
  const { air } = v.hottest
  const least = mindsOf(v, limits)[0]
  const over = least !== undefined && air.value > least.T
  return {
    id: 'bay.headline',
    question: 'fuel',
    says: over
      ? say`The engine bay gets too warm: ${airSays(air)} where ${least.what} may have ${inCelsius(least.T)}.`
      : say`The engine bay stays cool enough: ${airSays(air)}${least ? say` where ${least.what} may have ${inCelsius(least.T)}` : ''}.`,
    value: air.value,
    low: air.low,
    high: air.high,
    unit: 'K',
    standing: over ? 'watch' : 'good',
    because: [{ says: 'heat of the engines against air, walls and water', link: 'bay' }],
    sources: [method, balanceSource],
  }
}
