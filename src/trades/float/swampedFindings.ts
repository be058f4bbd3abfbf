/** What flotation has to say about a swamped craft: lift, foam, leaks, published sums to compare with. */

import { inKgPerM3, inMetres, inMm, inPercent } from '../../base/answers/amounts.ts'
import type { Because, Finding, Standing } from '../../base/answers/finding.ts'
import { type Sentence, say } from '../../base/answers/sentence.ts'
import type { FloatAnswer } from './floatAnswer.ts'
import type { FloatLimits } from './floatLimits.ts'
import { cm, kg, lasting, litres, naval, own } from './floatSay.ts'
import { basicFlotationWeights, mostFoamCredit, weightCapacity } from './flotation.ts'
import { foamKeepsClear, foamWanted } from './foamWords.ts'
import type { FloatInput } from './input.ts'
import type { LeakCase } from './leakCase.ts'
import { wholeLift } from './swamped.ts'

export function swampedFinding(input: FloatInput, a: FloatAnswer): Finding {
  const c = (name: string) => a.cases.find((x) => x.name === name)!
  const alone = c('swamped, nobody')
  const held = c('swamped, rider alongside')
  const aboard = c('swamped, rider aboard')
  const reserve = -alone.deficit
  const air = input.compartments.filter((x) => x.sealed)
  // a file that lists neither foam nor sealed space may simply not have got that far
  const unlisted = a.foam.length === 0 && air.length === 0
  const standing: Standing = alone.sinks
    ? unlisted
      ? 'unknown'
      : 'stop'
    : held.sinks || alone.over || held.over || aboard.sinks || aboard.over
      ? 'watch'
      : 'good'
  const rolls: Sentence =
    !alone.sinks && alone.over
      ? ' It rolls over as it floods: the foam is too low or too near the middle.'
      : ''
  const says: Sentence = alone.sinks
    ? unlisted
      ? say`No foam and no sealed space is listed; if there is none, it sinks when swamped: ${kg(alone.deficit)} of lift is missing even with nobody aboard.`
      : say`Swamped, it sinks: ${kg(alone.deficit)} of lift is missing even with nobody aboard.`
    : held.sinks
      ? say`Swamped, it floats by itself with ${kg(reserve)} to spare, not with a rider holding on.${rolls}`
      : aboard.sinks
        ? say`Swamped, it floats and carries a rider holding on; lying on it takes ${kg(aboard.deficit)} more lift.${rolls}`
        : aboard.over
          ? `Swamped, it floats and has the lift for its rider, but rolls over with the rider lying on it.`
          : say`Swamped, it floats and still carries its rider lying on deck.${rolls}`
  return {
    id: 'float.swamped',
    question: 'float',
    says,
    value: reserve,
    unit: 'kg',
    standing,
    because: [
      { says: say`foam lifts ${kg(a.foam.reduce((s, f) => s + f.lift, 0))} under water`, link: 'foam' },
      air.length > 0
        ? {
            says: `sealed spaces counted as dry: ${air.map((x) => x.name).join(', ')}; a sealed space can be holed, foam cannot`,
            link: 'compartments',
          }
        : { says: 'no sealed space is counted', link: 'compartments' },
      { says: 'metal and engine keep the lift of their own volume, aluminium where nothing else is known' },
      { says: 'Caution: a swamped craft is no raft to count on; wear a buoyancy aid' },
    ],
    sources: [own, `${naval}, lost buoyancy`],
  }
}

