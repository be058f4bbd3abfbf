/**
 * How a bay warms from cold and what it does once the engines stop: engine, pipe and walls as three lumps, the air between them in
 * balance at every moment. Each lump relaxes exactly to what it would reach over one step.
 * Masses of hot metal: 37 kJ/K a litre swept for cylinder, head and case, 7 kJ/K for the pipe (4 to 5 kg and 1 kg on a 60 cm³ single):
 * common practice, no source. Fins stand 150 K over their air at full power; still air takes a fifth of what a fan does: the same.
 */
import type { BayInputs, BaySpec } from './bayFromCraft.ts'
import { airBeside, type BayModel, givenAt, steadyBay } from './bayHeat.ts'
import { type Doubts, heatOf, modelOf, pipeShare } from './bayModel.ts'
import type { RunState } from './bayRun.ts'

const engineHeat = 3.7e7
const pipeHeat = 7e6
const finRise = 150
const stillShare = 0.2
/** of what a cowled cylinder gives in still air, the part that goes up its duct: judgement */
const upDuct = 0.7

const stillOf = { fins: 1, blown: stillShare, ducted: stillShare * (1 - upDuct), water: 0.1 } as const

export interface Warming {
  /** s from the start, and K of the air */
  time: number[]
  air: number[]
  /** false where a step found no balance */
  converged: boolean
}

/** s: short steps while things move fast, long ones later */
const stepAt = (t: number) => (t < 300 ? 10 : t < 1200 ? 30 : 60)

/** Times from nought to `minutes`. */
function timesTo(minutes: number): number[] {
  const list = [0]
  for (let t = 0; t < 60 * minutes; ) {
    t += stepAt(t)
    list.push(t)
  }
  return list
}

/** Warm-up from cold to `minutes`; the air over time. */
export function warmUp(inputs: BayInputs, bay: BaySpec, state: RunState, d: Doubts, minutes = 45): Warming {
  const m = modelOf(inputs, bay, state, d)
  const swept = inputs.engines.reduce((sum, e) => sum + (e.running ? e.displacement : 0), 0)
  const metal = Math.max(500, engineHeat * swept)
  const heat = totals(inputs, state, d)
  const slow = heat.cylinder > 0 ? (metal * finRise) / heat.cylinder : 1
  let walls = m.outside
  let air = m.outside
  let converged = true
  const time = timesTo(minutes)
  const out = [air]
  for (const [i, t] of time.entries()) {
    if (i === 0) continue
    const step = t - time[i - 1]!
    // fins give what the metal has reached of its own warmth
    const share = 1 - Math.exp(-t / slow)
    const quick = 1 - Math.exp(-t / 30)
    const given = (T: number) => bySources(m, T, share, quick)
    const found = airBeside(m, walls, (T) => given(T).air, air)
    if (!found.converged) converged = false
    air = found.value
    walls = relax(m, walls, air, given(air).walls, step)
    out.push(air)
  }
  return { time, air: out, converged }
}

/** heat of fins at `share` and of pipes at `quick` of their steady state */
function bySources(m: BayModel, T: number, share: number, quick: number): { air: number; walls: number } {
  let air = 0
  let walls = 0
  for (const s of m.sources) {
    const k = s.slow ? share : quick
    const one = givenAt({ sources: [s] }, T)
    air += k * one.air
    walls += k * one.walls
  }
  return { air, walls }
}

function relax(m: BayModel, walls: number, air: number, radiated: number, dt: number): number {
  const g = m.film + m.toAir.conductance
  const end = (m.film * air + m.toAir.conductance * m.toAir.T + radiated) / g
  return end + (walls - end) * Math.exp((-g * dt) / m.capacity)
}

function totals(inputs: BayInputs, state: RunState, d: Doubts) {
  return state.engines.reduce(
    (sum, _, i) => {
      const h = heatOf(inputs, state, i, d)
      return { cylinder: sum.cylinder + h.cylinder, pipe: sum.pipe + h.pipe }
    },
    { cylinder: 0, pipe: 0 },
  )
}

/** s until the air first reaches T; Infinity where it does not within what was looked at. */
export function reaches(w: Warming, T: number): number {
  const i = w.air.findIndex((a) => a >= T)
  if (i < 0) return Infinity
  if (i === 0) return 0
  const [a, b] = [w.air[i - 1]!, w.air[i]!]
  return w.time[i - 1]! + ((T - a) / Math.max(1e-9, b - a)) * (w.time[i]! - w.time[i - 1]!)
}

/** s in which foam faces, lines and prints follow the air: judgement */
const lag = 180

/** What stands in the air follows it: the same times, K, from the air it started in. */
export function lagged(w: Warming): number[] {
  let T = w.air[0] ?? Number.NaN
  return w.air.map((a, i) => {
    const step = i === 0 ? 0 : w.time[i]! - w.time[i - 1]!
    T += (1 - Math.exp(-step / lag)) * (a - T)
    return T
  })
}

/** an open lid: half the plan of the bay */
const lidOff = (bay: BaySpec): BaySpec => ({ ...bay, leak: Math.max(bay.leak, 0.5 * bay.plan) })

/** part of what hot metal gives the air that goes straight out of a bay whose lid is off, as a plume: judgement */
const plume = 0.7

export interface StopOptions {
  /** the lid is off */
  open?: boolean
  minutes?: number
}

/** The air after a stop out of the steady state: still, with what engine and pipe have stored. */
export function afterStop(
  inputs: BayInputs,
  bay: BaySpec,
  state: RunState,
  d: Doubts,
  { open = false, minutes = 20 }: StopOptions = {},
): Warming {
  const kept = open ? 1 - plume : 1
  const running = steadyBay(modelOf(inputs, bay, state, d)).value
  const m = modelOf(inputs, open ? lidOff(bay) : bay, undefined, d, { stopped: true })
  const heat = totals(inputs, state, d)
  const swept = inputs.engines.reduce((sum, e) => sum + (e.running ? e.displacement : 0), 0)
  // a jacket is at the water's temperature and some; what is stored in it stays low
  const hot = bay.cooling === 'water' ? d.water + 50 : running.air + finRise
  const metal = Math.max(500, engineHeat * swept)
  const fins = (heat.cylinder / finRise) * stillOf[bay.cooling]
  const pipes = state.engines.reduce(
    (sum, _, i) => sum + pipeShare(inputs, bay, i) * heatOf(inputs, state, i, d).pipe,
    0,
  )
  const skin = 600
  const pipeG = pipes / (skin - d.air)
  const pipeMetal = Math.max(100, pipeHeat * swept)
  let engine = hot
  let pipe = skin
  let { walls, air } = running
  let converged = true
  const time = timesTo(minutes)
  const out = [air]
  for (const [i, t] of time.entries()) {
    if (i === 0) continue
    const step = t - time[i - 1]!
    const found = airBeside(m, walls, (T) => kept * (fins * (engine - T) + 0.5 * pipeG * (pipe - T)), air)
    if (!found.converged) converged = false
    air = found.value
    engine = air + (engine - air) * Math.exp((-fins * step) / metal)
    walls = relax(m, walls, air, 0.5 * pipeG * (pipe - walls), step)
    pipe = air + (pipe - air) * Math.exp((-pipeG * step) / pipeMetal)
    out.push(air)
  }
  return { time, air: out, converged }
}
