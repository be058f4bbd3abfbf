/** The circuit in each lean: pressure at every carburettor, what is left over, and the temperature at which it would boil. */
import { rangeOf } from '../../base/answers/rangeOf.ts'
import type { Range } from '../../base/answers/solved.ts'
import type { Liquid } from '../../physics/fluid/hoseDrop.ts'
import type { TankAnswer } from './fuelAnswer.ts'
import { type Circuit, type CircuitDraw, circuitOf, circuitState } from './fuelCircuit.ts'
import type { FuelCraft } from './fuelFromCraft.ts'
import { type FuelState, liquidFrame, worthOf } from './fuelStates.ts'
import { boilsAt, mixtureViscosity } from './petrol.ts'
import { surfaceAt } from './tankReach.ts'

/** Carburettors draw in gulps: the line is tried at twice the mean of full throttle. Judgement, no source. */
export const gulp = 2
/** idle flow over full throttle's */
const idleShare = 0.12

/** The circuit's pressures in one lean, Pa gauge, with the tank as it is filled and with it nearly empty. */
export interface FeedState {
  state: FuelState
  /** by node of the circuit */
  pressure: number[]
  nearlyEmpty: number[]
  /** m³/s, one a hose */
  flow: number[]
  regime: readonly string[]
  converged: boolean
  residual: number
}

/** How one carburettor is fed in the worst lean. */
export interface Fed {
  engine: string
  path: string
  /** Pa at its inlet, and with what the pump gives; nearly empty, at twice the mean flow */
  inlet: number
  margin: Range
  worst: FuelState
}

export interface Feed {
  circuit: Circuit
  states: FeedState[]
  fed: Fed[]
  /** Pa absolute, the least anywhere in the lines, and where */
  least: number
  leastAt: string
  leastIn: string
  /** K at which the fuel boils there */
  boils: Range
  converged: boolean
}

/** m³/s of one engine at full throttle, its oil with it. */
const flowsOf = (c: FuelCraft, times: number): number[] =>
  c.engines.map((e) =>
    e.running
      ? (times * e.most.value * c.section.use.consumption.value * (1 + c.oil.value)) / c.density.value
      : 0,
  )

export function feedOf(c: FuelCraft, states: readonly FuelState[], tank: TankAnswer): Feed {
  const circuit = circuitOf(c)
  const liquid: Liquid = {
    density: c.density.value,
    viscosity: mixtureViscosity(c.oil.value, c.temperature.value),
  }
  // what lies in no circuit has no pressure
  if (circuit.lost.length > 0) return unfed(c, circuit)
  const solved = states.map((state): FeedState => {
    const flows = flowsOf(c, state.driven ? gulp : idleShare)
    const full = circuitState(circuit, state, { mouth: mouthPressure(c, tank, state), flows }, liquid)
    const empty = circuitState(circuit, state, { mouth: 0, flows }, liquid)
    return {
      state,
      pressure: full.value.pressure,
      nearlyEmpty: empty.value.pressure,
      flow: empty.value.flow,
      regime: empty.value.regime,
      converged: full.converged && empty.converged,
      residual: Math.max(full.residual, empty.residual),
    }
  })
  const fed = circuit.nodes.flatMap((n, i): Fed[] => {
    const engine = n.engine === undefined ? undefined : c.engines[n.engine]
    if (!engine?.running) return []
    const worst = solved.reduce((a, s) => (s.nearlyEmpty[i]! < a.nearlyEmpty[i]! ? s : a))
    return [
      {
        engine: engine.name,
        path: engine.path,
        inlet: worst.nearlyEmpty[i]!,
        margin: marginOf(c, worst.state, i, liquid),
        worst: worst.state,
      },
    ]
  })
  let [least, leastAt, leastIn] = [Number.POSITIVE_INFINITY, '', '']
  for (const s of solved)
    for (const [i, p] of s.nearlyEmpty.entries())
      if (p < least) [least, leastAt, leastIn] = [p, circuit.nodes[i]!.name, s.state.says]
  const absolute = c.air + least
  return {
    circuit,
    states: solved,
    fed,
    least: absolute,
    leastAt,
    leastIn,
    boils: rangeOf(
      ([reid, p]) => (p! > 0 ? boilsAt(reid!, p!) : Number.NaN),
      [c.section.volatility, { value: absolute, low: c.air + 1.5 * least, high: c.air + 0.5 * least }],
    ),
    converged: solved.every((s) => s.converged),
  }
}

function unfed(c: FuelCraft, circuit: Circuit): Feed {
  return {
    circuit,
    states: [],
    fed: [],
    least: c.air,
    leastAt: 'tank',
    leastIn: 'at rest',
    boils: { value: Number.NaN, low: Number.NaN, high: Number.NaN },
    converged: false,
  }
}

/** Pa at the pick-up's mouth from the fuel over it, as the tank is filled; nought where it is uncovered. */
function mouthPressure(c: FuelCraft, tank: TankAnswer, state: FuelState): number {
  const level = surfaceAt(tank.body, Math.min(c.filled.value, tank.body.capacity), state)
  const { weight } = liquidFrame(state)
  return Math.max(0, c.density.value * weight * level - worthOf(state, tank.mouth, c.density.value))
}

/** What a carburettor's inlet and its pump have over, Pa, with the doubt of bores, fittings, heights and pump. */
function marginOf(c: FuelCraft, state: FuelState, node: number, liquid: Liquid): Range {
  const flows = flowsOf(c, state.driven ? gulp : idleShare)
  const { pump, feed } = c.section
  const pressureAt = (draw: CircuitDraw) => {
    const solved = circuitState(circuitOf(c, draw), state, { mouth: 0, flows }, liquid)
    return solved.converged ? solved.value.pressure[node]! : Number.NaN
  }
  const spread = doubtOf(c)
  return rangeOf(
    ([bore, losses, rise, p]) =>
      pressureAt({ bore: bore!, losses: losses!, rise: rise! }) + (feed === 'pulse pump' ? p! : 0),
    [spread.bore, spread.losses, spread.rise, feed === 'pulse pump' ? pump : { value: 0, low: 0, high: 0 }],
  )
}

/** How far the lines' own doubts reach, as factors and as metres of height. */
function doubtOf(c: FuelCraft) {
  const part = (of: (l: FuelCraft['lines'][number]) => { value: number; low: number; high: number }) => ({
    value: 1,
    low: Math.min(...c.lines.map((l) => ratio(of(l).low, of(l).value)), 1),
    high: Math.max(...c.lines.map((l) => ratio(of(l).high, of(l).value)), 1),
  })
  const rise = c.lines.reduce(
    (sum, l) => ({
      low: Math.min(sum.low, l.rise.low - l.rise.value),
      high: Math.max(sum.high, l.rise.high - l.rise.value),
    }),
    { low: 0, high: 0 },
  )
  return { bore: part((l) => l.narrowest), losses: part((l) => l.losses), rise: { value: 0, ...rise } }
}

const ratio = (a: number, b: number): number => (b > 0 ? a / b : 1)
