/** Craft file -> what listening needs to know of the engines. */
import type { Craft } from '../../craft/schema/craftSchema.ts'
import type { HearOptions } from './listener.ts'
import { type SoundLimits, soundLimits } from './soundLimits.ts'

/**
 * How the craft's engines turn beside each other: one alone; a pair on one shaft that cannot turn apart; a pair on one shaft
 * of which a dead one may stand still (one-way clutches); or each with a jet of its own.
 */
export type Coupling = 'none' | 'single' | 'one shaft' | 'one-way' | 'apart'

/** What may be heard of a craft. */
export interface CraftExpects {
  /** engines with a sound, as far as they run */
  engines: number
  coupling: Coupling
  /** rev/min that no engine passes, even free of its load; undefined without a redline in the file */
  most?: number
}

const sounding = (craft: Craft) => craft.engines.filter((e) => e.running && e.kind !== 'electric')

/** How many engines there are to hear, how they are coupled, and how fast they can turn. */
export function expectsOf(craft: Craft, limits: SoundLimits = soundLimits): CraftExpects {
  const engines = sounding(craft)
  const redline = Math.max(0, ...engines.map((e) => e.redline?.value ?? 0))
  const coupling: Coupling =
    engines.length === 0
      ? 'none'
      : engines.length === 1
        ? 'single'
        : craft.drive.arrangement !== 'one shaft'
          ? 'apart'
          : craft.drive.clutch === 'none'
            ? 'one shaft'
            : 'one-way'
  return {
    engines: engines.length,
    coupling,
    ...(redline > 0 ? { most: 60 * redline * limits.overRedline.value } : {}),
  }
}

/** Options for `hear` from the craft: engine count, cylinders, speed range, impeller. */
export function hearOptionsOf(craft: Craft): HearOptions {
  const engines = sounding(craft)
  const first = engines[0]
  if (!first) return {}
  const cylinders = 'cylinders' in first ? Math.round(first.cylinders.value) : 1
  const { coupling, most } = expectsOf(craft)
  return {
    // engines on one shaft sound as one line; which of them fires is left to the sound
    engines: engines.length === 1 ? 1 : 'auto',
    cylinders,
    // a pair on one shaft that fires in turn sounds like one engine twice as fast
    ...(most !== undefined && coupling !== 'one shaft' ? { range: { low: 1300, high: most } } : {}),
    impeller: { blades: Math.round(craft.jet.rotor.blades.value), ratio: 1 / craft.drive.ratio.value },
  }
}
