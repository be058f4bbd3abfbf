/** Everything the Fuel page asks of one craft: tank in every lean, a day's fuel, the circuit, vapour, jets and chips. */
import { type Bounded, rangeOf } from '../../base/answers/rangeOf.ts'
import type { Range } from '../../base/answers/solved.ts'
import type { Vec3 } from '../../physics/solid/mesh.ts'
import { type Feed, feedOf } from './feedAnswer.ts'
import type { FuelCraft, FuelEngine, FuelInputs } from './fuelFromCraft.ts'
import { type FuelState, fuelStates } from './fuelStates.ts'
import { type JetAnswer, jetsOf } from './jetAnswer.ts'
import { volumeCorrection } from './petrol.ts'
import { leftByWeight, shareAt, type TankBody, tankBody, volumeBelow } from './tankReach.ts'

/** Part load and idle over full throttle's fuel: half the power at a third more for its work; idling. Judgement, from memory. */
const cruise = { value: 0.65, low: 0.55, high: 0.75 }
const idle = { value: 0.12, low: 0.08, high: 0.18 }
/** share of a tank that should stay empty at the least: USCG and ABYC guidance on expansion, from memory */
export const leastUllage = 0.05

/** What a tank does in one lean. */
export interface TankState {
  state: FuelState
  /** share of the tank at which the fuel meets the vent's fitting */
  ventAt: number
  /** m³ that the pick-up cannot reach */
  left: number
}

export interface TankAnswer {
  body: TankBody
  states: TankState[]
  /** m, fitting of the vent and mouth of the pick-up from the middle of the (cell's) floor */
  fitting: Vec3
  mouth: Vec3
  /** share of the tank up to which the vent stays dry in every lean, and the lean that decides */
  dryTo: number
  /** the same with what is not known of the fitting's place, m³; and of what the pick-up leaves, m³ */
  dryRange: Range
  unusableRange: Range
  dryIn: FuelState
  /** share to fill to at most: the vent dry, room to expand, and the least ullage */
  fillTo: number
  fillBy: 'vent' | 'expansion' | 'ullage'
  /** share by which a fill grows from filling to running warm */
  growth: number
  /** m³ that the pick-up leaves in the worst lasting lean, and that lean */
  unusable: number
  unusableIn: FuelState
  /** m³ that a day can count on, filled to the mark, and as it is filled now */
  usable: number
  usableNow: number
}

export interface DayAnswer {
  /** m³ for the day's running, and m³/s of all engines flat out */
  wanted: Range
  flatOut: Range
  /** s that a full tank lasts at this mix, and flat out */
  lasts: Range
  lastsFlatOut: number
}

export interface FuelAnswer {
  tank: TankAnswer
  day: DayAnswer
  feed: Feed
  jets: JetAnswer
}

/** The whole answer; undefined where the file tells too little. */
export function fuelAnswer(inputs: FuelInputs): FuelAnswer | undefined {
  const c = inputs.known
  if (!c) return undefined
  const states = fuelStates(c.setting.attitudes)
  const tank = tankAnswer(c, states)
  return { tank, day: dayAnswer(c, tank), feed: feedOf(c, states, tank), jets: jetsOf(c) }
}

/** Engines that are not off: a dead one draws nothing. */
export const runningOf = (c: FuelCraft): readonly FuelEngine[] => c.engines.filter((e) => e.running)

