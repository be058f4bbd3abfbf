/** The lines: whether every carburettor is fed in the worst lean, whether the fuel boils on the way, and what the hose is. */
import {
  inCelsius,
  inCm,
  inKelvinStep,
  inKpa,
  inMicrons,
  inMm,
  inPercent,
  ranged,
} from '../../base/answers/amounts.ts'
import type { Finding } from '../../base/answers/finding.ts'
import { type Sentence, say } from '../../base/answers/sentence.ts'
import type { Fed } from './feedAnswer.ts'
import type { FuelAnswer } from './fuelAnswer.ts'
import type { FuelCraft } from './fuelFromCraft.ts'
import type { FuelLimits } from './fuelLimits.ts'
import { atMost, cfr, enough, hagen, names, practice, vapour } from './fuelSay.ts'
import type { JetAnswer } from './jetAnswer.ts'
import { stripThatBlocks } from './jetFlow.ts'

const kpa = (p: number) => inKpa(p, 0.1)
const inKpaTenths = (p: number) => inKpa(p, 0.1)

/** One finding a carburettor; one that says what is missing where the lines do not reach it. */
export function feedFindings(c: FuelCraft, { feed }: FuelAnswer, limits: FuelLimits): Finding[] {
  const { lost } = feed.circuit
  if (lost.length > 0)
    return [
      {
        id: 'fuel.lines',
        question: 'fuel',
        says: `No line leads from the tank to ${names(lost)}, so no pressure is told.`,
        standing: 'unknown',
        because: [{ says: 'the lines of the file', link: 'fuel.lines' }],
        sources: ['The craft file'],
      },
    ]
  if (!feed.converged)
    return [
      {
        id: 'fuel.lines',
        question: 'fuel',
        says: 'The pressures in the lines could not be found.',
        standing: 'unknown',
        because: [{ says: 'the lines of the file', link: 'fuel.lines' }],
        sources: [hagen],
      },
    ]
  return feed.fed.map((f, i) => fedFinding(c, f, i, limits))
}

function fedFinding(c: FuelCraft, fed: Fed, i: number, limits: FuelLimits): Finding {
  const { feed, pump } = c.section
  const wanted = feed === 'gravity' ? limits.gravityHead.value : limits.pumpMargin.value
  const { margin, inlet } = fed
  const dry = margin.value < limits.starves.value
  // a pump at the low end of what is known of it, or a hose at the narrow end, may still starve it
  const thin = !dry && (margin.value < wanted || margin.low < limits.starves.value)
  const lacks = Math.max(wanted - margin.value, limits.starves.value - margin.low)
  const lower = lacks / (c.density.value * 9.80665)
  const whose: Sentence = c.engines.length > 1 ? say`the carburettor of ${fed.engine}` : 'the carburettor'
  const drawn: Sentence =
    inlet < 0 ? say`the line asks ${kpa(-inlet)} of suction` : say`${kpa(inlet)} stand at its inlet`
  const gives: Sentence =
    feed === 'pulse pump'
      ? say`, the pump draws ${ranged(inKpaTenths, pump)}`
      : feed === 'gravity'
        ? ', fed by gravity alone'
        : ''
  return {
    id: `fuel.feed.${i}`,
    question: 'fuel',
    twin: 'fuel.feed',
    says: dry
      ? say`${capital(whose)} runs dry ${fed.worst.says}: nearly empty, ${drawn}${gives}.`
      : thin
        ? say`${capital(whose)} is barely fed ${fed.worst.says}: nearly empty, ${drawn}${gives}.`
        : say`${capital(whose)} is fed with ${kpa(margin.value)} to spare ${fed.worst.says}, its worst.`,
    value: margin.value,
    low: margin.low,
    high: margin.high,
    unit: 'Pa',
    standing: dry ? 'stop' : thin ? 'watch' : 'good',
    ...(dry || thin
      ? {
          act: say`raise the tank or lower the carburettor by ${inCm(enough(lower, 0.01))}, or open up its hose and fittings until ${kpa(enough(lacks, 100))} less goes`,
        }
      : {}),
    harm: 'will stop the run',
    because: [
      {
        says: say`tried at twice the mean flow of full throttle, the tank nearly empty; margin ${ranged(inKpaTenths, margin)}`,
        link: c.linesAssumed ? 'fuel.lines' : 'fuel.lines.0.bore',
      },
      { says: say`a ${feed}`, link: 'fuel.pump' },
      ...(c.linesAssumed
        ? [{ says: 'hoses and heights are assumed: none is in the file', link: 'fuel.lines' }]
        : []),
    ],
    ...(c.linesAssumed
      ? {
          measureNext: {
            what: 'measure each hose, its bore, and how high its ends stand',
            with: 'tape',
            minutes: 10,
            path: 'fuel.lines',
          },
        }
      : {}),
    sources: [hagen, practice],
  }
}

const capital = (s: Sentence): Sentence =>
  typeof s === 'string'
    ? s.charAt(0).toUpperCase() + s.slice(1)
    : s.map((p, i) => (i === 0 && typeof p === 'string' ? p.charAt(0).toUpperCase() + p.slice(1) : p))

