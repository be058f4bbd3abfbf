/** The tank: how full, what the vent meets, what the pick-up leaves, how long it lasts, what holds it down. */
import {
  inCm,
  inCount,
  inKg,
  inMm,
  inNewtons,
  inPercent,
  inTimes,
  ranged,
} from '../../base/answers/amounts.ts'
import type { Finding } from '../../base/answers/finding.ts'
import { type Sentence, say } from '../../base/answers/sentence.ts'
import type { Vec3 } from '../../physics/solid/mesh.ts'
import { dryToAt, type FuelAnswer, leastUllage, type TankAnswer } from './fuelAnswer.ts'
import type { FuelCraft } from './fuelFromCraft.ts'
import type { FuelLimits } from './fuelLimits.ts'
import { atMost, cfr, enough, inTankLitres, inUse, ownTank, practice, typedMm } from './fuelSay.ts'
import { liquidFrame } from './fuelStates.ts'
import { surfaceAt } from './tankReach.ts'

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

/** The vent against the fuel in the tank. */
export function ventFinding(c: FuelCraft, { tank }: FuelAnswer, limits: FuelLimits): Finding {
  const { vent } = c.section
  const { capacity } = tank.body
  const wet = c.filled.value > tank.dryTo * capacity + 1e-9
  const out = wet && runsOut(c, tank)
  const short = tank.dryTo < limits.ventFill.value
  const better = short || wet ? betterFitting(c, tank, limits.ventFill.value) : undefined
  const dry = inTankLitres(tank.dryTo * capacity)
  const holds = say`${c.tank.name} holds ${inTankLitres(c.filled.value)}; the vent is dry up to ${dry}.`
  const says: Sentence = out
    ? say`The vent lies in the fuel ${tank.dryIn.says}, and its end is below the surface: petrol runs out of it. The ${holds}`
    : wet
      ? say`The vent lies in the fuel ${tank.dryIn.says}: fuel stands in its hose, spits out of it as the tank warms, and no air gets in. The ${holds}`
      : short
        ? say`The vent stays dry only up to ${dry} of ${inTankLitres(capacity)}: above that the fuel is in it ${tank.dryIn.says}.`
        : say`The vent stays dry in every lean, wave and roll up to ${inPercent(tank.dryTo)} of the tank.`
  return {
    id: 'fuel.vent',
    question: 'fuel',
    says,
    value: tank.dryTo,
    unit: '1',
    standing: out ? 'stop' : wet || short ? 'watch' : 'good',
    ...(better
      ? {
          act: say`move the vent’s fitting so that it stands ${place(better.at, c)}: dry up to ${inTankLitres(atMost(better.share * capacity, 1e-4))}`,
          changes: better.changes,
        }
      : wet || short
        ? {
            act: say`fill ${c.tank.name} to ${inTankLitres(atMost(tank.dryTo * capacity, 1e-4))} at most, and mark that on it`,
          }
        : {}),
    harm: 'before the water',
    because: [
      { says: say`its fitting is ${place(tank.fitting, c)}`, link: 'fuel.vent.forward' },
      {
        says: say`looked at ${inCount(tank.states.length)} ways of lying: at rest, rider aft, setting off, over the hump, flat out, bow down, slowing, up and down a wave, rolled either way`,
      },
      ...(vent.valve
        ? [
            {
              says: 'a roll-over valve shuts it while it lies on its side',
              link: 'fuel.vent.valve',
            },
          ]
        : []),
    ],
    sources: [ownTank],
  }
}

/** The fuel's surface stands higher than the vent's outer end in the lean that decides, so that it runs out by itself. */
function runsOut(c: FuelCraft, { body, dryIn }: TankAnswer): boolean {
  const end = c.ventEnd
  if (!end) return false
  const { frame } = liquidFrame(dryIn)
  const { foot } = c.tank
  const [x, y, z] = [end.at[0] - foot[0], end.at[1] - foot[1], end.at[2] - foot[2]]
  return frame.nx * x + frame.ny * y + frame.nz * z < surfaceAt(body, c.filled.value, dryIn)
}

/** "90 mm forward of the tank's middle". */
function place(at: Vec3, c: FuelCraft): Sentence {
  const middle =
    c.tank.shape.kind === 'box' && c.tank.shape.cells > 1 ? 'its cell’s middle' : 'the tank’s middle'
  const along: Sentence =
    Math.abs(at[0]) < 5e-4 ? '' : say`${inMm(Math.abs(at[0]))} ${at[0] > 0 ? 'forward' : 'aft'}`
  const aside: Sentence =
    Math.abs(at[1]) < 5e-4 ? '' : say`${inMm(Math.abs(at[1]))} to ${at[1] > 0 ? 'port' : 'starboard'}`
  if (along === '' && aside === '') return `over ${middle}`
  return say`${along}${along !== '' && aside !== '' ? ' and ' : ''}${aside} of ${middle}`
}

