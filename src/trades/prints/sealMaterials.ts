/**
 * Rubber for rings and gaskets, and how it gets on with fuel. Swelling, cold and heat: handbooks of seal makers, from memory, as ranges;
 * expansion: usual data of rubber, from memory.
 */
import type { Range } from '../../base/answers/solved.ts'
import type { sealMaterials } from '../../craft/schema/sealFields.ts'

export type SealMaterial = (typeof sealMaterials)[number]

export interface SealData {
  /** growth of its volume in petrol, and in petrol with a tenth of ethanol; 1 */
  petrol: Range
  ethanol: Range
  /** growth of its volume in water, 1 */
  water: number
  /** it may lie in petrol for good */
  bearsPetrol: boolean
  /** softer than this, and past which it hardens; K */
  cold: number
  hot: number
  /** of length, 1/K */
  expansion: number
}

const of = (
  petrol: readonly [number, number, number],
  ethanol: readonly [number, number, number],
  bearsPetrol: boolean,
  cold: number,
  hot: number,
  expansion: number,
): SealData => ({
  petrol: { value: petrol[0], low: petrol[1], high: petrol[2] },
  ethanol: { value: ethanol[0], low: ethanol[1], high: ethanol[2] },
  water: 0.02,
  bearsPetrol,
  cold: 273.15 + cold,
  hot: 273.15 + hot,
  expansion,
})

const table: Readonly<Record<SealMaterial, SealData>> = {
  FKM: of([0.03, 0.01, 0.06], [0.07, 0.03, 0.12], true, -20, 200, 1.6e-4),
  'FKM for cold': of([0.04, 0.01, 0.08], [0.08, 0.04, 0.14], true, -35, 200, 1.6e-4),
  NBR: of([0.12, 0.05, 0.2], [0.18, 0.1, 0.25], true, -30, 100, 1.1e-4),
  HNBR: of([0.12, 0.05, 0.2], [0.18, 0.1, 0.25], true, -30, 150, 1.1e-4),
  FVMQ: of([0.15, 0.1, 0.2], [0.18, 0.1, 0.25], true, -55, 175, 2.2e-4),
  chloroprene: of([0.6, 0.4, 0.8], [0.6, 0.4, 0.9], false, -35, 100, 1.3e-4),
  EPDM: of([1.2, 0.8, 1.8], [1.2, 0.8, 1.8], false, -45, 140, 1.6e-4),
  silicone: of([1.5, 1, 2.2], [1.4, 1, 2], false, -55, 200, 2.7e-4),
  'natural rubber': of([1.5, 1, 2.5], [1.4, 1, 2.3], false, -45, 80, 2.2e-4),
}

export const sealDataOf = (name: SealMaterial): SealData => table[name]

export type Liquid = 'petrol' | 'petrol and ethanol' | 'water'

/** Growth of a ring's volume at its worst, 1: by the liquid, and by warming from 20 °C to `kelvin`. */
export function swellOf(name: SealMaterial, liquid: Liquid, kelvin: number): number {
  const data = table[name]
  const soaked = liquid === 'water' ? data.water : liquid === 'petrol' ? data.petrol.high : data.ethanol.high
  return (1 + soaked) * (1 + data.expansion * (kelvin - 293.15)) ** 3 - 1
}
