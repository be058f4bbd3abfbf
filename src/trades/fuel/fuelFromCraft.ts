/** The craft file to what the fuel's judgement takes: tank, vent, circuit, engines, a day's use. SI. */
import type { Bounded } from '../../base/answers/rangeOf.ts'
import { carburettorNames } from '../../craft/fuelPath.ts'
import type { Craft } from '../../craft/index.ts'
import { tankCapacity, tankLiquid } from '../../craft/tankRoom.ts'
import type { Tank } from '../../hull/aboard/liquids.ts'
import { tanksFromCraft } from '../../hull/aboard/tanksFromCraft.ts'
import { siteOf } from '../../hull/site/site.ts'
import type { Vec3 } from '../../physics/solid/mesh.ts'
import { richest } from './chipInJet.ts'
import type { FuelSetting } from './fuelSetting.ts'

type FuelSection = NonNullable<Craft['fuel']>

/** A hose of the circuit; `path` is absent for one that is assumed. */
export interface FuelLine {
  from: string
  to: string
  bore: Bounded
  length: Bounded
  rise: Bounded
  run: Bounded
  losses: Bounded
  narrowest: Bounded
  hose: FuelSection['lines'][number]['hose']
  path?: string
}

/** An engine that burns fuel. */
export interface FuelEngine {
  name: string
  path: string
  running: boolean
  /** W: the most it gives, and flat out on this craft */
  most: Bounded
  flatOut: Bounded
  /** where the power is from: the balance, the file, or a usual figure for its size */
  from: 'balance' | 'file' | 'size'
  /** air ratio it is set to */
  lambda: Bounded
}

/** The vent's outer end. */
export interface VentEnd {
  name: string
  /** craft path of the opening; the vent's own where it ends at the tank */
  path: string
  /** m, in the craft's axes */
  at: Vec3
}

export interface FuelCraft {
  section: FuelSection
  tank: Tank
  /** craft path of the tank */
  tankPath: string
  capacity: number
  filled: Bounded
  density: Bounded
  /** kg, the tank without its fuel */
  empty: number
  /** oil over petrol, and where it stands */
  oil: Bounded
  oilPath: string
  /** K: when it is filled, and in tank and lines as it runs */
  cold: number
  temperature: Bounded
  temperatureAssumed: boolean
  /** Pa absolute */
  air: number
  ventEnd?: VentEnd
  lines: readonly FuelLine[]
  linesAssumed: boolean
  engines: readonly FuelEngine[]
  /** openings that draw air in */
  intakes: readonly { name: string; at: Vec3; path: string }[]
  /** m, the rider's place on deck */
  rider: { x: number; y: number }
  setting: FuelSetting
}

/** The craft's fuel, or what has to be given first. */
export type FuelInputs = { known: FuelCraft } | { known?: undefined; lacks: string; path: string }

const around = (value: number, low: number, high: number): Bounded => ({ value, low, high })

/** K over the air outside that fuel in tank and lines reaches in a bay: the same 15 K as elsewhere; up to 30 K in the sun after a run. Judgement. */
const warmer = { value: 15, low: 0, high: 30 }

/** What stands in for the temperature of the fuel until it is worked out: one place for all who ask. */
function assumedTemperature(craft: Craft): Bounded {
  const air = craft.place.airTemperature.value
  return around(air + warmer.value, air + warmer.low, air + warmer.high)
}

/** Everything the fuel's judgement needs; says what is lacking where the file tells nothing of the fuel. */
export function fuelFromCraft(craft: Craft, setting: FuelSetting): FuelInputs {
  const section = craft.fuel
  const engines = enginesOf(craft, setting)
  if (engines.length === 0) return { lacks: 'no engine of the file burns fuel', path: 'engines' }
  if (!section)
    return {
      lacks:
        'the file has no fuel section; give the pick-up, the hose’s bore and length, the filter’s mesh, the main jet and the kind of carburettor',
      path: 'fuel',
    }
  const index = tankIndex(craft, section)
  const given = craft.tanks[index]
  const tank = tanksFromCraft(craft)[index]
  if (!given || !tank)
    return {
      lacks: section.tank
        ? `no tank of the file is called ${section.tank}`
        : 'the file lists no tank for the fuel to come from',
      path: section.tank ? 'fuel.tank' : 'tanks',
    }
  const { oil, oilPath } = oilOf(craft, section)
  const lines = linesOf(craft, section)
  return {
    known: {
      section,
      tank,
      tankPath: `tanks.${index}`,
      capacity: tankCapacity(given),
      filled: tankLiquid(given),
      density: given.density,
      empty: emptyMass(craft, tank),
      oil,
      oilPath,
      cold: craft.place.airTemperature.value,
      temperature: setting.temperature ?? assumedTemperature(craft),
      temperatureAssumed: setting.temperature === undefined,
      air: siteOf(craft).air.pressure,
      ...ventEndOf(craft, section, tank),
      ...lines,
      engines,
      intakes: craft.openings.flatMap((o, i) =>
        o.kind === 'air intake'
          ? [{ name: o.name, at: [o.at[0].value, o.at[1].value, o.at[2].value], path: `openings.${i}.at` }]
          : [],
      ),
      rider: { x: craft.rider.position.value, y: craft.rider.offCentre.value },
      setting,
    },
  }
}