/** The place on the tank's top where the vent stays dry longest, to 5 mm; undefined where moving it gains nothing worth a hole. */
function betterFitting(c: FuelCraft, tank: TankAnswer, wanted: number) {
  const { vent } = c.section
  const { half, height } = tank.body
  const steps = (reach: number) =>
    [-0.8, -0.6, -0.4, -0.2, 0, 0.2, 0.4, 0.6, 0.8].map((k) => Math.round((k * reach) / 5e-3) * 5e-3)
  // a round tank's top is a line: off it there is no top to fit a vent in
  const { shape } = c.tank
  const lying = shape.kind === 'lying cylinder' ? shape.lies : undefined
  const cells = shape.kind === 'box' ? shape.cells : 1
  const round = shape.kind === 'standing cylinder' ? 0.7 : 1
  const along = lying === 'across' ? [0] : steps(round * half[0])
  const aside = lying === 'along' ? [0] : steps((round * half[1]) / cells)
  let best: { at: Vec3; share: number } | undefined
  for (const x of along)
    for (const y of aside) {
      const at: Vec3 = [x, y, height]
      const share = dryToAt(tank, at, vent.valve)
      if (!best || share > best.share + 1e-9) best = { at, share }
    }
  if (!best || best.share < Math.max(wanted, tank.dryTo + 0.03)) return undefined
  if (c.filled.value > best.share * tank.body.capacity) return undefined
  const changes = [
    { path: 'fuel.vent.forward', from: typedMm(vent.forward.value), to: typedMm(best.at[0]) },
    { path: 'fuel.vent.to port', from: typedMm(vent.toPort.value), to: typedMm(best.at[1]) },
  ].filter((ch) => ch.from !== ch.to)
  return { ...best, changes }
}

/** Where the vent ends, and how wide it is. */
export function ventEndFinding(c: FuelCraft, limits: FuelLimits): Finding {
  const base = {
    id: 'fuel.vent-end',
    question: 'fuel' as const,
    sources: [limits.ventIntake.source, practice],
  }
  const end = c.ventEnd
  if (!end)
    return {
      ...base,
      says: 'Where the vent ends is not known: no opening of the file is a tank vent.',
      standing: 'unknown',
      because: [{ says: 'no tank vent among the openings', link: 'openings' }],
      measureNext: { what: 'measure where the vent’s end is', with: 'tape', minutes: 3, path: 'openings' },
    }
  const far = (at: Vec3) => Math.hypot(at[0] - end.at[0], at[1] - end.at[1], at[2] - end.at[2])
  const near = c.intakes.reduce<{ name: string; off: number; path: string } | undefined>(
    (a, i) => (a && a.off <= far(i.at) ? a : { name: i.name, off: far(i.at), path: i.path }),
    undefined,
  )
  const rider = Math.hypot(c.rider.x - end.at[0], c.rider.y - end.at[1])
  const { bore } = c.section.vent
  const byIntake = near !== undefined && near.off < limits.ventIntake.value
  const byRider = rider < limits.ventRider.value
  const narrow = bore.value < limits.ventBore.value
  const says: Sentence = byIntake
    ? say`The vent ends ${inCm(near.off)} from ${near.name}, which draws its vapour in.`
    : byRider
      ? say`The vent ends ${inCm(rider)} from the rider’s place: vapour at the face, a spill on the knees.`
      : narrow
        ? say`The vent is ${inMm(bore.value, 0.1)} wide at its narrowest: one drop of petrol closes it.`
        : near
          ? say`The vent ends ${inCm(near.off)} from ${near.name} and ${inCm(rider)} from the rider’s place.`
          : say`The vent ends ${inCm(rider)} from the rider’s place.`
  return {
    ...base,
    says,
    standing: byIntake || byRider || narrow ? 'watch' : 'good',
    ...(byIntake
      ? {
          act: say`lead its end ${inCm(enough(limits.ventIntake.value - near.off, 0.01))} or more farther from ${near.name}`,
        }
      : byRider
        ? {
            act: say`lead its end ${inCm(enough(limits.ventRider.value - rider, 0.01))} or more farther from the rider`,
          }
        : narrow
          ? { act: say`open it to ${inMm(limits.ventBore.value, 0.1)} or more` }
          : {}),
    harm: byRider && !byIntake ? 'before the water' : 'will stop the run',
    because: [
      {
        says: `its end is ${end.name}; how high that stands over the water is judged by Float`,
        link: end.path,
      },
      ...(near ? [{ says: say`${near.name} is ${inCm(near.off)} away`, link: near.path }] : []),
      { says: say`${inMm(bore.value, 0.1)} wide at its narrowest`, link: 'fuel.vent.bore' },
    ],
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
      : say`The pick-up leaves ${inTankLitres(tank.unusable)} ${tank.unusableIn.says}; ${inTankLitres(tank.usableNow)} of what is in the tank can be used.`,
    value: tank.unusable,
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
      { says: say`its mouth is ${place(tank.mouth, c)}`, link: 'fuel.pickup.forward' },
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