export function foamFinding(input: FloatInput, a: FloatAnswer): Finding {
  const n = a.need
  if (n.deficit <= 0 && n.upright && n.blocks.length === 0)
    return {
      id: 'float.foam',
      question: 'float',
      says: say`The foam it has would carry the swamped craft with its rider lying on it, with ${kg(-n.deficit)} beyond a tenth in hand.`,
      value: 0,
      unit: 'm³',
      standing: 'good',
      because: [{ says: 'tried by settling the swamped craft' }],
      sources: [own],
    }
  const clear = foamKeepsClear(input)
  return {
    id: 'float.foam',
    question: 'float',
    ...foamWanted(n),
    value: n.fitted || n.volume,
    low: Math.min(n.volume, n.fitted || n.volume),
    high: 1.15 * (n.fitted || n.volume),
    unit: 'm³',
    standing: 'watch',
    because: [
      {
        says:
          n.deficit > 0
            ? say`${kg(n.deficit)} of lift is missing, with a tenth in hand`
            : say`the lift is there, ${kg(-n.deficit)} beyond a tenth in hand`,
        link: 'foam',
      },
      ...(n.blocks.length > 0 && clear
        ? [{ says: `the new foam keeps clear of ${clear}`, link: 'foam' }]
        : []),
      ...(n.blocks.length > 0 && !(input.taken ?? []).some((t) => /engine|motor/i.test(t.name))
        ? [{ says: 'no engine stands in the weights by name, so no room is kept for one', link: 'weights' }]
        : []),
      {
        says: say`foam of ${inKgPerM3(30)} that soaks ${inPercent(0.03)} lifts at most ${inKgPerM3(mostFoamCredit)}, the credit of 46 CFR 170.245`,
      },
      {
        says: 'foam low down and near the middle rolls a swamped craft over; high and outboard keeps it upright',
      },
      { says: 'Caution: petrol eats polystyrene; keep it out of the engine and tank spaces or seal it in' },
    ],
    sources: [own, '46 CFR 170.245', 'US Coast Guard, Boatbuilder’s Handbook, flotation part'],
  }
}

export function leakFindings(leak: LeakCase | undefined): Finding[] {
  if (leak === undefined) return []
  const { run, hole, space } = leak
  const end = run.under !== undefined ? run.under.time : run.endTime
  const left = say`Left alone with a ${inMm(leak.diameter)} hole at the stern,`
  const lost = run.end === 'sinks' || run.end === 'goes over'
  const says =
    run.under !== undefined
      ? say`${left} ${run.under.name} goes under after ${lasting(run.under.time)}.`
      : lost
        ? say`${left} it ${run.end === 'sinks' ? 'sinks' : 'rolls over'} after ${lasting(run.endTime)}.`
        : say`${left} it takes on ${litres(run.water.at(-1) ?? 0)} in ${lasting(run.endTime)} and stays up with its openings dry.`
  return [
    {
      id: 'float.leak',
      question: 'float',
      says,
      value: end,
      low: 0.75 * end,
      high: 1.5 * end,
      unit: 's',
      standing: run.under !== undefined || lost ? 'watch' : 'good',
      because: [
        {
          says: say`hole ${inMm(leak.diameter)} across, ${inMetres(hole[0])} forward of the transom and ${cm(hole[2])} up, filling ${space}`,
          link: 'compartments',
        },
        { says: 'nobody aboard, engine stopped, no pump' },
      ],
      sources: ['Q = 0.6 A √(2gz) for a sharp hole', own],
    },
  ]
}

/** Published sums beside our own: to compare with, nothing more. */
export function guidanceFinding(input: FloatInput, a: FloatAnswer, limits: FloatLimits): Finding {
  const craft = a.weights.mass
  const displaced = input.water * input.hull.volume
  const capacity = weightCapacity(displaced, craft, 'inboard')
  const tests = basicFlotationWeights(Math.min(input.rider.mass, 0.9 * capacity), capacity)
  const reserve = wholeLift(a.swampedBodies, input.water) - craft
  const more = reserve >= limits.lessLift.value * tests.total
  const because: Because[] = [
    {
      says: say`${kg(tests.persons)} for persons, ${kg(tests.dead)} for other load of a capacity of ${kg(capacity)}`,
    },
    {
      says: 'the rule is for inboard boats below 20 ft, after 18 hours swamped; it was not written for a craft like this',
    },
    { says: 'a small-craft stability standard of 2022 leaves powered boards out altogether (ISO 12217-3)' },
    { says: 'ask the local authority which rules bind a home-built craft where you ride' },
  ]
  return {
    id: 'float.guidance',
    question: 'float',
    says: say`Compare with 33 CFR 183.105: a swamped boat is tested with ${kg(tests.total)} of weights under water; this one, swamped, has ${reserve < 0 ? say`${kg(-reserve)} too little lift for itself` : say`${kg(reserve)} of lift to spare`}.`,
    value: reserve,
    unit: 'kg',
    standing: more ? 'good' : 'watch',
    because,
    sources: [
      '33 CFR 183.105',
      '33 CFR 183.33 and after, from memory',
      'ISO 12217-3:2022, public scope text',
    ],
  }
}
