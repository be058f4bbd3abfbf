/** How warm the bay gets: at work, in the minutes after, in the sun. */
import { inCelsius, inCm2, inKw, inLitres, inLitresPerSecond, inMinutes } from '../../base/answers/amounts.ts'
import type { Because, Finding, Standing } from '../../base/answers/finding.ts'
import { joined, type Sentence, say } from '../../base/answers/sentence.ts'
import { fanOf, steadyAir, type Wanted, wantedFor } from './bayAnswer.ts'
import type { BaySpec } from './bayFromCraft.ts'
import type { BayLimits } from './bayLimits.ts'
import { finShare, heatOf, pipeShare } from './bayModel.ts'
import { airSays, type BayView, balanceSource, finding, method, mindsOf } from './bayView.ts'
import { afterStop, lagged, reaches } from './bayWarming.ts'

/** The air at work, what minds it, in how many minutes, and what openings it wants. */
export function airOfWork(v: BayView, limits: BayLimits): Finding {
  const { hottest, answer, bay } = v
  const { air } = hottest
  const minds = mindsOf(v, limits)
  const over = minds.filter((m) => air.value > m.T)
  const least = minds[0]
  const foam = minds.some((m) => m.what === 'foam')
  const standing: Standing =
    foam && air.value > limits.melt.value ? 'stop' : over.length > 0 ? 'watch' : 'good'
  const at = hottest.state.name
  const minutes = answer.warming ? reaches(answer.warming, limits.melt.value) / 60 : Infinity
  const wants = standing === 'good' || !least ? undefined : actOf(v, least.T)
  return finding('air', {
    says:
      over.length > 0
        ? say`${at === 'tied up' ? 'Tied up' : at === 'at top speed' ? 'At top speed' : 'At full power'} the bay’s air comes to ${airSays(air)}: too warm for ${joined(
            over.map((m) => say`${m.what} (${inCelsius(m.T)})`),
            ', ',
          )}${Number.isFinite(minutes) ? say`; from cold it passes ${inCelsius(limits.melt.value)} in ${shortMinutes(minutes)}` : ''}.`
        : say`${at === 'tied up' ? 'Tied up' : at === 'at top speed' ? 'At top speed' : 'At full power'} the bay’s air comes to ${airSays(air)}${least ? say`; ${least.what} may have ${inCelsius(least.T)}` : ''}.`,
    ...(wants ?? {}),
    harm: standing === 'stop' ? 'before the water' : 'will stop the run',
    value: air.value,
    low: air.low,
    high: air.high,
    unit: 'K',
    standing,
    because: [...whatWarms(v), ...whatCools(v), ...otherWays(v, bay)],
    measureNext: {
      what: 'hang a thermometer under the lid, run hard for ten minutes and read it before the lid is lifted',
      with: 'thermometer',
      minutes: 20,
      path: 'bay',
    },
    sources: [method, balanceSource],
  })
}

const shortMinutes = (minutes: number) => inMinutes(60 * minutes, minutes < 10 ? 0.1 : 1)

/** Openings, a fan, or to keep the heat out, that hold the air at T; with the change of the file where it is one. */
function actOf(v: BayView, T: number): Pick<Finding, 'act' | 'changes'> | undefined {
  const { inputs, bay, hottest, doubts } = v
  const wanted = wantedFor(inputs, bay, hottest.state, doubts, T)
  return wanted && (spelt(bay, wanted) ?? { act: keepOut(v) })
}

