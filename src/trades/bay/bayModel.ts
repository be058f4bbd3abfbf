/**
 * What warms a bay and what cools it, from the craft and a state of its engines.
 * Heat of a two-stroke that was not simulated, as parts of its power at the crank: walls, fins and friction 0.7 (0.4 to 1.1), pipe skins
 * 0.45 (0.25 to 0.8), muffler 0.1 (0.04 to 0.25): this project's own simulation of a tuned single (0.42 to 0.54, 0.33 to 0.56, 0.07 to
 * 0.10 over its speeds) and heat balances of small air-cooled engines (a quarter to a fifth of the fuel each to shaft and cooling; from
 * memory of J. B. Heywood, Internal Combustion Engine Fundamentals, 1988, sec. 12.1). Cooling air of a fan-cooled engine 15 L/s a
 * kilowatt (9 to 22), led out at about 6 m/s: common practice, no source. Films: free convection on plates a few tenths of a metre large and 20 to 60 K warmer,
 * 4 to 7 W/(m²K) (W. H. McAdams, Heat Transmission, 3rd ed. 1954: 1.32 (ΔT/L)^¼ up, 0.59 (ΔT/L)^¼ down), outside in wind
 * 5.7 + 3.8 V (the same, from memory). Sun on a level deck at noon 700 W/m² (300 to 950): from memory.
 */
import type { AirFan, AirOpening } from './bayFlow.ts'
import type { BayInputs, BaySpec, Ends } from './bayFromCraft.ts'
import type { BayModel, BaySource } from './bayHeat.ts'
import type { RunState } from './bayRun.ts'

/** What is in doubt, each with its likely ends. */
export type Doubts = Record<(typeof doubtNames)[number], number>

export const doubtNames = [
  'cylinder',
  'pipe',
  'box',
  'air',
  'water',
  'discharge',
  'film',
  'room',
  'sun',
  'engineFan',
  'led',
] as const

/** in simulated heat the method's own doubt: colder or hotter walls, a pipe in still air */
const simulated = {
  cylinder: { value: 1, low: 0.8, high: 1.6 },
  pipe: { value: 1, low: 0.7, high: 1.4 },
  box: { value: 1, low: 0.5, high: 2 },
}
/** parts of the power, see above */
const ofPower = {
  cylinder: { value: 0.7, low: 0.4, high: 1.1 },
  pipe: { value: 0.45, low: 0.25, high: 0.8 },
  box: { value: 0.1, low: 0.04, high: 0.25 },
}

export function doubtsOf(inputs: BayInputs, bay: BaySpec): Record<keyof Doubts, Ends> {
  const known = inputs.run.states.some((s) => s.engines.some((e) => e.heat))
  const { volume } = bay
  return {
    ...(known ? simulated : ofPower),
    air: inputs.air,
    water: inputs.water,
    discharge: { value: 1, low: 0.85, high: 1.15 },
    film: { value: 1, low: 0.65, high: 1.6 },
    room: { value: 1, low: volume.low / volume.value, high: volume.high / volume.value },
    sun: { value: 700, low: 300, high: 950 },
    engineFan: { value: 15e-6, low: 9e-6, high: 22e-6 },
    led: { value: 0.92, low: 0.8, high: 0.97 },
  }
}

export const middles = (d: Record<keyof Doubts, Ends>): Doubts =>
  Object.fromEntries(doubtNames.map((name) => [name, d[name].value])) as Doubts

/** discharge coefficients: a sharp hole 0.6; louvres and baffled boxes by common practice, no source */
export const discharges = { open: 0.6, louvre: 0.45, baffle: 0.35 } as const

/** wind pressure over ½ρV² on a low hull under way; judgement, no source */
const winds = { side: 0, forward: 0.5, aft: -0.2, up: -0.1 } as const

/** what of a pipe's heat stays in the bay, and the part of that which is radiated; judgement from wrap and film resistances */
const pipes = {
  bare: { share: 1, radiated: 0.55 },
  shielded: { share: 0.75, radiated: 0.25 },
  wrapped: { share: 0.45, radiated: 0.35 },
  'water-cooled': { share: 0.08, radiated: 0.2 },
  outside: { share: 0, radiated: 0 },
} as const

