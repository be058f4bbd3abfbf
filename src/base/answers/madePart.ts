/**
 * A part to be made: what the page Make, `make` and the book show of it, whatever it is made of. Trades that make parts hand out a list
 * of these; lengths in metres, times in seconds, masses in kilograms.
 */
import type { Finding } from './finding.ts'
import type { Sentence } from './sentence.ts'

/** A point of a flat pattern. */
export type FlatPoint = readonly [x: number, y: number]

/** What a line of a flat pattern is for. */
export type FlatUse = 'cut' | 'hole' | 'roll' | 'fold' | 'match' | 'centre' | 'weld'

/** One line of a flat pattern. */
export interface FlatLine {
  use: FlatUse
  points: readonly FlatPoint[]
  closed: boolean
}

/** A flat piece to cut: its lines at 1:1, what is written on it, and how many are wanted. */
export interface FlatPiece {
  id: string
  title: string
  lines: readonly FlatLine[]
  /** words on the piece, and where they begin */
  words: readonly { at: FlatPoint; says: Sentence }[]
  thickness: number
  count: number
  /** the rolling direction of the sheet should run along this angle from +x, rad; absent where it does not matter */
  grain?: number
}

/** A solid to print: the name of its shape and its values (SI), as plain data that a worker makes a mesh of. */
export interface SolidOrder {
  shape: string
  values: Readonly<Record<string, number | string>>
}

/** A closed surface of triangles, outward normals by the right hand; metres. */
export interface SolidMesh {
  /** x, y, z of each corner */
  corners: Float64Array
  /** three corner numbers a triangle */
  triangles: Uint32Array
}

export type Work = 'cut' | 'roll' | 'fold' | 'tack' | 'weld' | 'rivet' | 'print' | 'fit'

export interface MadePart {
  /** stays the same while the craft is edited; `exhaust-1`, `filler-cap` */
  id: string
  title: string
  /** craft paths it follows from */
  of: readonly string[]
  how: 'sheet' | 'print'
  /** its one line: what it is, its size */
  says: Sentence
  material: string
  mass?: number
  /** hands-on time of each kind of work, and the printer's own */
  hours: readonly { work: Work; low: number; high: number }[]
  /** in the order to do them */
  steps: readonly Sentence[]
  cautions: readonly string[]
  /** what is wrong with it or cannot be made: field and limit named */
  findings: readonly Finding[]
  /** sheet: its pieces; absent where it cannot be drawn, and a finding says why */
  flats?: () => readonly FlatPiece[]
  /** the same pieces rolled up again, in place, for the picture beside the flat one */
  folded?: () => readonly SolidMesh[]
  /** print: what a worker makes a mesh of */
  solid?: SolidOrder
  /** made in place of other parts, which are the ones that count in sums and on the sheet there is */
  instead?: true
  /** a text of all values it was made from: another text than the log's means "changed since it was made" */
  madeFrom: string
}
