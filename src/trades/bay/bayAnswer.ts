/** The bay worked out: each state steady with its range, the minutes after a stop, the sun, and what openings it would want. */
import { rangeOf } from '../../base/answers/rangeOf.ts'
import { say } from '../../base/answers/sentence.ts'
import type { Range } from '../../base/answers/solved.ts'
import { brent } from '../../base/numerics/roots.ts'
import { assumedBayAir, type BayAir } from '../../hull/site/airOfBay.ts'
import type { BayInputs, BaySpec } from './bayFromCraft.ts'
import { type BayModel, type BayState, steadyBay } from './bayHeat.ts'
import { type Doubts, discharges, doubtNames, doubtsOf, middles, modelOf } from './bayModel.ts'
import type { RunState } from './bayRun.ts'
import { afterStop, lagged, type Warming, warmUp } from './bayWarming.ts'

/** One state of the craft, steady. */
export interface SteadyState {
  state: RunState
  /** K of the bay's air */
  air: Range
  now: BayState
  model: BayModel
}

export interface BayAnswer {
  /** what other trades take */
  air: BayAir
  /** absent where the file has no bay, or a state found no balance */
  bay?: BaySpec
  states: readonly SteadyState[]
  /** the one that warms the bay most, and how it comes to that from cold */
  hottest?: SteadyState
  warming?: Warming
  /** after a stop out of the hottest state: the air over time, what stands in it, the top of that in K and when, s */
  stopped?: Warming & { parts: readonly number[]; top: number; at: number }
  /** K at rest in the sun, engines off */
  sun?: number
  doubts?: Doubts
}

const valuesOf = (values: readonly number[]): Doubts =>
  Object.fromEntries(doubtNames.map((name, i) => [name, values[i]])) as Doubts

/** Steady air of a bay in a state, with what is in doubt at `d`; NaN where none was found. */
export function steadyAir(inputs: BayInputs, bay: BaySpec, state: RunState | undefined, d: Doubts): number {
  const found = steadyBay(modelOf(inputs, bay, state, d))
  return found.converged ? found.value.air : Number.NaN
}

/** Works out the bay of a craft. */
export function bayAnswer(inputs: BayInputs): BayAnswer {
  const { bay, craft } = inputs
  if (!bay) return { air: assumedBayAir(craft), states: [] }
  const ends = doubtsOf(inputs, bay)
  const d = middles(ends)
  const states = inputs.run.states.map((state): SteadyState => {
    const model = modelOf(inputs, bay, state, d)
    const now = steadyBay(model)
    const range = rangeOf(
      (values) => steadyAir(inputs, bay, state, valuesOf(values)),
      doubtNames.map((name) => ends[name]),
    )
    // the middle of the draws is not the solution at the middles: sentences stand on the solution
    const air = now.converged ? now.value.air : Number.NaN
    return {
      state,
      air: { value: air, low: Math.min(air, range.low), high: Math.max(air, range.high) },
      now: now.value,
      model,
    }
  })
  const sound = states.filter((s) => Number.isFinite(s.air.value))
  const hottest = sound.reduce<SteadyState | undefined>(
    (a, b) => (a && a.air.value >= b.air.value ? a : b),
    undefined,
  )
  if (!hottest) return { air: assumedBayAir(craft), bay, states, doubts: d }
  const warming = warmUp(inputs, bay, hottest.state, d)
  const after = afterStop(inputs, bay, hottest.state, d)
  const parts = lagged(after)
  const top = Math.max(...parts)
  const sun = steadyAir(inputs, bay, undefined, d)
  return {
    air: {
      ...hottest.air,
      soak: Math.max(top, hottest.air.value),
      known: true,
      says: say`air of the bay after a hard run, worked out from what the file says of it`,
      link: 'bay',
    },
    bay,
    states,
    hottest,
    warming,
    stopped: { ...after, parts, top, at: after.time[parts.indexOf(top)] ?? 0 },
    sun,
    doubts: d,
  }
}