/** part of the cylinder's heat that a water jacket leaves to the bay, and of a motor's power that warms it: judgement */
const besideJacket = 0.12
const motorLoss = 0.15
/** K of air in which fins take no more heat from their gas: its mean effective temperature less the rise of the metal; judgement */
const metalAt = 950
/** Pa against which a flywheel fan moves nothing: common practice */
const flywheelShut = 250
/** kg of air a joule at the crank: 450 g/kWh at 13 parts of air, from the method of the fuel trade */
const airPerJoule = (450 * 13) / 3.6e9
const fuelPerJoule = 450 / 3.6e9

/** kg/s of air and fuel of one engine in a state. */
export const airOf = (e: RunState['engines'][number], burns: boolean): number =>
  burns ? (e.air ?? airPerJoule * e.power) : 0
export const fuelOf = (e: RunState['engines'][number], burns: boolean): number =>
  burns ? (e.fuel ?? fuelPerJoule * e.power) : 0

/** Heat of one engine, W: fins with crankcase, pipe with muffler. */
export interface HeatOfEngine {
  cylinder: number
  pipe: number
  /** K of what drives the pipe */
  gas: number
}

export function heatOf(inputs: BayInputs, state: RunState, i: number, d: Doubts): HeatOfEngine {
  const run = state.engines[i]
  const engine = inputs.engines[i]
  if (!run || !engine) return { cylinder: 0, pipe: 0, gas: 900 }
  if (!engine.burns) return { cylinder: motorLoss * run.power, pipe: 0, gas: 900 }
  const parts = run.heat
    ? { ...run.heat, cylinder: run.heat.cylinder + Math.max(0, run.heat.case) }
    : { cylinder: run.power, pipe: run.power, box: run.power }
  return {
    cylinder: d.cylinder * parts.cylinder,
    pipe: d.pipe * parts.pipe + d.box * parts.box,
    gas: run.exhaustT ?? 900,
  }
}

/** Share of the pipe's heat that the bay gets; a simulated pipe was simulated with its own finish. */
export function pipeShare(inputs: BayInputs, bay: BaySpec, i: number): number {
  const engine = inputs.craft.engines[i]
  const finish = engine?.kind === 'two-stroke' ? engine.exhaust?.finish : undefined
  const simulatedHere = inputs.run.states.some((s) => s.engines[i]?.heat)
  if (!simulatedHere || finish === undefined || bay.pipe === 'outside') return pipes[bay.pipe].share
  // a jacket takes up all it is given
  if (finish === 'water-cooled') return 0.05
  return Math.min(1, pipes[bay.pipe].share / pipes[finish].share)
}

/** kg/s and W fractions of a water jacket are the bay's no more. */
export function finShare(bay: BaySpec, d: Doubts): number {
  switch (bay.cooling) {
    case 'fins':
    case 'blown':
      return 1
    case 'ducted':
      return 1 - d.led
    case 'water':
      return besideJacket
  }
}

export interface ModelOptions {
  /** just stopped: no fan of the engine, nothing burnt, no wind of its own way; a fan that stays on runs */
  stopped?: true
  /** no sun */
  shade?: true
}

/** m² openings of the file and the gaps of the lid. */
export function openingsOf(bay: BaySpec, d: Doubts, density: number, speed: number): AirOpening[] {
  const push = 0.5 * density * speed * speed
  const given = bay.openings.map((o): AirOpening => {
    const flat = o.faces === 'up'
    const half = 0.5 * (flat ? 0 : o.tall.value)
    return {
      area: o.area.value,
      height: Math.max(half, o.height.value),
      tall: 2 * half,
      discharge: discharges[o.splash] * d.discharge,
      wind: winds[o.faces] * push,
    }
  })
  return [
    ...given,
    { area: bay.leak, height: bay.depth, tall: 0, discharge: discharges.open * d.discharge, wind: 0 },
  ]
}

