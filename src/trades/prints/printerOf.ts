/**
 * The printer as the craft file tells it, and sizes corrected by what its try-pieces came out like. Usual values of a printer nobody has
 * tried: common practice, no source. Lengths m.
 */
import type { Craft } from '../../craft/schema/craftSchema.ts'
import { type printMaterials, usualPrints } from '../../craft/schema/printerFields.ts'

export type PrintMaterial = (typeof printMaterials)[number]

export interface Printer {
  kind: 'filament' | 'resin'
  material: PrintMaterial
  nozzle: number
  layer: number
  /** width of a laid line, m */
  line: number
  /** along, across, up; m */
  bed: readonly [number, number, number]
  /** as measured over as drawn */
  scale: number
  /** how much smaller across a hole comes out, m */
  holeOffset: number
  /** on the radius of each printed thread, m; absent until a try-piece told */
  threadClearance?: number
  elephantFoot: number
  /** the file has a printer, and its try-piece's thread clearance */
  tried: boolean
}

const usualBed = [0.22, 0.22, 0.25] as const

const of = (p: NonNullable<Craft['printer']>): Printer => ({
  kind: p.kind,
  material: p.material,
  nozzle: p.nozzle.value,
  layer: p.layer.value,
  line: lineOf(p.kind, p.nozzle.value),
  bed: p.bed ? [p.bed[0].value, p.bed[1].value, p.bed[2].value] : usualBed,
  scale: p.scale.value,
  holeOffset: p.holeOffset.value,
  ...(p.threadClearance ? { threadClearance: p.threadClearance.value } : {}),
  elephantFoot: p.elephantFoot.value,
  tried: p.threadClearance !== undefined,
})

/** a filament is laid an eighth wider than its nozzle; resin as wide as its pixel */
const lineOf = (kind: Printer['kind'], nozzle: number) => (kind === 'filament' ? 1.125 * nozzle : nozzle)

/** The printer of a craft; a usual filament printer with PETG where the file has none. */
export function printerOf(craft: Pick<Craft, 'printer'>): Printer {
  if (craft.printer) return of(craft.printer)
  const u = usualPrints.filament
  return {
    kind: 'filament',
    material: 'PETG',
    nozzle: 1e-3 * u.nozzle.value,
    layer: 1e-3 * u.layer.value,
    line: lineOf('filament', 1e-3 * u.nozzle.value),
    bed: usualBed,
    scale: 1,
    holeOffset: 1e-3 * u.holes.value,
    elephantFoot: 1e-3 * u.foot.value,
    tried: false,
  }
}

export type SizeKind = 'outside' | 'hole' | 'length' | 'foot'

/**
 * What to draw so that a size comes out as wanted, m: everything by the scale, a hole wider by its offset, the outline of the first layers
 * (`foot`, a diameter or width) narrower by the bulge on both sides. RangeError for a size that is none or that the bulge eats up.
 */
export function asPrinted(size: number, kind: SizeKind, printer: Printer): number {
  if (!(size > 0 && size < 10)) throw new RangeError(`size: ${size} m is outside 0 to 10 m`)
  const offset = kind === 'hole' ? printer.holeOffset : kind === 'foot' ? -2 * printer.elephantFoot : 0
  const drawn = (size + offset) / printer.scale
  if (!(drawn > 0))
    throw new RangeError(
      `size: ${size} m is outside what the printer’s foot of ${printer.elephantFoot} m leaves`,
    )
  return drawn
}

/** What a drawn size comes out as, m: `asPrinted` backwards. */
export function comesOutAs(drawn: number, kind: SizeKind, printer: Printer): number {
  const offset = kind === 'hole' ? printer.holeOffset : kind === 'foot' ? -2 * printer.elephantFoot : 0
  return drawn * printer.scale - offset
}

/**
 * Clearance on the radius of each printed thread, m: what the try-piece told, else the usual one of its kind, more for a coarse pitch
 * (filament 0.2 mm at a pitch of 1.5 mm to 0.35 mm at 3 mm and over; resin 0.08 mm).
 */
export function clearanceFor(pitch: number, printer: Printer): number {
  if (printer.threadClearance !== undefined) return printer.threadClearance
  if (printer.kind === 'resin') return 0.08e-3
  return Math.min(0.35e-3, Math.max(0.15e-3, 0.2e-3 + 0.1 * (pitch - 1.5e-3)))
}
