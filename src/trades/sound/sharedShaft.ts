/**
 * Steps of speed read with what is known of the shaft: two engines on one shaft sound as one line, so one that stops firing is a step of
 * that line, and nothing else. A step inside a run is known to a per cent, however wide the model's own range is.
 */
import { inPercent } from '../../base/answers/amounts.ts'
import { say } from '../../base/answers/sentence.ts'
import { atRpm } from './saySpeed.ts'
import type { RunEvent } from './shaftEvents.ts'
import type { CraftExpects } from './soundFromCraft.ts'
import { type SoundLimits, soundLimits } from './soundLimits.ts'

/** What the balance says of the shaft's other speeds, as parts of that with all engines firing. */
export interface ShaftRoots {
  /** with one engine dead and dragged along */
  oneDead?: { low: number; high: number }
  /** free of its load */
  free?: number
}

/** ln of the speed before within which a step up ends what a step down began */
const AGAIN = 0.04
/** ln of two speeds that are one, with an engine that hunts a little */
const LIKE = 0.15

/** The events with steps of a shared shaft named for what they are; as they were for any other craft. */
export function onSharedShaft(
  events: readonly RunEvent[],
  expects: CraftExpects,
  roots: ShaftRoots = {},
  limits: SoundLimits = soundLimits,
): RunEvent[] {
  if (expects.coupling !== 'one shaft' || expects.engines < 2) return [...events]
  const out: RunEvent[] = []
  let dead: RunEvent | undefined
  for (const e of events) {
    const ratio = e.before && e.after ? e.after / e.before : Number.NaN
    if (e.kind === 'fall' && isOneDead(ratio, roots, limits)) {
      dead = { ...e, ...deadSays(e, ratio, roots, limits) }
      out.push(dead)
    } else if (
      e.kind === 'step up' &&
      dead?.before &&
      Math.abs(Math.log((e.after ?? 0) / dead.before)) < AGAIN
    ) {
      out.push({
        ...e,
        kind: 'fires again',
        says: say`the engine that had stopped fires again: from ${atRpm(e.before!)} back to ${atRpm(e.after!)}`,
      })
      dead = undefined
    } else if (dead && outrunsBoth(e, dead, limits)) {
      out.push({
        ...e,
        kind: 'load lost',
        says: say`races from ${atRpm(e.before!)} to ${atRpm(e.after!)}, ${inPercent(e.after! / dead.before! - 1)} over what both engines reached: nothing loads the shaft, a link opened or the pump drew air`,
        excludes: 'the dead engine firing again, which brings back the speed before',
      })
    } else out.push(e)
  }
  return out
}

/** One engine alone that turns the shaft faster than both did has lost its load, however slow it was before. */
const outrunsBoth = (e: RunEvent, dead: RunEvent, limits: SoundLimits): boolean =>
  e.kind === 'speed rises' &&
  e.after! > limits.flareLeast.value * dead.before! &&
  Math.abs(Math.log(e.before! / dead.after!)) < LIKE

/** Whether a step is the one that the balance gives for one engine dead. */
const asBalanced = (ratio: number, { oneDead }: ShaftRoots, { deadMargin }: SoundLimits): boolean =>
  oneDead !== undefined && ratio > oneDead.low - deadMargin.value && ratio < oneDead.high + deadMargin.value

/** Whether a fall may be what one engine of two leaves: as the balance says, or by how pump torque grows with speed. */
const isOneDead = (ratio: number, roots: ShaftRoots, limits: SoundLimits): boolean =>
  asBalanced(ratio, roots, limits) || (ratio > limits.deadLeast.value && ratio < limits.deadMost.value)

function deadSays(
  e: RunEvent,
  ratio: number,
  roots: ShaftRoots,
  limits: SoundLimits,
): Pick<RunEvent, 'kind' | 'says' | 'value' | 'confidence' | 'excludes'> {
  const { oneDead } = roots
  const fits = asBalanced(ratio, roots, limits)
  const known = oneDead
    ? say`; the balance expects ${inPercent(1 - oneDead.high)} to ${inPercent(1 - oneDead.low)}`
    : ''
  return {
    kind: 'one dead',
    says: say`one of the two on the shaft stops firing and is turned along: from ${atRpm(e.before!)} to ${atRpm(e.after!)}, ${inPercent(1 - ratio)} down${known}; which one, the sound does not tell`,
    value: ratio - 1,
    confidence: e.confidence * (fits ? limits.deadByModel.value : limits.deadByRatio.value),
    excludes: 'a load lost, which speeds up (a throttle closed by part sounds the same)',
  }
}
