/**
 * What couplings and hubs are made of, and what a bolt may ask of it. Long-term bearing pressure under a head at 23 °C, creep after a
 * thousand hours, highest working temperature and shear across the layers of printed plastics: common practice, no source; moduli and
 * softening as usual data sheets have them, from memory. What thread-locker does to plastics: makers' guidance on anaerobic adhesives and
 * on environmental stress cracking, from memory.
 */
import type { Range } from '../../base/answers/solved.ts'
import type { partMaterials } from '../../craft/schema/shaftFields.ts'

export type PartMaterial = (typeof partMaterials)[number]

/** How thread-locker gets on with it: it hardens between metals; on plastics it stays wet, and some it cracks. */
export type Locker = 'hardens' | 'stays wet' | 'cracks it'

export interface PartData {
  plastic: boolean
  /** Young's modulus, Pa, at 23 °C */
  modulus: number
  /** pressure under a head it stands for a thousand hours at 23 °C, Pa */
  bearing: number
  /** creep strain after a thousand hours over the elastic strain, 23 °C */
  creep: Range
  /** highest working temperature, K */
  service: number
  /** shear strength across the layers or of the metal, Pa */
  shear: number
  /** pressure on the flank of a key or in a hole that it stands again and again, Pa */
  flank: number
  locker: Locker
}

const none: Range = { value: 0, low: 0, high: 0 }
const metal = (modulus: number, bearing: number, shear: number, flank: number): PartData => ({
  plastic: false,
  modulus,
  bearing,
  creep: none,
  service: 400,
  shear,
  flank,
  locker: 'hardens',
})
const plastic = (
  modulus: number,
  bearing: number,
  creep: readonly [number, number, number],
  celsius: number,
  shear: number,
  locker: Locker,
): PartData => ({
  plastic: true,
  modulus,
  bearing,
  creep: { value: creep[0], low: creep[1], high: creep[2] },
  service: 273.15 + celsius,
  shear,
  // half of what it bears at rest: every turn hammers
  flank: 0.5 * bearing,
  locker,
})

const table: Readonly<Record<PartMaterial, PartData>> = {
  aluminium: metal(70e9, 200e6, 180e6, 110e6),
  steel: metal(205e9, 490e6, 320e6, 180e6),
  'printed nylon': plastic(1.4e9, 15e6, [0.75, 0.5, 1], 90, 11e6, 'stays wet'),
  'printed nylon with carbon': plastic(4e9, 20e6, [0.55, 0.35, 0.8], 100, 12e6, 'stays wet'),
  PETG: plastic(1.8e9, 12e6, [0.9, 0.6, 1.2], 55, 6.5e6, 'stays wet'),
  ABS: plastic(2e9, 12e6, [0.75, 0.5, 1], 75, 6e6, 'cracks it'),
  ASA: plastic(2e9, 12e6, [0.75, 0.5, 1], 80, 6.5e6, 'cracks it'),
  PLA: plastic(3e9, 20e6, [1.2, 0.8, 1.6], 40, 9e6, 'stays wet'),
  PC: plastic(2.2e9, 20e6, [0.6, 0.4, 0.8], 100, 11e6, 'cracks it'),
  POM: plastic(2.6e9, 20e6, [0.65, 0.4, 0.9], 80, 12e6, 'stays wet'),
  HDPE: plastic(0.8e9, 6e6, [1.5, 1, 2], 55, 5e6, 'stays wet'),
}

/** Data of a material by its name; RangeError for one that nobody gave a strength for. */
export function partDataOf(name: string): PartData {
  const known = table[name as PartMaterial]
  if (!known) throw new RangeError(`made: "${name}" is not one of ${Object.keys(table).join(', ')}`)
  return known
}

export const partNames = Object.keys(table) as PartMaterial[]

/** the plastics that thread-locker cracks */
export const crackedByLocker = partNames.filter((n) => table[n].locker === 'cracks it')

/**
 * Part of its strength at 23 °C that is left at a temperature (K): halved every 27 K above, and beyond its working temperature falling to a tenth
 * within another 25 K. Metals keep theirs.
 */
export function leftWarm(data: PartData, kelvin: number): number {
  if (!data.plastic) return 1
  const halving = 2 ** (-Math.max(0, kelvin - 296.15) / 27)
  const past = Math.min(1, Math.max(0, (kelvin - data.service) / 25))
  return halving * (1 - 0.9 * past)
}