function spelt(bay: BaySpec, w: Wanted): Pick<Finding, 'act' | 'changes'> | undefined {
  const now = bay.openings.reduce((sum, o) => sum + o.area.value, 0)
  if (w.fan !== undefined && w.area !== undefined)
    return {
      act: say`a fan of ${inLitresPerSecond(w.fan)} that blows out, with ${inCm2(w.area)} of splash-proof openings for it to draw through`,
    }
  if (w.area === undefined) return undefined
  if (w.times === undefined)
    return {
      act: say`baffled openings of ${inCm2(w.area / 2)} low in a side and ${inCm2(w.area / 2)} under the lid`,
    }
  const { times } = w
  return {
    act: say`openings of ${inCm2(w.area)} altogether instead of ${inCm2(now)}, each grown alike`,
    changes: bay.openings.map((o, i) => ({
      path: `bay.openings.${i}.area`,
      from: o.area.text ?? `${cm2(o.area.value)} cm²`,
      to: `${cm2(o.area.value * times)} cm²`,
    })),
  }
}

/** to the tenth above, as one would type it */
const cm2 = (area: number) => Math.ceil(1e5 * area - 1e-6) / 10

function keepOut({ inputs, bay, hottest, doubts }: BayView): Sentence {
  const pipeOut = steadyAir(inputs, { ...bay, pipe: 'outside' }, hottest.state, doubts)
  const both = steadyAir(inputs, { ...bay, pipe: 'outside', cooling: 'water' }, hottest.state, doubts)
  return bay.cooling === 'fins' || bay.cooling === 'blown'
    ? say`keep the heat out: cylinders cooled by water and the pipe outside bring it to ${inCelsius(both)}`
    : say`lead pipe and muffler outside, which brings it to ${inCelsius(pipeOut)}`
}

/** W that the bay gets, part by part. */
function whatWarms({ inputs, bay, hottest, doubts }: BayView): Because[] {
  const { state } = hottest
  let fins = 0
  let pipes = 0
  let away = 0
  for (const [i] of state.engines.entries()) {
    const h = heatOf(inputs, state, i, doubts)
    fins += finShare(bay, doubts) * h.cylinder
    pipes += pipeShare(inputs, bay, i) * h.pipe
    away += (1 - finShare(bay, doubts)) * h.cylinder + (1 - pipeShare(inputs, bay, i)) * h.pipe
  }
  const simulated = state.engines.some((e) => e.heat)
  return [
    {
      says: say`${inKw(fins, 0.01)} from cylinders and crankcase, ${inKw(pipes, 0.01)} from pipe and muffler ${simulated ? 'by simulation' : 'as parts of their power'}; ${inKw(away, 0.01)} more never reaches the bay`,
      link: 'bay.cooling',
    },
  ]
}

function whatCools({ bay, hottest }: BayView): Because[] {
  const { now } = hottest
  return [
    {
      says: say`${inLitresPerSecond(now.flow.exchanged / 1.2)} of air through ${inCm2(bay.openings.reduce((sum, o) => sum + o.area.value, 0))} of openings carry off ${inKw(now.carried, 0.01)}; lid and sides ${inKw(now.outside, 0.01)}, the floor to the water ${inKw(now.water, 0.01)}`,
      link: 'bay.openings',
    },
    {
      says: say`${inLitres(1 * bay.volume.value)} of air ${bay.volumeFrom === 'file' ? 'by the file' : bay.volumeFrom === 'compartment' ? 'from bulkheads, hull and foam' : 'guessed from the hull alone'}`,
      link: bay.volumeFrom === 'file' ? 'bay.volume' : 'compartments',
    },
  ]
}

/** What each other way to keep heat out would bring, solved again. */
function otherWays({ inputs, hottest, doubts }: BayView, bay: BaySpec): Because[] {
  const ways: [boolean, Partial<BaySpec>, string, string][] = [
    [
      bay.cooling === 'fins' || bay.cooling === 'blown',
      { cooling: 'ducted' },
      'with the engine’s own fan cowled and its warm air led out',
      'bay.cooling',
    ],
    [bay.pipe !== 'outside', { pipe: 'outside' }, 'with pipe and muffler outside', 'bay.pipe'],
  ]
  return ways.flatMap(([open, change, words, link]): Because[] => {
    if (!open) return []
    const T = steadyAir(inputs, { ...bay, ...change }, hottest.state, doubts)
    return Number.isFinite(T)
      ? [{ says: say`${words}: ${airSays({ value: T, low: Number.NaN, high: Number.NaN })}`, link }]
      : []
  })
}

