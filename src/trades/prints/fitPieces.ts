/**
 * Try-pieces: a ring (or a plug) of a few turns in three clearances, and a gauge of two bars, a hole and a foot, and what to write into the
 * craft file from the one that fits. Times: metres of line over a usual speed; common practice, no source. Lengths m, times s.
 */
import { clearanceFor, type Printer } from './printerOf.ts'
import type { Thread } from './threadForms.ts'
import { printedThread } from './threadPrinted.ts'
import type { ThreadSide } from './threadProfile.ts'

export interface FitPiece {
  /** tightest first; knobs round it tell which: one, two, three */
  clearance: number
  knobs: number
  /** outside of a ring, or bore of a plug's core; m */
  across: number
  height: number
  /** s on the printer */
  time: number
}

/** turns a try-piece needs before a tight one is felt */
const tryTurns = 2.5
/** wall beyond the root, m */
const tryWall = 2e-3

/** volume a printer lays a second, m³/s: common practice, no source */
export const laid = (p: Pick<Printer, 'kind' | 'line' | 'layer'>) =>
  p.kind === 'resin' ? 4e-9 : p.line * p.layer * 0.06

/** Clearances of the three: what is thought right, and a step to either side; m. */
export function tryClearances(pitch: number, printer: Printer): readonly [number, number, number] {
  const middle = clearanceFor(pitch, printer)
  const step = printer.kind === 'resin' ? 0.04e-3 : 0.1e-3
  const low = Math.max(step / 2, middle - step)
  return [low, middle, middle + step]
}

/** The three try-pieces for a thread: rings for one that is outside (a neck), plugs for one that is inside. */
export function fitPieces(thread: Thread, neck: ThreadSide, printer: Printer): readonly FitPiece[] {
  const side: ThreadSide = neck === 'external' ? 'internal' : 'external'
  const height = tryTurns * thread.pitch
  return tryClearances(thread.pitch, printer).map((clearance, i) => {
    const { profile } = printedThread({ thread, side, printer, clearance, length: height })
    const inner = side === 'internal' ? profile.mid : Math.max(1e-3, profile.root - tryWall)
    const outer = side === 'internal' ? profile.root + tryWall : profile.mid
    const volume = Math.PI * (outer ** 2 - inner ** 2) * height
    return {
      clearance,
      knobs: i + 1,
      across: side === 'internal' ? 2 * outer : 2 * inner,
      height,
      time: volume / laid(printer) + 40,
    }
  })
}

export interface GaugeReading {
  /** across the two bars as measured, and as drawn, m */
  barsMeasured: number
  barsDrawn: number
  /** across the hole */
  holeMeasured: number
  holeDrawn: number
  /** across the foot of the piece, and 3 mm above it */
  footMeasured: number
  aboveMeasured: number
}

/** What a try-piece was drawn like, m. */
export const gaugeDrawn = { bars: 60e-3, hole: 12e-3, wide: 20e-3, height: 6e-3 } as const

/**
 * Scale, hole offset and foot from what a try-piece measures: the scale by the outer faces of two bars, the hole by what is left of it, the foot
 * by its own bulge. RangeError for a reading no printer gives.
 */
export function readGauge(r: GaugeReading): { scale: number; holeOffset: number; elephantFoot: number } {
  const scale = r.barsMeasured / r.barsDrawn
  if (!(scale >= 0.95 && scale <= 1.05))
    throw new RangeError(
      `barsMeasured: ${r.barsMeasured} m is outside ${0.95 * r.barsDrawn} to ${1.05 * r.barsDrawn} m`,
    )
  const holeOffset = r.holeDrawn * scale - r.holeMeasured
  if (!(holeOffset >= -0.5e-3 && holeOffset <= 1.5e-3))
    throw new RangeError(
      `holeMeasured: ${r.holeMeasured} m is outside ${r.holeDrawn * scale - 1.5e-3} to ${r.holeDrawn * scale + 0.5e-3} m`,
    )
  const elephantFoot = Math.max(0, (r.footMeasured - r.aboveMeasured) / 2)
  if (!(elephantFoot <= 1e-3))
    throw new RangeError(
      `footMeasured: ${r.footMeasured} m is outside ${r.aboveMeasured} to ${r.aboveMeasured + 2e-3} m`,
    )
  return { scale, holeOffset, elephantFoot }
}
