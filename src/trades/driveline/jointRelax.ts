/**
 * How much of a bolt's pull is left in a joint as time goes by. Bolt and clamped parts as springs in series, loss by embedding of faces
 * F = f/(δS + δP): VDI 2230 part 1 (2015), embedding amounts from its table 5, from memory. Creep of a soft layer under a bolt that gives as it
 * thins: F(t)/F0 = (δS + δP)/(δS + δP (1 + a)), mechanics; a(t) as a power law of time (W. N. Findley, J. S. Lai, K. Onaran, Creep and Relaxation
 * of Nonlinear Viscoelastic Materials (1976)), its exponent and the pressure a plastic stands for minutes against months: judgement, no source.
 */
import type { Bolt } from './metricBolts.ts'
import { stressArea } from './metricBolts.ts'
import { leftWarm, type PartData } from './partMaterials.ts'

const steel = 205e9
const room = 293.15

/** exponent of creep over time; a tenth to a quarter for nylons and styrenes */
const creepPower = 0.18
/** pressure stood for a minute over that stood for a thousand hours, and the power of time between them */
const shortOverLong = 2.5
const crushPower = Math.log(shortOverLong) / Math.log(60_000)

/** Springs of a joint, m/N: the bolt with head and nut (and disc springs), the soft layer, the hard rest. */
export interface Springs {
  bolt: number
  soft: number
  hard: number
}

export interface Stack {
  bolt: Bolt
  /** of what is clamped, and of that the plastic, m; nought plastic where all is metal or sleeves take the clamp */
  thickness: number
  soft: number
  /** across what presses on the soft part, m */
  washer: number
  area: number
  data: PartData
  sleeves: boolean
  discSprings: boolean
}

/** Elastic give of a joint's parts. The soft layer as a cylinder a third wider than its depth at the washer; a sleeve is 3 mm wider than its bolt. */
export function springsOf(s: Stack): Springs {
  const { bolt } = s
  const length = s.thickness + 0.8 * bolt.d
  const spring = s.discSprings ? 1.0e-9 / bolt.d : 0
  const boltSpring = length / (steel * stressArea(bolt)) + spring
  const ring = (out: number) => (Math.PI / 4) * (out ** 2 - bolt.hole ** 2)
  const hardDepth = s.thickness - s.soft
  const hard = hardDepth / (70e9 * ring(s.washer + 0.3 * hardDepth))
  if (s.soft === 0) return { bolt: boltSpring, soft: 0, hard }
  if (s.sleeves) {
    const sleeve = (Math.PI / 4) * ((bolt.hole + 3e-3) ** 2 - bolt.hole ** 2)
    return { bolt: boltSpring, soft: 0, hard: hard + s.soft / (70e9 * sleeve) }
  }
  return { bolt: boltSpring, soft: s.soft / (s.data.modulus * ring(s.washer + 0.33 * s.soft)), hard }
}

/** Creep strain over elastic strain after `hours` at a temperature (K), from that of a thousand hours at 23 °C. */
export function creepRatio(thousand: number, hours: number, kelvin: number): number {
  return thousand * (hours / 1000) ** creepPower * 2 ** (Math.max(0, kelvin - 296.15) / 27)
}

/** Part of the pull that is left when the soft layer has crept by `a` times its elastic strain. */
export const relaxed = (springs: Springs, a: number): number => {
  const still = springs.bolt + springs.hard
  return (still + springs.soft) / (still + springs.soft * (1 + a))
}

/** Pressure that a plastic stands for `hours` at a temperature, Pa; a metal its own. */
export function pressureStood(data: PartData, hours: number, kelvin: number): number {
  if (!data.plastic) return data.bearing
  return data.bearing * (1000 / Math.max(hours, 1 / 60)) ** crushPower * leftWarm(data, kelvin)
}

/** What is doubtful of one joint, drawn once for all its stages. */
export interface JointDraw {
  /** embedding of the faces, m */
  embeds: number
  /** creep of a thousand hours */
  creep: number
  /** factor on the pressure that is stood */
  stands: number
  /** K */
  warm: number
}

/** Moments of a joint's life: as tightened, the first ten minutes of running, a day of it, a season. */
export const stages = ['tightened', 'minutes', 'day', 'season'] as const
export type Stage = (typeof stages)[number]

/** hours running warm and hours lying at 20 °C; a season counts whichever makes more */
const lived: Readonly<Record<Stage, { warm: number; cold: number }>> = {
  tightened: { warm: 0, cold: 1 / 60 },
  minutes: { warm: 1 / 6, cold: 1 },
  day: { warm: 4, cold: 24 },
  season: { warm: 100, cold: 2500 },
}

/** Pull left at a stage, N, of one that was tightened to `first`; never below nought. */
export function pullLeft(s: Stack, springs: Springs, first: number, stage: Stage, d: JointDraw): number {
  const { warm, cold } = lived[stage]
  const soft = springs.soft > 0
  const caps = (hours: number, kelvin: number) =>
    soft ? d.stands * pressureStood(s.data, hours, kelvin) * s.area : Number.POSITIVE_INFINITY
  const tightened = Math.min(first, caps(1 / 60, room))
  if (stage === 'tightened') return tightened
  const seated = Math.max(0, tightened - d.embeds / (springs.bolt + springs.soft + springs.hard))
  if (!soft) return seated
  const crept = Math.max(creepRatio(d.creep, warm, d.warm), creepRatio(d.creep, cold, room))
  return Math.min(seated * relaxed(springs, crept), caps(warm, d.warm), caps(cold, room))
}
