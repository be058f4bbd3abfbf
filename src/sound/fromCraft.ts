/** Craft file -> what listening needs to know of the engines. */
import type { Craft } from '../craft/schema/index.ts'
import type { HearOptions } from './listener.ts'

/** Options for `hear` from the craft: engine count, cylinders, speed range, impeller. */
export function hearOptionsOf(craft: Craft): HearOptions {
  const engines = craft.engines.filter((e) => e.running && e.kind !== 'electric')
  const first = engines[0]
  if (!first) return {}
  const cylinders = 'cylinders' in first ? Math.round(first.cylinders.value) : 1
  const redline = Math.max(0, ...engines.map((e) => e.redline?.value ?? 0))
  const locked =
    engines.length > 1 && craft.drive.arrangement === 'one shaft' && craft.drive.clutch === 'none'
  return {
    // engines on one shaft sound as one line; which of them fires is left to the sound
    engines: engines.length === 1 ? 1 : 'auto',
    cylinders,
    // free of its load an engine passes its redline
    ...(redline > 0 && !locked ? { range: { low: 1300, high: 60 * redline * 1.35 } } : {}),
    impeller: { blades: Math.round(craft.jet.rotor.blades.value), ratio: 1 / craft.drive.ratio.value },
  }
}
