/** Oil, jets and what a chip does in one; the bowl of a float carburettor. */
import {
  inDegrees,
  inLitres,
  inMicrons,
  inMm,
  inPercent,
  inSpeed,
  inTimes,
  ranged,
  withEnds,
} from '../../base/answers/amounts.ts'
import type { Finding } from '../../base/answers/finding.ts'
import { type Sentence, say } from '../../base/answers/sentence.ts'
import { type ChipEffect, leanLimit, stoichiometric } from './chipInJet.ts'
import type { FuelAnswer } from './fuelAnswer.ts'
import type { FuelCraft } from './fuelFromCraft.ts'
import type { FuelLimits } from './fuelLimits.ts'
import { atMost, circle, inTankLitres, names, orifice, practice } from './fuelSay.ts'
import { liquidFrame } from './fuelStates.ts'
import type { EngineJet } from './jetAnswer.ts'
import { wantedMesh } from './lineFindings.ts'

/** what passes a jet in a minute: a millilitre counts */
const inFlow = (v: number) => inLitres(60 * v, 0.001)
const inRatio = (x: number) => inTimes(x, 0.1)

/** The oil in the mixture. */
export function oilFinding(c: FuelCraft, { tank }: FuelAnswer, limits: FuelLimits): Finding {
  const oil = c.oil.value
  const full = tank.fillTo * tank.body.capacity
  const petrol = full / (1 + oil)
  const little = oil < limits.oilLittle.value
  const much = oil > limits.oilMuch.value
  const bound = little ? limits.oilLittle.value : limits.oilMuch.value
  return {
    id: 'fuel.oil',
    question: 'fuel',
    says:
      oil > 0
        ? say`A full tank is ${inTankLitres(petrol)} of petrol with ${inTankLitres(petrol * oil)} of oil, 1 to ${inTimes(1 / oil, 1)}${little ? ': short of oil' : much ? ': more oil than it needs, and less petrol through the same jet' : ''}.`
        : say`There is no oil in the mixture: a two-stroke with its crankcase wet with petrol alone seizes.`,
    value: oil,
    unit: '1',
    standing: little ? 'stop' : much ? 'watch' : 'good',
    ...(little || much
      ? {
          act: say`mix ${inTankLitres((full * bound) / (1 + bound))} of oil ${little ? 'or more' : 'at most'} into a full tank, or what the engine’s maker asks`,
        }
      : {}),
    harm: little ? 'before the water' : 'costs speed',
    because: [
      { says: say`${inPercent(oil, 0.1)} of the petrol`, link: c.oilPath },
      {
        says: say`oil takes ${inPercent(oil / (1 + oil), 0.1)} of what goes through the jet: more oil is leaner`,
      },
    ],
    sources: [limits.oilLittle.source, 'The engine maker’s own ratio goes first'],
  }
}

/** Jets against what the engines want; only where the file has the jet. */
export function jetFindings(c: FuelCraft, { jets }: FuelAnswer, limits: FuelLimits): Finding[] {
  return jets.jets.filter((j) => j.running).flatMap((j, i) => jetFinding(c, j, i, limits))
}

function jetFinding(c: FuelCraft, jet: EngineJet, i: number, limits: FuelLimits): Finding[] {
  const base = {
    id: `fuel.jet.${i}`,
    question: 'fuel' as const,
    twin: 'fuel.jet',
    sources: [orifice],
    harm: 'will stop the run' as const,
  }
  const whose: Sentence = c.engines.length > 1 ? say` of ${jet.engine}` : ''
  if (!jet.given)
    return [
      {
        ...base,
        says: say`The main jet${whose} is not in the file; one of ${inMm(jet.bore, 0.01)} would pass the ${inFlow(jet.wanted)} a minute that it wants at full power.`,
        value: jet.bore,
        unit: 'm',
        standing: 'good',
        because: [{ says: 'the jet that suits stands in', link: 'fuel.carburettor.jet' }],
        measureNext: {
          what: 'read the number on the main jet, or find the drill shank that just enters',
          with: 'drill shanks',
          minutes: 10,
          path: 'fuel.carburettor.jet',
        },
      },
    ]
  const { lambda } = jet
  const lean = lambda.low > limits.leanSet.value
  const rich = lambda.high < limits.richSet.value
  const suits = jet.bore * Math.sqrt(lambda.value / jet.set)
  return [
    {
      ...base,
      says: say`A jet of ${inMm(jet.bore, 0.01)}${whose} gives ${ranged(inRatio, { value: lambda.value * stoichiometric, low: lambda.low * stoichiometric, high: lambda.high * stoichiometric })} of air to one of fuel at full power${lean ? ': too lean, it will run hot and seize' : rich ? ': too rich to fire every turn' : ''}.`,
      value: lambda.value,
      low: lambda.low,
      high: lambda.high,
      unit: '1',
      standing: lean || rich ? 'watch' : 'good',
      ...(lean || rich
        ? { act: say`try a jet of ${inMm(suits, 0.01)}, and read the plug after a cut at full throttle` }
        : {}),
      because: [
        {
          says: say`it passes ${withEnds(inFlow(jet.passes.value), { low: 60 * jet.passes.low, high: 60 * jet.passes.high })} a minute, wanted ${inFlow(jet.wanted)}`,
          link: 'fuel.carburettor.jet',
        },
        { says: 'the depression at the jet is the greatest doubt', link: 'fuel.carburettor.depression' },
      ],
    },
  ]
}

