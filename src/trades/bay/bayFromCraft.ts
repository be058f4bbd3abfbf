/** The craft file to what the bay is worked out from: its room, walls, openings, and what stands in it. SI. */
import type { Quantity } from '../../craft/craftTypes.ts'
import type { Craft } from '../../craft/schema/craftSchema.ts'
import { siteOf } from '../../hull/site/site.ts'
import type { BayRun } from './bayRun.ts'

export type CraftBay = NonNullable<Craft['bay']>

/** A value with the ends of its likely range. */
export interface Ends {
  value: number
  low: number
  high: number
}

/** The bay as the file has it, what was left out worked out. */
export interface BaySpec {
  /** m³, and where it comes from */
  volume: Ends
  volumeFrom: 'file' | 'compartment' | 'hull'
  /** m, m² */
  depth: number
  plan: number
  walls: number
  cooling: NonNullable<CraftBay['cooling']>
  pipe: NonNullable<CraftBay['pipe']>
  engineAir: NonNullable<CraftBay['engineAir']>
  deck: CraftBay['deck']
  printed: CraftBay['printed']
  openings: CraftBay['openings']
  fan: CraftBay['fan']
  water: CraftBay['water']
  /** m² of gaps round lids */
  leak: number
}

export interface BayEngine {
  name: string
  burns: boolean
  /** m³, all cylinders; nought for a motor */
  displacement: number
  running: boolean
  /** excess-air ratio */
  lambda: number
  idle: number
}

export interface BayInputs {
  /** absent where the file has no bay */
  bay?: BaySpec
  /** K outside, Pa */
  air: Ends
  water: Ends
  pressure: number
  waterDensity: number
  waterViscosity: number
  engines: readonly BayEngine[]
  run: BayRun
  /** a petrol tank stands in the bay: its name */
  tank?: string
  /** m² of the nozzle and of the jet before it */
  jet: { nozzle: number; before: number }
  craft: Craft
}

const ends = (q: Quantity): Ends => ({ value: q.value, low: q.low, high: q.high })

const swept = (e: Craft['engines'][number]): number =>
  e.kind === 'two-stroke'
    ? (Math.PI / 4) * e.bore.value ** 2 * e.stroke.value * e.cylinders.value
    : e.kind === 'electric'
      ? 0
      : e.displacement.value

/** The compartment that the engines stand in: by the place of what is called an engine, else by its own name. */
export function engineBayOf(craft: Craft): Craft['compartments'][number] | undefined {
  const engine = craft.weights.find((w) => /engine|motor/i.test(w.name))
  const at = engine?.at[0].value
  const holds = (c: Craft['compartments'][number]) =>
    at !== undefined && c.from.value <= at && at <= c.to.value
  return craft.compartments.find(holds) ?? craft.compartments.find((c) => /engine|motor/i.test(c.name))
}

/** m³ of foam between two stations of the hull */
function foamBetween(craft: Craft, from: number, to: number): number {
  return craft.foam.reduce((sum, f) => {
    const [a, b] = [f.from, f.to]
    const long = Math.max(0, Math.min(b[0].value, to) - Math.max(a[0].value, from))
    return sum + long * Math.abs((b[1].value - a[1].value) * (b[2].value - a[2].value))
  }, 0)
}

/** share of length × beam × depth that the inside of a small hull fills: judgement */
const hullFullness = 0.8

/** Air in the bay where the file does not give it. */
function volumeOf(craft: Craft): { volume: Ends; from: 'compartment' | 'hull' } {
  const { hull } = craft
  const bay = engineBayOf(craft)
  const [from, to] = bay ? [bay.from.value, bay.to.value] : [0, 0.45 * hull.length.value]
  const wide = 0.5 * (hull.beam.value + hull.chineBeam.value)
  const box = hullFullness * (to - from) * wide * hull.depth.value
  const free = Math.max(0.2 * box, box - foamBetween(craft, from, to))
  const value = free * (bay?.permeability.value ?? 0.85)
  return {
    volume: { value, low: 0.65 * value, high: 1.4 * value },
    from: bay ? 'compartment' : 'hull',
  }
}

function specOf(craft: Craft, bay: CraftBay): BaySpec {
  const derived = volumeOf(craft)
  const volume = bay.volume ? ends(bay.volume) : derived.volume
  const depth = craft.hull.depth.value
  const plan = volume.value / (0.9 * depth)
  // a bay twice as long as it is wide
  const across = Math.sqrt(plan / 2)
  const inside = engineBayOf(craft)
  const hatches = craft.openings.filter(
    (o) =>
      o.kind === 'hatch' &&
      (!inside || (o.at[0].value >= inside.from.value && o.at[0].value <= inside.to.value)),
  )
  const two = craft.engines.find((e) => e.kind === 'two-stroke')
  const finish = two?.kind === 'two-stroke' ? two.exhaust?.finish : undefined
  const tube =
    craft.engines.some((e) => e.kind !== 'electric' && e.snorkel !== undefined) ||
    craft.openings.some((o) => o.kind === 'air intake')
  return {
    volume,
    volumeFrom: bay.volume ? 'file' : derived.from,
    depth,
    plan,
    walls: bay.walls?.value ?? 2 * plan + 6 * across * depth,
    cooling: bay.cooling ?? (two?.kind === 'two-stroke' && two.cooling === 'water' ? 'water' : 'fins'),
    pipe: bay.pipe ?? finish ?? 'bare',
    engineAir: bay.engineAir ?? (tube ? 'tube' : 'bay'),
    deck: bay.deck,
    printed: bay.printed,
    openings: bay.openings,
    fan: bay.fan,
    water: bay.water,
    leak: Math.max(
      0.5e-4,
      hatches.reduce((sum, o) => sum + o.gap.value, 0),
    ),
  }
}

/** The petrol tank that stands in the bay, by where its foot is; without bulkheads every tank does. */
export function tankInBay(craft: Craft): string | undefined {
  const inside = engineBayOf(craft)
  return craft.tanks.find(
    (t) =>
      /petrol/.test(t.holds) &&
      (!inside || (t.foot[0].value >= inside.from.value && t.foot[0].value <= inside.to.value)),
  )?.name
}

/** Everything the bay is worked out from. */
export function bayFromCraft(craft: Craft, run: BayRun): BayInputs {
  const { place, jet } = craft
  const { air, water } = siteOf(craft)
  const bore = jet.rotor.bore.value
  const tank = tankInBay(craft)
  return {
    ...(craft.bay ? { bay: specOf(craft, craft.bay) } : {}),
    air: ends(place.airTemperature),
    water: ends(place.waterTemperature),
    pressure: air.pressure,
    waterDensity: water.density,
    waterViscosity: water.viscosity,
    engines: craft.engines.map((e, i) => ({
      name: e.name ?? `engine ${i + 1}`,
      burns: e.kind !== 'electric',
      displacement: swept(e),
      running: e.running,
      lambda: e.kind === 'two-stroke' ? e.mixture.lambda.value : 0.87,
      idle: 'idle' in e ? e.idle.value : 0,
    })),
    run,
    ...(tank === undefined ? {} : { tank }),
    jet: {
      nozzle: (Math.PI / 4) * jet.nozzle.bore.value ** 2,
      before: (Math.PI / 4) * (bore ** 2 - jet.rotor.hubOut.value ** 2),
    },
    craft,
  }
}
