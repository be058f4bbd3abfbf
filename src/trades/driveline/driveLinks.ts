/** The chain of the craft file as the drive line works with it: engines and impeller as masses, couplings and shafts between them. SI. */
import type { Range } from '../../base/answers/solved.ts'
import type { Craft } from '../../craft/schema/craftSchema.ts'
import type { Cylinder } from './crankTorque.ts'
import { type Bolt, type BoltClass, bearingArea, boltOf, classOf } from './metricBolts.ts'
import { type PartData, type PartMaterial, partDataOf } from './partMaterials.ts'
import { type ShaftMetal, shaftMetalOf } from './shaftStress.ts'

export type CraftLink = Craft['shaft'][number]
export type CouplingFields = Extract<CraftLink, { kind: 'coupling' }>
export type ShaftFields = Extract<CraftLink, { kind: 'shaft' }>
export type HoldFields = ShaftFields['hold']

export type Locking = CouplingFields['locking']

/** Bolts through two halves. */
export interface Joint {
  kind: 'coupling'
  path: string
  name: string
  bolt: Bolt
  number: number
  /** radius of the bolt circle */
  radius: Range
  made: PartMaterial
  data: PartData
  torque: Range | undefined
  tight: CouplingFields['tight']
  locking: Locking
  thickness: Range
  soft: Range
  washers: CouplingFields['washers']
  sleeves: boolean
  into: CouplingFields['into']
  /** m of thread that hold */
  engaged: number
  className: CouplingFields['class']
  strength: BoltClass
  pins: number
  pin: number
  rubber: boolean
  /** K */
  warm: Range
}

/** How a hub sits on a shaft. */
export interface Hold {
  kind: 'hold'
  path: string
  name: string
  by: HoldFields['by']
  /** of the shaft, m */
  diameter: Range
  length: Range
  bolt: Bolt
  number: number
  torque: Range | undefined
  made: PartMaterial
  data: PartData
  warm: Range
}

export interface Turning {
  kind: 'shaft'
  path: string
  name: string
  diameter: Range
  bore: Range
  length: Range
  metalName: ShaftFields['steel']
  metal: ShaftMetal
  bearings: number
  overhang: Range
  bush: boolean
  thrust: ShaftFields['thrust']
  bearing: string | undefined
  keyed: boolean
}

export interface Belt {
  kind: 'belt'
  path: string
  name: string
  /** not in the file: the ratio of the drive has to lie somewhere */
  implied: boolean
  pulley: Range
}

export type Between = Joint | Hold | Turning | Belt

export interface EngineMass {
  kind: 'engine'
  path: string
  name: string
  /** index under engines */
  engine: number
  running: boolean
  cylinders: number
  displacement: number
  /** absent for a motor */
  cylinder: Cylinder | undefined
  inertia: Range
  idle: number
}

export interface ImpellerMass {
  kind: 'impeller'
  path: string
  inertia: Range
  mass: Range
  /** across, hub, nozzle, m */
  bore: number
  hub: number
  nozzle: number
  /** what water adds to its mass in whirling, as a factor */
  wet: Range
}

/** Masses in order, and what lies between each and the next. */
export interface DriveChain {
  engines: readonly EngineMass[]
  impeller: ImpellerMass
  /** one entry an engine: what lies behind it, up to the next mass */
  between: readonly (readonly Between[])[]
}

export const about = (value: number, low: number, high: number): Range => ({
  value,
  low: low * value,
  high: high * value,
})

export const exactly = (value: number): Range => ({ value, low: value, high: value })

/** A coupling of the file; `name` says where it sits. RangeError for a bolt or material that is not in the tables. */
export function jointOf(c: CouplingFields, path: string, name: string): Joint {
  const bolt = boltOf(c.bolts)
  const data = partDataOf(c.made)
  const half = (r: Range): Range => ({ value: r.value / 2, low: r.low / 2, high: r.high / 2 })
  const usual = c.into === 'nut' ? 0.8 * bolt.d : 1.5 * bolt.d
  return {
    kind: 'coupling',
    path,
    name,
    bolt,
    number: c.number.value,
    radius: half(c.circle),
    made: c.made,
    data,
    torque: c.torque,
    tight: c.tight,
    locking: c.locking,
    thickness: c.thickness,
    soft: data.plastic ? c.soft : exactly(0),
    washers: c.washers,
    sleeves: c.sleeves && data.plastic,
    into: c.into,
    engaged: c.engagement?.value ?? usual,
    className: c.class,
    strength: classOf(c.class),
    pins: c.pins.value,
    pin: c.pin.value,
    rubber: c.element === 'rubber',
    warm: c.temperature,
  }
}

/** How a hub of the file sits on its shaft. */
export function holdOf(h: HoldFields, path: string, name: string, diameter: Range): Hold {
  return {
    kind: 'hold',
    path,
    name,
    by: h.by,
    diameter,
    length: h.length,
    bolt: boltOf(h.bolts),
    number: h.number.value,
    torque: h.torque,
    made: h.made,
    data: partDataOf(h.made),
    warm: h.temperature,
  }
}

export function turningOf(s: ShaftFields, path: string): Turning {
  return {
    kind: 'shaft',
    path,
    name: 'the shaft',
    diameter: s.diameter,
    bore: s.bore,
    length: s.length,
    metalName: s.steel,
    metal: shaftMetalOf(s.steel),
    bearings: s.bearings.value,
    overhang: s.overhang,
    bush: s.lastBearing === 'bush',
    thrust: s.thrust,
    bearing: s.bearing?.split(' ')[0],
    keyed: s.hold.by === 'key',
  }
}

/** Area of head or washer on what is clamped, and across it, m² and m. */
export function seatOf(j: Joint): { area: number; across: number } {
  const across = j.washers === 'none' ? j.bolt.head : j.washers === 'plain' ? j.bolt.washer : j.bolt.wide
  return { area: bearingArea(j.bolt, j.washers), across }
}