/** What a chip of a quarter of the jet's width does, and whether the filter lets such a chip through. */
export function chipFinding(c: FuelCraft, { jets }: FuelAnswer, limits: FuelLimits): Finding | undefined {
  const chip = jets.quarter
  const jet = jets.jets.find((j) => j.running)
  if (!chip || !jet) return undefined
  const through = jets.throughFilter
  const wanted = wantedMesh(c, jets, limits)
  const stalls = !(jets.widest <= wanted * (1 + 1e-9))
  const reaches: Sentence =
    chip.reaches.length > 1 ? say` The same swarf reaches ${names(chip.reaches)}.` : ''
  const says = say`A chip ${inMm(0.25 * jet.bore, 0.01)} wide across a jet of ${inMm(jet.bore, 0.01)} shuts ${inPercent(chip.blocked)} of it: ${inRatio(chip.airFuel)} of air to one of fuel instead of ${inRatio(jet.set * stoichiometric)}, ${firing(chip)}${speedSays(chip)}. A choke that brings ${inTimes(chip.choke, 0.1)} times the depression brings it back.${reaches}`
  return {
    id: 'fuel.chip',
    question: 'fuel',
    twin: 'fuel.filter',
    says,
    value: chip.lambda,
    unit: '1',
    standing: stalls ? 'watch' : 'good',
    ...(stalls
      ? {
          act: say`fit a filter of ${inMicrons(atMost(wanted, 5e-6))} or finer between the tank and the tee`,
        }
      : {}),
    harm: 'will stop the run',
    because: [
      through
        ? {
            says: say`the filter stops it, but not a chip of ${inMicrons(jets.widest)}, which shuts ${inPercent(through.blocked)}`,
            link: 'fuel.filter.mesh',
          }
        : { says: 'no filter stops it', link: 'fuel.filter.at' },
      {
        says: 'better on choke is lean on the fuel’s side, or an air leak: a chip is worst at full flow, a leak at idle; a jet that blocks again has its swarf upstream',
        link: 'fuel.carburettor.jet',
      },
    ],
    sources: [circle, orifice],
  }
}

const firing = (chip: ChipEffect): Sentence =>
  chip.fullThrottle
    ? say`which still fires full open but ${inPercent(1 - chip.torque)} weaker and hot`
    : say`past the ${inRatio(leanLimit.value * stoichiometric)} that still fires: it dies above ${inPercent(chip.mostAir)} of its air and gives ${inPercent(chip.torque)} of its torque at best`

const speedSays = ({ topSpeed, topSpeedBefore }: ChipEffect): Sentence =>
  topSpeed !== undefined &&
  topSpeedBefore !== undefined &&
  Number.isFinite(topSpeed) &&
  Number.isFinite(topSpeedBefore)
    ? say`, about ${inSpeed(topSpeed, 1)} instead of ${inSpeed(topSpeedBefore, 1)}`
    : ''

/** The bowl of a float carburettor as the craft leans and speeds up. */
export function bowlFinding(c: FuelCraft, { tank }: FuelAnswer, limits: FuelLimits): Finding | undefined {
  const { carburettor } = c.section
  if (carburettor.kind !== 'float') return undefined
  const { bowlReach: reach, bowlLevel: level } = carburettor
  const leans = tank.states.map((s) => ({ state: s.state, tilt: Math.abs(liquidFrame(s.state).frame.trim) }))
  const worst = leans.filter((s) => s.state.lasts).reduce((a, s) => (s.tilt > a.tilt ? s : a))
  const rise = reach.value * Math.tan(worst.tilt)
  const share = rise / level.value
  const floods = share > limits.bowlRise.value
  const within = (level.value * limits.bowlRise.value) / Math.tan(worst.tilt)
  return {
    id: 'fuel.bowl',
    question: 'fuel',
    says: floods
      ? say`${capitalState(worst.state.says)} the fuel in the bowl stands ${inDegrees(worst.tilt)} askew and rises ${inMm(rise, 0.1)} at the jet, ${inMm(level.value, 0.1)} below its mouth: it runs out by itself, or starves on the other side.`
      : say`${capitalState(worst.state.says)} the fuel in the bowl stands ${inDegrees(worst.tilt)} askew: ${inMm(rise, 0.1)} at the jet, within the ${inMm(level.value, 0.1)} below its mouth.`,
    value: share,
    unit: '1',
    standing: floods ? 'watch' : 'good',
    ...(floods
      ? {
          act: say`turn the carburettor so that its jet is within ${inMm(atMost(within, 1e-3))} of the bowl’s middle along the craft, or fit a diaphragm one`,
        }
      : {}),
    harm: 'will stop the run',
    because: [
      {
        says: say`${inMm(reach.value)} from the bowl’s middle to the jet`,
        link: 'fuel.carburettor.bowl reach',
      },
      { says: 'lean and acceleration tip the fuel alike', link: 'fuel.carburettor.kind' },
    ],
    sources: [practice],
  }
}

const capitalState = (says: string): string => says.charAt(0).toUpperCase() + says.slice(1)