/** The bay in one state. */
export function modelOf(
  inputs: BayInputs,
  bay: BaySpec,
  state: RunState | undefined,
  d: Doubts,
  options: ModelOptions = {},
): BayModel {
  const density = inputs.pressure / (287.05 * d.air)
  const running = state !== undefined && !options.stopped
  const sources: BaySource[] = []
  const fans: AirFan[] = []
  let burnt = 0
  if (running)
    for (const [i, run] of state.engines.entries()) {
      const engine = inputs.engines[i]
      if (!engine || !(run.power > 0)) continue
      const heat = heatOf(inputs, state, i, d)
      const fins = finShare(bay, d) * heat.cylinder
      // crankcase and cold side of the fins radiate a little
      const from = engine.burns ? metalAt : Infinity
      sources.push({ air: 0.85 * fins, walls: 0.15 * fins, from, at: d.air, slow: true })
      const pipe = pipeShare(inputs, bay, i) * heat.pipe
      const { radiated } = pipes[bay.pipe]
      sources.push({
        air: (1 - radiated) * pipe,
        walls: radiated * pipe,
        from: heat.gas,
        at: d.air,
        slow: false,
      })
      if (bay.cooling === 'ducted' && engine.burns)
        fans.push({
          free: d.engineFan * run.power,
          shut: flywheelShut,
          blows: 'out',
          height: 0.5 * bay.depth,
        })
      if (bay.engineAir === 'bay') burnt += airOf(run, engine.burns)
    }
  const { fan } = bay
  if (fan && (running || (options.stopped && fan.stays === 'on')))
    fans.push({
      free: fan.flow.value,
      shut: fan.pressure.value,
      blows: fan.blows,
      height: Math.min(bay.depth, fan.height.value),
    })
  return {
    outside: d.air,
    pressure: inputs.pressure,
    openings: [...openingsOf(bay, d, density, running ? state.speed : 0), ...ductOf(inputs, bay, running, d)],
    fans,
    burnt,
    sources,
    ...wallsOf(bay, d, running ? state.speed : 0, options.shade === true),
  }
}

/** the duct of a fan-cooled engine that stands still is an opening like any other */
function ductOf(inputs: BayInputs, bay: BaySpec, running: boolean, d: Doubts): AirOpening[] {
  if (running || bay.cooling !== 'ducted') return []
  const power = Math.max(0, ...inputs.run.states.map((s) => s.engines.reduce((sum, e) => sum + e.power, 0)))
  const area = (d.engineFan * power) / 6
  // half of it is fins and fan blades
  return area > 0
    ? [{ area, height: bay.depth, tall: 0, discharge: 0.5 * discharges.open * d.discharge, wind: 0 }]
    : []
}

/** share of sunlight a deck takes up, and W/(m²K) it radiates: dulled aluminium, light and dark paint (handbook values, from memory) */
const decks = {
  'bare metal': { takes: 0.4, radiates: 1 },
  light: { takes: 0.3, radiates: 5 },
  dark: { takes: 0.9, radiates: 5 },
} as const

function wallsOf(bay: BaySpec, d: Doubts, speed: number, shade: boolean) {
  const plan = bay.plan * d.room
  const sides = Math.max(0, bay.walls - 2 * bay.plan) * d.room
  const deck = decks[bay.deck]
  // a breath of wind goes always
  const outside = 5.7 + 3.8 * Math.max(1, speed) + deck.radiates
  const warmer = shade ? 0 : (deck.takes * d.sun) / outside
  // sides are lined with foam; a twentieth of a metre of it lets 0.7 W/(m²K) through
  const side = 0.7 * sides
  const all = outside * plan + side
  const stirred = bay.cooling === 'blown' ? 1.8 : 1
  return {
    // what stands in the bay is half as large again as lid and sides
    film: 6 * d.film * stirred * (1.5 * (plan + sides)),
    toAir: { conductance: all, T: d.air + (outside * plan * warmer) / all },
    // warm air over a cold floor hardly moves: radiation carries most
    toWater: { conductance: 4.5 * d.film * plan, T: d.water },
    // 1.5 mm of aluminium over and under, two centimetres of foam at the sides, and 60 g of metal a litre that stands in the bay
    capacity: 2 * 3645 * plan + 840 * sides + 6e4 * bay.volume.value * d.room,
  }
}
