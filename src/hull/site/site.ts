/**
 * Water and air at the craft's place, once for all trades.
 * Sources: fluid/water.ts and fluid/vapour.ts for the water; the air's pressure is the file's own or ISO 2533:1975 at its altitude.
 * Salt water is the ocean's mean, 35 g of salt in a kg (UNESCO 1981); inland seas hold less, and the file does not ask.
 */
import type { Quantity } from '../../craft/craftTypes.ts'
import type { Craft } from '../../craft/schema/craftSchema.ts'
import { airDensity, atmosphericPressure } from '../../physics/fluid/atmosphere.ts'
import { saturationPressure, seaVapourPressure } from '../../physics/fluid/vapour.ts'
import { seaWaterDensity, seaWaterViscosity } from '../../physics/fluid/water.ts'

/** How a quantity is read: its value, or one drawn from its range. */
type Read = (q: Quantity) => number

export interface SiteWater {
  /** kg of salt per kg of water */
  salinity: number
  /** K */
  temperature: number
  /** kg/m³ */
  density: number
  /** dynamic, Pa·s, and kinematic, m²/s */
  viscosity: number
  kinematicViscosity: number
  /** Pa absolute */
  vapourPressure: number
  /** m, under the craft */
  depth: number
}

export interface SiteAir {
  /** Pa absolute, on the water */
  pressure: number
  /** K */
  temperature: number
  /** kg/m³, dry */
  density: number
  /** m/s, head wind positive */
  wind: number
}

export interface Site {
  water: SiteWater
  air: SiteAir
}

/** kg of salt per kg of water where the file says salt */
const oceanSalt = 0.035
/** K; what the vapour pressure is known from, and where fresh water freezes */
const freezing = 273.15

const asWritten: Read = (q) => q.value

const known = new WeakMap<Craft['place'], Site>()

/** Water and air of a craft; kept by the identity of its place, so that all who ask share one. */
export function siteOf(craft: Pick<Craft, 'place'>): Site {
  let site = known.get(craft.place)
  if (!site) {
    site = readSite(craft.place)
    known.set(craft.place, site)
  }
  return site
}

/** The same from values drawn by `read` in place of those written; made anew each time. */
export function readSite(place: Craft['place'], read: Read = asWritten): Site {
  const salinity = place.water === 'salt' ? oceanSalt : 0
  const given = read(place.waterTemperature)
  // fresh water is no colder than ice; sea water is, where the vapour formula no longer speaks
  const temperature = salinity > 0 ? given : Math.max(freezing, given)
  const density = seaWaterDensity(temperature, salinity)
  const viscosity = seaWaterViscosity(temperature, salinity)
  const warm = Math.max(freezing, temperature)
  const pressure = place.airPressure ? read(place.airPressure) : atmosphericPressure(read(place.altitude))
  const air = read(place.airTemperature)
  return {
    water: {
      salinity,
      temperature,
      density,
      viscosity,
      kinematicViscosity: viscosity / density,
      vapourPressure: salinity > 0 ? seaVapourPressure(warm, salinity) : saturationPressure(warm),
      depth: read(place.depth),
    },
    air: { pressure, temperature: air, density: airDensity(pressure, air), wind: read(place.wind) },
  }
}