/** The minutes after a stop: still air, hot metal. */
export function afterWork(v: BayView, limits: BayLimits): Finding | undefined {
  const { answer, bay, inputs, hottest, doubts } = v
  const { stopped } = answer
  if (!stopped?.converged) return undefined
  const minds = mindsOf(v, limits).filter((m) => !m.what.startsWith('the engine'))
  const over = minds.filter((m) => stopped.top > m.T)
  const worst = Math.min(...over.map((m) => m.T))
  const topOf = (b: BaySpec, open = false) =>
    Math.max(...lagged(afterStop(inputs, b, hottest.state, doubts, { open })))
  const open = topOf(bay, true)
  const last = stopped.parts.findLastIndex((T) => T > worst)
  const minutes = Math.max(1, Math.ceil((stopped.time[last] ?? 60) / 60))
  const act =
    over.length === 0
      ? undefined
      : open <= worst
        ? say`lift the lid for ${inMinutes(60 * minutes)} after a hard run, which keeps it at ${inCelsius(open)}`
        : runOn(topOf, bay, worst)
  return finding('soak', {
    says: say`After a stop, with no air moving, what stands in the bay comes to ${inCelsius(stopped.top)} in ${shortMinutes(stopped.at / 60)}${
      over.length > 0
        ? say`: too warm for ${joined(
            over.map((m) => say`${m.what} (${inCelsius(m.T)})`),
            ', ',
          )}`
        : ''
    }.`,
    ...(act === undefined ? {} : { act }),
    harm: 'comfort',
    value: stopped.top,
    unit: 'K',
    standing: over.length > 0 ? 'watch' : 'good',
    because: [
      {
        says: 'cylinder and pipe give up what they have stored, the fan of the engine stands; foam and lines follow the air within minutes',
        link: 'bay.cooling',
      },
      { says: say`with the lid off it stays at ${inCelsius(open)}` },
    ],
    sources: [method, 'stored heat of 37 kJ/K a litre swept: common practice, no source'],
  })
}

/** A fan that runs on keeps it at T: the smallest of a row; else the pipe goes outside, with what that brings. */
function runOn(topOf: (b: BaySpec) => number, bay: BaySpec, T: number): Sentence {
  for (const flow of [0.01, 0.02, 0.05, 0.1]) {
    const fan = { ...fanOf(flow), stays: 'on' as const }
    if (topOf({ ...bay, fan }) <= T)
      return say`a fan of ${inLitresPerSecond(flow)} that runs on for ${inMinutes(600)} after a hard run`
  }
  return say`lead pipe and muffler outside, which brings it to ${inCelsius(topOf({ ...bay, pipe: 'outside' }))}`
}

/** At rest in the sun. */
export function inSun(v: BayView, limits: BayLimits): Finding | undefined {
  const { sun } = v.answer
  if (sun === undefined || !Number.isFinite(sun)) return undefined
  const over = sun > limits.standing.value
  return finding('sun', {
    says: say`At rest in the sun, engines off, the bay comes to ${inCelsius(sun)}.`,
    ...(over
      ? {
          act: say`a light cover over the deck, or ${inCm2(Math.max(20e-4, 0.02 * v.bay.plan))} of openings under the lid`,
        }
      : {}),
    harm: 'comfort',
    value: sun,
    unit: 'K',
    standing: over ? 'watch' : 'good',
    because: [
      { says: say`a deck of ${v.bay.deck} under the sun of a clear noon`, link: 'bay.deck' },
      { says: say`${inCelsius(v.inputs.air.value)} in the shade`, link: 'place.air temperature' },
    ],
    sources: ['Sol-air temperature, ASHRAE Handbook of Fundamentals; sunshine and surfaces from memory'],
  })
}
