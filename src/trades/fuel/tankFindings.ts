/** The tank: how full, what the pick-up leaves, how long it lasts, what holds it down. */
import {
  inCount,
  inKg,
  inMm,
  inNewtons,
  inPercent,
  inTimes,
  ranged,
  withEnds,
} from '../../base/answers/amounts.ts'
import type { Finding } from '../../base/answers/finding.ts'
import { type Sentence, say } from '../../base/answers/sentence.ts'
import { fittingPlace } from './fittingPlace.ts'
import { type FuelAnswer, leastUllage } from './fuelAnswer.ts'
import type { FuelCraft } from './fuelFromCraft.ts'
import type { FuelLimits } from './fuelLimits.ts'
import { atMost, cfr, enough, inTankLitres, inUse, ownTank, practice } from './fuelSay.ts'

/** How far a tank may be filled, and whether it is too full now. */
export function fillFinding(c: FuelCraft, { tank }: FuelAnswer): Finding {
  const most = tank.fillTo * tank.body.capacity
  const over = c.filled.value - most
  // the vent's own place is judged by its own finding
  const why: Sentence =
    tank.fillBy === 'vent'
      ? say`beyond that the fuel is at the vent ${tank.dryIn.says}`
      : tank.fillBy === 'expansion'
        ? say`it grows by ${inPercent(tank.growth, 0.1)} as it warms`
        : say`${inPercent(leastUllage)} is to stay empty, and warming takes ${inPercent(tank.growth, 0.1)} of it`
  const tooFull = over > 1e-9 && tank.fillBy !== 'vent'
  return {
    id: 'fuel.fill',
    question: 'fuel',
    says: say`The ${c.tank.name} takes ${inTankLitres(tank.body.capacity)}; fill it to ${inTankLitres(atMost(most, 1e-4))} at most: ${why}.`,
    value: most,
    unit: 'm³',
    standing: tooFull ? 'watch' : 'good',
    ...(tooFull ? { act: say`let out ${inTankLitres(enough(over, 1e-4))}` } : {}),
    harm: 'before the water',
    because: [
      { says: say`${inTankLitres(c.filled.value)} in it now`, link: `${c.tankPath}.filled` },
      {
        says: say`warmed by ${inPercent(tank.growth, 0.1)} of its volume at the most`,
        link: 'place.air temperature',
      },
    ],
    sources: ['API MPMS 11.1, table 54B, from memory', ownTank],
  }
}

/** What the pick-up cannot reach. */
export function pickupFinding(c: FuelCraft, { tank }: FuelAnswer, limits: FuelLimits): Finding {
  const { pickup } = c.section
  const share = tank.unusable / tank.body.capacity
  const poor = share > limits.unusable.value
  const dry = tank.usableNow <= 0
  return {
    id: 'fuel.pickup',
    question: 'fuel',
    says: dry
      ? say`The pick-up draws air ${tank.unusableIn.says}: ${inTankLitres(tank.unusable)} lie out of its reach, and ${inTankLitres(c.filled.value)} are in the tank.`
      : say`The pick-up leaves ${withEnds(inTankLitres(tank.unusable), tank.unusableRange)} ${tank.unusableIn.says}; ${inTankLitres(tank.usableNow)} of what is in the tank can be used.`,
    value: tank.unusable,
    low: Math.min(tank.unusableRange.low, tank.unusable),
    high: Math.max(tank.unusableRange.high, tank.unusable),
    unit: 'm³',
    standing: dry ? 'stop' : poor ? 'watch' : 'good',
    ...(dry
      ? {
          act: say`fill in ${inTankLitres(tank.unusable - c.filled.value)} and what the day asks`,
          harm: 'before the water' as const,
        }
      : poor
        ? {
            act: say`move its mouth ${pickup.kind === 'weighted hose' ? 'lower' : 'towards the low end'}, or count on ${inTankLitres(tank.usable)} of a full tank`,
          }
        : {}),
    because: [
      { says: `a ${pickup.kind}`, link: 'fuel.pickup.kind' },
      { says: say`its mouth ${inMm(tank.mouth[2])} over the floor`, link: 'fuel.pickup.clearance' },
      { says: say`its mouth is ${fittingPlace(tank.mouth, c)}`, link: 'fuel.pickup.forward' },
    ],
    sources: [ownTank],
  }
}

