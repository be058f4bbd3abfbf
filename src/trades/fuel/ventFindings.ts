/** The vent: what it meets inside the tank, where its fitting should stand, and where its outer end is. */
import { inCm, inCount, inMm, inPercent, withEnds } from '../../base/answers/amounts.ts'
import type { Finding } from '../../base/answers/finding.ts'
import { type Sentence, say } from '../../base/answers/sentence.ts'
import type { Vec3 } from '../../physics/solid/mesh.ts'
import { fittingPlace } from './fittingPlace.ts'
import { dryToAt, type FuelAnswer, type TankAnswer } from './fuelAnswer.ts'
import type { FuelCraft } from './fuelFromCraft.ts'
import type { FuelLimits } from './fuelLimits.ts'
import { atMost, enough, inTankLitres, ownTank, practice, typedMm } from './fuelSay.ts'
import { liquidFrame, overWater } from './fuelStates.ts'
import { surfaceAt } from './tankReach.ts'

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
    value: tank.dryTo * capacity,
    low: Math.min(tank.dryRange.low, tank.dryTo * capacity),
    high: Math.max(tank.dryRange.high, tank.dryTo * capacity),
    unit: 'm³',
    standing: out ? 'stop' : wet || short ? 'watch' : 'good',
    ...(better
      ? {
          act: say`move the vent’s fitting so that it stands ${fittingPlace(better.at, c)}: dry up to ${inTankLitres(atMost(better.share * capacity, 1e-4))}`,
          changes: better.changes,
        }
      : wet || short
        ? {
            act: say`fill ${c.tank.name} to ${inTankLitres(atMost(tank.dryTo * capacity, 1e-4))} at most, and mark that on it`,
          }
        : {}),
    harm: 'before the water',
    because: [
      {
        says: say`its fitting is ${fittingPlace(tank.fitting, c)}: dry to ${withEnds(dry, tank.dryRange)}, as well as its place is known`,
        link: 'fuel.vent.forward',
      },
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
export function ventEndFinding(c: FuelCraft, { tank }: FuelAnswer, limits: FuelLimits): Finding {
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
  const low = lowestUnderWay(c, tank)
  const dips = low !== undefined && low.height < limits.ventWave.value
  const says: Sentence = dips
    ? say`The vent’s end is ${inCm(low.height)} over the water ${low.state.says}: a crest gets into it.`
    : byIntake
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
    standing: dips || byIntake || byRider || narrow ? 'watch' : 'good',
    ...(dips
      ? { act: say`raise its end by ${inCm(enough(limits.ventWave.value - low.height, 0.01))}` }
      : byIntake
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
    harm: dips || (byRider && !byIntake) ? 'before the water' : 'will stop the run',
    because: [
      {
        says: `its end is ${end.name}; how high that stands at rest and heeled is judged by Float`,
        link: end.path,
      },
      ...(near ? [{ says: say`${near.name} is ${inCm(near.off)} away`, link: near.path }] : []),
      { says: say`its bore is ${inMm(bore.value, 0.1)}`, link: 'fuel.vent.bore' },
    ],
  }
}

/** The vent's outer end over the water where the craft runs; Float looks at it at rest and heeled. A breather in the cap is inside. */
function lowestUnderWay(c: FuelCraft, { states }: TankAnswer) {
  const { afloat } = c.setting.attitudes
  const end = c.ventEnd
  if (!afloat || !end || c.section.vent.kind === 'cap') return undefined
  return states
    .filter((s) => s.state.driven && s.state.lasts)
    .map(({ state }) => ({ state, height: overWater(state, end.at, afloat) }))
    .reduce((a, b) => (b.height < a.height ? b : a))
}
