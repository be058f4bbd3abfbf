/** The craft file to what starting and control are judged by. SI. */
import type { Craft } from '../../craft/schema/craftSchema.ts'
import { cylinderOf, type StarterCylinder, type Turning, turnOver } from './starterPull.ts'

export interface ControlledEngine {
  name: string
  cylinders: number
  /** nominal, and the ends of what is in doubt; N·m a cylinder */
  turning: Turning
  low: Turning
  high: Turning
  /** by ports and stroke; false by its volume alone */
  byPorts: boolean
}

export interface ControlsInputs {
  craft: Craft
  /** those with pistons */
  engines: readonly ControlledEngine[]
  /** one cord turns all of them */
  together: boolean
  /** m, of the narrowest air tube a cable may lie in */
  tube?: number
}

/** trapped compression of two-strokes whose file does not give it, and of friction, Pa */
const usualRatio = { value: 6.8, low: 6, high: 7.8 }
const drag = { value: 0.9e5, low: 0.6e5, high: 1.2e5 }

function engineOf(e: Craft['engines'][number], i: number): ControlledEngine[] {
  if (e.kind === 'electric') return []
  const name = e.name ?? `engine ${i + 1}`
  const cylinders = e.cylinders.value
  const made = (ratio: number): StarterCylinder =>
    e.kind === 'two-stroke'
      ? {
          bore: e.bore.value,
          stroke: e.stroke.value,
          rod: e.rod.value,
          exhaust: e.ports.exhaust.opens.value,
          ratio,
        }
      : cylinderOf(e.displacement.value / cylinders, ratio)
  const ratio = e.kind === 'two-stroke' ? e.combustion.trappedCompressionRatio : usualRatio
  return [
    {
      name,
      cylinders,
      turning: turnOver(made(ratio.value), drag.value, 1.3),
      low: turnOver(made(ratio.low), drag.low, 1.2),
      high: turnOver(made(ratio.high), drag.high, 1.35),
      byPorts: e.kind === 'two-stroke',
    },
  ]
}

export function controlsFromCraft(craft: Craft): ControlsInputs {
  const bores = craft.engines.flatMap((e) =>
    e.kind !== 'electric' && e.snorkel ? [e.snorkel.bore.value] : [],
  )
  const coupled = craft.drive.arrangement === 'one shaft' && craft.drive.clutch !== 'one-way'
  return {
    craft,
    engines: craft.engines.flatMap(engineOf),
    together: craft.cord?.turns === undefined ? coupled : craft.cord.turns === 'all engines',
    ...(bores.length > 0 ? { tube: Math.min(...bores) } : {}),
  }
}