/** Fuel that boils in the lines. */
export function vapourFinding(c: FuelCraft, { feed }: FuelAnswer, limits: FuelLimits): Finding | undefined {
  if (!feed.converged || !Number.isFinite(feed.boils.value)) return undefined
  const { boils } = feed
  const warm = c.temperature
  const spare = boils.value - warm.value
  const locks = spare < 0
  const near = spare < limits.boilMargin.value
  const cooler = limits.boilMargin.value - spare
  return {
    id: 'fuel.vapour',
    question: 'fuel',
    says: locks
      ? say`The fuel boils in the line at ${feed.leastAt} ${feed.leastIn}: it boils at ${inCelsius(boils.value)} there and is taken to be ${inCelsius(warm.value)}.`
      : say`The fuel would boil in the line from ${ranged(inCelsius, boils)}; it is taken to be ${inCelsius(warm.value)}.`,
    value: boils.value,
    low: boils.low,
    high: boils.high,
    unit: 'K',
    standing: near ? 'watch' : 'good',
    ...(near
      ? {
          act: say`keep tank and lines ${inKelvinStep(enough(cooler, 1), 1)} cooler: off hot parts, in moving air, shaded`,
        }
      : {}),
    harm: 'will stop the run',
    because: [
      {
        says: say`least pressure ${kpa(feed.least)} absolute, at ${feed.leastAt} ${feed.leastIn}`,
        link: 'fuel.volatility',
      },
      {
        says: c.temperatureAssumed
          ? say`fuel in a bay is taken to be ${inKelvinStep(warm.value - c.cold, 1)} warmer than the air, up to ${inCelsius(warm.high)}`
          : say`fuel in the bay, ${ranged(inCelsius, warm)}`,
        link: 'place.air temperature',
      },
    ],
    sources: [vapour],
  }
}

/** Opening of a filter (m) that lets through neither a quarter of the smallest hole nor a chip that keeps an engine from firing full open. */
export function wantedMesh(c: FuelCraft, { jets }: JetAnswer, limits: FuelLimits): number {
  const least = Math.min(
    ...jets.map((j) => j.bore * stripThatBlocks(Math.max(0, 1 - j.set / limits.leanest.value))),
  )
  const hole = Math.min(c.section.carburettor.passage.value, ...jets.map((j) => j.bore))
  return Math.min(limits.mesh.value * hole, least)
}

/** The filter against the smallest hole behind it. */
export function filterFinding(c: FuelCraft, { jets }: FuelAnswer, limits: FuelLimits): Finding {
  const { filter, carburettor } = c.section
  const jet = Math.min(...jets.jets.map((j) => j.bore))
  const hole = Math.min(jet, carburettor.passage.value)
  const wanted = wantedMesh(c, jets, limits)
  const none = filter.at === 'none'
  const coarse = none || filter.mesh.value > wanted * (1 + 1e-9)
  const what: Sentence =
    hole === jet ? say`the jet of ${inMm(jet, 0.01)}` : say`the passage of ${inMm(hole, 0.01)}`
  return {
    id: 'fuel.filter',
    question: 'fuel',
    twin: 'fuel.filter',
    says: none
      ? say`Nothing keeps swarf from ${what}: there is no filter.`
      : coarse
        ? say`The filter lets grains of ${inMicrons(filter.mesh.value)} through, ${inPercent(filter.mesh.value / hole)} of ${what}.`
        : say`The filter stops what is wider than ${inMicrons(filter.mesh.value)}, ${inPercent(filter.mesh.value / hole)} of ${what}.`,
    value: none ? 1 : filter.mesh.value / hole,
    unit: '1',
    standing: coarse ? 'watch' : 'good',
    ...(coarse
      ? { act: say`fit a filter of ${inMicrons(atMost(wanted, 5e-6))} or finer between the tank and the tee` }
      : {}),
    harm: 'will stop the run',
    because: [
      {
        says: none ? 'no filter in the file' : say`${inMicrons(filter.mesh.value)}, ${where[filter.at]}`,
        link: none ? 'fuel.filter.at' : 'fuel.filter.mesh',
      },
      {
        says: say`a quarter of the smallest hole at most, and nothing that keeps an engine from firing full open: ${inMicrons(wanted)}`,
        link: 'fuel.carburettor.passage',
      },
    ],
    sources: [limits.mesh.source, 'Mesh openings: ASTM E11, from memory'],
  }
}

const where = {
  trunk: 'in the line before the tee',
  'each carburettor': 'before each carburettor',
  tank: 'on the pick-up in the tank',
  none: 'none',
} as const

/** Hose that is none for petrol, and a hole below the fuel. */
export function hoseFindings(c: FuelCraft): Finding[] {
  const clear = c.lines.filter((l) => l.hose === 'clear tube')
  const out: Finding[] = []
  if (clear.length > 0) {
    const length = clear.reduce((s, l) => s + l.length.value, 0)
    out.push({
      id: 'fuel.hose',
      question: 'fuel',
      says: say`${inCm(length)} of the line is clear vinyl tube: petrol hardens and shrinks it within weeks, and it slips off its barbs.`,
      value: length,
      unit: 'm',
      standing: 'watch',
      act: say`put ${inCm(length)} of hose made for petrol in its place, clamped on every barb`,
      harm: 'before the water',
      because: clear.map((l) => ({ says: `${l.from} to ${l.to}`, link: `${l.path ?? 'fuel.lines'}.hose` })),
      sources: [cfr, practice],
    })
  }
  if (c.section.pickup.kind === 'bottom outlet' && c.section.feed !== 'gravity')
    out.push({
      id: 'fuel.outlet',
      question: 'fuel',
      says: say`The outlet is in the tank’s floor: a hose that slips off empties ${c.tank.name} into the craft.`,
      standing: 'watch',
      act: say`draw through a tube from the top that ends ${inMm(0.01)} over the floor, and close the hole below`,
      harm: 'before the water',
      because: [{ says: 'published rules ask for openings on top only', link: 'fuel.pickup.kind' }],
      sources: [cfr],
    })
  return out
}
