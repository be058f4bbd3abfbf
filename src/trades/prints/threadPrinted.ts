/**
 * A thread as it is printed: moved away from its partner by the printer's clearance, flat crests as wide as a laid line, a lead-in of 45°,
 * a start that fades in. Layer rule: a flank β from the horizontal moves h / tan β a layer and may overhang half a line (derived);
 * the rest is common practice, no source. Lengths m, angles rad.
 */
import { clearanceFor, type Printer } from './printerOf.ts'
import { leadAngle, type Thread } from './threadForms.ts'
import { type ThreadSide, type TurnProfile, threadProfile } from './threadProfile.ts'

export interface PrintedThreadOrder {
  thread: Thread
  side: ThreadSide
  printer: Printer
  /** of thread, m; what `turns` turns take where left out */
  length?: number
  /** on the radius, m; the printer's where left out */
  clearance?: number
}

export interface PrintedThread {
  profile: TurnProfile
  /** on the radius, m */
  clearance: number
  length: number
  turns: number
  /** a cone of 45° over this length at the open end: radius never past `from` plus the way along the axis */
  leadIn: { length: number; angle: number; from: number }
  /** the first turn's height grows from nothing over this angle, rad */
  fade: number
  /** least wall beyond the root: of a cap and of a neck, m */
  wall: { cap: number; neck: number }
  /** layer at or below which the flanks hold themselves up, m */
  layerMost: number
  /** layers a pitch at the printer's layer */
  layersAPitch: number
  /** what the printer cannot do with it */
  problems: readonly PrintProblem[]
}

/** One thing that a printer cannot make: the field, its value and the limit, SI. */
export interface PrintProblem {
  field: 'layer' | 'pitch' | 'crest' | 'turns'
  value: number
  limit: number
}

/** turns that plastic needs to hold, layers a pitch below which a thread is a stack of steps: common practice, no source */
export const printedTurns = 4
export const layersWanted = 6

/** Height of a layer whose overhang on a flank stays within half a line, m. */
export const steepestLayer = (half: number, line: number): number => 0.5 * line * Math.tan(half)

/** A printed thread with all that a mesh needs; RangeError where no flank is left between flat crests. */
export function printedThread(order: PrintedThreadOrder): PrintedThread {
  const { thread, side, printer } = order
  const { pitch } = thread
  const clearance = order.clearance ?? clearanceFor(pitch, printer)
  const length = order.length ?? printedTurns * pitch
  const profile = threadProfile(thread, side, { clearance, crestFlat: printer.line })
  const outward = side === 'external' ? -0.2e-3 : 0.2e-3
  const from = profile.root + outward
  const layerMost = steepestLayer(thread.half, printer.line)
  const layersAPitch = pitch / printer.layer
  const turns = length / pitch
  const height = Math.abs(profile.crest - profile.root)
  const problems: PrintProblem[] = []
  if (printer.layer > layerMost * (1 + 1e-9))
    problems.push({ field: 'layer', value: printer.layer, limit: layerMost })
  if (layersAPitch < layersWanted - 1e-9)
    problems.push({ field: 'pitch', value: pitch, limit: layersWanted * printer.layer })
  if (height < 2 * clearance) problems.push({ field: 'crest', value: height, limit: 2 * clearance })
  if (turns < printedTurns - 1e-9) problems.push({ field: 'turns', value: turns, limit: printedTurns })
  return {
    profile,
    clearance,
    length,
    turns,
    leadIn: { length: Math.min(1.5 * pitch, height + 0.2e-3, length / 2), angle: Math.PI / 4, from },
    fade: Math.PI / 4,
    wall: { cap: 2e-3, neck: 3e-3 },
    layerMost,
    layersAPitch,
    problems,
  }
}

/** friction of greased plastic on plastic and rubber: common practice, no source */
const greased = 0.15

/** Torque (N m) to turn a lid down with a force (N) on a ring of some diameter (m): thread and ring rub, the helix climbs. */
export function closingTorque(thread: Thread, ringDiameter: number, force: number): number {
  const inThread = (thread.d2 / 2) * Math.tan(leadAngle(thread) + Math.atan(greased / Math.cos(thread.half)))
  return force * (inThread + (greased * ringDiameter) / 2)
}

/** Torque (N m) a hand gives a lid of some diameter (m): `both` with both hands on one of 100 mm and more, less on a smaller one. */
export const handTorque = (diameter: number, both: number): number => both * Math.min(1, diameter / 0.1)
