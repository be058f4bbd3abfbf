/** Cooling water tapped from the jet: how much comes, how warm it leaves, at full throttle and at idle. */
import { inCelsius, inKpa, inLitresPerSecond, inMm, inPercent } from '../../base/answers/amounts.ts'
import type { Finding } from '../../base/answers/finding.ts'
import { say } from '../../base/answers/sentence.ts'
import type { BayLimits } from './bayLimits.ts'
import { type Doubts, finShare, heatOf } from './bayModel.ts'
import type { RunState } from './bayRun.ts'
import { type BayView, balanceSource, finding } from './bayView.ts'
import {
  narrowestFor,
  tapPressure,
  type WaterWay,
  waterHeat,
  waterOut,
  waterThrough,
} from './coolingWater.ts'

/** part of full heat that an idling engine gives its jacket: judgement */
const idleHeat = 0.1
/** K under its limit that a new fitting is worked out for */
const spare = 5

/** W that the water takes up in a state. */
function takenUp({ inputs, bay }: BayView, state: RunState, d: Doubts): number {
  const cools = bay.water?.cools ?? 'engine'
  return state.engines.reduce((sum, _, i) => {
    const h = heatOf(inputs, state, i, d)
    const engine = cools === 'pipe' ? 0 : (1 - finShare(bay, d)) * h.cylinder
    return sum + engine + (cools === 'engine' ? 0 : h.pipe)
  }, 0)
}

export function coolingWater(v: BayView, limits: BayLimits): Finding | undefined {
  const { inputs, bay, doubts } = v
  const { water } = bay
  if (bay.cooling !== 'water' && !water) return undefined
  if (!water) return notGiven()
  const state = inputs.run.states.find((s) => s.flow !== undefined && s.speed === 0)
  if (state?.flow === undefined) return undefined
  const { waterDensity: rho, waterViscosity: mu } = inputs
  const way: WaterWay = {
    bore: water.bore.value,
    narrowest: water.narrowest.value,
    length: water.length.value,
    outlet: water.outlet.value,
  }
  const at = (flow: number, heat: number) => {
    const p = tapPressure(rho, flow, inputs.jet.nozzle, inputs.jet.before)
    const q = waterThrough(way, p, rho, mu)
    return { p, q: q.value, T: waterOut(inputs.water.value, heat, q.value, rho) }
  }
  const heat = takenUp(v, state, doubts)
  const full = at(state.flow, heat)
  // what the jet moves goes with its rotation
  const idleFlow = state.flow * Math.min(1, Math.max(...inputs.engines.map((e) => e.idle)) / state.rotation)
  const idle = at(idleFlow, idleHeat * heat)
  const hot = full.T > limits.waterOut.value
  const hotIdle = idle.T > limits.waterIdle.value
  const rise = full.T - inputs.water.value
  const cold = rise < limits.waterRise.value
  const fit = narrowFor(
    v,
    way,
    full.p,
    heat,
    hot ? limits.waterOut.value - spare : inputs.water.value + 2 * limits.waterRise.value,
  )
  return finding('water', {
    says: say`The jet’s pressure of ${inKpa(full.p)} sends ${inLitresPerSecond(full.q, 0.01)} of cooling water through, which leaves at ${inCelsius(full.T)} tied up at full throttle and at ${inCelsius(idle.T)} at idle.`,
    ...(hot || cold
      ? fit === undefined
        ? { act: say`a hose wider than ${inMm(way.bore)}, its narrowest place as wide` }
        : {
            act: say`a narrowest place of ${inMm(fit, 0.1)} in its way instead of ${inMm(way.narrowest, 0.1)}`,
            changes: [
              {
                path: 'bay.water.narrowest',
                from: `${tenths(way.narrowest)} mm`,
                to: `${tenths(fit)} mm`,
              },
            ],
          }
      : hotIdle
        ? {
            act: say`its outlet lower than ${inMm(way.outlet)} over the water, or no more than a minute of idling`,
          }
        : {}),
    harm: cold && !hot && !hotIdle ? 'comfort' : 'will stop the run',
    value: full.T,
    unit: 'K',
    standing: hot || hotIdle || cold ? 'watch' : 'good',
    because: [
      { says: say`it takes ${inPercent(full.q / state.flow, 0.1)} of what the jet moves`, link: 'bay.water' },
      {
        says: say`narrowest place ${inMm(way.narrowest, 0.1)} in a hose of ${inMm(way.bore)}`,
        link: 'bay.water.narrowest',
      },
      {
        says: say`${inCelsius(limits.waterOut.value)} is where scale and steam begin; sand in a strainer halves the flow and nobody hears it: watch the tell-tale`,
      },
    ],
    sources: [
      'Bernoulli before the nozzle; Blasius 1913 for the hose; loss factors after Miller 1978, from memory',
      balanceSource,
    ],
  })
}

/** m: the narrowest place for an outlet temperature, to the tenth of a millimetre on the side that holds; undefined where the hose is too small. */
function narrowFor(
  { inputs }: BayView,
  way: WaterWay,
  p: number,
  heat: number,
  T: number,
): number | undefined {
  const q = heat / (inputs.waterDensity * waterHeat * Math.max(0.1, T - inputs.water.value))
  const found = narrowestFor(way, q, p, inputs.waterDensity, inputs.waterViscosity)
  if (!found.converged) return undefined
  // hotter than wanted: wider; colder: narrower
  return found.value > way.narrowest
    ? Math.min(way.bore, 1e-4 * Math.ceil(1e4 * found.value))
    : 1e-4 * Math.floor(1e4 * found.value)
}

const tenths = (m: number) => Math.round(1e4 * m) / 10

const notGiven = (): Finding =>
  finding('water', {
    says: 'How much water cools the engines is not known: the file names no hose from the jet.',
    standing: 'unknown',
    because: [{ says: 'bore, narrowest place and length of the hose', link: 'bay.water' }],
    measureNext: {
      what: 'measure across the hose and its smallest fitting',
      with: 'caliper',
      minutes: 3,
      path: 'bay.water',
    },
    sources: ['The craft file'],
  })