/** What would keep the bay at or below a temperature. */
export interface Wanted {
  /** m² of all openings together: those of the file grown alike, or one low and one high where it has none */
  area?: number
  /** what each of the file's openings becomes, as a part of what it is */
  times?: number
  /** m³/s of a fan, free, with openings of `area`, where openings alone cannot do it */
  fan?: number
}

/** share of the bay's plan that openings can take before there is no deck left: judgement */
const mostOpen = 0.5
/** steps that a builder cuts to, m² */
const cut = 5e-4
const upTo = (area: number) => cut * Math.ceil(area / cut - 1e-9)

/** The bay with its openings grown to `area` altogether; one low and one high baffled pair where it has none. */
export function opened(bay: BaySpec, area: number): BaySpec {
  const now = bay.openings.reduce((sum, o) => sum + o.area.value, 0)
  const k = now > 0 ? area / now : 0
  return { ...bay, openings: now > 0 ? bay.openings.map((o) => scaled(o, k)) : pair(bay, area) }
}

type Opening = BaySpec['openings'][number]
const scaled = (o: Opening, k: number): Opening => ({
  ...o,
  area: { ...o.area, value: k * o.area.value, low: k * o.area.low, high: k * o.area.high },
})

function pair(bay: BaySpec, area: number): Opening[] {
  const q = (value: number, kind: 'area' | 'length', path: string) => ({
    ...{ value, low: value, high: value, source: 'assumed' as const, kind, path },
    why: 'one low and one high',
  })
  const one = (name: string, height: number): Opening => ({
    name,
    area: q(area / 2, 'area', `bay.${name}`),
    height: q(height, 'length', `bay.${name}`),
    tall: q(0.1 * bay.depth, 'length', `bay.${name}`),
    splash: 'baffle',
    faces: 'side',
  })
  return [one('low', 0.1 * bay.depth), one('high', 0.9 * bay.depth)]
}

/** Openings, or a fan with openings, that hold the steady air at or below T in a state; undefined where it is below already, empty where nothing does. */
export function wantedFor(
  inputs: BayInputs,
  bay: BaySpec,
  state: RunState,
  d: Doubts,
  T: number,
): Wanted | undefined {
  const at = (b: BaySpec) => steadyAir(inputs, b, state, d)
  if (at(bay) <= T) return undefined
  const now = bay.openings.reduce((sum, o) => sum + o.area.value, 0)
  const most = Math.max(1.01 * now, mostOpen * bay.plan)
  const by = (area: number) => at(opened(bay, area)) - T
  if (by(most) <= 0) {
    const from = Math.max(now, 1e-4)
    const found = by(from) <= 0 ? from : brent(by, from, most, { tolerance: 1e-5 }).value
    const area = Math.min(most, upTo(found))
    return now > 0 ? { area, times: area / now } : { area }
  }
  // air that comes in at 3 m/s through openings that keep splash out
  const forced = (fan: number): BaySpec => ({
    ...opened(bay, Math.min(most, Math.max(now, fan / 3 / discharges.baffle))),
    fan: fanOf(fan),
  })
  const byFan = (fan: number) => at(forced(fan)) - T
  const biggest = 0.4
  if (!(byFan(biggest) <= 0)) return {}
  const found = brent(byFan, 1e-4, biggest, { tolerance: 2e-4 })
  if (!found.converged) return {}
  const fan = 5e-3 * Math.ceil(found.value / 5e-3)
  return { fan, area: upTo(forced(fan).openings.reduce((sum, o) => sum + o.area.value, 0)) }
}

/** A fan to be fitted, blowing out of the bay low down, m³/s. */
export function fanOf(flow: number): NonNullable<BaySpec['fan']> {
  const q = (value: number, kind: 'volumeFlow' | 'pressure' | 'length') => ({
    ...{ value, low: value, high: value, source: 'assumed' as const, kind, path: 'bay.fan' },
    why: 'a fan to be fitted',
  })
  return {
    flow: q(flow, 'volumeFlow'),
    pressure: q(100, 'pressure'),
    height: q(0.05, 'length'),
    blows: 'out',
    stays: 'off',
  }
}