function tankIndex({ tanks }: Craft, { tank }: FuelSection): number {
  if (tank !== undefined) return tanks.findIndex((t) => t.name === tank)
  const petrol = tanks.findIndex((t) => t.holds === 'petrol' || t.holds === 'petrol and oil')
  return petrol < 0 && tanks.length > 0 ? 0 : petrol
}

/** The weights named after a tank, less what the file does not list: then a fifth of what it holds, judgement. */
function emptyMass(craft: Craft, tank: Tank): number {
  const named = craft.weights.filter((w) => /\btank\b/i.test(w.name))
  if (named.length > 0) return named.reduce((m, w) => m + w.mass.value, 0) / Math.max(1, craft.tanks.length)
  return 0.2 * tank.density * tank.volume
}

/** One fact: an engine that says how much oil it burns is believed before what is only assumed here. */
function oilOf(craft: Craft, section: FuelSection): { oil: Bounded; oilPath: string } {
  const i = craft.engines.findIndex((e) => e.kind === 'two-stroke' && e.mixture.oil.source !== 'assumed')
  const engine = craft.engines[i]
  if (section.oil.source === 'assumed' && engine?.kind === 'two-stroke')
    return { oil: engine.mixture.oil, oilPath: `engines.${i}.mixture.oil` }
  return { oil: section.oil, oilPath: 'fuel.oil' }
}

/** The vent's outer end: the named opening, the first tank vent, or the cap itself. */
function ventEndOf(craft: Craft, { vent }: FuelSection, tank: Tank): { ventEnd?: VentEnd } {
  if (vent.kind === 'cap') {
    const { foot } = tank
    const top = foot[2] + heightOf(tank)
    const at: Vec3 = [foot[0] + vent.forward.value, foot[1] + vent.toPort.value, top]
    return { ventEnd: { name: 'the breather in the cap', path: 'fuel.vent.kind', at } }
  }
  const i = craft.openings.findIndex((o) =>
    vent.opening === undefined ? o.kind === 'tank vent' : o.name === vent.opening,
  )
  const o = craft.openings[i]
  if (!o) return {}
  return {
    ventEnd: { name: o.name, path: `openings.${i}.at`, at: [o.at[0].value, o.at[1].value, o.at[2].value] },
  }
}

const heightOf = ({ shape }: Tank): number =>
  shape.kind === 'lying cylinder' ? shape.diameter : shape.height

/** W for each cubic metre of displacement where nothing better is known: 45 kW a litre, from memory of small two-strokes. */
const usualPower = { value: 45e6, low: 25e6, high: 90e6 }

function enginesOf(craft: Craft, { shaft }: FuelSetting): FuelEngine[] {
  const names = carburettorNames(craft)
  let n = 0
  return craft.engines.flatMap((e, i): FuelEngine[] => {
    if (e.kind === 'electric') return []
    const name = names[n++]!
    const own = ownPower(e)
    const known = e.running && shaft !== undefined && shaft.most > 0
    const spread = (w: number) => around(w, 0.9 * w, 1.1 * w)
    return [
      {
        name,
        path: `engines.${i}`,
        running: e.running,
        most: known ? spread(shaft.most) : own.power,
        flatOut: known && shaft.flatOut > 0 ? spread(shaft.flatOut) : own.power,
        from: known ? 'balance' : own.from,
        lambda: e.kind === 'two-stroke' ? e.mixture.lambda : around(richest, 0.8, 0.95),
      },
    ]
  })
}

function ownPower(e: Exclude<Craft['engines'][number], { kind: 'electric' }>): {
  power: Bounded
  from: FuelEngine['from']
} {
  if (e.kind === 'peak') return { power: e.power, from: 'file' }
  if (e.kind === 'curve') {
    const most = Math.max(...e.curve.map((p) => 2 * Math.PI * p.at.value * p.torque.value))
    return { power: around(most, 0.85 * most, 1.15 * most), from: 'file' }
  }
  const swept = (Math.PI / 4) * e.bore.value ** 2 * e.stroke.value * e.cylinders.value
  return {
    power: around(usualPower.value * swept, usualPower.low * swept, usualPower.high * swept),
    from: 'size',
  }
}

/** The file's lines, or a hose of usual length to each engine with a tee where there are several. */
function linesOf(craft: Craft, section: FuelSection): { lines: FuelLine[]; linesAssumed: boolean } {
  if (section.lines.length > 0)
    return {
      linesAssumed: false,
      lines: section.lines.map((l, i) => ({ ...l, path: `fuel.lines.${i}` })),
    }
  const names = carburettorNames(craft)
  const hose = (from: string, to: string, length: Bounded, rise: Bounded, losses: number): FuelLine => ({
    from,
    to,
    bore: around(4e-3, 3e-3, 5e-3),
    length,
    rise,
    run: around(-0.6 * length.value, -0.95 * length.high, 0),
    losses: around(losses, losses / 2, 2 * losses),
    narrowest: around(2.8e-3, 2e-3, 4e-3),
    hose: 'fuel hose',
  })
  const far = around(0.8, 0.4, 1.5)
  const up = around(0.05, -0.02, 0.15)
  if (names.length === 1) return { linesAssumed: true, lines: [hose('tank', names[0]!, far, up, 3)] }
  const near = around(0.25, 0.1, 0.5)
  return {
    linesAssumed: true,
    lines: [
      hose('tank', 'tee', far, up, 3),
      ...names.map((name) => hose('tee', name, near, around(0, -0.05, 0.05), 3)),
    ],
  }
}