/** A day's fuel against what the tank gives. */
export function dayFinding(c: FuelCraft, { tank, day }: FuelAnswer, limits: FuelLimits): Finding {
  const { use } = c.section
  const asked = day.wanted.value * (1 + limits.reserve.value)
  const short = asked - tank.usable
  const lacks = short > 0
  return {
    id: 'fuel.day',
    question: 'fuel',
    says: lacks
      ? say`A day of ${inUse(use.hours.value)} burns ${ranged(inTankLitres, day.wanted, 0.1)}; with a quarter over, the tank is ${inTankLitres(short)} short.`
      : say`A day of ${inUse(use.hours.value)} burns ${ranged(inTankLitres, day.wanted, 0.1)}; a full tank gives ${inTankLitres(tank.usable)}, ${inUse(day.lastsFlatOut)} of it flat out.`,
    value: day.wanted.value,
    low: day.wanted.low,
    high: day.wanted.high,
    unit: 'm³',
    standing: lacks ? 'watch' : 'good',
    ...(lacks
      ? {
          act: say`carry ${inTankLitres(enough(short, 1e-4))} in a can, or plan for ${inUse((use.hours.value * tank.usable) / asked)} of running`,
        }
      : {}),
    harm: 'will stop the run',
    because: [
      {
        says: say`${inPercent(use.fullThrottle.value)} of the time flat out, ${inPercent(use.idle.value)} at idle`,
        link: 'fuel.use.full throttle',
      },
      {
        says: 'half power burns about 65 %, idle 12 % of full throttle’s fuel (judgement)',
        link: 'fuel.use.consumption',
      },
      ...(c.engines.some((e) => e.running && e.from !== 'balance')
        ? [
            {
              says: 'no balance of the craft yet: the power is the engine’s own, or a usual one for its size',
              link: 'engines',
            },
          ]
        : []),
    ],
    measureNext: {
      what: 'fill to a mark, run ten minutes flat out, fill again from a measuring cup',
      with: 'measuring cup',
      minutes: 30,
      path: 'fuel.use.consumption',
    },
    sources: ['Consumption of carburetted two-strokes, 400 to 550 g/kWh, from memory'],
  }
}

/** What holds the tank against a slam. */
export function strapFinding(c: FuelCraft, limits: FuelLimits): Finding {
  const { retention } = c.section
  const mass = c.empty + c.capacity * c.density.value * (1 - leastUllage)
  const asks = mass * limits.slam.value
  const holds = retention.number.value * retention.strength.value
  const margin = holds / asks
  const loose = retention.kind === 'nothing' || retention.number.value < 1
  const weak = margin < limits.strapMargin.value
  const each = asks / Math.max(1, retention.number.value)
  const word = retention.kind === 'bracket' ? 'bracket feet' : retention.kind
  return {
    id: 'fuel.straps',
    question: 'fuel',
    says: loose
      ? say`Nothing holds the tank down: full it weighs ${inKg(mass)}, and a slam asks ${inNewtons(asks)}.`
      : weak
        ? say`Full, the tank weighs ${inKg(mass)}; a slam asks ${inNewtons(asks)}, and its ${word} hold ${inNewtons(holds)}.`
        : say`The tank’s ${word} hold ${inTimes(margin, 0.1)} times what a slam asks of them full, ${inNewtons(asks)}.`,
    value: margin,
    low: (retention.number.low * retention.strength.low) / asks,
    high: (retention.number.high * retention.strength.high) / asks,
    unit: '1',
    standing: weak || loose ? 'watch' : 'good',
    ...(loose
      ? {
          act: say`strap it down with ${inCount(2)} straps that hold ${inNewtons(enough(asks / 2, 10))} each`,
        }
      : weak
        ? {
            act: say`fit ${word} that hold ${inNewtons(enough(each, 10))} each, or ${inCount(Math.ceil(asks / retention.strength.value))} of these`,
          }
        : {}),
    harm: 'before the water',
    because: [
      {
        says: say`${inCount(retention.number.value)} ${word} of ${inNewtons(retention.strength.value)}`,
        link: 'fuel.retention.strength',
      },
      {
        says: say`a slam of ${inTimes(limits.slam.value / 9.80665, 1)} times its weight; published tests go to 25 times for tanks forward of the middle`,
        link: `${c.tankPath}.foot`,
      },
    ],
    sources: [limits.slam.source, practice, cfr],
  }
}