function tankAnswer(c: FuelCraft, states: readonly FuelState[]): TankAnswer {
  const { section, tank } = c
  const body = tankBody(tank.shape)
  const { vent } = section
  const fitting: Vec3 = [vent.forward.value, vent.toPort.value, body.height]
  const { pickup } = section
  const clearance = pickup.kind === 'bottom outlet' ? 0 : pickup.clearance.value
  const mouth: Vec3 = [pickup.forward.value, pickup.toPort.value, clearance]
  const each = states.map(
    (state): TankState => ({
      state,
      ventAt: shareAt(body, fitting, state),
      left: leftAt(body, pickup.kind, mouth, state),
    }),
  )
  const dry = driest(each, vent.valve)
  const growth = 1 / volumeCorrection(c.density.value, Math.max(0, c.temperature.high - c.cold)) - 1
  const room = 1 / (1 + growth)
  const fillTo = Math.min(dry.ventAt, room, 1 - leastUllage)
  const worst = each.filter((s) => s.state.lasts).reduce((a, s) => (s.left > a.left ? s : a))
  const unusable = Math.min(worst.left, body.capacity)
  return {
    body,
    states: each,
    fitting,
    mouth,
    dryTo: dry.ventAt,
    dryRange: rangeOf(
      ([x, y]) => dryShare(body, states, [x!, y!, body.height], vent.valve) * body.capacity,
      [vent.forward, vent.toPort],
    ),
    unusableRange: rangeOf(
      ([x, y, z]) =>
        Math.max(...states.filter((s) => s.lasts).map((s) => leftAt(body, pickup.kind, [x!, y!, z!], s))),
      [
        pickup.forward,
        pickup.toPort,
        pickup.kind === 'bottom outlet' ? { value: 0, low: 0, high: 0 } : pickup.clearance,
      ],
    ),
    dryIn: dry.state,
    fillTo,
    fillBy: fillTo === dry.ventAt ? 'vent' : fillTo === room ? 'expansion' : 'ullage',
    growth,
    unusable,
    unusableIn: worst.state,
    usable: Math.max(0, fillTo * body.capacity - unusable),
    usableNow: Math.max(0, c.filled.value - unusable),
  }
}

/** The lean in which the vent is met first; a roll-over valve shuts it where the craft lies on its side for a moment. */
function driest(states: readonly TankState[], valve: boolean): TankState {
  return states.filter((s) => !valve || s.state.lasts).reduce((a, s) => (s.ventAt < a.ventAt ? s : a))
}

/** The share up to which a vent at another place on the tank's top would stay dry. */
export function dryToAt(tank: TankAnswer, fitting: Vec3, valve: boolean): number {
  return dryShare(
    tank.body,
    tank.states.map((s) => s.state),
    fitting,
    valve,
  )
}

function dryShare(body: TankBody, states: readonly FuelState[], fitting: Vec3, valve: boolean): number {
  return Math.min(...states.filter((s) => !valve || s.lasts).map((s) => shareAt(body, fitting, s)))
}

/** m³ out of reach of a pick-up whose mouth is at a place from the (cell's) middle, in a lean. */
function leftAt(
  body: TankBody,
  kind: FuelCraft['section']['pickup']['kind'],
  mouth: Vec3,
  state: FuelState,
): number {
  return kind === 'weighted hose' ? leftByWeight(body, mouth[2], state) : volumeBelow(body, mouth, state)
}

/** Fuel of one engine at full throttle, kg/s. */
export const fuelMass = (power: number, consumption: number): number => power * consumption

function dayAnswer(c: FuelCraft, tank: TankAnswer): DayAnswer {
  const { use } = c.section
  const running = runningOf(c)
  const power = sumOf(running.map((e) => e.flatOut))
  const doubts = [
    power,
    use.consumption,
    c.density,
    use.hours,
    use.fullThrottle,
    use.idle,
    cruise,
    idle,
  ] as const
  const flat = ([p, b, d]: readonly number[]) => fuelMass(p!, b!) / d!
  const mix = ([, , , , f, i, part, slow]: readonly number[]) => {
    const rest = Math.max(0, 1 - f! - i!)
    return f! + i! * slow! + rest * part!
  }
  return {
    flatOut: rangeOf((v) => flat(v), doubts.slice(0, 3)),
    wanted: rangeOf((v) => flat(v) * mix(v) * v[3]!, doubts),
    lasts: rangeOf((v) => tank.usable / (flat(v) * mix(v)), doubts),
    lastsFlatOut: tank.usable / flat(doubts.map((d) => d.value)),
  }
}

const sumOf = (list: readonly Bounded[]): Bounded => ({
  value: list.reduce((s, b) => s + b.value, 0),
  low: list.reduce((s, b) => s + b.low, 0),
  high: list.reduce((s, b) => s + b.high, 0),
})
