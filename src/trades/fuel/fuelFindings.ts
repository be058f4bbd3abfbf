/** All that the fuel has to say, and its one sentence. */
import { ranged } from '../../base/answers/amounts.ts'
import { type Finding, type Standing, worstFirst } from '../../base/answers/finding.ts'
import { say } from '../../base/answers/sentence.ts'
import type { FuelAnswer } from './fuelAnswer.ts'
import type { FuelCraft, FuelInputs } from './fuelFromCraft.ts'
import type { FuelLimits } from './fuelLimits.ts'
import { hagen, inTankLitres, inUse, ownTank } from './fuelSay.ts'
import { feedFindings, filterFinding, hoseFindings, vapourFinding } from './lineFindings.ts'
import { bowlFinding, chipFinding, jetFindings, oilFinding } from './mixtureFindings.ts'
import { dayFinding, fillFinding, pickupFinding, strapFinding } from './tankFindings.ts'
import { ventEndFinding, ventFinding } from './ventFindings.ts'

/** Every finding; none where the file tells too little, as the headline says so. */
export function fuelFindings(
  inputs: FuelInputs,
  answer: FuelAnswer | undefined,
  limits: FuelLimits,
): Finding[] {
  const c = inputs.known
  if (!c || !answer) return []
  return allOf(c, answer, limits)
}

function allOf(c: FuelCraft, a: FuelAnswer, limits: FuelLimits): Finding[] {
  const found = [
    fillFinding(c, a),
    ventFinding(c, a, limits),
    ventEndFinding(c, a, limits),
    pickupFinding(c, a, limits),
    dayFinding(c, a, limits),
    strapFinding(c, limits),
    ...feedFindings(c, a, limits),
    vapourFinding(c, a, limits),
    filterFinding(c, a, limits),
    ...hoseFindings(c),
    oilFinding(c, a, limits),
    ...jetFindings(c, a, limits),
    chipFinding(c, a, limits),
    bowlFinding(c, a, limits),
  ]
  return found.filter((f) => f !== undefined)
}

/** The page's answer. */
export function fuelHeadline(
  inputs: FuelInputs,
  answer: FuelAnswer | undefined,
  limits: FuelLimits,
): Finding {
  const base = { id: 'fuel.headline', question: 'fuel' as const }
  const c = inputs.known
  if (!c || !answer) {
    const { lacks, path } = inputs as Extract<FuelInputs, { lacks: string }>
    return {
      ...base,
      says: `Whether it will be fed is not known: ${lacks}.`,
      standing: 'unknown',
      because: [{ says: 'given in the craft file', link: path }],
      measureNext: {
        what: 'measure the hose from the tank to the carburettor',
        with: 'tape',
        minutes: 5,
        path: 'fuel',
      },
      sources: ['The craft file'],
    }
  }
  const all = allOf(c, answer, limits)
  const worst = worstFirst(all)[0]
  const standing: Standing = worst?.standing === 'unknown' ? 'unknown' : (worst?.standing ?? 'good')
  const stops = all.filter((f) => f.standing === 'stop').length
  const { day, tank } = answer
  const lasts = say`a full tank gives ${inTankLitres(tank.usable)}, ${ranged(inUse, day.lasts)} of this running`
  const says =
    worst && standing === 'stop'
      ? say`It will not be fed as it is${stops > 1 ? ', for more than one reason' : ''}: ${lowered(worst)}`
      : standing === 'watch'
        ? say`It will be fed, with something to watch: ${lasts}.`
        : standing === 'unknown'
          ? say`Part of its way is not known: ${lasts}.`
          : say`It will be fed in every lean looked at: ${lasts}.`
  return {
    ...base,
    says,
    value: day.lasts.value,
    low: day.lasts.low,
    high: day.lasts.high,
    unit: 's',
    standing,
    because: [
      { says: 'tank, vent, pick-up, lines, filter and jets, each in its worst lean', link: 'fuel' },
      ...(worst && standing !== 'good' ? [{ says: 'the worst of them', link: `finding:${worst.id}` }] : []),
    ],
    sources: [ownTank, hagen],
  }
}

/** A finding's sentence as the second half of another. */
function lowered({ says }: Finding) {
  if (typeof says === 'string') return says.charAt(0).toLowerCase() + says.slice(1)
  return says.map((p, i) => (i === 0 && typeof p === 'string' ? p.charAt(0).toLowerCase() + p.slice(1) : p))
}
