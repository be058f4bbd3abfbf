/**
 * What parts are printed of: usual data of the stock as made, from memory of data sheets; tensile strength along the layers of PLA, PETG and ABS as in
 * Processes 13 (2025) 2733; share across the layers, highest working temperature and what petrol does: common practice, no source. Times by
 * metres of line over a usual speed, judgement. SI.
 */
import { laid } from './fitPieces.ts'
import type { Printer, PrintMaterial } from './printerOf.ts'

export interface PrintPlastic {
  density: number
  /** along the layers, Pa, soaked where it soaks, and the share of it that is left across them */
  strength: number
  across: number
  /** K, above which it gives way slowly */
  service: number
  petrol: 'bears' | 'a splash' | 'attacked'
}

const plastic = (
  density: number,
  mpa: number,
  across: number,
  celsius: number,
  petrol: PrintPlastic['petrol'],
): PrintPlastic => ({ density, strength: 1e6 * mpa, across, service: celsius + 273.15, petrol })

export const printPlastics: Readonly<Record<PrintMaterial, PrintPlastic>> = {
  PETG: plastic(1270, 45, 0.6, 55, 'a splash'),
  ASA: plastic(1070, 38, 0.57, 80, 'attacked'),
  ABS: plastic(1040, 37, 0.5, 75, 'attacked'),
  PA12: plastic(1010, 38, 0.6, 90, 'bears'),
  'PA12-CF': plastic(1060, 60, 0.5, 90, 'bears'),
  POM: plastic(1410, 45, 0.5, 80, 'bears'),
  PC: plastic(1200, 60, 0.6, 100, 'attacked'),
  PVDF: plastic(1780, 35, 0.5, 90, 'bears'),
  HDPE: plastic(950, 25, 0.5, 60, 'bears'),
  PLA: plastic(1240, 50, 0.55, 40, 'attacked'),
  resin: plastic(1150, 45, 0.95, 50, 'attacked'),
}

/** What petrol does not harm. */
export const petrolProof = (Object.keys(printPlastics) as PrintMaterial[]).filter(
  (m) => printPlastics[m].petrol === 'bears',
)

/** Mass, kg, and time on the printer, s, of a volume printed solid; a third less and two thirds more time, as printers differ. */
export function printEstimate(
  volume: number,
  material: PrintMaterial,
  printer: Pick<Printer, 'kind' | 'line' | 'layer'>,
): { mass: number; low: number; high: number } {
  const time = volume / laid(printer) + 120
  return { mass: volume * printPlastics[material].density, low: 0.67 * time, high: 1.67 * time }
}
